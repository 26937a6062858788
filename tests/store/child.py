"""Work in a process of its own, forked off one that has everything loaded."""

import multiprocessing
import os
import pwd
import resource
import signal
import sys
import tempfile
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from multiprocessing.connection import Connection
from multiprocessing.process import BaseProcess
from pathlib import Path
from typing import Any

from paradestate.store.address import Address, JournalFile
from paradestate.store.error import StoreError
from paradestate.store.opening import opened
from tests.store.cluster import UNPRIVILEGED
from tests.store.writing import identity

LARGEST = 40_000
"""Bytes that a file may have where the disk is said to be full."""

ENDED_WITHIN_SECONDS = 20
"""So long a child may take to end when it has said everything."""

Work = Callable[..., None]


@contextmanager
def child(work: Work, **words: object) -> Iterator[tuple[BaseProcess, Connection]]:
    """A process that does the work, and what it says by the connection it is given first."""
    context = multiprocessing.get_context("forkserver")
    context.set_forkserver_preload(["tests.store.child", "paradestate.store.opening"])
    here, there = context.Pipe(duplex=False)
    process = context.Process(target=work, args=(there,), kwargs=words, daemon=True)
    process.start()
    there.close()
    try:
        yield process, here
    finally:
        process.join(ENDED_WITHIN_SECONDS)
        process.kill()
        process.join()
        process.close()
        here.close()


def said(connection: Connection) -> list[Any]:
    """Everything that a child says until it has ended."""
    words = []
    try:
        while True:
            words.append(connection.recv())
    except EOFError:
        return words


def all_said(work: Work, **words: object) -> list[Any]:
    """What a child says that is left to end by itself."""
    with child(work, **words) as (_, connection):
        return said(connection)


def write_until_killed(answer: Connection, *, address: Address, first: int) -> None:
    """One entry a block without end; each is told when its block has ended."""
    number = first
    while True:
        with opened(address, writing=True, wait_seconds=30) as journal:
            journal.append(id=identity(number), text=f"entry {number} " + "x" * 130)
        answer.send(number)
        number += 1


def write_many(answer: Connection, *, address: Address, first: int, number: int) -> None:
    """So many entries, a block each."""
    for each in range(first, first + number):
        with opened(address, writing=True, wait_seconds=60) as journal:
            journal.append(id=identity(each), text=f"entry {each}")
        answer.send(each)


def try_as_somebody_else(answer: Connection, *, address: Address, writing: bool) -> None:
    """What somebody without special rights reads, or the refusal."""
    _load_everything()
    if os.geteuid() == 0:
        somebody = pwd.getpwnam(UNPRIVILEGED)
        os.setgroups([])
        os.setresgid(*[somebody.pw_gid] * 3)
        os.setresuid(*[somebody.pw_uid] * 3)
    try:
        with opened(address, writing=writing) as journal:
            answer.send([link.text for link in journal.links()])
    except StoreError as error:
        answer.send(str(error))


def read_as_somebody_else(answer: Connection, *, address: Address) -> None:
    try_as_somebody_else(answer, address=address, writing=False)


def write_as_somebody_else(answer: Connection, *, address: Address) -> None:
    try_as_somebody_else(answer, address=address, writing=True)


def write_till_the_disk_is_full(answer: Connection, *, address: Address, first: int) -> None:
    """As on a disk without room: no file may grow over a limit. Tells what was acknowledged."""
    _load_everything()
    signal.signal(signal.SIGXFSZ, signal.SIG_IGN)
    resource.setrlimit(resource.RLIMIT_FSIZE, (LARGEST, LARGEST))
    number = first
    while True:
        try:
            with opened(address, writing=True) as journal:
                journal.append(id=identity(number), text="x" * 3000)
        except StoreError as error:
            answer.send(str(error))
            return
        answer.send(number)
        number += 1


def _load_everything() -> None:
    """What is imported late must be there before files are out of reach."""
    sys.dont_write_bytecode = True
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "journal.sqlite"
        for writing in (True, False):
            with opened(JournalFile(path=path), writing=writing):
                pass
