"""What is worked out for the sheet of the list, and what of it is left out when it is stopped."""

import datetime
from fractions import Fraction
from pathlib import Path

from paradestate.core.support.amendment import (
    Amendment,
    LimitAmendment,
    PriceAmendment,
    WorthAmendment,
)
from paradestate.core.support.offer import NO_CHOICE, Offer
from paradestate.journeys.memory import Memory
from paradestate.journeys.order import Search
from paradestate.web.proof.answer import Asker, answered, values_beside
from paradestate.web.proof.question import question
from tests.forces import EXAMPLES

GUN = Offer(name="gun", cost={1: 3, 2: 5}, most=2, worths={NO_CHOICE: {1: Fraction(7, 2)}})
DEARER = PriceAmendment(entry="gun", number=1, points=9)


def prices(*amendments: Amendment) -> list[object]:
    return [
        each.points if isinstance(each, PriceAmendment) else each
        for each in values_beside(GUN, amendments)
    ]


def test_without_a_change_prices_around_that_of_the_smallest_number_are_tried() -> None:
    assert prices() == [1, 2, 3, 4, 5]


def test_a_price_farther_off_is_among_them_and_other_changes_stay() -> None:
    other = LimitAmendment(entry="gun", most=1)
    assert prices(DEARER, other) == [1, 2, 3, 4, 5, 9, other]


def test_no_price_is_tried_below_nought_unless_it_stands_there() -> None:
    def tried(points: int) -> list[int]:
        offer = Offer(name="gun", cost={1: points})
        return [
            each.points for each in values_beside(offer, ()) if isinstance(each, PriceAmendment)
        ]

    assert tried(1) == [0, 1, 2, 3]
    assert tried(-2) == [-2, -1, 0]


def test_limits_around_the_one_that_stands_are_tried_and_none_where_none_stands() -> None:
    def limits(offer: Offer, most: int | None) -> list[int | None]:
        found = values_beside(offer, (LimitAmendment(entry="gun", most=most),))
        return [each.most for each in found if isinstance(each, LimitAmendment)]

    assert limits(GUN, None) == [1, 2, 3, 4, None]
    assert limits(Offer(name="gun", cost={1: 3}, most=None), 9) == [1, 2, 3, 9, None]


def test_whole_worths_around_the_one_that_stands_are_tried() -> None:
    asked = WorthAmendment(entry="gun", number=1, worth=Fraction(6))
    found = [
        each.worth for each in values_beside(GUN, (asked,)) if isinstance(each, WorthAmendment)
    ]
    assert found == [1, 2, 3, Fraction(7, 2), 4, 5, 6]


def asker(beside: Path | None = None) -> Asker:
    return Asker(
        folder=EXAMPLES / "marenz",
        today=datetime.date(2026, 3, 1),
        memory=Memory(),
        beside=beside,
    )


def search(*, stopped: bool) -> Search:
    return Search(seconds=1, stop=lambda: stopped)


def test_once_it_is_told_to_stop_nothing_more_is_begun() -> None:
    asked = question({"entry": "light tanks", "price:2": "5", "points": "5"})
    found = answered(asker(EXAMPLES / "kelmar"), asked, search=search(stopped=True))
    assert found.proof.proof is not None
    assert (found.game, found.changed, found.row, found.beside) == (None, None, None, None)


def test_a_whole_answer_has_the_change_the_values_and_the_other_version() -> None:
    asked = question(
        {"entry": "bicycle troop", "price:2": "5", "points": "5", "game": "evening attack"}
    )
    found = answered(asker(EXAMPLES / "marenz"), asked, search=search(stopped=False))
    assert found.amendments == (PriceAmendment(entry="bicycle troop", number=2, points=5),)
    assert found.changed is not None
    assert found.changed.found is not None
    assert found.row is not None
    assert found.row.found is not None
    assert len(found.row.found.rows) == found.row.found.questions == 5
    assert found.beside is not None
    assert found.beside.found is not None
    assert found.beside.found.changes == ()
