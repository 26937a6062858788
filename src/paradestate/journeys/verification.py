"""Whether a journal is as it was written, line by line.

collection -> journal opened -> every digest computed anew -> what doesn't agree
"""

import datetime
from dataclasses import dataclass, replace
from itertools import islice
from pathlib import Path

from paradestate.core.digest_chain import Head, altered_lines, first_altered
from paradestate.core.finding import Finding
from paradestate.core.journal_finding import altered_line
from paradestate.journeys.collection import collection_of
from paradestate.journeys.journal import MOST_NAMED
from paradestate.journeys.memory import NOTHING, Memory
from paradestate.store.journal import Journal
from paradestate.store.opening import opened


@dataclass(frozen=True, slots=True, kw_only=True)
class Verification:
    """What came of verifying a journal."""

    head: Head
    """Where it ends."""
    at: datetime.datetime
    """When the first of its lines were verified; those that came since were verified later."""
    altered: tuple[Finding, ...]
    """The first lines that aren't as they were written; there may be more."""

    @property
    def lines(self) -> int:
        """How many lines were verified."""
        return max(self.head.number, 0)


def verified(
    folder: Path, *, now: datetime.datetime, anew: bool = False, memory: Memory = NOTHING
) -> Verification:
    """Every line of a collection's journal verified.

    With a memory only lines that came since the last time, but with `anew` all of them. Raises
    StoreError, and FileError.
    """
    collection = collection_of(folder)
    key = ("verified", collection.root)
    known = None if anew else memory.last(key, Verification)
    with opened(collection.address, writing=False) as journal:
        done = None if known is None else _grown(journal, known)
        if done is None:
            altered = altered_lines(journal.links(), end=journal.head())
            done = Verification(
                head=journal.head(),
                at=now,
                altered=tuple(
                    altered_line(each, journal=collection.place)
                    for each in islice(altered, MOST_NAMED)
                ),
            )
    memory.keep(key, done)
    return done


def _grown(journal: Journal, known: Verification) -> Verification | None:
    """What is known with the lines that came since; None where something isn't as it was."""
    head = journal.head()
    since = journal.links(after=max(known.head.number, 0))
    if known.altered or first_altered(since, after=known.head, end=head) is not None:
        return None
    return replace(known, head=head)
