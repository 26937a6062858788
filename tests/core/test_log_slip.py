"""What is wrong with what is to be logged, whatever is held."""

import datetime
from typing import Any

import pytest

from paradestate.core.journal_entry import EntryKind
from paradestate.core.log import drafted
from paradestate.core.log_slip import OPTIONS
from paradestate.core.play.event import Ended, Played
from tests.core.test_log import DESK, FIRST, refused, request
from tests.entries import ON

BACK: dict[str, Any] = {
    "stand": "Truck",
    "from_stage": "based",
    "to_stage": "painted",
    "wanted": ON,
}
"""A repair as it should be said."""


@pytest.mark.parametrize(
    ("kind", "said", "code"),
    [
        (EntryKind.RECEIVED, {"figures": {"riflman": 3}}, "unknown-choice"),
        (
            EntryKind.RECEIVED,
            {"figures": {"rifleman": 3}, "to_stage": "primed"},
            "unknown-choice",
        ),
        (
            EntryKind.LOST,
            {"figures": {"rifleman": 3}, "from_stage": "primed"},
            "unknown-choice",
        ),
        (EntryKind.LOST, {"stand": "9 Platoon"}, "unknown-choice"),
        (EntryKind.RECEIVED, {}, "log-incomplete"),
        (EntryKind.NOTED, {}, "log-incomplete"),
        (EntryKind.SESSION, {}, "log-incomplete"),
        (EntryKind.FORECAST, {}, "log-incomplete"),
        (EntryKind.MOVED, {"figures": {"rifleman": 1}}, "log-incomplete"),
        (
            EntryKind.MOVED,
            {"figures": {"rifleman": 1}, "to_stage": "in packet"},
            "log-incomplete",
        ),
        (EntryKind.SESSION, {"figures": {"rifleman": 1}, "minutes": 5}, "log-incomplete"),
        (EntryKind.LOST, {"figures": {"officer": 1}, "stand": FIRST}, "log-option"),
        (EntryKind.LOST, {"figures": {"officer": 1}, "to_stage": "painted"}, "log-option"),
        (EntryKind.COUNTED, {"figures": {"officer": 3}, "minutes": 5}, "log-option"),
        (EntryKind.NOTED, {"figures": {"officer": 3}, "note": "x"}, "log-option"),
        (EntryKind.LOST, {"figures": {"officer": 0}}, "log-incomplete"),
        (EntryKind.SESSION, {"to_stage": "painted", "minutes": 5}, "log-incomplete"),
        (
            EntryKind.MOVED,
            {"figures": {"officer": 1}, "from_stage": "painted", "to_stage": "painted"},
            "log-incomplete",
        ),
        (EntryKind.NOTED, {"note": "\udcff"}, "note-not-text"),
        (
            EntryKind.PLAYED,
            {"played": Played(game="g", event=Ended(outcome="\udcff"))},
            "note-not-text",
        ),
        (EntryKind.COUNTED, {"staged": {"riflman": {"painted": 3}}}, "unknown-choice"),
        (EntryKind.COUNTED, {"staged": {"rifleman": {"primed": 3}}}, "unknown-choice"),
        (EntryKind.LOST, {"staged": {"rifleman": {"painted": 3}}}, "log-option"),
        (
            EntryKind.COUNTED,
            {"staged": {"rifleman": {"painted": 3}}, "to_stage": "painted"},
            "log-option",
        ),
        (
            EntryKind.COUNTED,
            {"staged": {"rifleman": {"painted": 3}}, "figures": {"officer": 1}},
            "log-option",
        ),
        (
            EntryKind.RECEIVED,
            {"figures": {"officer": 3}, "on": ON + datetime.timedelta(days=1)},
            "not-yet",
        ),
        (EntryKind.LOST, {"figures": {"officer": 1}, "wanted": ON}, "log-option"),
        (EntryKind.MOVED, {**BACK, "stand": "", "figures": {"officer": 1}}, "log-incomplete"),
        (EntryKind.MOVED, {**BACK, "to_stage": "based", "from_stage": ""}, "log-incomplete"),
        (EntryKind.MOVED, {**BACK, "to_stage": "based", "from_stage": "painted"}, "log-incomplete"),
        (EntryKind.MOVED, {**BACK, "wanted": ON - datetime.timedelta(1)}, "wanted-before-repair"),
    ],
)
def test_a_slip_is_refused(kind: EntryKind, said: dict[str, Any], code: str) -> None:
    assert refused(kind, **said).code == code


def test_a_list_without_meaning_is_called_a_list() -> None:
    found = refused(EntryKind.NOTED, figures={"officer": 3}, note="x")
    assert found.message == "A list of figures says nothing beside 'noted'."


def test_a_list_by_stage_is_called_one() -> None:
    found = refused(EntryKind.LOST, staged={"rifleman": {"painted": 3}})
    assert found.message == "A list of figures by stage says nothing beside 'lost'."


def test_every_slip_is_told_at_once() -> None:
    _, findings = drafted(
        request(EntryKind.RECEIVED, figures={"a": 1}, to_stage="b", minutes=3), DESK
    )
    assert [found.code for found in findings] == [
        "log-option",
        "unknown-choice",
        "unknown-choice",
    ]


def test_every_kind_of_entry_says_which_options_it_has() -> None:
    assert set(OPTIONS) == set(EntryKind)
