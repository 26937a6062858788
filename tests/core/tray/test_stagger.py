"""Staggered discs, beside the check value of the design, by their distances."""

from itertools import combinations, pairwise

from hypothesis import given, settings
from hypothesis import strategies as st

from paradestate.core.tray.stagger import Stagger, fewest_steps, loosened, rise, shallowest, spots
from tests.tray_things import SLOW

MARKER, WIDTH = 4200, 30200


def are_apart(stagger: Stagger) -> bool:
    """Whether no two of the discs overlap, by the squares of their distances."""
    return all(
        (x - u) ** 2 + (y - v) ** 2 >= stagger.diameter**2
        for (x, y), (u, v) in combinations(stagger.corners(), 2)
    )


def test_eight_markers_staggered_by_30_mm_are_245_8_mm_wide() -> None:
    """3.18: 40 + 7 x sqrt(42^2 - 30^2) = 245.8, at most 300; seven go into a straight row."""
    found = shallowest(8, diameter=MARKER, width=WIDTH)
    assert found is not None
    assert found.depth < MARKER + 3000
    loose = loosened(found, depth=7200)
    assert (loose.offset, loose.half, loose.width - 200) == (3000, 2940, 24580)
    assert are_apart(found)
    assert are_apart(loose)
    assert shallowest(7, diameter=MARKER, width=WIDTH) is None


def test_the_next_less_would_be_too_near() -> None:
    """Rounded up by less than a hundredth of a millimetre."""
    assert 2939**2 + 3000**2 < MARKER**2 <= 2940**2 + 3000**2
    assert rise(3000, diameter=MARKER) == 2940
    assert rise(MARKER, diameter=MARKER) == 0


def test_lines_are_read_by_turns_and_three_line_by_line() -> None:
    two = shallowest(8, diameter=MARKER, width=WIDTH)
    many = shallowest(24, diameter=MARKER, width=WIDTH)
    assert two is not None
    assert many is not None
    assert all(one[0] < other[0] for one, other in pairwise(two.corners()))
    assert many.lines > 2
    assert [y for _, y in many.corners()] == sorted(y for _, y in many.corners())
    assert loosened(many, depth=30000) == many


def test_where_there_is_no_more_depth_nothing_is_loosened() -> None:
    found = shallowest(8, diameter=MARKER, width=WIDTH)
    assert found is not None
    assert loosened(found, depth=found.depth) == found


def test_a_disc_wider_than_the_tray_has_no_lines() -> None:
    assert shallowest(2, diameter=400, width=399) is None
    assert shallowest(1, diameter=400, width=399) is None


def test_steps_are_the_fewest_with_enough_spots() -> None:
    for lines in (2, 3, 4):
        for number in range(1, 12):
            steps = fewest_steps(number, lines=lines)
            assert spots(steps, lines=lines) >= number
            assert steps == 0 or spots(steps - 1, lines=lines) < number


@settings(max_examples=80, deadline=None, suppress_health_check=SLOW)
@given(st.integers(1, 30), st.integers(2, 60), st.integers(2, 300), st.integers(0, 100))
def test_no_two_discs_overlap_and_all_are_within(
    number: int, diameter: int, width: int, more: int
) -> None:
    found = shallowest(number, diameter=diameter, width=width)
    if found is not None:
        loose = loosened(found, depth=found.depth + more)
        for each in (found, loose):
            assert len(each.corners()) == number
            assert are_apart(each)
            assert each.width <= width
        assert loose.depth <= found.depth + more
