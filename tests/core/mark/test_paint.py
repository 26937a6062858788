"""Colours at hand."""

from paradestate.core.force import Marks
from paradestate.core.mark.paint import USUAL, at_hand, own_colours, value_of, values_of

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


def test_colours_are_named_once_with_their_values_and_without_those_that_have_none() -> None:
    marks = Marks(by_formation={"company": ("puce", "bone"), "squadron": ("bone", "black")})
    assert own_colours(marks) == ("puce", "bone", "black")
    known = values_of((*own_colours(marks), "black"), MARKS)
    assert list(known.items()) == [("bone", "E3DAC9"), ("black", USUAL["black"])]
