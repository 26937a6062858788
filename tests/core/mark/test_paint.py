"""Colours at hand."""

from paradestate.core.force import Marks
from paradestate.core.mark.paint import USUAL, at_hand, value_of

MARKS = Marks(colours={"bone": "E3DAC9", "brown": "5A3A1B"})


def test_an_owners_colour_goes_before_the_usual_one_of_its_name() -> None:
    assert value_of("brown", MARKS) == "5A3A1B"
    assert value_of("black", MARKS) == USUAL["black"]
    assert value_of("puce", MARKS) == ""


def test_the_owners_colours_come_first_and_none_twice() -> None:
    hand = at_hand(MARKS)
    assert list(hand)[:2] == ["bone", "brown"]
    assert len(hand) == 10
    assert hand["brown"] == "5A3A1B"
