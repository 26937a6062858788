"""Which marks are left unused where not all are needed."""

from paradestate.core.mark.check_order import check_order
from paradestate.core.mark.code import Grid, Mark, grid_of, least_fields_apart
from paradestate.core.mark.difference import differences_of
from tests.core.mark.marked import pair

COLOURS = ("blue", "yellow", "sky", "brown")
KNOWN = differences_of(
    (
        pair("blue", "yellow"),
        pair("blue", "sky"),
        pair("blue", "brown", grey=0),
        pair("yellow", "sky", grey=600),
        pair("yellow", "brown"),
        pair("sky", "brown"),
    )
)


def confusable(grid: Grid) -> list[tuple[str, str]]:
    """Colours of each two marks with one sign and bars that differ by one."""
    marks = [(c, b, grid.sign(c, bars=b)) for c in range(grid.companies) for b in grid.bars]
    return [
        (COLOURS[one[0]], COLOURS[other[0]])
        for one in marks
        for other in marks
        if one[0] < other[0] and one[2] is other[2] and abs(one[1] - other[1]) == 1
    ]


def test_where_all_marks_are_needed_companies_keep_their_order() -> None:
    assert check_order(grid_of(4, (0, 1, 2, 3)), COLOURS, differences=KNOWN) == (0, 1, 2, 3)


def test_three_platoons_leave_the_most_alike_marks_unused() -> None:
    grid = grid_of(4, (1, 2, 3))
    order = check_order(grid, COLOURS, differences=KNOWN)
    ordered = Grid(companies=4, bars=(1, 2, 3), places=order)
    assert ("blue", "brown") in confusable(grid)
    assert ("yellow", "sky") in confusable(grid)
    assert ("blue", "brown") not in confusable(ordered)
    assert ("yellow", "sky") not in confusable(ordered)
    marks = [
        Mark(colour=COLOURS[c], value="", bars=b, sign=ordered.sign(c, bars=b))
        for c in range(4)
        for b in (1, 2, 3)
    ]
    assert least_fields_apart(marks) == 2


def test_too_many_signs_or_one_colour_twice_keep_the_order() -> None:
    assert check_order(grid_of(7, (1, 2)), tuple("abcdefg"), differences=KNOWN) == tuple(range(7))
    assert check_order(grid_of(2, (1, 2)), ("blue", "blue"), differences=KNOWN) == (0, 1)


def test_a_colour_that_nobody_describes_plays_no_part_in_the_order() -> None:
    order = check_order(grid_of(4, (1, 2, 3)), (*COLOURS[:3], "puce"), differences=KNOWN)
    assert order == check_order(grid_of(4, (1, 2, 3)), (*COLOURS[:3], "mauve"), differences=KNOWN)
    assert sorted(order) == [0, 1, 2, 3]
    apart = abs(order[1] - order[2])
    assert apart not in {1, 3}, "yellow and sky, alike in grey, would share a sign"
