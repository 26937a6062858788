"""Options: one taking for each entry, and the room that it uses under each limit."""

from dataclasses import replace
from fractions import Fraction

import pytest

from paradestate.chance.force import option as module
from paradestate.chance.force.groundwork import Groundwork, MoreTies, groundwork
from paradestate.chance.force.option import FINENESS, Options, options_of
from paradestate.chance.force.tie import Sum
from paradestate.core.certainty import NotComputed
from paradestate.core.support.entry import GroupLimit
from paradestate.core.support.terms import Terms
from tests.chance.force.lists import SMALL, A, B, C, listed


def options(terms: Terms, *, points: int, more: MoreTies | None = None) -> Options | None:
    ground = groundwork(terms, greatest=points, more=more)
    assert isinstance(ground, Groundwork)
    found = options_of(ground, points=points)
    assert not isinstance(found, NotComputed)
    return found


def uses(found: Options | None) -> dict[str, list[tuple[int, ...]]]:
    assert found is not None
    return {name: [option.uses for option in choices] for name, choices in found.of.items()}


def test_points_and_needs_are_limits() -> None:
    """C uses the room that not having a B takes."""
    found = options(listed(*SMALL), points=8)
    assert found is not None
    assert found.room == (8, 1)
    assert uses(found) == {
        "A": [(0, 0), (2, 0), (4, 0), (6, 0)],
        "B": [(0, 1), (3, 0), (6, 0)],
        "C": [(0, 0), (5, 1)],
    }


def test_limits_that_no_force_can_reach_are_left_out() -> None:
    found = options(listed(*SMALL), points=99)
    assert found is not None
    assert found.room == (1,)


def test_what_no_force_can_do_without_is_taken_off() -> None:
    """Two A are 4 of the 8 points; a third leaves no room for the B that there must be."""
    found = options(listed(replace(A, least=2), replace(B, least=1), C), points=7)
    assert uses(found) == {"A": [()], "B": [()], "C": [()]}
    assert found is not None
    assert [option.taking.points for each in found.of.values() for option in each] == [4, 3, 0]


def test_nothing_may_fit() -> None:
    assert options(listed(replace(A, least=2), replace(B, least=1)), points=6) is None
    assert options(listed(replace(A, least=4)), points=8) is None
    assert options(listed(A, groups=[GroupLimit(group="none", least=1)]), points=8) is None
    half = GroupLimit(group="g", most_points=Fraction(1, 2))
    third = GroupLimit(group="g", least_points=Fraction(1, 3))
    both = listed(replace(C, group="g", needs={}), groups=[half, third])
    assert options(both, points=8) is None, "5 are more than half, 0 less than a third"


def test_of_options_that_no_rule_tells_apart_the_weightiest_stays() -> None:
    """Of one price are one A and another kind of A, which is worth less."""
    kinds = replace(A, most=1, choices={"": 0, "worse": 0}, worths={"": {1: Fraction(2)}})
    better = replace(kinds, worths={"worse": {1: Fraction(1, 2)}})
    found = options(listed(better), points=1)
    assert uses(found) == {"A": [()]}
    found = options(listed(better, B), points=4)
    assert found is not None
    assert [option.taking.worth for option in found.of["A"]] == [0, 1]


def test_a_weight_is_worth_before_points() -> None:
    found = options(listed(A, B), points=8)
    assert found is not None
    assert (found.scale, found.span) == (2, 9)
    weights = [option.weight // FINENESS for option in found.of["B"]]
    assert weights == [0, 7 * 9 - 3, 7 * 9 - 6]
    assert [found.units(weight * FINENESS) for weight in weights] == [0, 7, 7]
    assert found.units(weights[1] * FINENESS + FINENESS - 1) == 7


@pytest.mark.parametrize(("most", "is_refused"), [(3, True), (4, False)])
def test_too_many_ways_and_limits_are_refused(
    monkeypatch: pytest.MonkeyPatch, *, most: int, is_refused: bool
) -> None:
    """A may be taken never to three times, under the only limit of the points."""
    monkeypatch.setattr(module, "MOST_USES", most)
    ground = groundwork(listed(A), greatest=8)
    assert isinstance(ground, Groundwork)
    assert isinstance(options_of(ground, points=8), NotComputed) is is_refused


class Odd:
    """A tie that its sum says in part: an odd number of purchases, so one at least."""

    entries = frozenset("A")
    greatest = 1

    def after(self, value: int, *, entry: str, move: object) -> int:
        del value, entry, move
        raise AssertionError

    def holds(self, value: int) -> bool:
        del value
        raise AssertionError

    def sums(self, *, points: int) -> tuple[Sum, ...]:
        del points
        return (Sum(self.entries, lambda _, move: -move.purchases, -1, is_rule=False),)


def test_rules_that_sums_do_not_say_are_kept_beside_them() -> None:
    tie = Odd()
    found = options(listed(A, B), points=99, more=lambda _: [tie])
    assert found is not None
    assert found.ties == (tie,)
    assert [option.taking.purchases for option in found.of["A"]] == [1, 2, 3]
    assert len(found.of["B"]) == 1, "of B no rule asks how many"
