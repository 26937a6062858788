"""Changes of one entry, as they are typed into the boxes of its slip."""

from collections.abc import Mapping
from fractions import Fraction

import pytest

from paradestate.core.support.amendment import (
    Amendment,
    LimitAmendment,
    PriceAmendment,
    WorthAmendment,
)
from paradestate.core.support.offer import NO_CHOICE, Offer
from paradestate.journeys.amending import (
    Amending,
    EntryTyped,
    amendments_of,
    amendments_of_entry,
    worth_text,
)

GUN = Offer(
    name="gun",
    cost={1: 3, 2: 5},
    most=2,
    worths={NO_CHOICE: {1: Fraction(4), 2: Fraction(22, 3)}},
)


def typed(
    *,
    prices: Mapping[int, str] | None = None,
    most: str = "",
    worths: Mapping[int, str] | None = None,
) -> EntryTyped:
    return EntryTyped(entry="gun", prices=prices or {}, most=most, worths=worths or {})


def test_boxes_as_the_files_have_them_change_nothing() -> None:
    as_it_is = typed(prices={1: "3", 2: "5"}, most="2", worths={1: "4", 2: "7.33"})
    assert amendments_of_entry(as_it_is, offer=GUN) == ((), ())
    assert amendments_of_entry(typed(), offer=GUN) == ((), ())


def test_each_box_that_differs_is_a_change() -> None:
    asked = typed(prices={1: "4", 2: "5"}, most="any", worths={1: "4.5"})
    found, slips = amendments_of_entry(asked, offer=GUN)
    assert slips == ()
    assert found == (
        PriceAmendment(entry="gun", number=1, points=4),
        LimitAmendment(entry="gun", most=None),
        WorthAmendment(entry="gun", number=1, worth=Fraction(9, 2)),
    )


def test_a_worth_that_was_never_said_is_a_change_though_the_smaller_number_s_counted() -> None:
    offer = Offer(name="gun", cost={1: 3, 2: 5}, worths={NO_CHOICE: {1: Fraction(4)}})
    found, _ = amendments_of_entry(typed(worths={2: "4"}), offer=offer)
    assert found == (WorthAmendment(entry="gun", number=2, worth=Fraction(4)),)
    assert worth_text(offer.worths[NO_CHOICE], 2) == ""


def test_numbers_without_a_price_are_passed_over() -> None:
    assert amendments_of_entry(typed(prices={7: "1"}, worths={7: "1"}), offer=GUN) == ((), ())


@pytest.mark.parametrize(
    ("asked", "begins"),
    [
        (typed(prices={2: "dear"}), "Price of 2: "),
        (typed(most="-1"), "At most: "),
        (typed(worths={1: "x"}), "Worth of 1: "),
    ],
)
def test_a_box_that_can_t_be_read_is_named(asked: EntryTyped, begins: str) -> None:
    found, (slip,) = amendments_of_entry(asked, offer=GUN)
    assert found == ()
    assert slip.message.startswith(begins)


def test_changes_that_are_made_come_before_those_that_are_typed() -> None:
    made: tuple[Amendment, ...] = (LimitAmendment(entry="gun", most=1),)
    asked = Amending(prices=("gun=9",), made=made)
    assert asked.is_anything
    found, findings = amendments_of(asked, entries=("gun",))
    assert findings == ()
    assert found == (*made, PriceAmendment(entry="gun", points=9))
