"""Whole numbers with a least and a most, such as `2-4` companies or `9-11` men; sums by name.

Imports nothing of the project.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from fractions import Fraction


@dataclass(frozen=True, slots=True, kw_only=True)
class NumberRange:
    """Any whole number from `least` to `most`, both in."""

    least: int
    most: int

    @property
    def is_single(self) -> bool:
        """Whether only one number is possible."""
        return self.least == self.most

    def __contains__(self, number: int) -> bool:
        return self.least <= number <= self.most

    def __add__(self, other: "NumberRange") -> "NumberRange":
        return NumberRange(least=self.least + other.least, most=self.most + other.most)

    def __mul__(self, times: int) -> "NumberRange":
        return NumberRange(least=self.least * times, most=self.most * times)

    def __str__(self) -> str:
        return str(self.least) if self.is_single else f"{self.least}-{self.most}"


NONE = NumberRange(least=0, most=0)


def exactly(number: int) -> NumberRange:
    """The range that holds one number only."""
    return NumberRange(least=number, most=number)


def percent_text(share: Fraction) -> str:
    """A share as the owner writes it: `34%`; a third of a per cent stays a fraction."""
    hundredths = share * 100
    whole = str(hundredths.numerator)
    return f"{whole}%" if hundredths.denominator == 1 else f"{hundredths}%"


def summed(every: Iterable[Mapping[str, int]]) -> dict[str, int]:
    """Numbers by name, added up; names in the order in which they come first."""
    total: dict[str, int] = {}
    for numbers in every:
        for name, number in numbers.items():
            total[name] = total.get(name, 0) + number
    return total
