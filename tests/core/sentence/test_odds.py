"""Sentences about the odds of a plan."""

from dataclasses import replace
from fractions import Fraction

import pytest

from paradestate.core.certainty import NotComputed
from paradestate.core.game import Purchase
from paradestate.core.sentence.odds import (
    asking_sentences,
    bands_of,
    hundredths_text,
    percentiles,
    plan_words,
    points_sentence,
)
from paradestate.core.support.chances import chances
from paradestate.core.support.entry import Asking
from paradestate.core.support.turnout import PlanOdds, Roll, Turnout

EVEN = chances({0: 1, 1: 1})
GUNS = (Purchase(entry="guns", number=1), Purchase(entry="horse", number=2))
ODDS = PlanOdds(
    plan=GUNS,
    cost=7,
    allowance=chances({8: 1}),
    paid_by=(8,),
    affordable=Fraction(1),
    available=Fraction(1, 2),
    together=Fraction(1, 2),
    rolls=(Roll(entry="guns", asked=1, allowed=EVEN), Roll(entry="horse", asked=2, allowed=EVEN)),
    turnouts=(
        Turnout(chance=Fraction(1, 2), purchases=GUNS, points_free=0, points_lost=0),
        Turnout(chance=Fraction(1, 2), purchases=(), points_free=3, points_lost=4),
    ),
    asking_order=("horse", "guns"),
)


def said(odds: PlanOdds, *, asking: Asking = Asking.ONE_AT_A_TIME) -> list[str]:
    return list(asking_sentences(odds, asking=asking))


@pytest.mark.parametrize(
    ("chance", "text"),
    [
        (Fraction(13, 27), "48"),
        (Fraction(1, 2), "50"),
        (Fraction(0), "0"),
        (Fraction(1), "100"),
        (Fraction(1, 200), "1"),
        (Fraction(1, 201), "<1"),
        (Fraction(200, 201), ">99"),
    ],
)
def test_a_chance_in_hundredths(chance: Fraction, text: str) -> None:
    assert hundredths_text(chance) == text


def test_a_plan_is_listed() -> None:
    assert plan_words(GUNS) == "1 x guns and 2 x horse"
    assert plan_words((*GUNS, GUNS[1])) == "1 x guns and twice 2 x horse"
    assert plan_words(()) == "nothing"


def test_the_points_that_are_left() -> None:
    two_dice = {11 + one + other: 0 for one in range(1, 7) for other in range(1, 7)}
    for one in range(1, 7):
        for other in range(1, 7):
            two_dice[11 + one + other] += 1
    assert percentiles(chances(two_dice)) == {10: 15, 50: 18, 90: 21}
    assert points_sentence(chances(two_dice)) == (
        "13 to 23 points are left to spend, 18 on average. "
        "92 in 100 rolls leave 15 or more, 58 leave 18 or more and 17 leave 21 or more."
    )
    assert points_sentence(chances({3: 19, 5: 1})).endswith(" 5 in 100 rolls leave 5 or more.")
    assert points_sentence(chances({3: 1, 5: 999})).endswith(
        " More than 99 in 100 rolls leave 5 or more."
    )
    assert points_sentence(chances({18: 1})) == "18 points are left to spend."
    assert points_sentence(chances({1: 1})) == "1 point is left to spend."


def test_the_order_to_ask_and_what_is_lost() -> None:
    assert said(ODDS) == [
        "Best asked in this order: horse and then guns.",
        "On average 2 points are lost; no other order loses fewer.",
    ]
    thirds = replace(ODDS, turnouts=(replace(ODDS.turnouts[1], chance=Fraction(1, 3)),))
    assert said(thirds)[1].startswith("On average about 1.33 points are lost")
    half = replace(ODDS, turnouts=(replace(ODDS.turnouts[1], chance=Fraction(1, 8)),))
    assert said(half)[1].startswith("On average 0.5 points are lost")


def test_where_the_order_makes_no_difference() -> None:
    nothing_lost = replace(ODDS, turnouts=ODDS.turnouts[:1])
    assert said(replace(ODDS, rolls=())) == ["Nothing of it is rolled for."]
    assert said(replace(nothing_lost, asking_order=("guns",))) == []
    assert said(nothing_lost, asking=Asking.ALL_DECLARED_FIRST) == [
        "All is declared first, so the order of asking makes no difference."
    ]


def test_an_order_that_is_not_proved_says_so() -> None:
    unproved = replace(ODDS, order_certainty=NotComputed(reason="too many orders"))
    assert said(unproved)[1] == ("Not computed whether another order loses less: too many orders.")


def test_many_numbers_of_points_are_put_into_bands() -> None:
    points = chances(dict.fromkeys(range(10, 21), 1))
    assert bands_of(points, most=11) == [(number, number) for number in range(10, 21)]
    assert bands_of(points, most=4) == [(10, 12), (13, 15), (16, 18), (19, 20)]
