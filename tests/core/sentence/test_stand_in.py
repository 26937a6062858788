"""Who stands in for whom, in words."""

from paradestate.core.figure import StandIn
from paradestate.core.sentence.stand_in import stand_in_sentence


def test_one_stands_in_for_one() -> None:
    each = StandIn(kind="sergeant", stands_for="officer", number=1)
    assert stand_in_sentence(each) == "1 sergeant stands in for 1 officer."


def test_several_stand_in_for_others() -> None:
    each = StandIn(kind="sergeant", stands_for="rifleman", number=3)
    assert stand_in_sentence(each) == "3 sergeants stand in for riflemen."
