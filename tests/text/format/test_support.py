"""The sections games, grades, supporting troops, limits, reserves and worths."""

import pytest

from paradestate.core.support.entry import Limit, Rounding
from tests.text.format.reading import codes, force


def entry(words: str) -> str:
    return f"supporting troops: {{e: {{cost: 1, {words}}}, f: {{cost: 1}}}}"


@pytest.mark.parametrize(
    ("limit", "read"),
    [
        ("any", Limit(most=None)),
        ("{most: 2}", Limit(most=2)),
        (
            "{most: 1, for every: 2, of: top, round: up}",
            Limit(most=1, for_every=2, of="top", round=Rounding.UP),
        ),
    ],
)
def test_limits(limit: str, read: Limit) -> None:
    assert force(entry(f"limit: {limit}")).supporting_troops["e"].limit == read


def test_prices_by_number_or_for_one() -> None:
    made = force("supporting troops: {e: {cost: 4}, f: {cost: {2: 5, 4: 9}}}")
    assert made.supporting_troops["e"].cost == {1: 4}
    assert made.supporting_troops["f"].cost == {2: 5, 4: 9}
    assert codes("supporting troops: {e: {cost: x}}") == ["not-a-number"]
    assert codes("supporting troops: {e: {cost: {0: 1}}}") == ["not-a-whole-number"]
