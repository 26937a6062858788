"""What several tests of the store do: make entries, and go round the store by a plain driver."""

import sqlite3
from collections.abc import Sequence
from contextlib import closing
from typing import Any, assert_never

import psycopg

from paradestate.core.digest_chain import Altered, Link, first_altered
from paradestate.store.address import Address, JournalFile, ServerJournal
from paradestate.store.opening import opened


def identity(number: int) -> str:
    """The UUID that stands for this number."""
    return f"00000000-0000-4000-8000-{number:012x}"


def write(address: Address, *texts: str, first: int = 1) -> list[Link]:
    """Appends these texts in one block, under the ids of the numbers from `first` on."""
    with opened(address, writing=True) as journal:
        return [
            journal.append(id=identity(number), text=text)
            for number, text in enumerate(texts, start=first)
        ]


def lines(address: Address) -> list[Link]:
    with opened(address, writing=False) as journal:
        return list(journal.links())


def alteration(address: Address) -> Altered | None:
    """The first line at which the journal doesn't hold."""
    with opened(address, writing=False) as journal:
        return first_altered(journal.links(), end=journal.head())


def by_hand(address: Address, statement: str) -> Sequence[tuple[Any, ...]]:
    """What somebody does who goes round the store; in the statement OURS is the collection."""
    words = statement.replace("OURS", f"'{address.collection}'")
    match address:
        case JournalFile(path=path):
            with closing(sqlite3.connect(path)) as connection, connection:
                return connection.execute(words).fetchall()
        case ServerJournal(url=url):
            with psycopg.connect(url) as server:
                answer = server.execute(words.encode())
                return [] if answer.description is None else answer.fetchall()
        case _:
            assert_never(address)
