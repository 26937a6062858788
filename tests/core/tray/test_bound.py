"""The least number of trays by area, beside the check values of the design."""

from fractions import Fraction
from itertools import product

from hypothesis import given, settings
from hypothesis import strategies as st

from paradestate.core.tray.bound import (
    RATIO_OF_CIRCLE,
    area_of,
    bound,
    greatest_sum,
    reach,
)
from paradestate.core.tray.thing import Piece, Room
from tests.tray_things import SLOW, pieces

ROOM = Room(width=302, depth=202)


def test_as_many_alike_stands_as_the_check_value_says() -> None:
    """3.18: 66 by area, 64 with each side cut to the greatest reachable sum, 302 x 198."""
    assert ROOM.width * ROOM.depth // (42 * 22) == 66
    cut = reach(ROOM, pieces([(42, 22)] * 66))
    assert cut == Room(width=302, depth=198)
    assert cut.width * cut.depth // (42 * 22) == 64


def test_the_better_bound_asks_for_a_second_tray_that_the_area_does_not() -> None:
    stands = pieces([(42, 22)] * 65)
    least = bound([ROOM, ROOM], pieces_in=[stands, stands])
    assert (least.by_area, least.by_reach, least.least) == (1, 2, 2)


def test_discs_count_by_a_little_less_than_their_area() -> None:
    disc = pieces([(42, 42)], is_round=True)
    assert area_of(disc[0]) == RATIO_OF_CIRCLE * 42**2 / 4
    assert Fraction(314, 100) < RATIO_OF_CIRCLE < Fraction(31416, 10000)
    least = bound([ROOM, ROOM], pieces_in=[disc * 45, disc * 45])
    assert (least.by_area, least.by_reach) == (2, 0)


def test_trays_that_hold_too_little_together_need_one_more_than_there_are() -> None:
    stands = pieces([(302, 202)] * 3)
    assert bound([ROOM, ROOM], pieces_in=[stands, stands]).by_area == 3


def test_the_largest_trays_are_counted_first() -> None:
    small, stands = Room(width=102, depth=102), pieces([(42, 22)] * 60)
    assert bound([small, ROOM], pieces_in=[stands, stands]).by_area == 1


def test_no_turning_reaches_less() -> None:
    one = [Piece(number=0, pattern="", width=42, depth=22, is_round=False)]
    assert reach(ROOM, one, may_turn=False) == Room(width=42, depth=22)


@settings(max_examples=50, deadline=None, suppress_health_check=SLOW)
@given(
    st.lists(st.lists(st.integers(1, 12), min_size=1, max_size=2), max_size=5), st.integers(0, 30)
)
def test_the_greatest_sum_is_that_of_all_sums(choices: list[list[int]], most: int) -> None:
    sums = {sum(each) for each in product(*([0, *lengths] for lengths in choices))}
    assert greatest_sum(choices, most=most) == max(one for one in sums if one <= most)
