"""The decision diagram: what it holds, and when it isn't drawn."""

from dataclasses import replace
from fractions import Fraction

import pytest

from paradestate.chance.force import diagram as module
from paradestate.chance.force import taking
from paradestate.chance.force.diagram import diagram
from paradestate.core.certainty import NotComputed
from paradestate.core.game import Purchase
from paradestate.core.support.entry import GroupLimit
from paradestate.core.support.offer import Offer
from tests.chance.force.lists import SMALL, A, B, C, drawn, listed


def test_only_what_is_tied_has_more_than_one_node() -> None:
    found = drawn(listed(*SMALL), greatest=8)
    assert [(row.entry, len(row.ways)) for row in found.rows] == [("A", 1), ("B", 1), ("C", 2)]
    assert found.number_of_nodes == 4
    assert (found.lowest, found.slots) == (0, 9)


def test_takings_that_no_rule_tells_apart_share_their_way() -> None:
    found = drawn(listed(*SMALL), greatest=8)
    a, b, _ = found.rows
    assert a.bundles == ((0, 1, 2, 3),)
    assert sorted(b.bundles) == [(0,), (1, 2)], "C asks only whether there is one"


def test_shares_are_judged_where_all_are_known() -> None:
    half = GroupLimit(group="g", most_points=Fraction(1, 2))
    found = drawn(listed(A, replace(B, group="g"), C, groups=[half]), greatest=8)
    assert [row.entry for row in found.rows] == ["B", "C", "A"]
    assert found.judged == 2
    assert sorted(set(found.spent)) == [(0,), (3,), (6,)]
    assert {found.spent[node] for node in found.allowed(points=8)} == {(0,), (3,)}


def test_refunds_go_below_nought() -> None:
    found = drawn(listed(A, replace(B, cost={1: -3})), greatest=8)
    assert (found.lowest, found.slots) == (-6, 15)
    assert drawn(listed(A), greatest=-1).slots == 0


@pytest.mark.parametrize(
    "groups", [(GroupLimit(group="g", least=1),), (GroupLimit(group="h", least=4),)]
)
def test_where_nothing_can_be_legal_there_are_no_rows(groups: tuple[GroupLimit, ...]) -> None:
    """A group without entries that must have one, and one that must have more than it may."""
    found = drawn(listed(replace(A, group="h"), groups=groups), greatest=8)
    assert not found.is_legal
    assert (found.rows, found.spent) == ((), ((),))


def test_an_entry_that_can_not_be_had_often_enough_leaves_nothing() -> None:
    assert not drawn(listed(B, replace(A, least=4), C), greatest=8).is_legal
    half = GroupLimit(group="g", most_points=Fraction(1, 2))
    shared = listed(replace(A, least=4, group="g"), groups=[half])
    assert not drawn(shared, greatest=8).is_legal


def test_a_force_is_told_in_the_order_of_the_file() -> None:
    found = drawn(listed(*SMALL), greatest=8)
    b, a = Purchase(entry="B", number=1), Purchase(entry="A", number=1)
    assert found.force([b, a]) == (a, b)


def refused(greatest: int = 8) -> str:
    found = diagram(listed(*SMALL), greatest=greatest)
    assert isinstance(found, NotComputed)
    return found.reason


def test_what_would_be_too_large_is_refused(monkeypatch: pytest.MonkeyPatch) -> None:
    assert refused(10_001) == "there are more than 10,000 points"
    monkeypatch.setattr(module, "MOST_STEPS", 30)
    assert refused() == "with so many points and entries more than 30 sums would have to be made"
    monkeypatch.setattr(module, "MOST_STEPS", 10**9)
    monkeypatch.setattr(module, "MOST_NODES", 3)
    assert refused() == (
        "with so many points and rules more than 4 cases would have to be told apart"
    )
    monkeypatch.setattr(taking, "MOST_KEYS", 1)
    assert refused() == "there are more than 1 ways to take 'A' alone"


def test_many_entries_of_which_any_number_may_be_had_are_refused_for_many_points() -> None:
    many = listed(*(Offer(name=f"e{n}", cost={1: 1 + n % 3}, most=None) for n in range(9)))
    found = diagram(many, greatest=8000)
    assert isinstance(found, NotComputed)
    assert found.reason == (
        "with so many points and entries more than 100,000,000 sums would have to be made"
    )


def test_whether_nothing_at_all_is_legal() -> None:
    def allowed(*offers: Offer, groups: tuple[GroupLimit, ...] = ()) -> bool:
        found = drawn(listed(*offers, groups=groups), greatest=8)
        return found.allows_nothing(points=8)

    third = GroupLimit(group="g", least_points=Fraction(1, 3))
    assert allowed(*SMALL)
    assert not allowed(replace(A, least=1), B)
    assert not allowed(replace(A, least=4), B), "nothing is legal here"
    assert allowed(A, replace(B, group="g"), groups=(replace(third, least_points=Fraction(0)),))
    assert not allowed(replace(B, group="g"), groups=(third,))
    assert not allowed(replace(B, group="g"), replace(A, worths={}), groups=(third,))
    assert not allowed(replace(B, group="g"), groups=(GroupLimit(group="g", least=1),))
