"""The surface of a figure: said, guessed by its size, or not to be guessed."""

from fractions import Fraction

import pytest

from paradestate.core.figure import FigureKind, Sort
from paradestate.core.fit import PI
from paradestate.core.outline import Disc, Outline, Rectangle, millimetres
from paradestate.core.supplies import SquareMillimetres, Supplies
from paradestate.core.work.surface import surface

BOX = Rectangle(width=millimetres(15), depth=millimetres(34))
ROUND = Disc(diameter=millimetres(10))


def area(kind: FigureKind, supplies: Supplies | None = None) -> Fraction | None:
    found = surface(kind, supplies or Supplies())
    return None if found is None else found.area


@pytest.mark.parametrize(
    ("sort", "outline", "expected"),
    [
        (Sort.FOOT, None, Fraction(300)),  # 3 cm2 at 10 mm, as in the design paper
        (Sort.MOUNTED, BOX, Fraction(400)),
        (Sort.VEHICLE, BOX, Fraction(15 * 34 + 2 * (15 + 34) * 10)),
        (Sort.GUN, ROUND, PI * 25 + PI * 10 * 10),
    ],
)
def test_it_is_guessed_by_height_or_as_a_box(
    sort: Sort, outline: Outline | None, expected: Fraction
) -> None:
    kind = FigureKind(name="x", sort=sort, height=millimetres(10), footprint=outline)
    found = surface(kind, Supplies())
    assert found is not None
    assert found.area == expected
    assert found.is_guess


def test_nobody_guesses_without_a_size() -> None:
    assert area(FigureKind(name="x")) is None
    assert area(FigureKind(name="x", sort=Sort.VEHICLE, height=millimetres(10))) is None
    assert area(FigureKind(name="x", sort=Sort.VEHICLE, footprint=BOX)) is None


def test_what_the_owner_says_comes_first_and_the_kind_before_its_sort() -> None:
    of_sort, of_kind = SquareMillimetres(Fraction(500)), SquareMillimetres(Fraction(700))
    supplies = Supplies(area={"foot": of_sort, "officer": of_kind})
    assert area(FigureKind(name="rifleman"), supplies) == of_sort
    officer = surface(FigureKind(name="officer", height=millimetres(10)), supplies)
    assert officer is not None
    assert (officer.area, officer.is_guess) == (of_kind, False)
