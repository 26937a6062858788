"""What may be decided at one standing."""

from dataclasses import replace

from paradestate.chance.fallback.play import START
from paradestate.core.game import Purchase
from paradestate.core.support.offer import Offer
from tests.chance.fallback.fallbacks import GUN, HALF, TANK, TANK_GAME, decider, worth
from tests.chance.plans import rolled, terms_with

GUNS = Offer(
    name="guns",
    cost={1: 4, 2: 7, 3: 10},
    availability=rolled(9, sides=12, partly=3),
    worths=worth(n1=4, n2=8),
)


def test_decisions_are_the_best_first_and_their_values_are_those_of_the_play() -> None:
    made = decider(TANK_GAME, points=6)
    ask, stop = made.decisions(START, points=6)
    assert ask.asked is not None
    assert (ask.asked.purchase, ask.value) == (Purchase(entry="tank", number=1), 2 * 9)
    assert (stop.asked, stop.value) == (None, 2 * 8)
    assert [each.asked for each in made.decisions(START, points=5)] == [None]


def test_of_equal_numbers_the_greatest_that_is_worth_more_is_asked() -> None:
    """Three are worth no more than two, and to ask for two leaves the choice of one."""
    made = decider(terms_with(GUNS), points=12)
    decisions = made.decisions(START, points=12)
    numbers = [each.asked.purchase.number for each in decisions if each.asked]
    assert numbers == [2, 3, 1]
    assert decisions[0].value == decisions[1].value


def test_what_takes_no_points_is_preferred_to_a_request_that_brings_as_much() -> None:
    idle = Offer(name="idle", cost={1: 1}, availability=HALF, worths=worth(n1=5))
    made = decider(terms_with(idle, replace(GUN, cost={1: 1})), points=1)
    first, second = made.decisions(START, points=1)
    assert (first.asked, first.value) == (None, second.value)


def test_of_a_grant_as_many_are_taken_as_is_best_and_of_equal_ones_the_cheapest() -> None:
    made = decider(terms_with(GUNS, replace(GUN, worths=worth(n1=4))), points=8)
    asked = next(o for o in made.rules.prospect.rolled[0].options if o.price == 7)
    both, one, none = made.outcomes(START, index=0, asked=asked, points=8)
    assert (both.allowed, both.ways, one.allowed, one.ways, none.ways) == (2, 2, 1, 3, 1)
    assert both.taken is not None
    assert (both.taken.price, both.is_tied, both.value) == (4, True, 8)
    assert one.if_all is None
    assert none.taken is None


def test_what_all_would_come_to_is_told_where_less_is_taken() -> None:
    made = decider(terms_with(GUNS, replace(GUN, worths=worth(n1=9))), points=8)
    asked = next(o for o in made.rules.prospect.rolled[0].options if o.price == 7)
    both, *_ = made.outcomes(START, index=0, asked=asked, points=8)
    assert both.taken is not None
    assert (both.taken.price, both.value, both.if_all) == (4, 13, 8)


def test_a_request_after_an_early_purchase_tells_what_is_bought() -> None:
    guide = Offer(name="guide", cost={1: 2})
    made = decider(terms_with(replace(TANK, needs={"guide": 1}), guide), points=8)
    ask, stop = made.decisions(START, points=8)
    assert (ask.before, ask.points) == ((Purchase(entry="guide", number=1),), 6)
    assert ask.value == 2 * 5
    assert stop.before == ()
    assert len(made.decisions(START, points=1)) == 1
