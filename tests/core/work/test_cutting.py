"""Pieces from a sheet."""

from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from paradestate.core.outline import Disc, Outline, Rectangle, millimetres
from paradestate.core.work.cutting import cut_count, sheet_count

A4 = Rectangle(width=millimetres(297), depth=millimetres(210))


def piece(width: int, depth: int) -> Rectangle:
    return Rectangle(width=millimetres(width), depth=millimetres(depth))


def disc(diameter: int) -> Disc:
    return Disc(diameter=millimetres(diameter))


@pytest.mark.parametrize(
    ("outline", "number"),
    [
        (piece(40, 20), 70),  # computations 3.17: 7 x 10
        (disc(30), 9 * 7),
        (piece(297, 210), 1),
        (piece(210, 297), 1),
        (piece(298, 10), 0),
        (piece(100, 90), 6),  # one column upright beside two turned: 2 + 4
    ],
)
def test_like_pieces_from_one_sheet(outline: Outline, number: int) -> None:
    assert cut_count(A4, outline) == number


def test_part_of_a_sheet_is_turned_where_that_gives_more() -> None:
    """7 x 5 of 3 x 2: six squares of three columns upright leave room for turned ones: 5, not 4."""
    assert cut_count(piece(7, 5), piece(3, 2)) == 5
    assert (7 // 3) * (5 // 2) == (7 // 2) * (5 // 3) + 1 == 4


def test_tiny_pieces_are_cut_one_way_without_trying_every_split() -> None:
    tiny = Rectangle(width=millimetres("0.01"), depth=millimetres("0.01"))
    assert cut_count(A4, tiny) == 29700 * 21000


def test_the_example_fits_on_one_sheet() -> None:
    found = sheet_count(A4, {piece(40, 20): 31, disc(30): 7, disc(40): 2})
    assert (found.enough, found.least) == (1, 1)
    assert found.is_exact


def test_seventy_take_one_sheet_and_seventy_one_two() -> None:
    assert sheet_count(A4, {piece(40, 20): 70}).enough == 1
    more = sheet_count(A4, {piece(40, 20): 71})
    assert (more.enough, more.least, more.is_exact) == (2, 1, False)


def test_nothing_takes_no_sheet() -> None:
    assert sheet_count(A4, {}).enough == 0
    assert sheet_count(A4, {disc(30): 0}).enough == 0


def test_what_is_too_large_is_left_out_and_named() -> None:
    found = sheet_count(A4, {piece(300, 300): 1, disc(30): 1})
    assert found.too_large == (piece(300, 300),)
    assert found.enough == 1


def test_a_piece_that_fits_one_way_across_only() -> None:
    """290 mm fits along the sheet, not across it."""
    assert sheet_count(A4, {piece(290, 100): 2}).enough == 1
    assert sheet_count(A4, {piece(290, 100): 3}).enough == 2


def naive(strips: list[int], *, along: int) -> int:
    """First fit, deepest strips first, one strip after the other, fullest sheets first."""
    sheets: list[int] = []
    for depth in sorted(strips, reverse=True):
        room = [place for place, rest in enumerate(sheets) if rest >= depth]
        if room:
            sheets[min(room, key=lambda place: sheets[place])] -= depth
        else:
            sheets.append(along - depth)
    return len(sheets)


@settings(max_examples=60)
@given(st.dictionaries(st.integers(3, 40), st.integers(1, 30), max_size=5))
def test_strips_of_many_pieces_are_laid_as_one_by_one(squares: dict[int, int]) -> None:
    """Squares on a square sheet have one way to be cut, so that the slow way is plain."""
    sheet = piece(50, 50)
    found = sheet_count(sheet, {piece(side, side): number for side, number in squares.items()})
    strips = [side for side, number in squares.items() for _ in range(-(-number // (50 // side)))]
    alone = sum(-(-number // (50 // side) ** 2) for side, number in squares.items())
    assert found.enough == min(naive(strips, along=50), alone)
    covered = Fraction(sum(side * side * number for side, number in squares.items()), 2500)
    assert covered <= found.least < covered + 1
    assert found.least <= found.enough
