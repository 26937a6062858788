"""What a parcel comes to: packs as figures, less shorts, less miscasts."""

from collections.abc import Mapping

import pytest

from paradestate.core.delivery import Delivery, Received, delivery_note, packs_words, unpacked
from paradestate.core.finding import Finding, Level
from paradestate.core.source import Source
from tests.forces import marenz
from tests.orders import pack, source

SOUTH = marenz().sources["South"]
ORDER = {"S1": 3, "S3": 1}


def came(delivery: Delivery, *, of: Source = SOUTH) -> tuple[Received, tuple[Finding, ...]]:
    known, findings = unpacked(delivery, of)
    assert known is not None
    return known, findings


def refused(delivery: Delivery) -> list[tuple[str, str]]:
    known, findings = unpacked(delivery, SOUTH)
    assert known is None
    assert {found.level for found in findings} == {Level.STOP}
    assert {found.effect for found in findings} == {"Nothing is written into the journal."}
    return [(found.code, found.message) for found in findings]


def test_a_whole_parcel_comes_to_the_figures_of_its_packs() -> None:
    known, findings = came(Delivery(source="South", ordered=ORDER, came=ORDER))
    # 3 platoon sets of 16, 4 and 2, and 12 riflemen more.
    assert known.figures == {"rifleman": 60, "mortar crew": 12, "officer": 6}
    assert (known.claimed, known.awaited, known.unordered, findings) == ({}, {}, {}, ())


def test_what_is_short_and_what_is_miscast_is_not_booked_in_and_is_claimed() -> None:
    known, findings = came(
        Delivery(
            source="South",
            ordered=ORDER,
            came=ORDER,
            short={"rifleman": 2, "officer": 1},
            miscast={"officer": 1, "mortar crew": 0},
        )
    )
    assert known.figures == {"rifleman": 58, "mortar crew": 12, "officer": 4}
    assert known.claimed == {"rifleman": 2, "officer": 2}
    assert findings == ()


def test_received_and_claimed_together_are_what_the_packs_should_hold() -> None:
    miscast = {"rifleman": 12}
    known, _ = came(Delivery(source="South", came={"S3": 1, "S2": 2}, miscast=miscast))
    # Nothing is left of the 12 riflemen, so that no riflemen are received at all.
    assert known.figures == {"mortar crew": 8}
    assert known.claimed == {"rifleman": 12}


def test_packs_that_have_not_come_are_awaited_and_none_of_them_is_claimed() -> None:
    known, (found,) = came(Delivery(source="South", ordered=ORDER, came={"S1": 1}))
    assert known.figures == {"rifleman": 16, "mortar crew": 4, "officer": 2}
    assert (known.awaited, known.claimed) == ({"S1": 2, "S3": 1}, {})
    assert (found.level, found.code) == (Level.REMARK, "pack-awaited")
    assert found.message == "3 packs not in the parcel: 2 x S1 and 1 x S3."


@pytest.mark.parametrize(("number", "verb"), [(1, "was"), (2, "were")])
def test_a_wrong_pack_is_booked_in_and_told(number: int, verb: str) -> None:
    parcel = {"S3": 1, "S2": number}
    known, (found,) = came(Delivery(source="South", ordered={"S3": 1}, came=parcel))
    assert known.figures == {"rifleman": 12, "mortar crew": 4 * number}
    assert (found.level, found.code) == (Level.WARN, "pack-not-ordered")
    assert found.message == f"South sent {number} x S2, which {verb} not ordered."


def test_where_no_order_is_said_no_pack_is_a_wrong_one() -> None:
    known, findings = came(Delivery(source="South", came={"S2": 1, "S3": 0}))
    assert (known.unordered, known.awaited, findings) == ({}, {}, ())


def test_more_can_not_be_missing_than_the_packs_hold() -> None:
    parcel = Delivery(
        source="South",
        came={"S1": 1},
        short={"officer": 2, "light tank": 1},
        miscast={"officer": 1},
    )
    assert refused(parcel) == [
        (
            "more-missing-than-came",
            "Officers: 2 short and 1 miscast, of 2 that the packs should hold.",
        ),
        (
            "more-missing-than-came",
            "Light tanks: 1 short and 0 miscast, of 0 that the packs should hold.",
        ),
    ]


@pytest.mark.parametrize("parcel", [{}, {"S1": 0}])
def test_a_parcel_in_which_nothing_lay_is_no_parcel(parcel: Mapping[str, int]) -> None:
    said = Delivery(source="South", ordered=ORDER, came=parcel)
    assert refused(said) == [
        ("parcel-empty", "No pack of the parcel from South is said to have come.")
    ]


def test_packs_that_the_source_does_not_sell_are_named() -> None:
    said = Delivery(source="South", ordered={"N1": 1}, came={"S9": 1})
    assert refused(said) == [
        ("unknown-choice", "No pack of South is called 'S9'."),
        ("unknown-choice", "No pack of South is called 'N1'."),
    ]


def test_a_pack_that_holds_nothing_brings_nothing() -> None:
    known, _ = came(Delivery(source="Near", came={"A": 2}), of=source("Near", pack("A", 100)))
    assert known.figures == {}


def test_the_journal_says_from_which_packs_and_what_is_claimed() -> None:
    said = Delivery(
        source="South",
        ordered=ORDER,
        came={"S1": 3},
        short={"rifleman": 2},
        miscast={"officer": 1},
    )
    known, _ = came(said)
    assert delivery_note(said, known) == (
        "parcel from South: 3 x S1; short 2 riflemen; miscast 1 officer; "
        "claimed 2 riflemen and 1 officer; awaited 1 x S3"
    )


def test_of_a_whole_parcel_it_says_no_more_than_its_packs() -> None:
    said = Delivery(source="South", came={**ORDER, "S2": 0}, short={"rifleman": 0})
    known, _ = came(said)
    assert delivery_note(said, known) == "parcel from South: 3 x S1 and 1 x S3"


def test_packs_are_said_with_their_numbers() -> None:
    assert packs_words({"S1": 3, "S2": 0, "S3": 1}) == "3 x S1 and 1 x S3"
