"""In which order entries are decided."""

from collections.abc import Sequence
from fractions import Fraction

import pytest

from bench.force_lists import force_list
from paradestate.chance.force import sequence
from paradestate.chance.force.legal_count import legal_forces
from paradestate.chance.force.sequence import in_sequence
from paradestate.chance.force.tie import Claim, GroupPoints, GroupPurchases, NotTogether, Tie
from paradestate.core.support.entry import GroupLimit
from tests.chance.force.lists import drawn


def pair(one: str, other: str) -> Tie:
    return NotTogether(one=Claim(entry=one, number=1), other=Claim(entry=other, number=1))


def group(entries: str) -> Tie:
    return GroupPurchases(entries=frozenset(entries), least=0, most=3)


def share(entries: str) -> Tie:
    return GroupPoints(
        entries=frozenset(entries),
        limit=GroupLimit(group="g", most_points=Fraction(1, 2)),
        lowest=dict.fromkeys(entries, 0),
        greatest=9,
    )


def order(names: str, ties: Sequence[Tie], *, rolled: str = "") -> tuple[str, int]:
    found, judged = in_sequence(tuple(names), ties=ties, rolled=frozenset(rolled))
    return "".join(found), judged


def test_entries_that_nothing_joins_stay_in_the_order_of_the_file() -> None:
    assert order("abc", []) == ("abc", 0)


def test_those_that_are_joined_are_decided_together() -> None:
    assert order("abcd", [pair("a", "d")]) == ("adbc", 0)
    assert order("abcd", [group("ad"), pair("b", "c")]) == ("adbc", 0)


def test_shares_come_first_then_what_is_rolled_for() -> None:
    assert order("abcd", [share("cd")], rolled="b") == ("cdba", 2)


def test_what_many_need_is_decided_before_them() -> None:
    """Else each of them would have to be remembered until it is known."""
    found, _ = order("abcdx", [pair(name, "x") for name in "abcd"])
    assert found.index("x") <= 1


def test_a_chain_is_followed_from_its_end() -> None:
    chain = [pair("a", "b"), pair("b", "c"), pair("c", "d")]
    assert order("abcd", chain)[0] == "abcd"


def test_of_equals_one_that_is_asked_about_already_comes_first() -> None:
    """Two chains with a group between them: no second place is begun before the first is done."""
    chains = [pair("a", "b"), pair("b", "c"), pair("d", "e"), pair("e", "f"), group("cf")]
    assert order("adbecf", chains)[0] == "abcfed"


def test_a_knot_with_much_to_remember_is_begun_again(monkeypatch: pytest.MonkeyPatch) -> None:
    terms = force_list(40, seed=5)
    again = drawn(terms, greatest=60)
    monkeypatch.setattr(sequence, "STARTS", 0)
    once = drawn(terms, greatest=60)
    assert again.number_of_nodes < once.number_of_nodes // 2
    assert legal_forces(again, points=range(61)) == legal_forces(once, points=range(61))
