"""What the journal says of work at the bench."""

import datetime
from dataclasses import replace
from typing import Any

from paradestate.core.holdings import Holdings
from paradestate.core.journal_entry import EntryKind, JournalEntry
from paradestate.core.work.bench_log import BenchLog, Making, Stretch, log_of_bench
from tests.entries import ON, entry, figures

MAKING = Making(
    stages=("in packet", "assembled", "painted", "based"),
    on_stand={"rifle section": {"rifleman": 4, "officer": 1}},
    patterns={"1 Section": "rifle section", "2 Section": "rifle section"},
)
NEXT = ON + datetime.timedelta(days=1)
LATER = ON + datetime.timedelta(days=2)


def session(minutes: int, **said: Any) -> JournalEntry:  # noqa: ANN401 - of an entry
    return entry(EntryKind.SESSION, minutes=minutes, **said)


def brought(number: int, *, start: str, goal: str) -> dict[str, Any]:
    return {
        "leaves": figures(rifleman={start: number}),
        "comes": figures(rifleman={goal: number}),
    }


def read(*entries: JournalEntry, force: str = "") -> BenchLog:
    return log_of_bench(entries, MAKING, force=force)


def test_a_session_says_what_it_brought_on_and_how_long_it_took() -> None:
    log = read(session(90, **brought(6, start="assembled", goal="painted")))
    assert log.minutes == {ON: 90}
    assert log.since == ON
    assert log.stretches == (Stretch(last=ON, minutes=90, reached={("rifleman", "painted"): 6}),)


def test_figures_brought_over_several_stages_reached_each_of_them() -> None:
    (stretch,) = read(session(90, **brought(6, start="in packet", goal="based"))).stretches
    assert stretch.reached == {
        ("rifleman", stage): 6 for stage in ("assembled", "painted", "based")
    }


def test_work_that_brought_nothing_on_yet_belongs_to_what_is_brought_on_next() -> None:
    log = read(session(60), session(40, on=NEXT, **brought(8, start="assembled", goal="painted")))
    assert log.minutes == {ON: 60, NEXT: 40}
    assert [stretch.minutes for stretch in log.stretches] == [100]
    assert read(session(60)).unfinished == 60
    assert log.unfinished == 0


def test_what_was_moved_on_the_day_of_a_session_was_its_work() -> None:
    log = read(session(60), entry(EntryKind.MOVED, **brought(8, start="assembled", goal="painted")))
    assert [(each.minutes, dict(each.reached)) for each in log.stretches] == [
        (60, {("rifleman", "painted"): 8})
    ]


def test_what_was_moved_without_any_session_teaches_nothing() -> None:
    log = read(entry(EntryKind.MOVED, **brought(8, start="assembled", goal="painted")))
    assert log == BenchLog()
    assert log.since is None


def test_what_goes_back_brings_nothing() -> None:
    log = read(session(60, **brought(8, start="painted", goal="assembled")))
    assert (log.stretches, log.unfinished, log.left_out) == ((), 60, 0)


def test_work_at_a_stage_that_is_no_more_is_left_out_and_not_taken_for_what_comes_next() -> None:
    for start, goal in (("primed", "painted"), ("assembled", "primed")):
        old = (session(20), session(30, on=NEXT, **brought(8, start=start, goal=goal)))
        new = session(40, on=LATER, **brought(8, start="assembled", goal="painted"))
        log = read(*old, new)
        assert [each.minutes for each in log.stretches] == [40]
        assert (log.left_out, log.unfinished) == (50, 0)
        assert log.unknown == {"primed"}
        assert sum(log.minutes.values()) == 90
        before = read(*old)
        assert log_of_bench([new], MAKING, force="", before=before) == log


def test_what_was_moved_at_such_a_stage_without_minutes_leaves_nothing_out() -> None:
    log = read(entry(EntryKind.MOVED, **brought(8, start="primed", goal="painted")))
    assert log == BenchLog()


def test_whole_stands_are_their_figures_and_are_named() -> None:
    log = read(
        session(
            60,
            leaves=Holdings(stands={"rifle section": {"painted": 2}}),
            comes=Holdings(stands={"rifle section": {"based": 2}}),
        ),
        session(
            10,
            on=NEXT,
            leaves=Holdings(stands={"lost pattern": {"painted": 2}}),
            comes=Holdings(stands={"lost pattern": {"based": 2}}),
        ),
    )
    (stretch,) = log.stretches
    assert stretch.reached == {("rifleman", "based"): 8, ("officer", "based"): 2}
    assert stretch.on_stands == {
        ("rifle section", "rifleman", "based"): 8,
        ("rifle section", "officer", "based"): 2,
    }
    assert log.left_out == 10
    assert log.unknown == {"lost pattern"}


def test_figures_brought_on_under_the_name_of_a_stand_are_on_its_pattern() -> None:
    named = replace(session(60, **brought(4, start="assembled", goal="painted")), stand="1 Section")
    alike = replace(named, stand="", stands=("1 Section", "2 Section"))
    strange = replace(named, stand="9 Section")
    for each, on_stands in (
        (named, {("rifle section", "rifleman", "painted"): 4}),
        (alike, {("rifle section", "rifleman", "painted"): 4}),
        (strange, {}),
    ):
        (stretch,) = read(each).stretches
        assert stretch.on_stands == on_stands
        assert stretch.reached == {("rifleman", "painted"): 4}


def test_only_the_work_on_this_force_and_on_the_collection_counts() -> None:
    log = read(
        session(60, force="marenz"), session(30), session(15, force="kelmar"), force="marenz"
    )
    assert log.minutes == {ON: 90}


def test_sessions_of_one_day_are_several_and_those_without_minutes_none() -> None:
    log = read(session(60), session(30), session(0))
    later = log_of_bench([session(20, on=NEXT)], MAKING, force="", before=log)
    assert (log.sessions, later.sessions) == (2, 3)


def test_other_kinds_of_entry_are_no_work() -> None:
    assert read(entry(EntryKind.RECEIVED, comes=figures(rifleman={"in packet": 8}))) == BenchLog()
