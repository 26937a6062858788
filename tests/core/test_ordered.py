"""What was ordered: packs or figures, from whom, and for when."""

import datetime
from dataclasses import replace
from typing import Any

import pytest

from paradestate.core.journal import JournalState
from paradestate.core.journal_entry import EntryKind
from paradestate.core.log import drafted, says_the_same
from paradestate.core.log_request import Desk, LogRequest
from paradestate.core.money import Currency, Minor
from paradestate.core.on_order import OnOrder
from paradestate.core.ordered import Ordered, in_one, ordered, sources_differ
from paradestate.core.source import Pack, Source
from tests.entries import ON, WRITTEN, uuid

LATER = ON + datetime.timedelta(days=20)


def pack(name: str, lead_days: int | None, **holds: int) -> Pack:
    return Pack(name=name, price=Minor(100), holds=holds, lead_days=lead_days)


def source(name: str, *packs: Pack) -> Source:
    return Source(
        name=name, currency=Currency("GBP"), carriage={}, packs={each.name: each for each in packs}
    )


NORTH = source("North", pack("N1", 14, rifleman=32, officer=4), pack("N2", 7, rifleman=10))
SOUTH = source("South", pack("S1", 7, rifleman=16), pack("S2", None, officer=2))
DESK = Desk(
    kinds=("rifleman", "officer", "South/S2"),
    stages=("in packet", "painted"),
    stands={},
    state=JournalState(),
    today=ON,
    sources={"North": NORTH, "South": SOUTH},
)


def request(
    kind: EntryKind = EntryKind.ORDERED,
    **said: Any,  # noqa: ANN401 - fields of the request
) -> LogRequest:
    return LogRequest(**{"id": uuid(7), "kind": kind, "written": WRITTEN, "on": ON, **said})


def refused(*, desk: Desk = DESK, **said: Any) -> list[tuple[str, str]]:  # noqa: ANN401 - the same
    entry, findings = drafted(request(**said), desk)
    assert entry is None
    return [(found.code, found.message) for found in findings]


def test_packs_are_opened_and_come_with_the_last_of_them() -> None:
    assert ordered(request(figures={"North/N1": 1, "North/N2": 2}), DESK) == Ordered(
        source="North",
        packs={"N1": 1, "N2": 2},
        figures={"rifleman": 52, "officer": 4},
        expected=ON + datetime.timedelta(days=14),
    )


def test_figures_come_by_the_longest_lead_time_of_their_source() -> None:
    asked = request(figures={"rifleman": 3}, source="North")
    assert ordered(asked, DESK) == Ordered(
        source="North", figures={"rifleman": 3}, expected=ON + datetime.timedelta(days=14)
    )
    assert ordered(replace(asked, expected=LATER), DESK).expected == LATER


def test_where_the_lead_time_of_a_pack_is_unknown_nobody_says_for_when() -> None:
    assert ordered(request(figures={"rifleman": 3}, source="South"), DESK).expected is None
    assert ordered(request(figures={"South/S1": 1}), DESK).expected is not None
    bare = replace(DESK, sources={})
    asked = request(figures={"rifleman": 3}, source="a friend")
    assert ordered(asked, bare) == Ordered(source="a friend", figures={"rifleman": 3})


def test_a_kind_of_the_name_of_a_pack_comes_first() -> None:
    asked = request(figures={"South/S2": 5}, source="South")
    assert ordered(asked, DESK).figures == {"South/S2": 5}


def test_an_entry_says_all_of_it() -> None:
    entry, findings = drafted(request(figures={"North/N1": 1, "officer": 1}), DESK)
    assert entry is not None
    assert not findings
    assert (entry.source, entry.packs) == ("North", {"N1": 1})
    assert entry.ordered == {"rifleman": 32, "officer": 5}
    assert not entry.comes


@pytest.mark.parametrize(
    ("said", "code", "message"),
    [
        ({}, "log-incomplete", "Nothing is named that was ordered."),
        (
            {"figures": {"rifleman": 1}},
            "log-incomplete",
            "Nothing says from whom it was ordered.",
        ),
        (
            {"figures": {"rifelman": 1}, "source": "North"},
            "unknown-choice",
            "No figure kind or pack is called 'rifelman'.",
        ),
        (
            {"figures": {"North/N9": 1}},
            "unknown-choice",
            "No figure kind or pack is called 'North/N9'.",
        ),
        (
            {"figures": {"rifleman": 1}, "source": "Norht"},
            "unknown-choice",
            "No source is called 'Norht'.",
        ),
        (
            {"figures": {"North/N1": 1, "South/S1": 1}},
            "log-option",
            "That was ordered from North and South: each sends a parcel of its own.",
        ),
        (
            {"figures": {"North/N1": 1}, "expected": ON - datetime.timedelta(days=1)},
            "expected-before-ordered",
            "4 March 2026 is before it was ordered, 5 March 2026.",
        ),
        (
            {"figures": {"North/N1": 1}, "to_stage": "painted"},
            "log-option",
            "--to says nothing beside 'ordered'.",
        ),
    ],
)
def test_slips_are_told(said: dict[str, Any], code: str, message: str) -> None:
    assert refused(**said) == [(code, message)]


def test_a_whole_stand_comes_from_no_order() -> None:
    held = replace(DESK, stands={}, state=JournalState())
    asked = request(EntryKind.RECEIVED, stand="truck", source="North")
    entry, findings = drafted(asked, held)
    assert entry is None
    assert "A whole stand is on no order." in {found.message for found in findings}


def test_the_same_order_sent_again_is_the_same() -> None:
    asked = request(figures={"North/N1": 1, "officer": 1}, note="spring")
    entry, _ = drafted(asked, DESK)
    assert entry is not None
    assert says_the_same(entry, asked)
    others: tuple[dict[str, Any], ...] = (
        {"figures": {"North/N1": 2, "officer": 1}},
        {"figures": {"North/N1": 1, "North/N2": 1}},
        {"figures": {"North/N1": 1, "officer": 9}},
        {"expected": LATER},
        {"source": "South"},
        {"note": ""},
        {"kind": EntryKind.RECEIVED},
    )
    assert not any(says_the_same(entry, replace(asked, **other)) for other in others)
    loose = request(figures={"officer": 2}, source="North")
    alone, _ = drafted(loose, DESK)
    assert alone is not None
    assert says_the_same(alone, loose)
    assert not says_the_same(alone, replace(loose, figures={"officer": 1}))


def test_what_comes_without_a_source_is_asked_about_where_it_may_be_on_order() -> None:
    orders = tuple(
        OnOrder(entry=name, source=name, day=ON, expected=None, figures=figures)
        for name, figures in (
            ("North", {"rifleman": 8, "officer": 1}),
            ("South", {"rifleman": 4}),
            ("West", {"officer": 1}),
        )
    )
    desk = replace(DESK, state=JournalState(on_order=orders))
    asked = request(EntryKind.RECEIVED, figures={"rifleman": 2})
    entry, findings = drafted(asked, desk)
    assert entry is not None
    assert [(found.code, found.message) for found in findings] == [
        ("still-on-order", "On order from North and South: 12 riflemen.")
    ]
    assert drafted(replace(asked, source="North"), desk)[1] == ()
    assert drafted(replace(asked, figures={"South/S2": 1}), desk)[1] == ()


OTHER = source("North", pack("N1", 14, rifleman=30, officer=4), pack("N3", 7, gun=1))
"""North as another force has it: of N1 it says something else, and N3 only it knows."""


def test_a_source_of_several_forces_has_the_packs_of_all_and_of_one_pack_that_of_the_last() -> None:
    both = in_one([NORTH, OTHER])
    assert list(both.packs) == ["N1", "N2", "N3"]
    assert both.packs["N1"] == OTHER.packs["N1"]
    assert in_one([NORTH]) == NORTH


@pytest.mark.parametrize(
    ("said", "differs"),
    [
        ({"figures": {"North/N1": 1}}, True),
        ({"figures": {"North/N1": 1}, "source": "North"}, True),
        ({"figures": {"North/N2": 1}}, False),
        ({"figures": {"North/N2": 1}, "source": "North"}, False),
        ({"figures": {"rifleman": 3}, "source": "North"}, True),
        ({"figures": {"rifleman": 3}, "source": "North", "expected": LATER}, False),
        ({"figures": {"rifleman": 3}, "source": "South"}, False),
    ],
)
def test_it_is_said_where_forces_differ_in_what_the_order_depends_on(
    said: dict[str, Any], *, differs: bool
) -> None:
    forces = {"guard": {"North": NORTH, "South": SOUTH}, "watch": {"North": OTHER}}
    found = list(sources_differ(request(**said), forces))
    assert [each.code for each in found] == ["sources-differ"] * differs
    if differs:
        assert found[0].message == (
            "guard and watch don't say the same of N1 from North: what is in it, or how long it "
            "takes."
        )
        assert found[0].effect == "It is taken as watch says."


def test_a_force_that_does_not_know_the_pack_is_not_the_one_that_is_followed() -> None:
    third = source("North", pack("N3", 7, gun=1))
    forces = {"guard": {"North": NORTH}, "watch": {"North": OTHER}, "gunners": {"North": third}}
    (found,) = sources_differ(request(figures={"North/N1": 1}), forces)
    assert found.effect == "It is taken as watch says."
    assert in_one(each["North"] for each in forces.values()).packs["N1"] == OTHER.packs["N1"]
