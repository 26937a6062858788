"""What a program that goes on running keeps in mind: it must never say anything else."""

import datetime
from collections.abc import Callable, Sequence
from dataclasses import replace
from pathlib import Path
from uuid import uuid4

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

import paradestate.journeys.bench.forecast as dating
import paradestate.journeys.journal as journal_journey
from paradestate.core.choice import Choice
from paradestate.core.journal import JournalState, added_up
from paradestate.core.journal_entry import EntryKind, JournalEntry
from paradestate.core.log_request import LogRequest
from paradestate.core.work.bench_log import BenchLog, Making, log_of_bench
from paradestate.journeys.check import checked
from paradestate.journeys.count import count
from paradestate.journeys.history import history
from paradestate.journeys.holdings import holdings
from paradestate.journeys.log import log
from paradestate.journeys.memory import Memory
from paradestate.journeys.new import new_from_example

TODAY = datetime.date(2026, 3, 14)
NOW = datetime.datetime(2026, 3, 14, 20, tzinfo=datetime.UTC)


@pytest.fixture(name="folder")
def marenz_folder(tmp_path: Path) -> Path:
    new_from_example(tmp_path / "marenz", name="marenz")
    return tmp_path / "marenz"


def written(folder: Path, memory: Memory, **said: object) -> str:
    values = {"id": str(uuid4()), "written": NOW, "on": TODAY, **said}
    request = LogRequest(**values)  # type: ignore[arg-type]  # fields of the request
    done = log(folder, today=TODAY, request=request, memory=memory)
    assert done.entry is not None, done.findings
    return done.entry.id


def test_what_rests_on_the_same_things_is_made_once() -> None:
    memory, made = Memory(), list[int]()

    def make() -> int:
        made.append(1)
        return len(made)

    one, other = object(), object()
    assert [memory.kept("key", make, rests_on=(one,)) for _ in range(3)] == [1, 1, 1]
    assert memory.kept("key", make, rests_on=(other,)) == 2
    assert memory.kept("key", make, rests_on=(other, one)) == 3
    assert memory.kept("other key", make) == 4


def test_what_was_asked_for_longest_ago_is_forgotten() -> None:
    memory = Memory(most=2)
    for name in "abc":
        memory.keep(name, name)
    assert [memory.last(name, str) for name in "abc"] == [None, "b", "c"]
    assert memory.last("b", int) is None


def test_a_memory_of_nothing_makes_everything_anew() -> None:
    memory = Memory(most=0)
    made = iter(range(9))
    assert [memory.kept("key", made.__next__) for _ in range(3)] == [0, 1, 2]


def test_a_count_is_made_once_while_nothing_changes(folder: Path) -> None:
    memory = Memory()
    first = count(folder, today=TODAY, choice=Choice(), memory=memory)
    assert count(folder, today=TODAY, choice=Choice(), memory=memory) is first
    written(folder, memory, kind=EntryKind.RECEIVED, figures={"rifleman": 4})
    after = count(folder, today=TODAY, choice=Choice(), memory=memory)
    assert after is not first
    assert after.count is not None
    assert after.count.strength.held == {"rifleman": 4}


def test_a_file_that_was_changed_is_read_again(folder: Path) -> None:
    memory = Memory()
    before = checked(folder, today=TODAY, memory=memory)
    assert checked(folder, today=TODAY, memory=memory) is before
    file = folder / "force.yaml"
    file.write_text(file.read_text().replace("Frontier War", "Another War"))
    assert checked(folder, today=TODAY, memory=memory).force.title.endswith("Another War")


def test_another_day_is_another_answer(folder: Path) -> None:
    memory = Memory()
    before = checked(folder, today=TODAY, memory=memory)
    assert checked(folder, today=TODAY + datetime.timedelta(days=1), memory=memory) is not before


def test_what_another_program_writes_is_seen(folder: Path) -> None:
    memory, other = Memory(), Memory()
    written(folder, memory, kind=EntryKind.RECEIVED, figures={"rifleman": 4})
    holdings(folder, today=TODAY, memory=memory)
    written(folder, other, kind=EntryKind.RECEIVED, figures={"rifleman": 3})
    known = holdings(folder, today=TODAY, memory=memory)
    assert known.state is not None
    assert known.state.held.figures == {"rifleman": {"in packet": 7}}


def test_a_stock_that_was_changed_is_added_up_with_the_entries_that_are_known(folder: Path) -> None:
    memory = Memory()
    written(folder, memory, kind=EntryKind.RECEIVED, figures={"rifleman": 4})
    holdings(folder, today=TODAY, memory=memory)
    (folder / "stock.yaml").write_text("stock: {rifleman: {in packet: 3}}\n", encoding="utf-8")
    known = holdings(folder, today=TODAY, memory=memory)
    assert known.state is not None
    assert known.state.held.figures == {"rifleman": {"in packet": 7}}


def test_a_journal_that_was_taken_away_is_noticed(folder: Path) -> None:
    memory = Memory()
    written(folder, memory, kind=EntryKind.RECEIVED, figures={"rifleman": 4})
    for file in folder.glob("journal.sqlite*"):
        file.unlink()
    known = holdings(folder, today=TODAY, memory=memory)
    assert known.state is not None
    assert not known.state.held


def test_what_was_just_written_is_struck_out_without_adding_all_up_anew(
    folder: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    memory, sums = Memory(), list[int]()

    def noted(
        start: JournalState,
        entries: Sequence[JournalEntry],
        *,
        until: datetime.date | None = None,
    ) -> JournalState:
        sums.append(len(entries))
        return added_up(start, entries, until=until)

    four = {"rifleman": 4}
    *_, newest = (written(folder, memory, kind=EntryKind.RECEIVED, figures=four) for _ in range(4))
    monkeypatch.setattr(journal_journey, "added_up", noted)
    strike = written(folder, memory, kind=EntryKind.STRUCK_OUT, struck_out=newest)
    written(folder, memory, kind=EntryKind.STRUCK_OUT, struck_out=strike)
    known = holdings(folder, today=TODAY, memory=memory)
    assert known.state is not None
    assert known.state.held.figures == {"rifleman": {"in packet": 16}}
    assert max(sums) == 3


def test_work_of_earlier_days_is_read_once(folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(dating, "MOST_READ_ANEW", 2)
    monkeypatch.setattr(dating, "LOOKED_AT", 1)
    memory, read = Memory(), list[int]()

    def noted(
        entries: Sequence[JournalEntry], making: Making, *, force: str, before: BenchLog
    ) -> BenchLog:
        read.append(len(entries))
        return log_of_bench(entries, making, force=force, before=before)

    monkeypatch.setattr(dating, "log_of_bench", noted)
    days = [TODAY - datetime.timedelta(days=number) for number in (4, 3, 3, 2, 1, 0)]
    for on in days:
        written(folder, memory, kind=EntryKind.SESSION, minutes=30, on=on)
        minutes_of(folder, memory)
    assert read == [1, 2, 1, 2, 2, 1, 2, 2, 1]
    assert_same(lambda kept: minutes_of(folder, kept), memory)


def test_work_written_late_is_read_with_that_of_its_day(
    folder: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(dating, "MOST_READ_ANEW", 1)
    monkeypatch.setattr(dating, "LOOKED_AT", 1)
    memory = Memory()
    for number in (2, 1, 0, 1, 2, 3):
        on = TODAY - datetime.timedelta(days=number)
        written(folder, memory, kind=EntryKind.SESSION, minutes=30, on=on)
        assert_same(lambda kept: minutes_of(folder, kept), memory)


def minutes_of(folder: Path, memory: Memory) -> BenchLog:
    force = checked(folder, today=TODAY, memory=memory).force
    return dating.work_logged(folder, force, today=TODAY, patterns={}, memory=memory).log


KINDS = st.sampled_from(["received", "moved", "struck-out", "undone", "late", "day", "stock"])


@pytest.mark.slow
@settings(max_examples=5, deadline=None)
@given(steps=st.lists(KINDS, min_size=2, max_size=5))
def test_with_and_without_a_memory_the_answers_are_the_same(
    tmp_path_factory: pytest.TempPathFactory, steps: list[str]
) -> None:
    folder = tmp_path_factory.mktemp("course") / "marenz"
    new_from_example(folder, name="marenz")
    memory = Memory()
    written(folder, memory, kind=EntryKind.RECEIVED, figures={"rifleman": 40})
    for step in steps:
        _take(folder, memory, step=step)
        assert_same(lambda kept: holdings(folder, today=TODAY, memory=kept).state, memory)
        assert_same(lambda kept: holdings(folder, today=TODAY, on=TODAY, memory=kept).state, memory)
        assert_same(lambda kept: history(folder, today=TODAY, last=5, memory=kept), memory)
        assert_same(lambda kept: minutes_of(folder, kept), memory)


def _take(folder: Path, memory: Memory, *, step: str) -> None:
    match step:
        case "received":
            written(folder, memory, kind=EntryKind.RECEIVED, figures={"rifleman": 2})
        case "moved":
            said = {"figures": {"rifleman": 1}, "from_stage": "in packet", "to_stage": "painted"}
            written(folder, memory, kind=EntryKind.MOVED, **said)
        case "struck-out":
            newest = written(folder, memory, kind=EntryKind.NOTED, note="a slip")
            written(folder, memory, kind=EntryKind.STRUCK_OUT, struck_out=newest)
        case "undone":
            newest = written(folder, memory, kind=EntryKind.RECEIVED, figures={"rifleman": 2})
            written(folder, memory, kind=EntryKind.STRUCK_OUT, struck_out=newest)
        case "late":
            day = TODAY - datetime.timedelta(days=3)
            written(folder, memory, kind=EntryKind.RECEIVED, figures={"officer": 1}, on=day)
        case "day":
            written(folder, memory, kind=EntryKind.SESSION, minutes=30)
        case _:
            file = folder / "stock.yaml"
            number = 1 + (len(file.read_text()) if file.exists() else 0)
            file.write_text(f"stock: {{signaller: {{painted: {number}}}}}\n")


def assert_same(ask: Callable[[Memory], object], memory: Memory) -> None:
    from_mind, anew = ask(memory), ask(Memory(most=0))
    assert plain(from_mind) == plain(anew)


def plain(answer: object) -> object:
    return replace(answer, texts={}) if hasattr(answer, "texts") else answer  # type: ignore[type-var]  # a record
