"""Ties: what has to be remembered of the entries decided so far."""

from collections.abc import Callable
from dataclasses import replace
from fractions import Fraction
from itertools import permutations, product

import pytest

from paradestate.chance.force.tie import (
    Claim,
    ForEach,
    GroupPoints,
    GroupPurchases,
    Move,
    NotTogether,
    OneOf,
    Tie,
    alone,
    ties_of,
)
from paradestate.core.support.entry import GroupLimit
from paradestate.core.support.offer import Offer
from paradestate.core.support.terms import Terms
from tests.chance.force.lists import SMALL, A, B, C, listed


def kept(tie: Tie, numbers: dict[str, int], *, order: tuple[str, ...]) -> bool:
    """Whether a tie holds for so many purchases, decided in this order."""
    value = 0
    for entry in order:
        after = tie.after(value, entry=entry, move=Move(numbers[entry], 0, 2 * numbers[entry]))
        if after is None:
            return False
        assert 0 <= after <= tie.greatest
        value = after
    return tie.holds(value)


def kept_as_sums(tie: Tie, numbers: dict[str, int], *, points: int = 10) -> bool:
    """Whether no sum of a tie passes its bound with so many purchases for two points each."""
    return all(
        each.is_rule
        and sum(each.of(name, Move(numbers[name], 0, 2 * numbers[name])) for name in each.entries)
        <= each.most
        for each in tie.sums(points=points)
    )


def ties(terms: Terms) -> list[Tie]:
    names = dict.fromkeys(terms.offers, 0)
    return list(
        ties_of(terms, lowest=names, highest=dict.fromkeys(names, 6), most=dict.fromkeys(names, 3))
    )


@pytest.mark.parametrize(
    ("tie", "rule"),
    [
        (
            NotTogether(
                one=Claim(entry="A", number=1), other=Claim(entry="B", number=2, fewer=True)
            ),
            lambda a, b, _: not a or b >= 2,
        ),
        (
            NotTogether(one=Claim(entry="A", number=1), other=Claim(entry="B", number=1)),
            lambda a, b, _: not (a and b),
        ),
        (
            OneOf(entry="A", claims=(Claim(entry="B", number=2), Claim(entry="C", number=1))),
            lambda a, b, c: not a or b >= 2 or c,
        ),
        (
            OneOf(entry="A", claims=(Claim(entry="A", number=2), Claim(entry="C", number=1))),
            lambda a, _, c: not a or a >= 2 or c,
        ),
        (
            ForEach(entry="A", of="B", number=2, greatest=4),
            lambda a, b, _: b >= 2 * a,
        ),
        (
            GroupPurchases(entries=frozenset("ABC"), least=2, most=3),
            lambda a, b, c: 2 <= a + b + c <= 3,
        ),
        (
            GroupPurchases(entries=frozenset("AB"), least=2, most=None),
            lambda a, b, _: a + b >= 2,
        ),
        (
            GroupPurchases(entries=frozenset("BC"), least=0, most=1),
            lambda _, b, c: b + c <= 1,
        ),
    ],
)
def test_a_tie_says_the_same_in_every_order(
    tie: Tie, rule: Callable[[int, int, int], bool]
) -> None:
    for numbers in product(range(4), repeat=3):
        for order in permutations(sorted(tie.entries)):
            said = kept(tie, dict(zip("ABC", numbers, strict=True)), order=order)
            assert said == bool(rule(*numbers)), (numbers, order)
        summed = kept_as_sums(tie, dict(zip("ABC", numbers, strict=True)))
        assert summed == bool(rule(*numbers)), numbers


def test_points_of_a_group_are_judged_by_the_points_of_the_game() -> None:
    limit = GroupLimit(group="g", least_points=Fraction(1, 3), most_points=Fraction(1, 2))
    share = GroupPoints(entries=frozenset("AB"), limit=limit, lowest={"A": -1, "B": 0}, greatest=12)
    move = Move(1, 0, 4)
    assert share.after(0, entry="A", move=move) == 5, "counted from the fewest"
    assert share.holds(5)
    assert share.span(points=10) == range(4 + 1, 5 + 2)
    assert share.span(points=99) == range(33 + 1, 13)
    assert share.span(points=-9) == share.span(points=0), "a share of less than nothing is nought"
    free = replace(share, limit=GroupLimit(group="g"))
    assert free.span(points=10) == range(13)


def test_points_of_a_group_are_a_sum_from_above_and_from_below() -> None:
    limit = GroupLimit(group="g", least_points=Fraction(1, 3), most_points=Fraction(1, 2))
    share = GroupPoints(entries=frozenset("AB"), limit=limit, lowest={"A": 0, "B": 0}, greatest=12)
    for a, b in product(range(4), repeat=2):
        assert kept_as_sums(share, {"A": a, "B": b}) == (4 <= 2 * (a + b) <= 5)
    assert replace(share, limit=GroupLimit(group="g")).sums(points=10) == ()


def test_what_a_rule_asks_about_one_entry_alone() -> None:
    def possible(offer: Offer) -> list[bool]:
        return [alone(listed(offer, B), offer)(number) for number in range(4)]

    assert possible(A) == [True] * 4
    assert possible(replace(A, needs={"mules": 1})) == [True, False, False, False]
    assert possible(replace(A, needs={"A": 2})) == [True, False, True, True]
    assert possible(replace(A, needs_for_each={"mules": 1})) == [True, False, False, False]
    assert possible(replace(A, needs_for_each={"A": 1})) == [True] * 4
    assert possible(replace(A, needs_any_of={"mules": 1})) == [True, False, False, False]
    assert possible(replace(A, needs_any_of={"mules": 1, "B": 1})) == [True] * 4
    assert possible(replace(A, bars=frozenset({"A"}))) == [True, False, False, False]


def test_each_rule_about_several_entries_is_a_tie() -> None:
    assert [sorted(tie.entries) for tie in ties(listed(*SMALL))] == [["B", "C"]]
    found = ties(
        listed(
            replace(
                A, group="g", bars=frozenset({"B", "mules"}), needs_any_of={"mules": 1, "C": 1}
            ),
            replace(B, group="g", bars=frozenset({"A"})),
            replace(C, needs={"mules": 1, "C": 1}, needs_for_each={"A": 2, "B": 0, "C": 1}),
            groups=(
                GroupLimit(group="g", most=2, most_points=Fraction(1, 2)),
                GroupLimit(group="none", least=1, least_points=Fraction(1, 2)),
                GroupLimit(group="g"),
            ),
        )
    )
    assert [type(tie) for tie in found] == [
        OneOf,
        ForEach,
        NotTogether,
        GroupPurchases,
        GroupPurchases,
        GroupPoints,
        GroupPoints,
    ]
    assert found[4].entries == frozenset()
    assert not found[4].holds(0), "no entry is in a group that must have one"
