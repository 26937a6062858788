"""What every standing is worth by the best play."""

from dataclasses import replace
from fractions import Fraction

import numpy as np
import pytest

from paradestate.chance.fallback.backward import greatest_worth
from paradestate.chance.fallback.completion import SAFE
from paradestate.chance.fallback.opinion import as_said
from paradestate.core.support.entry import GroupLimit
from paradestate.core.support.offer import Offer
from paradestate.core.support.terms import Terms
from tests.chance.fallback.fallbacks import (
    GUN,
    HALF,
    LOSING_GAME,
    MACHINE_GUN,
    TANK,
    TANK_GAME,
    guns_and_horse,
    solved,
    value,
    worth,
)
from tests.chance.fallback.plain_fallback import PlainFallback
from tests.chance.plans import rolled, terms_with


def test_values_at_every_number_of_points() -> None:
    assert [value(TANK_GAME, points=points) for points in range(7)] == [0, 0, 3, 3, 5, 5, 9]
    assert [value(LOSING_GAME, points=points) for points in (6, 8, 12)] == [8, 8, 13]


def test_the_greatest_worth_bounds_all() -> None:
    _, completions, _ = solved(TANK_GAME, points=6)
    said = as_said(completions.rules.prospect.offers.values())
    assert greatest_worth(completions, [said]) == 10 + 5 + 3


def five_tanks(sides: int) -> Terms:
    tanks = (
        replace(TANK, name=f"tank {n}", cost={1: 2 + n % 3}, availability=rolled(4, sides=sides))
        for n in range(5)
    )
    return terms_with(*tanks, GUN, MACHINE_GUN)


def test_numbers_too_large_for_64_bits_are_as_exact() -> None:
    """With worths in parts of a large number the same values come out, so many times larger."""
    plain = five_tanks(7)
    part = SAFE - 1
    offers = {
        name: replace(
            offer,
            worths={"": {1: offer.worths[""][1] + Fraction(1, part)}},
        )
        for name, offer in plain.offers.items()
    }
    fine = replace(plain, offers=offers)
    _, _, values = solved(fine, points=9)
    assert values.layers[0].dtype == np.dtype(object)
    rough = value(plain, points=9)
    assert 0 < value(fine, points=9) - rough <= Fraction(len(offers), part)
    mixed = {
        name: replace(offer, worths={"": {1: offer.worths[""][1] + Fraction(1, 2**50)}})
        for name, offer in plain.offers.items()
    }
    _, _, values = solved(replace(plain, offers=mixed), points=9)
    kinds = [layer.dtype for layer in values.layers]
    assert kinds[0] == np.dtype(object)
    assert kinds[-1] == np.dtype(np.int64)


@pytest.mark.parametrize("points", range(8))
@pytest.mark.parametrize("loses_points", [False, True])
def test_shared_rolls_are_those_of_the_plain_recursion(points: int, *, loses_points: bool) -> None:
    terms = guns_and_horse(loses_points=loses_points)
    assert value(terms, points=points) == PlainFallback(terms=terms, points=points).value()


@pytest.mark.parametrize("points", range(10))
def test_what_needs_one_of_two_is_open_after_either(points: int) -> None:
    """So standings that were reached by as many rolls go on to later and to earlier ones."""
    car = replace(TANK, name="car", cost={1: 3}, worths=worth(n1=4))
    horse = replace(TANK, name="horse", cost={1: 1}, needs_any_of={"tank": 1, "car": 1})
    terms = terms_with(TANK, car, horse)
    assert value(terms, points=points) == PlainFallback(terms=terms, points=points).value()


def test_a_smaller_number_that_is_dearer_than_what_was_asked_needs_its_points() -> None:
    odd = Offer(name="odd", cost={1: 5, 2: 1}, availability=HALF, worths=worth(n1=4, n2=3))
    assert [value(terms_with(odd), points=points) for points in (0, 1, 4, 5)] == [
        0,
        Fraction(3, 2),
        Fraction(3, 2),
        2,
    ]


def test_an_early_purchase_beyond_all_points_is_no_way() -> None:
    guide = Offer(name="guide", cost={1: 9})
    assert value(terms_with(replace(TANK, needs={"guide": 1}), guide), points=3) == 0


def test_a_smaller_number_that_a_group_has_no_points_for_is_not_taken() -> None:
    odd = Offer(
        name="odd", cost={1: 6, 2: 2}, availability=HALF, worths=worth(n1=4, n2=3), group="armour"
    )
    limits = (GroupLimit(group="armour", most_points=Fraction(1, 2)),)
    assert value(replace(terms_with(odd), groups=limits), points=10) == Fraction(3, 2)
    assert value(replace(terms_with(odd), groups=limits), points=12) == 2
