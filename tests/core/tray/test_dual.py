"""What is too much for a tray though its area isn't, beside a search to the end."""

from hypothesis import given, settings
from hypothesis import strategies as st

from paradestate.core.tray.dual import are_too_much
from paradestate.core.tray.thing import Room
from tests.core.tray.plain_filling import goes_in
from tests.tray_things import SLOW, pieces

SIDES = st.integers(1, 6)


def test_four_that_are_longer_than_half_a_side_do_not_go_in() -> None:
    """Three of 6 x 6 take less than the area of 10 x 12, and no two lie beside each other."""
    assert are_too_much(Room(width=10, depth=12), pieces([(6, 6)] * 3))
    assert not are_too_much(Room(width=10, depth=12), pieces([(6, 6)] * 2))


def test_turned_they_may_go_in() -> None:
    room, long = Room(width=10, depth=4), pieces([(2, 4), (4, 2), (6, 2), (2, 4)])
    assert not are_too_much(room, long)
    assert are_too_much(Room(width=4, depth=10), pieces([(6, 2)]), may_turn=False)


@settings(max_examples=60, deadline=None, suppress_health_check=SLOW)
@given(
    width=SIDES,
    depth=SIDES,
    sizes=st.lists(st.tuples(SIDES, SIDES), max_size=4),
    may_turn=st.booleans(),
)
def test_what_is_refused_does_not_go_in(
    width: int, depth: int, sizes: list[tuple[int, int]], *, may_turn: bool
) -> None:
    room, given_pieces = Room(width=width, depth=depth), pieces(sizes)
    if are_too_much(room, given_pieces, may_turn=may_turn):
        assert not goes_in(room, sizes, may_turn=may_turn)
