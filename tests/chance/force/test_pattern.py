"""The greatest worths for every way in which availability may turn out."""

from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction
from itertools import chain, combinations

import numpy
from hypothesis import given, settings
from hypothesis import strategies as st

from paradestate.chance.force.best_force import best_forces
from paradestate.chance.force.pattern import Patterns, greatest_weights, most_side_by_side
from paradestate.chance.force.weighing import weighing
from paradestate.core.support.entry import GroupLimit
from paradestate.core.support.terms import Terms
from tests.chance.force.lists import SMALL, A, B, C, drawn, listed
from tests.support_terms import small_terms

Worths = dict[frozenset[str], list[Fraction | None]]


def every_pattern(
    terms: Terms, *, rolled: str, greatest: int
) -> tuple[Patterns, list[frozenset[str]]]:
    """Each of these entries is to be had or not, in all ways."""
    weighed = weighing(drawn(terms, greatest=greatest))
    names = tuple(rolled.split())
    ways = patterns(names)
    everything = {row.entry: weighed.takings(at) for at, row in enumerate(weighed.drawn.rows)}
    return Patterns(
        number=len(ways),
        classes={
            name: (frozenset(t for t in everything[name] if not t.purchases), everything[name])
            for name in names
        },
        chosen={name: numpy.array([int(name in there) for there in ways]) for name in names},
    ), ways


def worths(terms: Terms, *, points: Sequence[int], rolled: str) -> Worths:
    """For each set of the entries that are there the greatest worths."""
    weighed = weighing(drawn(terms, greatest=max(points)))
    asked, ways = every_pattern(terms, rolled=rolled, greatest=max(points))
    found = greatest_weights(weighed, asked, points=points)
    return {
        there: [weighed.worth(int(weight)) for weight in weights]
        for there, weights in zip(ways, found, strict=True)
    }


def patterns(rolled: tuple[str, ...]) -> list[frozenset[str]]:
    sizes = (combinations(rolled, size) for size in range(len(rolled) + 1))
    return [frozenset(names) for names in chain.from_iterable(sizes)]


def test_the_small_example_without_one_or_the_other() -> None:
    found = worths(listed(*SMALL), points=[8], rolled="B C")
    assert {"".join(sorted(there)): each for there, each in found.items()} == {
        "": [3],
        "B": [Fraction(13, 2)],
        "C": [3],
        "BC": [Fraction(19, 2)],
    }


def test_what_must_be_there_and_is_not_leaves_nothing() -> None:
    found = worths(listed(replace(A, least=1)), points=[8], rolled="A")
    assert found == {frozenset(): [None], frozenset("A"): [3]}


def test_shares_are_judged_by_each_number_of_points() -> None:
    half = GroupLimit(group="g", most_points=Fraction(1, 2))
    terms = listed(A, replace(B, group="g"), replace(C, group="g"), groups=[half])
    found = worths(terms, points=[4, 8], rolled="A C")
    assert found[frozenset("AC")] == [
        best_forces(drawn(terms, greatest=8)).worths([4])[0],
        Fraction(13, 2),
    ]
    assert found[frozenset()][1] == Fraction(7, 2)


def test_patterns_that_end_alike_share_their_weights() -> None:
    weighed = weighing(drawn(listed(*SMALL), greatest=8))
    asked, _ = every_pattern(listed(*SMALL), rolled="B C", greatest=8)
    twice = Patterns(
        number=8,
        classes=asked.classes,
        chosen={name: numpy.concatenate((each, each)) for name, each in asked.chosen.items()},
    )
    assert most_side_by_side(weighed, twice) == most_side_by_side(weighed, asked)
    once, again = (greatest_weights(weighed, each, points=[8]) for each in (asked, twice))
    assert again.tolist() == [*once.tolist(), *once.tolist()]


@settings(max_examples=30, deadline=None)
@given(small_terms(), st.integers(0, 8))
def test_each_pattern_is_the_list_without_what_is_not_there(terms: Terms, points: int) -> None:
    drawing = drawn(terms, greatest=points)
    rolled = [name for name, offer in terms.offers.items() if offer.availability]
    if not drawing.is_legal:
        return
    for there, found in worths(terms, points=[points], rolled=" ".join(rolled)).items():
        offers = {
            name: replace(offer, most=0 if name in rolled and name not in there else offer.most)
            for name, offer in terms.offers.items()
        }
        without = best_forces(drawn(replace(terms, offers=offers), greatest=points))
        assert tuple(found) == without.worths([points])
