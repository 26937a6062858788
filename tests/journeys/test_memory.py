"""What a program that goes on running keeps in mind: it must never say anything else."""

import datetime
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path
from uuid import uuid4

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from paradestate.core.choice import Choice
from paradestate.core.journal_entry import EntryKind
from paradestate.core.log_request import LogRequest
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


KINDS = st.sampled_from(["received", "moved", "struck-out", "late", "day", "stock"])


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
