"""Conditions beside so many purchases of others."""

import pytest

from paradestate.chance.fallback.condition import holds
from paradestate.core.support.offer import Offer


@pytest.mark.parametrize(
    ("words", "times", "is_kept"),
    [
        ({}, 1, True),
        ({"needs": {"guns": 2}}, 1, True),
        ({"needs": {"guns": 3}}, 1, False),
        ({"needs_any_of": {"guns": 3, "horse": 1}}, 1, True),
        ({"needs_any_of": {"guns": 3, "tanks": 1}}, 1, False),
        ({"needs_for_each": {"guns": 1}}, 2, True),
        ({"needs_for_each": {"guns": 1}}, 3, False),
        ({"bars": frozenset({"tanks"})}, 1, True),
        ({"bars": frozenset({"guns"})}, 1, False),
    ],
)
def test_conditions_hold_beside_two_guns_and_a_horse(
    words: dict[str, dict[str, int]],
    times: int,
    is_kept: bool,  # noqa: FBT001 - a row of the table
) -> None:
    there = {"guns": 2, "horse": 1}
    offer = Offer(name="scouts", cost={1: 1}, **words)  # type: ignore[arg-type] # rows of words
    assert holds(offer, lambda name: there.get(name, 0), times=times) is is_kept
