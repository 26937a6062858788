"""The search to the end whether rectangles go into one tray, beside the plainest one."""

from itertools import combinations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from paradestate.core.tray.filling import TooManyStepsError, filled
from paradestate.core.tray.thing import Put, Room
from tests.core.tray.plain_filling import goes_in
from tests.tray_things import SLOW, pieces

SIDES = st.integers(1, 6)


def lie_apart(room: Room, puts: tuple[Put, ...]) -> bool:
    inside = all(
        0 <= put.across <= room.width - put.piece.width
        and 0 <= put.deep <= room.depth - put.piece.depth
        for put in puts
    )
    return inside and all(
        one.across + one.piece.width <= other.across
        or other.across + other.piece.width <= one.across
        or one.deep + one.piece.depth <= other.deep
        or other.deep + other.piece.depth <= one.deep
        for one, other in combinations(puts, 2)
    )


@settings(max_examples=150, deadline=None, suppress_health_check=SLOW)
@given(
    width=SIDES,
    depth=SIDES,
    sizes=st.lists(st.tuples(SIDES, SIDES), max_size=5),
    may_turn=st.booleans(),
)
def test_it_answers_as_the_plainest_search_does(
    width: int, depth: int, sizes: list[tuple[int, int]], *, may_turn: bool
) -> None:
    room = Room(width=width, depth=depth)
    found = filled(room, pieces(sizes), may_turn=may_turn)
    assert (found is not None) is goes_in(room, sizes, may_turn=may_turn)
    if found is not None:
        assert sorted(put.piece.number for put in found) == list(range(len(sizes)))
        assert lie_apart(room, found)


def test_pieces_round_a_hole_are_found() -> None:
    """Four of 3 x 2 about a hole of 1 x 1: no straight cut parts them."""
    found = filled(Room(width=5, depth=5), pieces([(3, 2)] * 4 + [(1, 1)]))
    assert found is not None
    assert lie_apart(Room(width=5, depth=5), found)


def test_lengths_that_share_a_measure_are_searched_in_it() -> None:
    found = filled(Room(width=555, depth=555), pieces([(300, 200)] * 4))
    assert found is not None
    assert {put.piece.width for put in found} == {300, 200}


def test_five_where_the_area_would_do_do_not_go_in() -> None:
    assert filled(Room(width=10, depth=10), pieces([(4, 5)] * 5), may_turn=False) is None


def test_what_is_as_long_as_the_tray_is_pushed_to_a_side() -> None:
    room = Room(width=6, depth=5)
    found = filled(room, pieces([(2, 5), (4, 2), (1, 3), (3, 3)]), may_turn=False)
    assert found is not None
    assert sorted(put.piece.number for put in found) == [0, 1, 2, 3]
    assert lie_apart(room, found)
    assert filled(room, pieces([(2, 5), (4, 2), (4, 2), (1, 3)]), may_turn=False) is None


def test_what_led_nowhere_is_not_gone_through_again() -> None:
    """By area they would fill it; each order in which they are laid leads to the same steps."""
    assert filled(Room(width=10, depth=10), pieces([(3, 4)] * 7 + [(4, 4)])) is None
    assert filled(Room(width=9, depth=9), pieces([(2, 4)] * 6 + [(3, 5), (2, 2), (3, 4)])) is None
    assert filled(Room(width=10, depth=10), pieces([(3, 4)] * 8)) is not None


def test_a_valley_that_no_sum_of_widths_fills_is_not_gone_into() -> None:
    assert filled(Room(width=8, depth=9), pieces([(4, 5), (5, 6), (1, 2), (3, 6)])) is None
    assert filled(Room(width=7, depth=8), pieces([(5, 3), (6, 4), (3, 1), (2, 6)])) is not None


def test_a_search_that_is_too_long_says_so() -> None:
    with pytest.raises(TooManyStepsError):
        filled(Room(width=20, depth=20), pieces([(7, 3)] * 8 + [(5, 4)] * 9), steps=3)
