"""Marks as one viewer sees them, with brackets at what he takes for one another."""

import re
from itertools import pairwise

from paradestate.core.mark.code import Mark, Sign
from paradestate.core.mark.difference import Viewer
from paradestate.sheet.mark_sheet import mark_sheet, rows_of, sheet_width
from tests.core.mark.marked import marked, marks_of, pair
from tests.forces import marenz

MARKS = tuple(marks_of(marenz()).by_mark)
VALUES = {
    name: marenz().marks.colours[name] for name in ("royal blue", "mid yellow", "sky blue", "brown")
}
ROWS = rows_of(MARKS, VALUES)
PAIRS = tuple(marked(marenz()).differences.among(VALUES))


def test_a_row_for_each_colour_with_its_marks_by_bars() -> None:
    assert [row.colour for row in ROWS] == list(VALUES)
    assert all([mark.bars for mark in row.marks] == [0, 1, 2, 3] for row in ROWS)


def test_a_colour_that_nobody_bears_is_bare() -> None:
    (row,) = rows_of((), {"puce": "CC8899"})
    assert row.marks == (Mark(colour="puce", value="CC8899", bars=0, sign=None),)


def test_what_is_told_apart_has_no_bracket() -> None:
    made = mark_sheet(ROWS, PAIRS, viewer=Viewer.USUAL)
    assert "var(--red)" not in made.svg
    assert made.words == "As most see: no two colours are alike."


def test_what_runs_together_in_grey_is_joined_with_its_number() -> None:
    made = mark_sheet(ROWS, PAIRS, viewer=Viewer.GREY)
    assert made.svg.count("var(--red)") == 2
    assert ">0.0</text>" in made.svg
    assert ">6.0</text>" in made.svg
    assert made.words == (
        "In grey: alike are royal blue and brown (0.0) and mid yellow and sky blue (6.0)."
    )


def test_all_viewers_are_drawn_at_one_scale() -> None:
    sizes = {
        re.search(r'viewBox="([^"]+)"', mark_sheet(ROWS, PAIRS, viewer=viewer).svg)[1]  # type: ignore[index]
        for viewer in Viewer
    }
    assert len(sizes) == 1


def test_brackets_never_lie_on_one_another_and_stay_in_the_picture() -> None:
    names = "abcdef"
    rows = rows_of(
        (Mark(colour="a", value="111111", bars=0, sign=Sign.RING),), dict.fromkeys(names, "111111")
    )
    pairs = [pair(one, other, usual=at) for at, (one, other) in enumerate(pairwise(names))]
    pairs += [pair("a", "f", usual=7), pair("b", "e", usual=8), pair("c", "x", usual=0)]
    made = mark_sheet(rows, pairs, viewer=Viewer.USUAL)
    lines = re.findall(r'd="M[\d.]+ ([\d.]+)H([\d.]+)V([\d.]+)H', made.svg)
    assert len(lines) == 7
    spans = [(float(x), float(top), float(foot)) for top, x, foot in lines]
    for at, (x, top, foot) in enumerate(spans):
        assert x < sheet_width(rows, pairs)
        for other_x, other_top, other_foot in spans[:at]:
            assert x != other_x or top > other_foot or foot < other_top
