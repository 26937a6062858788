"""Colours as five viewers see them, against check values and what a colour library has."""

import pytest
from coloraide.filters.cvd import MACHADO_DEUTAN, MACHADO_PROTAN, MACHADO_TRITAN

from paradestate.core.mark.difference import COLOUR_VIEWERS, Pair, Viewer, differences_of
from paradestate.core.mark.paint import USUAL
from paradestate.sheet.sight import MATRICES, difference, pairs_of, seen

FULL = 10
"""The step of full severity in the library's tables, of tenths."""
ALL = differences_of(pairs_of(USUAL))


def shown(pair: Pair) -> list[str]:
    return [f"{apart / 100:.1f}" for apart in pair.by_viewer.values()]


@pytest.mark.parametrize(
    ("viewer", "published"),
    [
        (Viewer.RED_WEAK, MACHADO_PROTAN),
        (Viewer.GREEN_WEAK, MACHADO_DEUTAN),
        (Viewer.BLUE_WEAK, MACHADO_TRITAN),
    ],
)
def test_the_matrices_are_those_that_a_colour_library_has(
    viewer: Viewer, published: dict[int, list[list[float]]]
) -> None:
    assert [list(row) for row in MATRICES[viewer]] == published[FULL]


def test_brick_red_and_leaf_green() -> None:
    """Check values of the design: 52.4, 12.7, 3.0, 49.9, grey 4.4."""
    assert shown(ALL.of("brick red", "leaf green")) == ["52.4", "12.7", "3.0", "49.9", "4.4"]


def test_royal_blue_and_violet() -> None:
    """Check values of the design: 17.9, 3.9, 8.6, 37.0."""
    assert shown(ALL.of("royal blue", "violet"))[:4] == ["17.9", "3.9", "8.6", "37.0"]


def test_the_four_colours_of_the_example() -> None:
    """Check values of the design: least 38.1, 35.8, 38.1, 34.0; in grey 0.0 and 6.0."""
    four = list(ALL.among(["royal blue", "mid yellow", "sky blue", "brown"]))
    least = [min(pair.by_viewer[viewer] for pair in four) for viewer in COLOUR_VIEWERS]
    assert [f"{apart / 100:.1f}" for apart in least] == ["38.1", "35.8", "38.1", "34.0"]
    assert shown(ALL.of("royal blue", "brown"))[4] == "0.0"
    assert shown(ALL.of("mid yellow", "sky blue"))[4] == "6.0"


def test_what_a_viewer_sees_stays_within_what_a_screen_shows() -> None:
    for value in ("000000", "FFFFFF", "FF0000", "00FF00", "0000FF"):
        for viewer in Viewer:
            found = seen(value, viewer)
            assert len(found) == 6
            assert int(found, 16) >= 0


def test_most_people_see_a_colour_as_it_is_and_grey_is_grey() -> None:
    assert seen("1F4E9E", Viewer.USUAL) == "1F4E9E"
    grey = seen("1F4E9E", Viewer.GREY)
    assert grey[:2] == grey[2:4] == grey[4:]
    assert seen("808080", Viewer.GREY) == "808080"


def test_a_colour_is_nought_from_itself_and_both_ways_alike() -> None:
    assert difference("1F4E9E", "1F4E9E", viewer=Viewer.BLUE_WEAK) == 0
    there = difference("1F4E9E", "F2C230", viewer=Viewer.RED_WEAK)
    assert there == difference("F2C230", "1F4E9E", viewer=Viewer.RED_WEAK) > 0
