"""Lengths, and the outlines of stands and figures seen from above.

Imports nothing of the project.
"""

from dataclasses import dataclass
from fractions import Fraction
from typing import NewType, TypeAlias

Millimetres = NewType("Millimetres", Fraction)
"""An exact length."""

MILLIMETRES_PER_INCH = Fraction(254, 10)
"""Exact since the international yard and pound agreement of 1959 (1 yard = 0.9144 m)."""


def millimetres(number: int | str | Fraction) -> Millimetres:
    """The length of so many millimetres; text is a decimal or a fraction, such as "38.1"."""
    return Millimetres(Fraction(number))


def inches(number: int | str | Fraction) -> Millimetres:
    """The length in millimetres of so many inches, exactly."""
    return Millimetres(Fraction(number) * MILLIMETRES_PER_INCH)


@dataclass(frozen=True, slots=True, kw_only=True)
class Rectangle:
    """Width is the front, as the troops face; depth runs from front to rear."""

    width: Millimetres
    depth: Millimetres


@dataclass(frozen=True, slots=True, kw_only=True)
class Disc:
    """A round outline."""

    diameter: Millimetres


Outline: TypeAlias = Rectangle | Disc


def decimal_text(number: Fraction) -> str:
    """The shortest exact text of a number: a decimal where that ends, else a fraction."""
    if number.denominator == 1:
        return str(number.numerator)
    scaled, digits = number.denominator, 0
    for prime in (2, 5):
        count = 0
        while scaled % prime == 0:
            scaled //= prime
            count += 1
        digits = max(digits, count)
    if scaled != 1:
        return f"{number.numerator}/{number.denominator}"
    sign = "-" if number < 0 else ""
    whole = f"{abs(number.numerator) * 10**digits // number.denominator:0{digits + 1}d}"
    return f"{sign}{whole[:-digits]}.{whole[-digits:]}"


def outline_text(outline: Outline | None) -> str:
    """An outline as the owner writes it: `40 x 20 mm`, `30 mm disc` or `none`."""
    match outline:
        case None:
            return "none"
        case Disc(diameter=diameter):
            return f"{decimal_text(diameter)} mm disc"
        case Rectangle(width=width, depth=depth):
            return f"{decimal_text(width)} x {decimal_text(depth)} mm"
