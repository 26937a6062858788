"""What is said becomes an entry that says exactly what it does, or is refused with words."""

import datetime
from collections.abc import Mapping
from dataclasses import replace
from typing import Any

import pytest

from paradestate.core.finding import Finding, Level
from paradestate.core.holdings import Holdings
from paradestate.core.journal import JournalState
from paradestate.core.journal_entry import EntryKind, JournalEntry
from paradestate.core.log import drafted, says_the_same
from paradestate.core.log_request import Desk, LogRequest, NamedStand
from paradestate.core.play.event import Ended, Played
from tests.entries import ON, WRITTEN, figures, uuid

STAGES = ("in packet", "undercoated", "painted", "based")
FIRST = "1 Platoon / 1 Section"
HELD = Holdings(
    figures={"rifleman": {"in packet": 20, "undercoated": 6}, "officer": {"painted": 3}},
    stands={"truck": {"based": 2}},
)
LENT = figures(rifleman={"painted": 2})
DESK = Desk(
    kinds=("rifleman", "officer", "mortar crew"),
    stages=STAGES,
    stands={
        FIRST: NamedStand(pattern="rifle section", figures={"rifleman": 4}),
        "Truck": NamedStand(pattern="truck", figures={"light truck": 1}),
    },
    state=JournalState(held=HELD, lent=LENT),
    today=ON,
    wanted={"rifleman": 24},
)


def request(kind: EntryKind, **said: Any) -> LogRequest:  # noqa: ANN401 - fields of the request
    return LogRequest(**{"id": uuid(7), "kind": kind, "written": WRITTEN, "on": ON, **said})


def written(
    kind: EntryKind,
    *,
    desk: Desk = DESK,
    **said: Any,  # noqa: ANN401 - fields of the request
) -> JournalEntry:
    entry, findings = drafted(request(kind, **said), desk)
    assert (entry is not None, findings) == (True, ())
    assert entry is not None
    return entry


def refused(
    kind: EntryKind,
    *,
    desk: Desk = DESK,
    **said: Any,  # noqa: ANN401 - fields of the request
) -> Finding:
    entry, findings = drafted(request(kind, **said), desk)
    assert entry is None
    (found,) = findings
    assert (found.level, found.effect) == (Level.STOP, "Nothing is written into the journal.")
    return found


def test_an_entry_keeps_all_that_was_said_of_it() -> None:
    entry = written(EntryKind.NOTED, note="primer ran out", force="Marenz", stand=FIRST)
    assert entry == JournalEntry(
        id=uuid(7),
        kind=EntryKind.NOTED,
        written=WRITTEN,
        on=ON,
        force="Marenz",
        note="primer ran out",
        stand=FIRST,
    )


class TestCounted:
    def test_a_count_at_a_stage_sets_that_stage(self) -> None:
        entry = written(EntryKind.COUNTED, figures={"rifleman": 5}, to_stage="painted")
        assert entry.comes == figures(rifleman={"painted": 5})

    def test_a_count_that_finds_what_is_held_confirms_every_stage(self) -> None:
        entry = written(EntryKind.COUNTED, figures={"rifleman": 26})
        assert entry.comes == figures(rifleman={"in packet": 20, "undercoated": 6})

    def test_a_count_of_none_sets_every_stage_to_nought(self) -> None:
        entry = written(EntryKind.COUNTED, figures={"officer": 0})
        assert entry.comes == figures(officer=dict.fromkeys(STAGES, 0))

    def test_a_count_of_what_is_at_one_stage_only_is_of_that_stage(self) -> None:
        entry = written(EntryKind.COUNTED, figures={"officer": 2})
        assert entry.comes == figures(officer={"painted": 2})

    def test_a_count_that_could_be_of_several_stages_is_asked_about(self) -> None:
        found = refused(EntryKind.COUNTED, figures={"rifleman": 24})
        assert (found.code, found.message, found.hint) == (
            "stage-unsaid",
            "24 riflemen: at which stage? (26 riflemen held: 20 in packet and 6 undercoated.)",
            "Say it with --to, one of: in packet, undercoated.",
        )

    def test_a_count_of_what_was_never_held_needs_its_stage(self) -> None:
        found = refused(EntryKind.COUNTED, figures={"mortar crew": 9})
        assert (found.message, found.hint) == (
            "9 mortar crews: at which stage? (None is held yet.)",
            f"Say it with --to, one of: {', '.join(STAGES)}.",
        )

    def test_a_count_of_several_stages_sets_each_of_them_and_no_other(self) -> None:
        found = {"rifleman": {"in packet": 18, "painted": 0}, "officer": {"based": 3}}
        assert written(EntryKind.COUNTED, staged=found).comes == Holdings(figures=found)


class TestReceived:
    def test_what_is_received_is_at_the_first_stage(self) -> None:
        entry = written(EntryKind.RECEIVED, figures={"officer": 4, "rifleman": 32})
        assert entry.comes == figures(officer={"in packet": 4}, rifleman={"in packet": 32})
        assert not entry.leaves

    def test_what_is_received_painted_is_at_that_stage(self) -> None:
        entry = written(EntryKind.RECEIVED, figures={"officer": 4}, to_stage="painted")
        assert entry.comes == figures(officer={"painted": 4})


class TestMoved:
    def test_figures_come_from_the_stage_before(self) -> None:
        entry = written(EntryKind.MOVED, figures={"rifleman": 6}, to_stage="painted")
        assert entry.leaves == figures(rifleman={"undercoated": 6})
        assert entry.comes == figures(rifleman={"painted": 6})

    def test_figures_come_from_the_stage_that_is_named(self) -> None:
        entry = written(
            EntryKind.MOVED, figures={"rifleman": 6}, from_stage="in packet", to_stage="painted"
        )
        assert entry.leaves == figures(rifleman={"in packet": 6})

    def test_a_session_moves_and_keeps_its_minutes(self) -> None:
        entry = written(EntryKind.SESSION, figures={"rifleman": 6}, to_stage="painted", minutes=90)
        assert (entry.minutes, entry.comes) == (90, figures(rifleman={"painted": 6}))
        assert written(EntryKind.SESSION, minutes=90).comes == Holdings()

    @pytest.mark.parametrize(
        ("said", "message"),
        [
            (
                {"figures": {"rifleman": 30}, "to_stage": "painted"},
                "Painted 30 of 26 riflemen held",
            ),
            (
                {"figures": {"rifleman": 7}, "to_stage": "painted"},
                "Painted 7 of 26 riflemen held, of which 20 in packet and 6 undercoated",
            ),
            ({"figures": {"mortar crew": 1}, "to_stage": "painted"}, "Painted 1 of 0 mortar crews"),
        ],
    )
    def test_no_more_are_moved_than_are_held(self, said: dict[str, Any], message: str) -> None:
        found = refused(EntryKind.MOVED, **said)
        assert found.code == "more-than-held"
        assert found.message.startswith(message)
        assert found.message.endswith("Count again?")

    def test_work_that_goes_back_is_doubted_and_written(self) -> None:
        entry, (found,) = drafted(
            request(
                EntryKind.MOVED,
                figures={"rifleman": 6},
                from_stage="undercoated",
                to_stage="in packet",
            ),
            DESK,
        )
        assert entry is not None
        assert (found.level, found.code, found.message) == (
            Level.WARN,
            "stage-backward",
            "6 riflemen move from undercoated back to in packet. Repainting, or a slip?",
        )
        _, (found,) = drafted(
            request(EntryKind.MOVED, stand="Truck", from_stage="based", to_stage="painted"), DESK
        )
        assert found.message == "Truck moves from based back to painted. Repainting, or a slip?"

    def test_loose_figures_that_are_based_on_a_named_stand_become_that_stand(self) -> None:
        entry = written(EntryKind.MOVED, stand=FIRST, from_stage="in packet", to_stage="based")
        assert entry.leaves == figures(rifleman={"in packet": 4})
        assert entry.comes == Holdings(stands={"rifle section": {"based": 1}})
        assert entry.stand == FIRST

    def test_figures_of_a_named_stand_stay_loose_until_they_are_based(self) -> None:
        entry = written(EntryKind.MOVED, stand=FIRST, to_stage="painted")
        assert entry.leaves == figures(rifleman={"undercoated": 4})
        assert entry.comes == figures(rifleman={"painted": 4})

    def test_some_figures_of_a_named_stand_can_be_brought_on(self) -> None:
        entry = written(
            EntryKind.MOVED,
            stand=FIRST,
            figures={"rifleman": 2},
            from_stage="in packet",
            to_stage="based",
        )
        assert entry.leaves == figures(rifleman={"in packet": 2})
        assert entry.comes == figures(rifleman={"based": 2})
        assert entry.stand == FIRST

    def test_a_whole_stand_moves_whole(self) -> None:
        entry, _ = drafted(
            request(EntryKind.MOVED, stand="Truck", from_stage="based", to_stage="painted"), DESK
        )
        assert entry is not None
        assert entry.leaves == Holdings(stands={"truck": {"based": 1}})
        assert entry.comes == Holdings(stands={"truck": {"painted": 1}})

    def test_a_named_stand_whose_figures_are_lacking_is_not_based(self) -> None:
        found = refused(EntryKind.MOVED, stand=FIRST, to_stage="based")
        assert found.message == (
            "Based 4 of 26 riflemen held, of which none is painted but 20 in packet and 6 "
            "undercoated. Count again?"
        )


class TestGone:
    @pytest.mark.parametrize("kind", [EntryKind.LOST, EntryKind.SOLD, EntryKind.LENT])
    def test_what_is_at_one_stage_only_goes_from_there(self, kind: EntryKind) -> None:
        assert written(kind, figures={"officer": 2}).leaves == figures(officer={"painted": 2})

    def test_what_could_go_from_several_stages_is_asked_about(self) -> None:
        found = refused(EntryKind.LOST, figures={"rifleman": 2})
        assert (found.code, found.hint) == (
            "stage-unsaid",
            "Say it with --from, one of: in packet, undercoated.",
        )

    def test_no_more_go_than_there_are(self) -> None:
        found = refused(EntryKind.SOLD, figures={"officer": 4})
        assert found.message == "Sold 4 of 3 officers held. Count again?"
        found = refused(EntryKind.LENT, figures={"officer": 1}, from_stage="based")
        assert found.message == (
            "Lent 1 of 3 officers held, of which none is based but 3 painted. Count again?"
        )

    def test_a_whole_stand_goes_by_its_name(self) -> None:
        entry = written(EntryKind.LENT, stand="Truck")
        assert entry.leaves == Holdings(stands={"truck": {"based": 1}})

    def test_what_comes_back_was_lent_and_may_have_another_stage_now(self) -> None:
        entry = written(EntryKind.RETURNED, figures={"rifleman": 2})
        assert (entry.leaves, entry.comes) == (LENT, LENT)
        broken = written(EntryKind.RETURNED, figures={"rifleman": 2}, to_stage="undercoated")
        assert broken.leaves == LENT
        assert broken.comes == figures(rifleman={"undercoated": 2})
        found = refused(EntryKind.RETURNED, figures={"rifleman": 3})
        assert found.message == "Returned 3 of 2 riflemen lent. Count again?"

    def test_names_and_stages_that_only_the_journal_knows_can_still_go(self) -> None:
        state = JournalState(held=figures(riflemann={"primed": 3}))
        entry = written(
            EntryKind.LOST,
            desk=replace(DESK, state=state),
            figures={"riflemann": 3},
            from_stage="primed",
        )
        assert entry.leaves == figures(riflemann={"primed": 3})


class TestPromised:
    def test_a_promise_may_be_for_a_day_to_come(self) -> None:
        later = ON + datetime.timedelta(days=9)
        entry = written(EntryKind.PROMISED, figures={"rifleman": 20}, on=later)
        assert (entry.promised, entry.on, entry.leaves) == ({"rifleman": 20}, later, Holdings())

    def test_a_promise_that_names_nothing_is_of_all_that_the_force_wants(self) -> None:
        assert written(EntryKind.PROMISED).promised == {"rifleman": 24}
        found = refused(EntryKind.PROMISED, desk=replace(DESK, wanted={}))
        assert found.code == "log-incomplete"


def test_an_entry_is_struck_out_by_its_id() -> None:
    entry = written(EntryKind.STRUCK_OUT, struck_out=uuid(3), note="slip")
    assert (entry.struck_out, entry.note) == (uuid(3), "slip")


class TestDayTooLong:
    @pytest.mark.parametrize(
        ("minutes", "before", "words"),
        [(1860, 0, "31 hours"), (90, 1400, "24 h 50 min")],
    )
    def test_no_day_has_sessions_of_more_than_a_day(
        self, minutes: int, before: int, words: str
    ) -> None:
        state: Mapping[datetime.date, int] = {ON: before}
        desk = replace(DESK, state=replace(DESK.state, minutes=state))
        found = refused(EntryKind.SESSION, desk=desk, minutes=minutes)
        assert (found.code, found.message) == ("day-too-long", f"{words} on 5 March 2026?")

    def test_a_day_may_be_full(self) -> None:
        assert written(EntryKind.SESSION, minutes=1440).minutes == 1440


class TestDoubts:
    def doubt(self, kind: EntryKind, *, desk: Desk = DESK, **said: Any) -> Finding:  # noqa: ANN401
        entry, (found,) = drafted(request(kind, **said), desk)
        assert (entry is None, found.level) == (False, Level.WARN)
        return found

    def test_a_clock_behind_the_journal_is_told(self) -> None:
        tomorrow = ON + datetime.timedelta(days=1)
        desk = replace(DESK, state=replace(DESK.state, last_day=tomorrow))
        found = self.doubt(EntryKind.RECEIVED, desk=desk, figures={"officer": 1})
        assert found.code == "clock-behind"
        assert found.message == (
            "Today is 5 March 2026 by this computer, and the journal is at 6 March 2026 already."
        )

    def test_a_year_that_may_be_mistyped_is_told(self) -> None:
        found = self.doubt(EntryKind.SESSION, minutes=90, on=datetime.date.min)
        assert (found.code, found.message) == (
            "long-ago",
            "1 January 1 is more than ten years ago. Is the year right?",
        )
        entry, findings = drafted(
            request(EntryKind.SESSION, minutes=90, on=ON.replace(year=ON.year - 10)), DESK
        )
        assert (entry is not None, findings) == (True, ())

    def test_more_whole_stands_than_the_force_has_are_told(self) -> None:
        there = replace(HELD, stands={"rifle section": {"based": 1}})
        desk = replace(DESK, state=replace(DESK.state, held=there))
        found = self.doubt(
            EntryKind.MOVED, desk=desk, stand=FIRST, from_stage="in packet", to_stage="based"
        )
        assert (found.code, found.message) == (
            "more-stands-than-named",
            "That makes 2 rifle sections whole, and the force has 1.",
        )


class TestWholeStands:
    def test_a_finished_stand_can_be_received(self) -> None:
        entry = written(EntryKind.RECEIVED, stand=FIRST)
        assert entry.comes == Holdings(stands={"rifle section": {"based": 1}})
        entry = written(EntryKind.RECEIVED, stand=FIRST, to_stage="painted")
        assert entry.comes == Holdings(stands={"rifle section": {"painted": 1}})

    def test_a_stand_that_is_held_may_be_named_by_its_pattern(self) -> None:
        assert written(EntryKind.LOST, stand="truck").leaves == Holdings(
            stands={"truck": {"based": 1}}
        )
        entry, _ = drafted(
            request(EntryKind.MOVED, stand="truck", from_stage="based", to_stage="painted"), DESK
        )
        assert entry is not None
        assert entry.comes == Holdings(stands={"truck": {"painted": 1}})


class TestSayingTheSame:
    LOST = written(EntryKind.LOST, figures={"officer": 2}, note="cat")

    @pytest.mark.parametrize(
        ("said", "is_same"),
        [
            ({}, True),
            ({"from_stage": "painted"}, True),
            ({"from_stage": "undercoated"}, False),
            ({"written": WRITTEN + datetime.timedelta(hours=1)}, True),
            ({"figures": {"officer": 1}}, False),
            ({"figures": {"rifleman": 2}}, False),
            ({"note": "dog"}, False),
            ({"on": ON - datetime.timedelta(days=1)}, False),
            ({"kind": EntryKind.SOLD}, False),
            ({"minutes": 5}, False),
        ],
    )
    def test_an_entry_sent_again_says_the_same_whenever_it_was_written(
        self, *, said: dict[str, Any], is_same: bool
    ) -> None:
        again = {"kind": EntryKind.LOST, "figures": {"officer": 2}, "note": "cat", **said}
        assert says_the_same(self.LOST, request(**again)) is is_same

    def test_another_stage_is_another_entry(self) -> None:
        said: dict[str, Any] = {"figures": {"rifleman": 6}, "from_stage": "undercoated"}
        entry = written(EntryKind.MOVED, to_stage="painted", **said)
        assert says_the_same(entry, request(EntryKind.MOVED, to_stage="painted", **said))
        assert not says_the_same(entry, request(EntryKind.MOVED, to_stage="based", **said))

    def test_another_event_of_a_game_is_another_entry(self) -> None:
        played = Played(game=uuid(9), event=Ended())
        entry = written(EntryKind.PLAYED, played=played)
        assert entry.played == played
        assert says_the_same(entry, request(EntryKind.PLAYED, played=played))
        other = replace(played, game=uuid(8))
        assert not says_the_same(entry, request(EntryKind.PLAYED, played=other))

    def test_a_whole_promise_a_stand_and_a_strike_are_known_again(self) -> None:
        for said in (
            {"kind": EntryKind.PROMISED},
            {"kind": EntryKind.LENT, "stand": "Truck"},
            {"kind": EntryKind.STRUCK_OUT, "struck_out": uuid(3), "note": "slip"},
            {"kind": EntryKind.COUNTED, "figures": {"rifleman": 26}},
            {"kind": EntryKind.COUNTED, "figures": {"officer": 0}},
            {"kind": EntryKind.COUNTED, "staged": {"officer": {"painted": 0, "based": 2}}},
        ):
            entry, _ = drafted(request(**said), DESK)
            assert entry is not None
            assert says_the_same(entry, request(**said))

    def test_another_count_by_stages_is_another_entry(self) -> None:
        entry = written(EntryKind.COUNTED, staged={"officer": {"painted": 2, "based": 1}})
        for stages in ({"painted": 1, "based": 2}, {"painted": 2}):
            said = request(EntryKind.COUNTED, staged={"officer": stages})
            assert not says_the_same(entry, said)


def test_a_stand_that_goes_back_by_a_day_is_no_slip() -> None:
    whole = Holdings(stands={"truck": {"based": 1}})
    desk = replace(DESK, state=JournalState(held=whole))
    asked = {"stand": "Truck", "from_stage": "based", "to_stage": "painted"}
    made = written(EntryKind.MOVED, desk=desk, **asked, wanted=ON)
    assert (made.wanted, made.leaves) == (ON, whole)
    assert says_the_same(made, request(EntryKind.MOVED, **asked, wanted=ON))
    assert not says_the_same(made, request(EntryKind.MOVED, **asked))
    _, (slip,) = drafted(request(EntryKind.MOVED, **asked), desk)
    assert slip.code == "stage-backward"
