"""Boxes on a page."""

from paradestate.core.outline import millimetres
from tests.core.imposition.boxes import frame, holds, overlap

BOX = frame(left=10, top=20, width=38, height=18)


def test_a_box_knows_its_other_edges() -> None:
    assert BOX.right == 48
    assert BOX.bottom == 38


def test_a_box_grows_on_every_side() -> None:
    assert BOX.grown(millimetres(1)) == frame(left=9, top=19, width=40, height=20)


def test_a_box_holds_what_lies_within_it_even_at_its_edge() -> None:
    assert holds(BOX, BOX)
    assert holds(BOX, frame(left=11, top=20, width=1, height=18))
    for outside in (
        frame(left=9, top=20, width=1, height=1),
        frame(left=10, top=19, width=1, height=1),
        frame(left=10, top=20, width=39, height=1),
        frame(left=10, top=20, width=1, height=19),
    ):
        assert not holds(BOX, outside)


def test_boxes_that_touch_dont_overlap() -> None:
    assert overlap(BOX, frame(left=47, top=37, width=5, height=5))
    for beside in (
        frame(left=48, top=20, width=5, height=5),
        frame(left=5, top=20, width=5, height=5),
        frame(left=10, top=38, width=5, height=5),
        frame(left=10, top=15, width=5, height=5),
    ):
        assert not overlap(BOX, beside)
