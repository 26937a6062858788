"""Round numbers along an axis."""

import pytest

from paradestate.sheet.axis import round_step, ticks


@pytest.mark.parametrize(
    ("span", "step"), [(1, 1), (6, 1), (7, 2), (13, 5), (31, 10), (6000, 1000), (6001, 2000)]
)
def test_a_step_is_one_two_or_five_times_a_power_of_ten(span: int, step: int) -> None:
    assert round_step(span, most=6) == step


def test_ticks_reach_from_the_least_to_the_greatest() -> None:
    assert ticks(47, 53) == (47, 48, 49, 50, 51, 52, 53)
    assert ticks(470, 530) == (470, 480, 490, 500, 510, 520, 530)
    assert ticks(0, 15, most=5) == (0, 5, 10, 15)
    assert ticks(3, 3) == (3,)
