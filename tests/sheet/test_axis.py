"""Round numbers along an axis."""

import pytest

from paradestate.sheet.axis import round_step, ticks, with_room


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


def test_all_numbers_are_said_where_they_have_room() -> None:
    assert list(with_room((13, 14, 15), first=None, room=20, pitch=20)) == [0, 1, 2]


def test_of_many_numbers_the_first_and_round_ones_beside_it_are_said() -> None:
    places = with_room(range(10, 31), first=19, room=25, pitch=10)
    assert [place + 10 for place in places] == [19, 10, 15, 25, 30]
