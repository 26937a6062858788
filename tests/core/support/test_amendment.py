"""Changes of one price, limit or worth, and those that can't be made."""

from dataclasses import replace
from fractions import Fraction

import pytest

from paradestate.core.support.amendment import (
    Amendment,
    LimitAmendment,
    PriceAmendment,
    WorthAmendment,
    amended,
    misfits,
)
from paradestate.core.support.entry import Limit
from paradestate.core.support.offer import Offer
from paradestate.core.support.terms import Terms
from tests.support_terms import EVENING

GUN = Offer(
    name="gun",
    cost={1: 4, 2: 7},
    least=1,
    most=2,
    limit=Limit(most=1, for_every=2, of="company", least=1),
    worths={"": {1: Fraction(4)}},
)
TERMS = Terms(game=EVENING, offers={"gun": GUN}, absent={"horse": "only in attack"})


def after(*amendments: Amendment) -> Offer:
    assert not list(misfits(TERMS, amendments))
    return amended(TERMS, amendments).offers["gun"]


def why_not(*amendments: Amendment, terms: Terms = TERMS) -> list[str]:
    return [each.reason for each in misfits(terms, amendments)]


def test_a_price_without_a_number_is_that_of_the_smallest() -> None:
    assert after(PriceAmendment(entry="gun", points=5)).cost == {1: 5, 2: 7}
    assert after(PriceAmendment(entry="gun", number=2, points=8)).cost == {1: 4, 2: 8}


def test_a_limit_is_a_plain_number_whatever_it_hung_on() -> None:
    found = after(LimitAmendment(entry="gun", most=3))
    assert (found.most, found.limit) == (3, Limit(most=3, for_every=2, least=1))
    bare = replace(TERMS, offers={"gun": replace(GUN, limit=None)})
    assert amended(bare, [LimitAmendment(entry="gun", most=None)]).offers["gun"].limit is None


def test_a_worth_is_one_more_or_another() -> None:
    assert after(WorthAmendment(entry="gun", worth=Fraction(5))).worths == {"": {1: Fraction(5)}}
    found = after(WorthAmendment(entry="gun", number=2, worth=Fraction(9)))
    assert found.worths == {"": {1: Fraction(4), 2: Fraction(9)}}


def test_several_changes_of_one_entry_add_up() -> None:
    found = after(
        PriceAmendment(entry="gun", points=5), PriceAmendment(entry="gun", number=2, points=9)
    )
    assert found.cost == {1: 5, 2: 9}


@pytest.mark.parametrize(
    ("amendment", "reason"),
    [
        (PriceAmendment(entry="tank", points=5), "it isn't on offer"),
        (PriceAmendment(entry="horse", points=5), "it isn't on offer: only in attack"),
        (
            PriceAmendment(entry="gun", number=3, points=5),
            "3 of it has no price; priced are 1, 2",
        ),
        (
            WorthAmendment(entry="gun", number=4, worth=Fraction(1)),
            "4 of it has no price; priced are 1, 2",
        ),
        (LimitAmendment(entry="gun", most=0), "a force must hold 1 of it at least"),
    ],
)
def test_what_can_t_be_changed_so(amendment: Amendment, reason: str) -> None:
    assert why_not(amendment) == [reason]


def test_nothing_may_be_had_without_end_for_nothing() -> None:
    reason = "any number of it might be taken for nothing"
    any_number = LimitAmendment(entry="gun", most=None)
    assert why_not(any_number) == []
    assert why_not(any_number, PriceAmendment(entry="gun", points=0)) == [reason]
