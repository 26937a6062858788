"""Pieces laid close: none over another, all inside, and what is left free is free."""

from hypothesis import given, settings
from hypothesis import strategies as st

from paradestate.core.tray.thing import Put, Room
from paradestate.core.tray.tight import FITS, Fit, Tight, least_left_over, nearest_to_the_far_side
from tests.core.tray.test_filling import lie_apart
from tests.tray_things import SLOW, pieces

SIZES = st.lists(st.tuples(st.integers(1, 9), st.integers(1, 9)), max_size=10)


@settings(max_examples=60, deadline=None, suppress_health_check=SLOW)
@given(SIZES, st.sampled_from(FITS))
def test_nothing_lies_over_another_and_the_free_rectangles_are_free(
    sizes: list[tuple[int, int]], fit: Fit
) -> None:
    room = Room(width=15, depth=12)
    tight = Tight(room)
    for piece in pieces(sizes):
        found = tight.best(piece, fit=fit)
        if found is not None:
            tight.put(found[1])
    assert lie_apart(room, tuple(tight.puts))
    taken = {
        (x, y)
        for put in tight.puts
        for x in range(put.across, put.across + put.piece.width)
        for y in range(put.deep, put.deep + put.piece.depth)
    }
    free = {
        (x, y)
        for each in tight.free
        for x in range(each.across, each.across + each.width)
        for y in range(each.deep, each.deep + each.depth)
    }
    every = {(x, y) for x in range(room.width) for y in range(room.depth)}
    assert free == every - taken


def test_a_piece_goes_where_least_is_left_over_or_nearest() -> None:
    tight = Tight(Room(width=10, depth=10))
    tight.put(Put(piece=pieces([(6, 8)])[0], across=0, deep=0))
    narrow = pieces([(4, 2)])[0]
    beside = tight.best(narrow, fit=nearest_to_the_far_side)
    assert beside is not None
    assert (beside[1].across, beside[1].deep) == (6, 0)
    close = tight.best(pieces([(2, 2)])[0], fit=least_left_over)
    assert close is not None
    assert (close[1].across, close[1].deep) == (0, 8)


def test_all_or_none_says_which() -> None:
    tight = Tight(Room(width=4, depth=4))
    trial = tight.copy()
    assert not trial.put_all(pieces([(4, 2), (3, 3)]), fit=least_left_over)
    assert tight.put_all(pieces([(4, 2), (2, 4)]), fit=least_left_over)
    assert (len(trial.puts), len(tight.puts)) == (1, 2)
