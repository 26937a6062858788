"""How long it takes to know what a collection holds, with few entries and with a million.

Conditions: a small force of two kinds; entries that receive and move; the files in the disk cache;
one process. With a checkpoint the last 500 entries are added up, else all of them. Up to 25,000
lines all digests are verified whatever there is.
"""

import datetime
from collections.abc import Callable, Iterator
from functools import partial
from pathlib import Path
from typing import TypeVar, cast

import pytest
from pytest_benchmark.fixture import BenchmarkFixture

from bench.bench_journal import MILLION, USUAL
from paradestate.core.digest_chain import Checkpoint, Head
from paradestate.core.holdings import Holdings
from paradestate.core.journal import JournalState, added_up
from paradestate.core.journal_entry import EntryKind, JournalEntry
from paradestate.core.journal_text import entry_text, state_text
from paradestate.journeys.check import Checked
from paradestate.journeys.collection import collection_of
from paradestate.journeys.holdings import HeldCollection, checked_with_journal, holdings
from paradestate.store.opening import opened
from tests.entries import WRITTEN, figures, number_of
from tests.journeys.conftest import FERRY_GUARD, written
from tests.store.writing import identity

TODAY = datetime.date(2026, 3, 5)
FIRST = datetime.date(2000, 1, 1)
ENTRIES_A_DAY = 110
SINCE = 500
"""Entries since the last checkpoint."""

START = figures(rifleman={"in packet": 8, "painted": 2})

T = TypeVar("T")


def entries(number: int) -> Iterator[JournalEntry]:
    """Six riflemen received, six assembled, and so on, from day to day."""
    packet, assembled = figures(rifleman={"in packet": 6}), figures(rifleman={"assembled": 6})
    for each in range(1, number + 1):
        is_moved = each % 2 == 0
        yield JournalEntry(
            id=identity(each),
            kind=EntryKind.MOVED if is_moved else EntryKind.RECEIVED,
            written=WRITTEN,
            on=FIRST + datetime.timedelta(days=each // ENTRIES_A_DAY),
            leaves=packet if is_moved else Holdings(),
            comes=assembled if is_moved else packet,
        )


def filled(folder: Path, *, number: int, with_checkpoint: bool) -> Path:
    """A force with so many entries."""
    force = written(folder / f"{number}-{with_checkpoint}", FERRY_GUARD)
    with opened(collection_of(force).address, writing=True) as journal:
        for entry in entries(number):
            link = journal.append(id=entry.id, text=entry_text(entry))
            if with_checkpoint and link.number == number - SINCE:
                state = added_up(JournalState(held=START), tuple(entries(link.number)))
                head = Head(number=link.number, digest=link.digest)
                journal.keep(Checkpoint(head=head, text=state_text(state, start=START)))
    return force


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return tmp_path_factory.mktemp("collections")


def timed(benchmark: BenchmarkFixture, work: Callable[[], T], *, rounds: int) -> T:
    """What the work gives, measured in so many rounds after one to warm up."""
    done = benchmark.pedantic(work, rounds=rounds, warmup_rounds=1)  # type: ignore[no-untyped-call]
    return cast("T", done)


@pytest.mark.parametrize("with_checkpoint", [True, False])
@pytest.mark.benchmark(group="open a collection with ten thousand entries")
def bench_ten_thousand_entries(
    benchmark: BenchmarkFixture, folder: Path, *, with_checkpoint: bool
) -> None:
    """Files read, every line verified, the holdings added up."""
    force = filled(folder, number=USUAL, with_checkpoint=with_checkpoint)
    known: HeldCollection = timed(benchmark, partial(holdings, force, today=TODAY), rounds=10)
    assert known.state is not None
    assert number_of("rifleman", known.state.held) == 10 + 6 * USUAL // 2


@pytest.fixture(scope="module")
def million(folder: Path) -> Path:
    return filled(folder, number=MILLION, with_checkpoint=True)


@pytest.mark.benchmark(group="open a collection with a million entries")
def bench_a_million_entries_from_the_last_checkpoint(
    benchmark: BenchmarkFixture, million: Path
) -> None:
    """Verified and added up from the last checkpoint on."""
    known: HeldCollection = timed(benchmark, partial(holdings, million, today=TODAY), rounds=5)
    assert known.state is not None
    assert number_of("rifleman", known.state.held) == 10 + 6 * MILLION // 2


@pytest.mark.benchmark(group="open a collection with a million entries")
def bench_a_million_entries_verified(benchmark: BenchmarkFixture, million: Path) -> None:
    """Every line verified, added up from the last checkpoint on, as `check` does."""
    read: Checked = timed(benchmark, partial(checked_with_journal, million, today=TODAY), rounds=1)
    assert read.findings == ()


@pytest.mark.benchmark(group="open a collection with a million entries")
def bench_a_million_entries_added_up(benchmark: BenchmarkFixture, million: Path) -> None:
    """A past day: every entry read and added up anew."""
    past = partial(holdings, million, today=TODAY, on=TODAY)
    known: HeldCollection = timed(benchmark, past, rounds=1)
    assert known.state is not None
    assert number_of("rifleman", known.state.held) == 10 + 6 * MILLION // 2
