"""What may be held of a sure entry before all rolls are over."""

from dataclasses import replace

from paradestate.chance.fallback.early import bought_between, holdings_of, holds_more
from paradestate.chance.fallback.prospect import Held
from paradestate.core.game import Purchase
from paradestate.core.support.offer import Offer
from tests.chance.fallback.fallbacks import TANK, prospect
from tests.chance.plans import terms_with

GUIDE = Offer(name="guide", cost={1: 2, 2: 3}, most=2, repeats_cost_more=(1,))
ONE, TWO = (Purchase(entry="guide", number=number) for number in (1, 2))
GAME = terms_with(replace(TANK, needs={"guide": 2}), GUIDE)


def test_every_multiset_is_held_once_with_what_repeats_cost_more() -> None:
    made = prospect(GAME, points=9)
    assert [(each.purchases, each.points) for each in holdings_of(made, "guide")] == [
        ((), 0),
        ((ONE,), 2),
        ((TWO,), 3),
        ((ONE, ONE), 5),
        ((ONE, TWO), 6),
        ((TWO, TWO), 7),
    ]


def test_what_is_held_at_the_start_is_in_all_of_them() -> None:
    made = prospect(GAME, points=9, held=Held(taken=(TWO,), paid=3))
    assert [each.purchases for each in holdings_of(made, "guide")] == [
        (TWO,),
        (TWO, ONE),
        (TWO, TWO),
    ]


def test_one_comes_from_a_holding_to_another_only_by_buying() -> None:
    none, one, two, *_, both, _ = holdings_of(prospect(GAME, points=9), "guide")
    assert [holds_more(one, each) for each in (none, one, two, both)] == [False, True, False, True]
    assert bought_between(two, both) == (ONE,)
