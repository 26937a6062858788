"""Rows: how they are filled, shared, turned and staggered, beside the check values."""

from paradestate.core.tray.row import SHARED, fits, puts, rows
from paradestate.core.tray.thing import Piece, Room
from tests.core.tray.test_filling import lie_apart
from tests.tray_things import pieces

ROOM = Room(width=302, depth=202)


def piece(
    number: int, size: tuple[int, int], *, pattern: str = "", is_round: bool = False
) -> Piece:
    return Piece(number=number, pattern=pattern, width=size[0], depth=size[1], is_round=is_round)


def disc(number: int, diameter: int, *, pattern: str = "disc") -> Piece:
    return piece(number, (diameter, diameter), pattern=pattern, is_round=True)


def test_as_they_lie_63_go_in_and_turned_52() -> None:
    """3.18: 7 x 9 and 13 x 4."""
    lain = rows(ROOM, [pieces([(42, 22)] * 63)])
    assert lain is not None
    assert [len(row.pieces) for row in lain] == [7] * 9
    assert rows(ROOM, [pieces([(42, 22)] * 64)]) is None
    turned = rows(Room(width=302, depth=42), [pieces([(42, 22)] * 13)])
    assert turned is not None
    assert [(len(row.pieces), row.depth) for row in turned] == [(13, 42)]
    assert rows(Room(width=302, depth=42), [pieces([(42, 22)] * 14)]) is None
    assert 302 // 22 * (202 // 42) == 52


def test_each_company_has_its_row_and_odd_ones_share_one() -> None:
    """3.18: four rows of seven, then one of 42 mm with discs and trucks: 130 mm of 200."""
    lots = [
        [*(piece(at * 10 + each, (42, 22)) for each in range(7)), disc(at * 10 + 8, 32)]
        for at in range(4)
    ]
    of_none = [disc(50, 42), disc(51, 32), disc(52, 32), piece(53, (17, 36)), piece(54, (17, 36))]
    made = rows(ROOM, lots, of_none=of_none)
    assert made is not None
    assert [row.lot for row in made] == [0, 1, 2, 3, SHARED]
    assert sum(row.depth for row in made) == 130
    assert made[-1].width == 42 + 6 * 32 + 2 * 17 == 268


def test_too_many_discs_for_a_row_are_staggered() -> None:
    eight = [disc(at, 42) for at in range(8)]
    made = rows(Room(width=302, depth=72), [eight])
    assert made is not None
    assert made[0].stagger is not None
    last = list(puts(Room(width=302, depth=72), made))
    assert (last[1].deep, last[-1].across) == (30, 7 * 30)
    assert rows(Room(width=302, depth=60), [eight]) is None


def test_several_patterns_are_staggered_together_where_one_alone_does_not_do() -> None:
    many = [disc(at, 42, pattern="a" if at < 8 else "b") for at in range(16)]
    made = rows(Room(width=302, depth=124), [many])
    assert made is not None
    assert [row.stagger is not None for row in made] == [True, True]


def test_discs_that_can_not_be_staggered_lie_straight() -> None:
    made = rows(Room(width=40, depth=84), [[disc(0, 40), disc(1, 40)]])
    assert made is not None
    assert [row.stagger for row in made] == [None, None]
    assert rows(Room(width=40, depth=83), [[disc(0, 40), disc(1, 40), disc(2, 4)]]) is None


def test_an_odd_one_goes_to_the_end_of_its_company_s_row() -> None:
    made = rows(ROOM, [[piece(0, (42, 22)), disc(1, 22), piece(2, (42, 22))]])
    assert made is not None
    assert [[each.number for each in row.pieces] for row in made] == [[0, 1, 2]]


def test_what_is_too_wide_as_it_lies_is_turned() -> None:
    made = rows(Room(width=30, depth=100), [[piece(0, (90, 20))]])
    assert made is not None
    assert made[0].pieces[0].width == 20


def test_rows_of_one_company_s_own_or_of_all_are_tried_too() -> None:
    """Deep rows of two companies share where each for itself would take too much."""
    lots = [[piece(0, (40, 50)), piece(1, (40, 20))], [piece(2, (40, 50)), piece(3, (40, 20))]]
    made = rows(Room(width=80, depth=70), lots)
    assert made is not None
    assert fits(Room(width=80, depth=70), made)
    assert lie_apart(Room(width=80, depth=70), tuple(puts(Room(width=80, depth=70), made)))


def test_more_than_the_area_is_refused_at_once() -> None:
    assert rows(Room(width=10, depth=10), [pieces([(10, 10), (1, 1)])]) is None
