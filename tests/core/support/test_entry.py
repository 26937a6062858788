"""Supporting troops as values."""

from fractions import Fraction

import pytest

from paradestate.core.support.entry import Band, Entry, GroupLimit, Position
from paradestate.core.support.mission import Missions


@pytest.mark.parametrize(
    ("least", "most", "text"), [(3, 3, "3"), (2, 4, "2-4"), (9, None, "9 or more")]
)
def test_a_band_is_written_as_its_owner_does(least: int, most: int | None, text: str) -> None:
    assert str(Band(least=least, most=most, allows=0)) == text


@pytest.mark.parametrize(
    ("points", "least", "most"), [(18, 7, 6), (50, 17, 17), (51, 18, 17), (1, 1, 0), (0, 0, 0)]
)
def test_a_share_of_the_points_holds_whole_points_only(points: int, least: int, most: int) -> None:
    share = Fraction(34, 100)
    limit = GroupLimit(group="armour", least_points=share, most_points=share)
    assert (limit.least_spent(points), limit.most_spent(points)) == (least, most)


def test_without_a_share_a_group_may_take_or_bring_any_points() -> None:
    limit = GroupLimit(group="armour", most=1)
    assert (limit.least_spent(-5), limit.most_spent(-5)) == (None, None)


@pytest.mark.parametrize(
    ("place", "missions", "is_one"),
    [
        (Position.OFF_TABLE, None, True),
        (Position.EITHER, Missions(), True),
        (Position.EITHER, None, False),
        (Position.ON_TABLE, None, False),
    ],
)
def test_a_fire_mission_comes_from_off_the_table_or_is_rolled_for(
    place: Position, missions: Missions | None, *, is_one: bool
) -> None:
    entry = Entry(name="medium mortars", cost={1: 2}, place=place, missions=missions)
    assert entry.is_fire_mission is is_one
