"""The journal looked at, a part of it or a day, and the parade state of a past day."""

import datetime
from pathlib import Path

import pytest

from paradestate.core.choice import Choice
from paradestate.core.journal_entry import EntryKind, JournalEntry
from paradestate.core.strength import stands_by_stage
from paradestate.journeys.count import Count, count
from paradestate.journeys.history import (
    LOOKED_AT,
    History,
    entry_of_id,
    history,
)
from paradestate.journeys.memory import NOTHING, Memory
from tests.journeys.logging_to import TODAY, logged

DAY = datetime.timedelta(days=1)


def entry(folder: Path, kind: EntryKind, **said: object) -> JournalEntry:
    made = logged(folder, kind, **said).entry
    assert made is not None
    return made


def test_entries_come_newest_first_and_page_by_page(guard: Path) -> None:
    every = [entry(guard, EntryKind.NOTED, note=str(number)) for number in range(5)]
    page = history(guard, today=TODAY, last=2, skip=2)
    assert (page.entries, page.number) == ((every[2], every[1]), 5)
    assert history(guard, today=TODAY, last=2, skip=9).entries == ()


def test_entries_about_a_name_or_an_id_are_found(guard: Path) -> None:
    boat = entry(guard, EntryKind.RECEIVED, figures={"boat": 1})
    moved = entry(guard, EntryKind.MOVED, figures={"rifleman": 4}, to_stage="assembled")
    note = entry(guard, EntryKind.NOTED, stand="Boat", note="leaks")
    strike = entry(guard, EntryKind.STRUCK_OUT, struck_out=moved.id, note="slip")

    def about(name: str) -> tuple[JournalEntry, ...]:
        return history(guard, today=TODAY, last=9, about=name).entries

    assert about("boat") == (boat,)
    assert about("Boat") == (note,)
    assert about("rifleman") == (moved,)
    assert about(moved.id) == (strike, moved)
    assert about("lorry") == ()


def test_what_was_ordered_and_what_of_it_will_not_come_are_about_its_kinds(guard: Path) -> None:
    two = {"rifleman": 2, "boat": 1}
    ordered = logged(guard, EntryKind.ORDERED, figures=two, source="North").entry
    rest = logged(guard, EntryKind.CANCELLED, figures={"boat": 1}, note="refunded").entry
    assert history(guard, today=TODAY, last=9, about="boat").entries == (rest, ordered)
    assert history(guard, today=TODAY, last=9, about="rifleman").entries == (ordered,)


def test_what_strikes_an_entry_out_is_known_with_its_reason(guard: Path) -> None:
    boat = entry(guard, EntryKind.RECEIVED, figures={"boat": 1})
    strike = entry(guard, EntryKind.STRUCK_OUT, struck_out=boat.id, note="counted twice")
    found = history(guard, today=TODAY, last=9)
    assert found.strikes == {boat.id: strike}
    assert found.struck_out == {boat.id}


def newest(folder: Path) -> History:
    return history(folder, today=TODAY, last=LOOKED_AT)


def test_the_newest_entry_that_counts_is_the_one_to_be_taken_back(guard: Path) -> None:
    assert newest(guard).newest_in_force is None
    boat = entry(guard, EntryKind.RECEIVED, figures={"boat": 1})
    moved = entry(guard, EntryKind.MOVED, figures={"rifleman": 4}, to_stage="assembled")
    assert newest(guard).newest_in_force == moved
    entry(guard, EntryKind.STRUCK_OUT, struck_out=moved.id, note="slip")
    assert newest(guard).newest_in_force == boat
    for note in [entry(guard, EntryKind.NOTED, note=str(number)) for number in range(LOOKED_AT)]:
        entry(guard, EntryKind.STRUCK_OUT, struck_out=note.id, note="slip")
    assert newest(guard).newest_in_force is None


def test_what_was_struck_out_just_now_is_known_until_something_else_is_written(
    guard: Path,
) -> None:
    assert newest(guard).struck_just_now is None
    boat = entry(guard, EntryKind.RECEIVED, figures={"boat": 1})
    assert newest(guard).struck_just_now is None
    entry(guard, EntryKind.STRUCK_OUT, struck_out=boat.id, note="slip")
    assert newest(guard).struck_just_now == boat
    entry(guard, EntryKind.NOTED, note="another")
    assert newest(guard).struck_just_now is None


def test_an_entry_is_found_by_its_id_though_it_was_struck_out(guard: Path) -> None:
    boat = entry(guard, EntryKind.RECEIVED, figures={"boat": 1})
    strike = entry(guard, EntryKind.STRUCK_OUT, struck_out=boat.id, note="slip")
    assert entry_of_id(guard, boat.id, today=TODAY) == boat
    assert entry_of_id(guard, strike.id, today=TODAY) == strike
    assert entry_of_id(guard, "boat", today=TODAY) is None


@pytest.mark.parametrize("memory", [NOTHING, Memory()])
def test_a_past_day_is_counted_with_what_was_held_at_its_end(guard: Path, memory: Memory) -> None:
    logged(guard, EntryKind.MOVED, figures={"rifleman": 4}, to_stage="assembled", on=TODAY - DAY)
    logged(guard, EntryKind.RECEIVED, figures={"boat": 1}, to_stage="based", on=TODAY)

    def counted(on: datetime.date | None) -> Count:
        answer = count(guard, today=TODAY, choice=Choice(), on=on, memory=memory)
        assert answer.count is not None
        return answer.count

    now, yesterday = counted(None).strength, counted(TODAY - DAY).strength
    assert now.held == {"rifleman": 10, "boat": 1}
    assert yesterday.held == {"rifleman": 10}
    assert stands_by_stage(now) != stands_by_stage(yesterday)
    before = counted(TODAY - 2 * DAY)
    assert before.force.stock == {"rifleman": {"in packet": 8, "painted": 2}}
    assert counted(None).strength.held == now.held


def test_a_past_day_is_kept_in_mind_until_something_is_written(guard: Path) -> None:
    memory = Memory()
    logged(guard, EntryKind.RECEIVED, figures={"boat": 1}, on=TODAY - DAY)

    def yesterday() -> Count | None:
        return count(guard, today=TODAY, choice=Choice(), on=TODAY - DAY, memory=memory).count

    first = yesterday()
    assert first is not None
    assert yesterday() is first
    logged(guard, EntryKind.RECEIVED, figures={"boat": 1}, on=TODAY - DAY)
    assert yesterday() not in (None, first)
