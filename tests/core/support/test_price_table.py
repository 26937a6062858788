"""Prices that contradict one another."""

import pytest

from paradestate.core.support.offer import Offer
from paradestate.core.support.price_table import (
    doubt_effect,
    doubt_words,
    price_doubts,
    price_steps,
)


def offer(
    cost: dict[int, int],
    *,
    most: int | None = 2,
    repeats: tuple[int, ...] = (),
    choices: dict[str, int] | None = None,
) -> Offer:
    return Offer(
        name="guns",
        cost=cost,
        most=most,
        repeats_cost_more=repeats,
        choices=choices or {"": 0},
    )


def said(here: Offer) -> list[str]:
    return [doubt_words(doubt) for doubt in price_doubts(here)]


def test_the_table_of_the_computations_contradicts_itself() -> None:
    """Section 3.24: 1:3, 2:5, 3:9 fails since 3 + 5 = 8 < 9; its steps are 3, 2 and 4."""
    here = offer({1: 3, 2: 5, 3: 9})
    assert said(here) == ["3 cost 9, but 2 + 1 cost 8"]
    assert price_steps(here) == (3, 2, 4)
    assert doubt_effect(price_doubts(here)[0]) == "Nobody would pay the higher price."


def test_where_only_one_purchase_may_be_had_a_dear_whole_is_only_odd() -> None:
    (doubt,) = price_doubts(offer({1: 3, 2: 5, 3: 9}, most=1))
    assert not doubt.in_reach
    assert doubt_effect(doubt) == "Two purchases of it can't be had, so the price is only odd."


@pytest.mark.parametrize(
    ("cost", "words"),
    [
        ({1: 3, 2: 5, 3: 8}, []),
        ({1: 3, 2: 2}, ["2 cost 2, but 1 cost 3"]),
        ({1: 1, 3: 9}, ["3 cost 9, but three times 1 cost 3"]),
        ({2: 4, 4: 9}, ["4 cost 9, but 2 + 2 cost 8"]),
        ({1: -1, 2: -2}, []),
        ({3: 4}, []),
        ({0: 1, 2: 4}, []),
    ],
)
def test_doubts_in_words(cost: dict[int, int], words: list[str]) -> None:
    assert said(offer(cost, most=None)) == words


def test_what_repeats_cost_more_makes_parts_dearer() -> None:
    assert said(offer({1: 3, 2: 7}, repeats=(1,))) == []
    assert said(offer({1: 3, 2: 8}, repeats=(1,))) == ["2 cost 8, but 1 + 1 cost 7"]


def test_a_cheaper_choice_may_turn_a_rising_table() -> None:
    here = offer({1: 3, 2: 4}, choices={"green": -2, "usual": 0})
    assert said(here) == ["1 with green cost 1, but 2 cost 0"]
    assert said(offer({1: 3, 2: 2}, choices={"green": -2, "usual": 0})) == [
        "2 cost 2, but 1 cost 3"
    ]
