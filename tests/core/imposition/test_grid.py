"""How many equal pieces a page takes."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from paradestate.core.imposition.frame import Frame
from paradestate.core.imposition.grid import Grid, along, lies_turned, per_page
from paradestate.core.imposition.layout import Layout
from paradestate.core.imposition.paper_size import LETTER
from paradestate.core.outline import millimetres
from tests.core.imposition.boxes import frame


def most(room: Frame, *, width: int, height: int, gutter: int = 2) -> Grid:
    return per_page(
        room,
        width=millimetres(width),
        height=millimetres(height),
        gutter=millimetres(gutter),
    )


def test_an_a4_takes_56_labels_upright_and_63_turned() -> None:
    """Computation 3.19: A4, rim 8, labels of 38 x 18, gutter 2."""
    room, gutter = Layout().room, millimetres(2)
    wide, deep = millimetres(38), millimetres(18)
    assert along(room.width, wide, gutter=gutter) * along(room.height, deep, gutter=gutter) == 56
    assert along(room.width, deep, gutter=gutter) * along(room.height, wide, gutter=gutter) == 63
    assert most(room, width=38, height=18).number == 63
    assert lies_turned(room, width=wide, height=deep, gutter=gutter)
    assert not lies_turned(room, width=deep, height=wide, gutter=gutter)


def test_a_letter_takes_more_of_them_upright() -> None:
    assert most(Layout(size=LETTER).room, width=38, height=18).number == 65


def test_some_of_each_way_may_be_more_than_all_of_one() -> None:
    room = frame(left=0, top=0, width=50, height=30)
    assert most(room, width=30, height=20, gutter=0) == Grid(upright=1, turned=1)
    deep = frame(left=0, top=0, width=30, height=50)
    assert most(deep, width=20, height=30, gutter=0) == Grid(upright=1, turned=1)


def test_what_is_larger_than_the_room_goes_in_not_at_all() -> None:
    assert most(frame(left=0, top=0, width=50, height=20), width=60, height=60).number == 0


@pytest.mark.unmeasured
@given(
    across=st.integers(1, 40),
    deep=st.integers(1, 40),
    width=st.integers(1, 12),
    height=st.integers(1, 12),
    gutter=st.integers(0, 2),
)
@settings(max_examples=60)
def test_no_grid_has_more_than_the_area_allows_or_less_than_one_block(
    across: int, deep: int, width: int, height: int, gutter: int
) -> None:
    room = frame(left=0, top=0, width=across, height=deep)
    number = most(room, width=width, height=height, gutter=gutter).number
    upright = ((across + gutter) // (width + gutter)) * ((deep + gutter) // (height + gutter))
    turned = ((across + gutter) // (height + gutter)) * ((deep + gutter) // (width + gutter))
    assert max(upright, turned) <= number
    assert number * (width + gutter) * (height + gutter) <= (across + gutter) * (deep + gutter)
