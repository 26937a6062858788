"""Sizes of paper, exactly."""

from dataclasses import dataclass
from enum import StrEnum
from math import isqrt

from paradestate.core.outline import Millimetres, inches, millimetres


@dataclass(frozen=True, slots=True, kw_only=True)
class PaperSize:
    """A page upright: its short side is its width."""

    name: str
    width: Millimetres
    height: Millimetres


class Stock(StrEnum):
    """The sizes that papers are laid out for."""

    A4 = "a4"
    LETTER = "letter"


def a_size(number: int) -> PaperSize:
    """A paper of the A series (ISO 216:2007): A0 has 1 m2 and sides as 1 to the root of 2.

    Each further size is half of the one before, down to whole millimetres.
    """
    if number < 0:
        raise ValueError(f"There is no size A{number}.")
    height = _rounded_root(_rounded_up_square())
    width = _rounded_root(10**12 // _rounded_up_square())
    for _ in range(number):
        width, height = height // 2, width
    return PaperSize(name=f"A{number}", width=millimetres(width), height=millimetres(height))


def _rounded_up_square() -> int:
    """The square of A0's long side: a million square millimetres times the root of 2."""
    return isqrt(2 * 10**12)


def _rounded_root(square: int) -> int:
    """The whole number nearest to the root."""
    return (isqrt(4 * square) + 1) // 2


A4 = a_size(4)

LETTER = PaperSize(name="Letter", width=inches("17/2"), height=inches(11))
"""ANSI/ASME Y14.1, size A."""

SIZES = {Stock.A4: A4, Stock.LETTER: LETTER}
