"""Pairs of colours, and the viewer who sees them worst."""

from paradestate.core.mark.difference import THRESHOLD, Viewer, closest, differences_of
from tests.core.mark.marked import pair

PAIRS = (
    pair("a", "b", usual=5_240, green_weak=300, grey=440),
    pair("a", "c", blue_weak=THRESHOLD, grey=THRESHOLD),
    pair("b", "c", red_weak=THRESHOLD - 1, grey=0),
)


def test_the_least_difference_is_that_of_the_weakest_viewer_of_colours() -> None:
    first, second, third = PAIRS
    assert (first.weakest, first.least) == (Viewer.GREEN_WEAK, 300)
    assert (second.weakest, second.least) == (Viewer.BLUE_WEAK, THRESHOLD)
    assert [each.is_alike for each in (first, second, third)] == [True, False, True]


def test_grey_is_no_part_of_it_but_is_told() -> None:
    assert PAIRS[2].least == THRESHOLD - 1
    assert [each.is_alike_in_grey for each in PAIRS] == [True, False, True]


def test_of_viewers_who_see_alike_the_first_is_named() -> None:
    assert pair("a", "b").weakest is Viewer.USUAL


def test_the_closest_pair_of_all_and_to_one_viewer() -> None:
    assert closest(PAIRS) == PAIRS[0]
    assert closest(PAIRS, viewer=Viewer.GREY) == PAIRS[2]
    assert closest(PAIRS, viewer=Viewer.USUAL) == PAIRS[1]
    assert closest(()) is None
    assert closest((), viewer=Viewer.GREY) is None


def test_pairs_are_found_whichever_comes_first() -> None:
    known = differences_of(PAIRS)
    assert known.of("c", "b") == known.of("b", "c") == PAIRS[2]
    assert list(known.among(["c", "a", "c", "unknown"])) == [PAIRS[1]]
