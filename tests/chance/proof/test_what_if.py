"""What a change does to the legal forces, beside plain listing of both lists."""

import pickle
from collections import Counter
from collections.abc import Iterable
from dataclasses import replace
from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from paradestate.chance.force.force_draw import force_draw
from paradestate.chance.proof import both_lists
from paradestate.chance.proof.what_if import compared, list_forces, only_price, what_if
from paradestate.core.certainty import NotComputed
from paradestate.core.sentence.comparison import consequence
from paradestate.core.support.amendment import (
    Amendment,
    LimitAmendment,
    PriceAmendment,
    WorthAmendment,
    amended,
    misfits,
)
from paradestate.core.support.comparison import ListComparison, ListForces
from paradestate.core.support.offer import Offer
from paradestate.core.support.plan import plan_worth
from paradestate.core.support.terms import Terms
from tests.chance.force.lists import A, B, C, drawn, listed
from tests.support_terms import Plan, attack, every_legal_plan, small_terms


def forces(terms: Terms, *points: int, at: int | None = None) -> ListForces:
    found = list_forces(terms, points=points, at=points[-1] if at is None else at)
    assert isinstance(found, ListForces)
    return found


def changed(old: ListForces, *amendments: Amendment) -> ListComparison:
    found = what_if(old, amendments)
    assert isinstance(found, ListComparison)
    return found


def plain_changes(old: Terms, new: Terms, *, points: Iterable[int]) -> list[tuple[int, int]]:
    """Forces lost and gained, by listing both."""
    found = []
    for number in points:
        was, now = (
            {frozenset(Counter(plan).items()) for plan in every_legal_plan(terms, points=number)}
            for terms in (old, new)
        )
        found.append((len(was - now), len(now - was)))
    return found


@pytest.mark.parametrize(
    "amendment",
    [
        PriceAmendment(entry="anti-tank guns", points=5),
        PriceAmendment(entry="pioneers", number=2, points=5),
        LimitAmendment(entry="bicycle troop", most=2),
        LimitAmendment(entry="machine-gun platoon", most=1),
        WorthAmendment(entry="bicycle troop", worth=Fraction(4)),
    ],
)
def test_lost_and_gained_equal_the_lists_of_both(amendment: Amendment) -> None:
    """The example in an attack: 19 forces with 5 points (section 3.12 of the computations)."""
    found = changed(forces(attack(), 5, 10), amendment)
    assert [level.old for level in found.levels] == [19, 234]
    assert_as_listed(found)


@pytest.mark.unmeasured
def test_lost_and_gained_of_thousands_of_forces() -> None:
    """The same with 18 points: 3,809 forces (section 3.12 of the computations)."""
    found = changed(forces(attack(), 18), PriceAmendment(entry="anti-tank guns", points=5))
    assert [level.old for level in found.levels] == [3809]
    assert_as_listed(found)


def assert_as_listed(found: ListComparison) -> None:
    for level in found.levels:
        was, now = (_listed(each.terms, level.points) for each in (found.old, found.new))
        assert (level.lost, level.gained) == (len(was - now), len(now - was))


def _listed(terms: Terms, points: int) -> set[Plan]:
    """Every legal force, each list walked through by itself."""
    return set(force_draw(drawn(terms, greatest=points), points=points).every())


def test_a_dearer_gun_at_five_ten_and_eighteen_points() -> None:
    """The one gun of 4 points is lost at 5; what it leaves in the best twenty is said."""
    found = changed(
        forces(attack(), 5, 10, 18), PriceAmendment(entry="anti-tank guns", number=1, points=9)
    )
    level = found.levels[0]
    assert (level.old, level.new, level.lost, level.gained) == (19, 18, 1, 0)
    assert found.level.points == 18
    assert found.level.share_lost is not None
    assert "Raising 1 x anti-tank guns from 4 to 9 points removes" in consequence(
        found, [PriceAmendment(entry="anti-tank guns", number=1, points=9)]
    )


def test_an_amendment_that_takes_an_entry_out_of_the_best_forces() -> None:
    """With 5 points the worth of A and B is greatest; at 9 points A is in none of them."""
    old = forces(listed(A, B, C), 5)
    assert old.among_first("A") == 3
    found = changed(old, PriceAmendment(entry="A", points=9))
    assert found.among_first["A"] == (3, 0)
    best = found.level.new_best
    assert best is not None
    assert best.worth == Fraction(7, 2)


def test_the_list_of_best_forces_may_be_cut_among_equals() -> None:
    twins = [Offer(name=f"gun {n}", cost={1: 1}, worths={"": {1: Fraction(1)}}) for n in range(22)]
    assert forces(listed(*twins), 1).is_cut
    assert not forces(listed(A, B, C), 9).is_cut


def test_without_worths_there_is_no_best_force() -> None:
    old = forces(listed(Offer(name="gun", cost={1: 1}, most=2)), 1, 2)
    assert old.best == (None, None)
    found = changed(old, PriceAmendment(entry="gun", points=2))
    assert [(level.lost, level.gained) for level in found.levels] == [(1, 0), (1, 0)]


def test_below_nought_only_the_empty_force_is_there() -> None:
    old = forces(listed(A), -2, -1)
    assert [level.both for level in compared(old, old).levels] == [1, 1]
    must = forces(listed(replace(A, least=1)), -2, 3)
    mixed = forces(listed(A), -2, 3)
    assert [level.both for level in compared(mixed, must).levels] == [0, 1]


def test_what_is_too_large_is_refused(monkeypatch: pytest.MonkeyPatch) -> None:
    assert isinstance(list_forces(listed(A), points=(10_001,), at=10_001), NotComputed)
    old = forces(listed(A, B), 4)
    monkeypatch.setattr(both_lists, "MOST_CASES", 0)
    found = changed(old, PriceAmendment(entry="A", points=3))
    assert isinstance(found.both, NotComputed)
    assert found.level.lost is None
    assert found.level.gained is None
    assert found.level.share_lost is None


def test_all_of_it_can_be_sent_to_another_process() -> None:
    old = forces(attack(), 5)
    amendment = PriceAmendment(entry="anti-tank guns", points=5)
    sent = pickle.loads(pickle.dumps((old, amendment)))  # noqa: S301 - our own
    assert what_if(sent[0], [sent[1]]) == what_if(old, [amendment])


def test_the_one_price_that_differs_is_found() -> None:
    old = listed(A, B)
    new = listed(A, replace(B, cost={1: 4}))
    assert only_price(old, new) == PriceAmendment(entry="B", number=1, points=4)
    for other in (
        listed(A, B),
        listed(A),
        listed(A, replace(B, cost={1: 4, 2: 5})),
        listed(A, replace(B, cost={1: 4}, most=1)),
        listed(replace(A, cost={1: 1}), replace(B, cost={1: 4})),
        replace(new, formation_cost=1),
    ):
        assert only_price(old, other) is None
    two = listed(replace(A, cost={1: 1, 2: 2}))
    assert only_price(two, listed(replace(A, cost={1: 2, 2: 3}))) is None


@settings(max_examples=25, deadline=None)
@given(small_terms(most_entries=3), st.data())
def test_changes_drawn_at_random_equal_plain_listing(terms: Terms, data: st.DataObject) -> None:
    name = data.draw(st.sampled_from(tuple(terms.offers)))
    amendment = data.draw(
        st.builds(PriceAmendment, entry=st.just(name), points=st.integers(0, 5))
        | st.builds(LimitAmendment, entry=st.just(name), most=st.none() | st.integers(0, 3))
        | st.builds(WorthAmendment, entry=st.just(name), worth=st.integers(0, 9).map(Fraction))
    )
    if tuple(misfits(terms, [amendment])):
        return
    old = forces(terms, *range(5))
    found = changed(old, amendment)
    after = amended(terms, [amendment])
    assert [(level.lost, level.gained) for level in found.levels] == plain_changes(
        terms, after, points=range(5)
    )
    plans = [plan_worth(after.offers, plan) for plan in every_legal_plan(after, points=4)]
    if found.new.best[-1] is not None:
        assert found.new.best[-1].worth == max(plans)
