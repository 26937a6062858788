"""The back of a page."""

from fractions import Fraction

import pytest

from paradestate.core.imposition.layout import Layout, TurnEdge
from paradestate.core.imposition.print_scale import measured
from paradestate.core.imposition.second_side import backs, behind
from paradestate.core.imposition.shelf import imposed
from tests.core.imposition.boxes import MARENZ, frame

BOX = frame(left=10, top=20, width=38, height=18)


def test_turned_about_the_long_edge_left_and_right_change_places() -> None:
    assert behind(BOX, Layout()) == frame(left=162, top=20, width=38, height=18)


def test_turned_about_the_short_edge_above_and_below_change_places() -> None:
    layout = Layout(turn=TurnEdge.SHORT)
    assert behind(BOX, layout) == frame(left=10, top=259, width=38, height=18)


@pytest.mark.parametrize("turn", list(TurnEdge))
def test_what_lies_behind_what_lies_behind_is_where_it_was(turn: TurnEdge) -> None:
    layout = Layout(turn=turn, scale=measured(Fraction(97), Fraction(98)))
    page = imposed(MARENZ, layout).pages[0]
    turned = backs(page, layout)
    assert turned != page
    assert backs(turned, layout) == page
    assert all(layout.room.holds(each.frame) for each in turned)
