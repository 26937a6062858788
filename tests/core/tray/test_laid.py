"""Rows seen from places alone."""

from paradestate.core.tray.laid import laid
from tests.tray_things import case, lies, thing

S, D = thing("s", 40, 20), thing("d", 40)


def test_a_row_ends_where_a_cut_meets_nothing() -> None:
    tray = laid(
        case(),
        [
            lies(S, across=42, deep=0),
            lies(S, across=0, deep=0),
            lies(S, across=0, deep=22),
            lies(S, across=60, deep=32),
        ],
    )
    first, second = tray.rows
    assert [each.across for each in first.lying] == [0, 42]
    assert (first.is_straight, first.is_staggered) == (True, False)
    assert [second.starts, second.ends, second.is_straight] == [22, 52, False]
    assert not second.is_staggered
    assert [tray.depth_taken, tray.width_taken] == [54, 100]


def test_two_lines_of_discs_are_read_by_turns() -> None:
    lines = [lies(D, across=0, deep=0), lies(D, across=60, deep=0), lies(D, across=30, deep=30)]
    row = laid(case(), lines).rows[0]
    assert [each.across for each in row.lying] == [0, 30, 60]
    assert row.is_staggered


def test_three_lines_are_read_line_by_line() -> None:
    lines = [lies(D, across=0, deep=0), lies(D, across=30, deep=30), lies(D, across=0, deep=60)]
    assert [each.deep for each in laid(case(), lines).rows[0].lying] == [0, 30, 60]


def test_what_is_taken_never_exceeds_the_tray() -> None:
    assert laid(case(), [lies(S, across=0, deep=180)]).depth_taken == 200
    empty = laid(case(), [])
    assert [empty.depth_taken, empty.width_taken, empty.lying] == [0, 0, ()]
