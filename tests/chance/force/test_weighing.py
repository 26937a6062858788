"""Weights of all points at once."""

from dataclasses import replace
from fractions import Fraction

import numpy
import pytest

from bench.force_lists import force_list
from paradestate.chance.force import weighing as module
from paradestate.chance.force.best_force import best_forces
from paradestate.chance.force.weighing import GREATEST_SUM, Weighing, weighing
from paradestate.core.support.offer import NO_CHOICE, Offer
from tests.chance.force.lists import SMALL, A, drawn, listed


def weighed(*offers: Offer, greatest: int = 8) -> Weighing:
    return weighing(drawn(listed(*offers), greatest=greatest))


def test_worths_are_weighed_in_a_unit_in_which_all_are_whole() -> None:
    found = weighed(*SMALL)
    assert (found.scale, found.slots) == (2, 9)
    assert found.worth(7 * 9 - 3) == Fraction(7, 2), "3 points are less than a unit"
    assert found.worth(found.lost) is None
    assert found.is_lost(found.lost + 9)


def test_only_takings_that_are_worth_their_points_are_looked_at() -> None:
    """The third A is worth no more than the second."""
    (bundle,) = weighed(A).useful[0]
    assert [slots for slots, _ in bundle] == [0, 2, 4]
    (every,) = weighed(A).terms[0]
    assert [term.slots for term in every] == [0, 2, 4, 6]


def test_what_the_points_never_pay_for_is_left_out() -> None:
    refund = Offer(name="R", cost={1: -1, 2: 9})
    (every,) = weighed(refund, greatest=4).terms[0]
    assert [term.slots for term in every] == [1, 0]


def test_weights_before_an_entry() -> None:
    found = weighed(A, greatest=4)
    (before,) = found.before(0, found.end())
    assert [found.worth(int(weight)) for weight in before[0]] == [0, 0, 2, 2, 3]
    nothing = frozenset(each for each in found.takings(0) if not each.purchases)
    (without,) = found.among(0, nothing).before(0, found.end())
    assert [found.worth(int(weight)) for weight in without[0]] == [0] * 5
    (after,) = found.after(0, found.end(), nodes=1)
    assert (after == before).all()


def test_nodes_moved_together_and_one_by_one_weigh_the_same(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    found = drawn(force_list(20, seed=3, shares=(Fraction(1, 3),)), greatest=20)
    together = best_forces(found)
    monkeypatch.setattr(module, "MOST_TOGETHER", 0)
    singly = best_forces(found)
    assert together.worths(range(21)) == singly.worths(range(21))
    for points in (7, 20):
        for one, other in zip(
            together.tables(points=points), singly.tables(points=points), strict=True
        ):
            assert (one == other).all()


def test_great_worths_are_summed_in_numbers_of_any_size() -> None:
    great = Fraction(GREATEST_SUM) * 10**9
    found = weighed(replace(A, worths={NO_CHOICE: {1: great, 2: great + 1}}), greatest=4)
    assert not found.is_small
    (before,) = found.before(0, found.end())
    assert before.dtype == numpy.object_
    assert [found.worth(weight) for weight in before[0]] == [0, 0, great, great, great + 1]
