"""The chart of a fall-back."""

from dataclasses import replace
from fractions import Fraction

from paradestate.chance.fallback.chart import ChartMaker, Spot
from paradestate.chance.fallback.play import START
from paradestate.core.support.policy import Ask, Step, Take
from paradestate.core.support.terms import Terms
from tests.chance.fallback.fallbacks import GUN, TANK, TANK_GAME, decider, guns_and_horse
from tests.chance.plans import rolled, terms_with


def chart(terms: Terms, *, points: int, most: int = 99) -> Step:
    made = decider(terms, points=points)
    maker = ChartMaker(decider=made, unit=1, worth_held=0)
    return maker.chart(Spot(START, points), most=most)


def test_an_evening_without_a_request_is_what_is_bought() -> None:
    step = chart(TANK_GAME, points=5)
    assert isinstance(step, Take)
    assert [step.points, step.worth] == [5, 5]
    assert [each.entry for each in step.purchases] == ["gun"]


def test_what_is_likeliest_is_followed_first_and_the_rest_ends_at_its_request() -> None:
    """The first tank comes with 5 in 6, so of two requests the one after it is followed."""
    first = replace(TANK, name="first", availability=rolled(2))
    terms = terms_with(first, replace(TANK, name="other", cost={1: 7}), GUN)
    whole, part, none = (chart(terms, points=13, most=most) for most in (9, 2, 0))
    assert isinstance(whole, Ask)
    assert isinstance(part, Ask)
    assert isinstance(none, Ask)
    assert none.outcomes == ()
    assert (none.purchase, none.worth) == (whole.purchase, whole.worth)
    assert [each.then for each in part.outcomes] != [each.then for each in whole.outcomes]
    rare = part.outcomes[1].then
    assert isinstance(rare, Ask)
    assert rare.outcomes == ()


def test_outcomes_of_a_shared_roll_tell_what_else_it_allows() -> None:
    step = chart(guns_and_horse(), points=9)
    assert isinstance(step, Ask)
    told = [(each.allowed, dict(each.also)) for each in step.outcomes]
    assert len(told) > 2
    assert all(len(also) == 1 for _, also in told)


def test_the_worth_of_what_is_held_is_counted() -> None:
    made = decider(TANK_GAME, points=6)
    maker = ChartMaker(decider=made, unit=2, worth_held=5)
    best = maker.decisions(Spot(START, 6))[0]
    assert maker.worth(best, at=START) == Fraction(9 + 5, 2)
