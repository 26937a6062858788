"""The least size of type that can be read from a distance, exactly."""

from fractions import Fraction

from paradestate.core.outline import MILLIMETRES_PER_INCH, Millimetres, millimetres

POINTS_PER_INCH = 72
"""Of the point of desktop publishing, which PDF counts in (ISO 32000-1, 8.3.2.3)."""

X_HEIGHT = Fraction(496, 1000)
"""Height of a small x as a share of the size of type; of the sans face that papers are set in."""

X_HEIGHT_FOR_DISTANCE = Fraction(175, 100) / 600
"""An x of 1.75 mm at 60 cm is 10 minutes of arc: the least comfortable size (rule of thumb)."""

USUAL_DISTANCE = millimetres(600)
"""From the eye to the table in front of a player."""


def points(length: Millimetres) -> Fraction:
    """A length as points."""
    return length / MILLIMETRES_PER_INCH * POINTS_PER_INCH


def length_of_points(number: Fraction) -> Millimetres:
    """So many points as a length."""
    return Millimetres(number / POINTS_PER_INCH * MILLIMETRES_PER_INCH)


def least_type_size(distance: Millimetres) -> Millimetres:
    """The size of type of which a small x can be read with ease from that distance."""
    return Millimetres(distance * X_HEIGHT_FOR_DISTANCE / X_HEIGHT)


def reading_distance(type_size: Millimetres) -> Millimetres:
    """From how far type of that size can be read with ease."""
    return Millimetres(type_size * X_HEIGHT / X_HEIGHT_FOR_DISTANCE)
