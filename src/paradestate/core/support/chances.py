"""Exact chances of whole numbers: the points of an allowance, how many are allowed."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from fractions import Fraction
from math import gcd


@dataclass(frozen=True, slots=True, kw_only=True)
class Chances:
    """How many of `ways` equally likely ways come to each number; the counts add up to `ways`."""

    counts: Mapping[int, int]
    """Number to ways, numbers rising, none without a way."""
    ways: int

    def of(self, number: int) -> Fraction:
        """The chance of exactly this number."""
        return Fraction(self.counts.get(number, 0), self.ways)

    def at_least(self, number: int) -> Fraction:
        """The chance of this number or a greater one."""
        return Fraction(sum(n for each, n in self.counts.items() if each >= number), self.ways)

    @property
    def mean(self) -> Fraction:
        """The sum of all numbers, each times its chance."""
        return Fraction(sum(each * n for each, n in self.counts.items()), self.ways)

    def quantile(self, share: Fraction) -> int:
        """The least number that is not exceeded with at least this chance, 0 < `share` <= 1."""
        reached = 0
        for each, number in self.counts.items():
            reached += number
            if reached >= share * self.ways:
                return each
        raise ValueError(f"{share} is no share above 0 and up to 1")

    def moved(self, by: int) -> "Chances":
        """The same chances of numbers that are greater by `by`."""
        return Chances(counts={each + by: n for each, n in self.counts.items()}, ways=self.ways)

    def become(self, number: Callable[[int], int]) -> "Chances":
        """The chances of what each number becomes."""
        counts: dict[int, int] = {}
        for each, n in self.counts.items():
            counts[number(each)] = counts.get(number(each), 0) + n
        return chances(counts)


def chances(counts: Mapping[int, int]) -> Chances:
    """Chances from ways, numbers rising, in the lowest terms; there must be a way."""
    kept = {each: counts[each] for each in sorted(counts) if counts[each]}
    shared = gcd(*kept.values())
    lowest = {each: number // shared for each, number in kept.items()}
    return Chances(counts=lowest, ways=sum(lowest.values()))
