"""Takings and ties: what every sum over forces begins with."""

from collections.abc import Mapping, Sequence
from dataclasses import replace

import pytest

from paradestate.chance.force import taking
from paradestate.chance.force.groundwork import Groundwork, groundwork
from paradestate.chance.force.taking import Taking
from paradestate.chance.force.tie import NotTogether, Tie
from paradestate.core.certainty import NotComputed
from paradestate.core.support.terms import Terms
from tests.chance.force.lists import SMALL, A, B, listed


def laid(terms: Terms, *, greatest: int) -> Groundwork:
    found = groundwork(terms, greatest=greatest)
    assert isinstance(found, Groundwork)
    return found


def test_each_entry_brings_its_takings_in_file_order() -> None:
    found = laid(listed(*SMALL), greatest=5)
    assert {name: [t.points for t in each.plain] for name, each in found.taken.items()} == {
        "A": [0, 2, 4],
        "B": [0, 3],
        "C": [0, 5],
    }
    assert [type(tie) for tie in found.ties] == [NotTogether]


def test_refunds_of_others_pay_too() -> None:
    found = laid(listed(A, replace(B, cost={1: -3})), greatest=0)
    assert [t.points for t in found.taken["A"].plain] == [0, 2, 4, 6]
    assert (found.taken["A"].lowest, found.taken["B"].lowest) == (0, -6)


def test_more_ties_are_given_all_takings() -> None:
    asked: list[str] = []

    def none(plain: Mapping[str, Sequence[Taking]]) -> Sequence[Tie]:
        asked.extend(plain)
        return ()

    found = groundwork(listed(*SMALL), greatest=5, more=none)
    assert isinstance(found, Groundwork)
    assert asked == ["A", "B", "C"]
    assert [t.number for t in found.taken["A"].plain] == [0, 1, 2]


def test_an_entry_of_too_many_takings_is_refused(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(taking, "MOST_KEYS", 2)
    found = groundwork(listed(A), greatest=8)
    assert found == NotComputed(reason="there are more than 2 ways to take 'A' alone")
