"""Knapsacks with several limits at once: their greatest worths, and all their packings.

Items stand for entries that may be had once. One sum of the limits stands for the points, so that
it allows every packing that the limits allow; the forces are then taken by falling worth until one
keeps them all, and that one is the best. That way is too long for the two greatest problems; with
every limit as a tie of its own beside the points the best of all seven is searched for, and where
the items are few all packings are counted. The problems, their greatest worths and
their source stand in `knapsacks/SOURCE.txt`.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import product
from pathlib import Path

import pytest

from paradestate.chance.force.best_force import best_forces
from paradestate.chance.force.legal_count import legal_forces
from paradestate.chance.force.searched_force import searched_force
from paradestate.chance.force.tie import Move, Sum
from paradestate.core.support.force_map import SearchedForce
from paradestate.core.support.offer import NO_CHOICE, Offer
from paradestate.core.support.terms import Terms
from tests.chance.force.lists import drawn, listed

FILE = Path(__file__).parent / "knapsacks" / "mknap1.txt"

Numbers = tuple[int, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Knapsack:
    """Items with worths, and weights under several limits."""

    best: Fraction
    worths: tuple[Fraction, ...]
    weights: tuple[Numbers, ...]
    limits: Numbers


def knapsacks() -> Iterator[Knapsack]:
    words = iter(FILE.read_text(encoding="utf-8").split())
    for _ in range(int(next(words))):
        items, limits = int(next(words)), int(next(words))
        yield Knapsack(
            best=Fraction(next(words)),
            worths=tuple(Fraction(next(words)) for _ in range(items)),
            weights=tuple(tuple(int(next(words)) for _ in range(items)) for _ in range(limits)),
            limits=tuple(int(next(words)) for _ in range(limits)),
        )


EVERY = tuple(knapsacks())


@dataclass(frozen=True, slots=True, kw_only=True)
class Weight:
    """A tie: the items may weigh no more than so much."""

    weights: Mapping[str, int]
    greatest: int

    @property
    def entries(self) -> frozenset[str]:
        return frozenset(self.weights)

    def after(self, value: int, *, entry: str, move: Move) -> int | None:
        more = value + self.weights[entry] * move.purchases
        return None if more > self.greatest else more

    def holds(self, value: int) -> bool:
        return value <= self.greatest

    def sums(self, *, points: int) -> tuple[Sum, ...]:
        del points
        return (Sum(self.entries, self._weight, self.greatest),)

    def _weight(self, entry: str, move: Move) -> int:
        return self.weights[entry] * move.purchases


def items(knapsack: Knapsack, *, points: Sequence[int]) -> Terms:
    return listed(
        *(
            Offer(name=f"item {number}", cost={1: each}, worths={NO_CHOICE: {1: worth}})
            for number, (each, worth) in enumerate(zip(points, knapsack.worths, strict=True))
        )
    )


def ties(knapsack: Knapsack) -> list[Weight]:
    return [
        Weight(weights={f"item {n}": each for n, each in enumerate(row)}, greatest=limit)
        for row, limit in zip(knapsack.weights[1:], knapsack.limits[1:], strict=True)
    ]


def is_kept(knapsack: Knapsack, taken: Sequence[int]) -> bool:
    return all(
        sum(row[item] for item in taken) <= limit
        for row, limit in zip(knapsack.weights, knapsack.limits, strict=True)
    )


@pytest.mark.parametrize(
    ("number", "factors"),
    [
        (1, {0: 9, 4: 29}),
        (2, {1: 30, 2: 16, 9: 1}),
        (3, {1: 9, 7: 65}),
        (4, {1: 17, 9: 30}),
        (5, {1: 9, 9: 19}),
    ],
)
def test_the_greatest_worth_is_the_published_one(number: int, factors: dict[int, int]) -> None:
    """`factors` says how often each limit is in the sum; they are near the prices of the limits."""
    knapsack = EVERY[number - 1]
    points = [
        sum(times * knapsack.weights[row][item] for row, times in factors.items()) // SHORTER
        for item in range(len(knapsack.worths))
    ]
    most = sum(times * knapsack.limits[row] for row, times in factors.items()) // SHORTER
    found = best_forces(drawn(items(knapsack, points=points), greatest=most))
    for force in found.ranked(points=most):
        if is_kept(knapsack, [int(each.entry.removeprefix("item ")) for each in force.purchases]):
            assert force.worth == knapsack.best
            return
    pytest.fail("no packing is kept")


SHORTER = 5
"""Sums are this much shorter, rounded down, so that every packing within the limits stays."""


@pytest.mark.unmeasured
@pytest.mark.parametrize("number", range(1, 1 + len(EVERY)))
def test_a_search_finds_the_published_worth(number: int) -> None:
    knapsack = EVERY[number - 1]
    found = searched_force(
        items(knapsack, points=knapsack.weights[0]),
        points=knapsack.limits[0],
        more=lambda _: ties(knapsack),
    )
    assert isinstance(found, SearchedForce)
    assert found.is_proved
    assert found.force is not None
    assert found.force.worth == knapsack.best
    taken = [int(each.entry.removeprefix("item ")) for each in found.force.purchases]
    assert is_kept(knapsack, taken)


@pytest.mark.parametrize("number", [1, 2])
def test_packings_are_as_many_as_plain_counting_finds(number: int) -> None:
    knapsack = EVERY[number - 1]
    every = [
        [item for item, is_taken in enumerate(taken) if is_taken]
        for taken in product((False, True), repeat=len(knapsack.worths))
    ]
    kept = [taken for taken in every if is_kept(knapsack, taken)]
    found = drawn(
        items(knapsack, points=knapsack.weights[0]),
        greatest=knapsack.limits[0],
        more=lambda _: ties(knapsack),
    )
    assert legal_forces(found, points=[knapsack.limits[0]])[0].legal == len(kept)
    assert best_forces(found).worths([knapsack.limits[0]]) == (knapsack.best,)
