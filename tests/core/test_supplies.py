"""What the owner says of supplies, and what is usual where he says nothing."""

from fractions import Fraction

from paradestate.core.outline import Rectangle, millimetres
from paradestate.core.supplies import Millilitres, Supplies

SAID = Supplies(
    film=millimetres("0.05"),
    wasted=Fraction(1, 4),
    spare=Fraction(0),
    bottle=Millilitres(Fraction(20)),
    sheet=Rectangle(width=millimetres(100), depth=millimetres(50)),
)


def taken(supplies: Supplies) -> tuple[object, ...]:
    return (
        supplies.film_taken,
        supplies.wasted_taken,
        supplies.spare_taken,
        supplies.bottle_taken,
        supplies.sheet_taken,
    )


def test_what_is_said_holds_even_where_it_is_nought() -> None:
    assert taken(SAID) == (SAID.film, SAID.wasted, 0, SAID.bottle, SAID.sheet)


def test_else_the_usual_is_reckoned_with() -> None:
    sheet = Rectangle(width=millimetres(297), depth=millimetres(210))
    assert taken(Supplies()) == (Fraction(1, 10), Fraction(1, 2), Fraction(1, 10), 17, sheet)
