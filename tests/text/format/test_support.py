"""The sections supporting troops, asking and limits."""

from fractions import Fraction

import pytest

from paradestate.core.dice import Dice, SignedTerm, Throw
from paradestate.core.support.entry import (
    Asking,
    Availability,
    Band,
    GroupLimit,
    Limit,
    Rounding,
    Variation,
)
from tests.text.format.reading import codes, force


def entry(words: str) -> str:
    return f"supporting troops: {{e: {{cost: 1, {words}}}, f: {{cost: 1}}}}"


@pytest.mark.parametrize(
    ("limit", "read"),
    [
        ("any", Limit(most=None)),
        ("{most: 2}", Limit(most=2)),
        ("{most: any, least: 2}", Limit(most=None, least=2)),
        ("{least: 1}", Limit(most=1, least=1)),
        ("{most: 1, of: top, plus: 2}", Limit(most=1, of="top", plus=2)),
        (
            "{most: 1, for every: 2, of: top, round: up}",
            Limit(most=1, for_every=2, of="top", round=Rounding.UP),
        ),
    ],
)
def test_limits(limit: str, read: Limit) -> None:
    assert force(entry(f"limit: {limit}")).supporting_troops["e"].limit == read


def test_the_words_about_prices_needs_and_choices() -> None:
    words = "repeats cost more: [1, -2], choice: [x], choice costs: {x: 1}, needs for each: {f: 2}"
    made = force(entry(words)).supporting_troops["e"]
    assert made.repeats_cost_more == (1, -2)
    assert made.choice_costs == {"x": 1}
    assert made.needs_for_each == {"f": 2}
    assert codes(entry("needs for each: {g: 1}")) == ["unknown-name"]


def test_what_is_otherwise_in_a_posture() -> None:
    roll = "availability: {roll: 1d6, allows: {1-6: all}, shared roll: air}"
    made = force(entry(f"in posture: {{defence: {{cost: 3, limit: any, {roll}}}, attack: {{}}}}"))
    assert made.supporting_troops["e"].in_posture == {
        "defence": Variation(
            cost={1: 3},
            limit=Limit(most=None),
            availability=Availability(
                roll=Dice(terms=(SignedTerm(term=Throw(number=1, sides=6)),)),
                allows=(Band(least=1, most=6, allows=None),),
                shared_roll="air",
            ),
        ),
        "attack": Variation(),
    }
    assert codes(entry("in posture: {defense: {cost: 3}}")) == ["unknown-name"]
    assert codes(entry("in posture: {defence: {price: 3}}")) == ["unknown-word"]


def test_shared_limits() -> None:
    text = entry("group: g") + "\nlimits: [{group: g, least: 1, least points: 10%}]"
    assert force(text).limits == (GroupLimit(group="g", least=1, least_points=Fraction(1, 10)),)
    assert codes(text.replace("group: g, l", "group: h, l")) == ["unknown-name"]


@pytest.mark.parametrize("asking", Asking)
def test_when_those_who_need_a_roll_are_named(asking: Asking) -> None:
    assert force(f"asking: {asking}").asking is asking
    assert codes("asking: whenever") == ["unknown-word"]
