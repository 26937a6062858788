"""Games as values."""

from paradestate.core.dice import LookUp, Row
from paradestate.core.game import allowance_roll
from tests.core.play.test_faces import dice


def test_the_points_are_rolled_with_the_dice_of_the_allowance_or_of_its_rows() -> None:
    rows = LookUp(roll=dice("1d6"), gives=(Row(least=1, most=6, gives=20),))
    assert str(allowance_roll(dice("18 + 2d6"))) == "18 + 2d6"
    assert str(allowance_roll(rows)) == "1d6"
