"""Colours and numbers of bodies."""

from dataclasses import replace

from paradestate.core.establishment import establishment
from paradestate.core.force import Force, Marks
from paradestate.core.mark.in_formation import colours_of, numbers_in_formation
from paradestate.core.unfolding import Body
from tests.forces import marenz


def companies(force: Force) -> list[Body]:
    made, _ = establishment(force)
    assert made is not None
    return [body for body in made.bodies if body.formation == "company"]


def test_bodies_are_numbered_among_those_of_their_formation() -> None:
    one, two, *_ = companies(marenz())
    other = replace(one, formation="battery")
    assert numbers_in_formation([one, other, two, one]) == (1, 1, 2, 3)
    assert numbers_in_formation([]) == ()


def test_no_colour_is_given_out_twice() -> None:
    marks = Marks(by_formation={"company": ("red", "blue")})
    assert colours_of(marks, companies(marenz())) == ("red", "blue", "", "")
    assert colours_of(Marks(), companies(marenz())) == ("", "", "", "")
