"""The fall-back where all is named first."""

from dataclasses import replace
from fractions import Fraction

from paradestate.chance.fallback.declared_chart import declared_fallback, declared_levels
from paradestate.core.game import Purchase
from paradestate.core.support.policy import Ask, Fallback, FirstChoice, Take
from paradestate.core.support.terms import Terms
from tests.chance.fallback.fallbacks import GUN, TANK, TANK_GAME, guns_and_horse, prospect
from tests.chance.plans import bought, terms_with


def best(terms: Terms, *, points: int) -> Fallback:
    answer = declared_fallback(prospect(terms, points=points), points=points)
    assert answer is not None
    return answer


def test_one_roll_after_the_other_is_told_and_the_ends_say_what_is_kept() -> None:
    answer = best(TANK_GAME, points=6)
    assert answer.declared == bought(tank=1)
    assert isinstance(answer.chart, Ask)
    granted, refused = answer.chart.outcomes
    assert (granted.chance, granted.is_open, granted.takes) == (Fraction(1, 2), True, None)
    assert granted.then == Take(purchases=bought(tank=1), points=6, worth=Fraction(10))
    assert isinstance(refused.then, Take)
    assert refused.then.worth == 8
    assert answer.first_choices == (
        FirstChoice(purchase=Purchase(entry="tank", number=1), worth=Fraction(9)),
        FirstChoice(purchase=None, worth=Fraction(8)),
    )


def test_a_shared_roll_is_told_once() -> None:
    answer = best(guns_and_horse(), points=9)
    assert [each.entry for each in answer.declared] == ["guns", "horse"]
    assert isinstance(answer.chart, Ask)
    assert answer.chart.worth == answer.worth
    assert [(each.allowed, dict(each.also)) for each in answer.chart.outcomes] == [
        (2, {"horse": 1}),
        (2, {"horse": 0}),
        (1, {"horse": 0}),
        (0, {"horse": 0}),
    ]
    for outcome in answer.chart.outcomes:
        assert isinstance(outcome.then, Ask)
        assert [each.chance for each in outcome.then.outcomes] == [1]


def test_a_chart_with_too_many_ends_says_its_first_request_only() -> None:
    many = [replace(TANK, name=f"tank {n}", cost={1: 1}) for n in range(9)]
    answer = best(terms_with(*many), points=9)
    assert isinstance(answer.chart, Ask)
    assert answer.chart.outcomes == ()
    assert answer.worth == 45


def test_levels_in_short() -> None:
    found = declared_levels(prospect(TANK_GAME, points=6), levels=[1, 6])
    assert found is not None
    assert [found[1].first, found[1].worth] == [None, 0]
    assert [found[6].first, found[6].worth] == [Purchase(entry="tank", number=1), 9]


def test_more_sets_than_are_compared_are_refused() -> None:
    many = terms_with(*(replace(TANK, name=f"tank {n}") for n in range(16)), GUN)
    assert declared_fallback(prospect(many, points=6), points=6) is None
    assert declared_levels(prospect(many, points=6), levels=[6]) is None
