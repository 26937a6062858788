"""The back of a page."""

from fractions import Fraction

import pytest

from paradestate.core.imposition.layout import Layout, TurnEdge
from paradestate.core.imposition.print_scale import measured
from paradestate.core.imposition.second_side import backs, behind, quarters
from paradestate.core.imposition.shelf import imposed
from tests.core.imposition.boxes import MARENZ, frame, holds

BOX = frame(left=10, top=20, width=38, height=18)


def test_turned_about_the_long_edge_left_and_right_change_places() -> None:
    assert behind(BOX, Layout()) == frame(left=162, top=20, width=38, height=18)


def test_turned_about_the_short_edge_above_and_below_change_places() -> None:
    layout = Layout(turn=TurnEdge.SHORT)
    assert behind(BOX, layout) == frame(left=10, top=259, width=38, height=18)


def test_a_back_is_upright_once_its_piece_is_turned_over_sideways() -> None:
    """A quarter against the clock and over sideways is over sideways and a quarter with it."""
    upright, turned = Layout(), Layout(turn=TurnEdge.SHORT)
    label, disc = imposed(MARENZ, upright).pages[0][0], imposed(MARENZ, upright).pages[0][30]
    assert label.is_turned
    assert (quarters(label, upright), quarters(label, turned)) == (3, 1)
    assert (quarters(disc, upright), quarters(disc, turned)) == (0, 2)


@pytest.mark.parametrize("turn", list(TurnEdge))
def test_what_lies_behind_what_lies_behind_is_where_it_was(turn: TurnEdge) -> None:
    layout = Layout(turn=turn, scale=measured(Fraction(97), Fraction(98)))
    page = imposed(MARENZ, layout).pages[0]
    turned = backs(page, layout)
    assert turned != page
    assert backs(turned, layout) == page
    assert all(holds(layout.room, each.frame) for each in turned)
