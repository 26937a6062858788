"""A request and how it came out."""

from fractions import Fraction

from paradestate.core.game import Purchase
from paradestate.core.support.asked_for import AskedFor, by_chart, of_own_accord, taken_of
from paradestate.core.support.offer import Offer
from paradestate.core.support.policy import Ask, Granted, Take

TANKS, GUNS = Purchase(entry="tanks", number=2), Purchase(entry="guns", number=3)
ONE_GUN = Purchase(entry="guns", number=1)
END = Take(purchases=(), points=3, worth=Fraction(0))


def granted(allowed: int, *, takes: Purchase | None) -> Granted:
    return Granted(allowed=allowed, chance=Fraction(1, 2), takes=takes, then=END)


ALL, NONE = granted(3, takes=ONE_GUN), granted(0, takes=None)
ASK = Ask(purchase=GUNS, points=9, worth=Fraction(7), outcomes=(ALL, NONE), before=(TANKS,))


def test_an_answer_leads_to_its_outcome() -> None:
    assert by_chart(ASK, allowed=3) == (
        AskedFor(purchase=GUNS, allowed=3, takes=ONE_GUN, before=(TANKS,)),
        ALL,
    )


def test_what_is_allowed_between_two_numbers_counts_as_the_smaller() -> None:
    came = by_chart(ASK, allowed=2)
    assert came is not None
    assert came[1] == NONE


def test_an_answer_that_cannot_come_has_no_outcome() -> None:
    sure = Ask(purchase=GUNS, points=9, worth=Fraction(7), outcomes=(ALL,))
    assert by_chart(sure, allowed=0) is None


def test_of_ones_own_accord_as_many_are_taken_as_are_allowed_and_sold() -> None:
    offer = Offer(name="guns", cost={1: 4, 3: 9})
    assert of_own_accord(offer, GUNS, allowed=2).takes == ONE_GUN
    assert of_own_accord(offer, GUNS, allowed=5).takes == GUNS
    refused = of_own_accord(offer, GUNS, allowed=0)
    assert (refused.allowed, refused.takes) == (0, None)


def test_what_had_to_be_bought_for_a_request_is_taken_too() -> None:
    asked = [
        AskedFor(purchase=GUNS, allowed=3, takes=ONE_GUN, before=(TANKS,)),
        AskedFor(purchase=TANKS, allowed=0, takes=None),
    ]
    assert taken_of(asked) == (TANKS, ONE_GUN)
