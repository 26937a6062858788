"""Where to cut."""

from paradestate.core.imposition.cut_mark import LONGEST, cut_marks
from paradestate.core.imposition.frame import Frame
from paradestate.core.imposition.shelf import Laid
from paradestate.core.outline import millimetres
from tests.core.imposition.boxes import frame, overlap


def laid(box: Frame, *, is_round: bool = False) -> Laid:
    return Laid(piece=0, frame=box, is_turned=False, is_round=is_round)


BOX = frame(left=10, top=20, width=38, height=18)
NEXT = frame(left=50, top=20, width=38, height=18)


def test_eight_lines_lead_up_to_the_corners_from_outside() -> None:
    marks = cut_marks([laid(BOX)], gutter=millimetres(2))
    assert len(marks) == 8
    for mark in marks:
        across = mark.from_top == mark.to_top
        assert across or mark.from_left == mark.to_left
        assert abs(mark.from_left - mark.to_left) + abs(mark.from_top - mark.to_top) == 1
        line = frame(
            left=str(mark.from_left),
            top=str(mark.from_top),
            width=str(mark.to_left - mark.from_left),
            height=str(mark.to_top - mark.from_top),
        )
        assert not overlap(BOX, line)
        assert (mark.from_top in {20, 38}) if across else (mark.from_left in {10, 48})


def test_no_mark_runs_into_a_neighbour_a_gutter_away() -> None:
    for mark in cut_marks([laid(BOX), laid(NEXT)], gutter=millimetres(2)):
        assert not 11 < mark.from_left < 47 or mark.from_top <= 20 or mark.from_top >= 38
        assert mark.to_left <= 49 or mark.from_left >= 49


def test_a_line_that_two_pieces_share_is_drawn_once() -> None:
    below = frame(left=10, top=40, width=38, height=18)
    marks = cut_marks([laid(BOX), laid(below), laid(BOX)], gutter=millimetres(2))
    assert len(marks) == len(set(marks)) == 16


def test_marks_are_no_longer_than_is_needed() -> None:
    marks = cut_marks([laid(BOX)], gutter=millimetres(50))
    assert all(mark.to_left - mark.from_left in {0, LONGEST} for mark in marks)


def test_discs_have_none_nor_have_pieces_without_a_gutter() -> None:
    assert cut_marks([laid(BOX, is_round=True)], gutter=millimetres(2)) == ()
    assert cut_marks([laid(BOX)], gutter=millimetres(0)) == ()
