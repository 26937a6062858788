"""The greatest worths for every way in which availability may turn out."""

from dataclasses import replace
from fractions import Fraction
from itertools import chain, combinations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from bench import pattern_worths
from bench.pattern_worths import PatternWorths, worths_by_pattern
from paradestate.chance.force.best_force import best_forces
from paradestate.core.certainty import NotComputed
from paradestate.core.support.entry import GroupLimit
from paradestate.core.support.terms import Terms
from tests.chance.force.lists import SMALL, A, B, C, drawn, listed
from tests.support_terms import small_terms


def worths(terms: Terms, *, points: int, rolled: str) -> PatternWorths | NotComputed:
    return worths_by_pattern(
        drawn(terms, greatest=points), points=points, rolled=frozenset(rolled.split())
    )


def patterns(rolled: tuple[str, ...]) -> list[frozenset[str]]:
    sizes = (combinations(rolled, size) for size in range(len(rolled) + 1))
    return [frozenset(names) for names in chain.from_iterable(sizes)]


def test_the_small_example_without_one_or_the_other() -> None:
    found = worths(listed(*SMALL), points=8, rolled="B C")
    assert isinstance(found, PatternWorths)
    assert set(found.rolled) == {"B", "C"}
    assert {"".join(sorted(there)): found.worth(there) for there in patterns(found.rolled)} == {
        "": 3,
        "B": Fraction(13, 2),
        "C": 3,
        "BC": Fraction(19, 2),
    }


def test_what_must_be_there_and_is_not_leaves_nothing() -> None:
    found = worths(listed(replace(A, least=1)), points=8, rolled="A")
    assert isinstance(found, PatternWorths)
    assert found.worth(frozenset()) is None
    assert found.worth(frozenset("A")) == 3


def test_shares_of_the_points_are_kept() -> None:
    half = GroupLimit(group="g", most_points=Fraction(1, 2))
    terms = listed(A, replace(B, group="g"), replace(C, group="g"), groups=[half])
    found = worths(terms, points=8, rolled="A C")
    assert isinstance(found, PatternWorths)
    assert found.worth(frozenset("AC")) == Fraction(13, 2)
    assert found.worth(frozenset()) == Fraction(7, 2)


def test_what_is_too_much_or_never_legal_is_refused(monkeypatch: pytest.MonkeyPatch) -> None:
    for terms, points in ((listed(replace(A, least=4)), 8), (listed(A), -1)):
        found = worths(terms, points=points, rolled="A")
        assert isinstance(found, NotComputed)
        assert found.reason == "nothing is legal, whatever is to be had"
    monkeypatch.setattr(pattern_worths, "MOST_CELLS", 17)
    found = worths(listed(A), points=8, rolled="A")
    assert isinstance(found, NotComputed)
    assert found.reason == "1 entries are rolled for, which is too many"


@settings(max_examples=30, deadline=None)
@given(small_terms(), st.integers(0, 8))
def test_each_pattern_is_the_list_without_what_is_not_there(terms: Terms, points: int) -> None:
    rolled = tuple(name for name, offer in terms.offers.items() if offer.availability)
    found = worths(terms, points=points, rolled=" ".join(rolled))
    for there in patterns(rolled) if isinstance(found, PatternWorths) else ():
        assert isinstance(found, PatternWorths)
        offers = {
            name: replace(offer, most=0 if name in rolled and name not in there else offer.most)
            for name, offer in terms.offers.items()
        }
        without = best_forces(drawn(replace(terms, offers=offers), greatest=points))
        assert (found.worth(there),) == without.worths([points])
