"""Stand patterns."""

from paradestate.core.outline import Disc, millimetres
from paradestate.core.stand import StandPattern


def test_a_model_without_a_base_has_the_outline_of_its_footprint() -> None:
    disc = Disc(diameter=millimetres(20))
    assert StandPattern(name="gun", base=None, footprint=disc).outline == disc
    assert StandPattern(name="gun", base=disc).outline == disc
    assert StandPattern(name="gun", base=None).outline is None
