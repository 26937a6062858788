"""What of an order won't come: how much of it, from whom, and what is refused."""

import datetime
from dataclasses import replace
from typing import Any

import pytest

from paradestate.core.cancelled import Cancelled, cancelled
from paradestate.core.journal import JournalState
from paradestate.core.journal_entry import EntryKind
from paradestate.core.log import drafted, says_the_same
from paradestate.core.log_request import Desk, LogRequest
from paradestate.core.on_order import OnOrder
from tests.entries import ON, WRITTEN, uuid


def order(number: int, source: str, **figures: int) -> OnOrder:
    day = ON - datetime.timedelta(days=number)
    return OnOrder(entry=uuid(number), source=source, day=day, expected=None, figures=figures)


NORTH = (order(3, "North", rifleman=6, officer=1), order(2, "North", rifleman=2))
DESK = Desk(
    kinds=("rifleman",),
    stages=("in packet",),
    stands={},
    state=JournalState(on_order=NORTH),
    today=ON,
)
BOTH = replace(DESK, state=JournalState(on_order=(*NORTH, order(1, "South", boat=1))))


def request(**said: Any) -> LogRequest:  # noqa: ANN401 - fields of the request
    known = {"id": uuid(7), "kind": EntryKind.CANCELLED, "written": WRITTEN, "on": ON}
    return LogRequest(**{**known, "note": "refunded", **said})


def test_without_a_list_it_is_all_that_is_still_on_order_from_there() -> None:
    entry, findings = drafted(request(), DESK)
    assert entry is not None
    assert (entry.source, entry.cancelled, entry.note, findings) == (
        "North",
        {"rifleman": 8, "officer": 1},
        "refunded",
        (),
    )
    assert entry.ordered == {}


def test_what_is_named_alone_does_not_come_even_where_the_files_do_not_know_it_any_more() -> None:
    said = request(source="South", figures={"boat": 1})
    assert cancelled(said, BOTH) == Cancelled(source="South", figures={"boat": 1})
    assert drafted(said, BOTH)[0] is not None


@pytest.mark.parametrize(
    ("desk", "said", "code", "told"),
    [
        (DESK, {"note": " "}, "log-incomplete", "Nothing says why it won't come."),
        (DESK, {"source": "South"}, "not-on-order", "Nothing is on order from South on that day."),
        (
            replace(DESK, state=JournalState()),
            {},
            "not-on-order",
            "Nothing is on order on that day.",
        ),
        (BOTH, {}, "log-incomplete", "Figures are on order from more than one source."),
        (
            DESK,
            {"figures": {"rifleman": 9}},
            "not-on-order",
            "9 riflemen cancelled, 8 on order (8 riflemen and 1 officer in all).",
        ),
        (
            DESK,
            {"figures": {"boat": 1}},
            "not-on-order",
            "1 boat cancelled, 0 on order (8 riflemen and 1 officer in all).",
        ),
        (DESK, {"to_stage": "in packet"}, "log-option", "--to says nothing beside 'cancelled'."),
    ],
)
def test_what_cannot_be_is_refused_with_what_is_on_order(
    desk: Desk, said: dict[str, Any], code: str, told: str
) -> None:
    entry, findings = drafted(request(**said), desk)
    assert entry is None
    assert [(found.code, found.message) for found in findings] == [(code, told)]


@pytest.mark.parametrize(
    ("said", "same"),
    [
        ({}, True),
        ({"source": "North"}, True),
        ({"figures": {"rifleman": 8, "officer": 1}}, True),
        ({"figures": {"rifleman": 8}}, False),
        ({"source": "South"}, False),
        ({"note": "sold out"}, False),
        ({"kind": EntryKind.RECEIVED}, False),
    ],
)
def test_sent_twice_it_is_the_same_whatever_was_filled_in(
    said: dict[str, Any], *, same: bool
) -> None:
    entry, _ = drafted(request(), DESK)
    assert entry is not None
    assert says_the_same(entry, request(**said)) is same
