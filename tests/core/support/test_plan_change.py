"""A plan changed by one purchase."""

from paradestate.core.game import Purchase
from paradestate.core.support.offer import Offer
from paradestate.core.support.plan_change import asked_too, with_less, with_more, without

TANKS = Offer(name="tanks", cost={2: 9, 3: 13})
GUNS = Offer(name="guns", cost={1: 4}, most=None, choices={"flame": 0, "charges": 0})
TWO = Purchase(entry="tanks", number=2)
THREE = Purchase(entry="tanks", number=3)
FLAME = Purchase(entry="guns", number=1, choice="flame")


def test_what_is_asked_for_begins_with_the_least_number() -> None:
    assert asked_too((), TANKS, choice="") == (TWO,)


def test_beyond_its_limit_nothing_is_asked_for() -> None:
    assert asked_too((THREE,), TANKS, choice="") is None
    assert asked_too((FLAME, FLAME), GUNS, choice="flame") == (FLAME, FLAME, FLAME)


def test_more_is_the_next_number_that_is_sold() -> None:
    assert with_more((FLAME, TWO), 1, offer=TANKS) == (FLAME, THREE)
    assert with_more((THREE,), 0, offer=TANKS) is None


def test_less_than_the_least_number_is_nothing() -> None:
    assert with_less((THREE, FLAME), 0, offer=TANKS) == (TWO, FLAME)
    assert with_less((TWO, FLAME), 0, offer=TANKS) == (FLAME,)


def test_one_purchase_is_taken_off_wherever_it_stands() -> None:
    assert without((TWO, FLAME, THREE), 1) == (TWO, THREE)
