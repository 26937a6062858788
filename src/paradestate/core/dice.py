"""Dice as a value: what may be rolled, not a roll.

Imports nothing of the project. Chances are worked out elsewhere.
"""

from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction
from typing import Generic, TypeAlias, TypeVar

N = TypeVar("N", int, Fraction)


class Keep(StrEnum):
    """Which dice of a throw are added."""

    ALL = "all"
    BEST = "best"
    WORST = "worst"


@dataclass(frozen=True, slots=True, kw_only=True)
class Fixed:
    """A number that is added as it stands."""

    number: int

    def totals(self) -> frozenset[int]:
        """The one total."""
        return frozenset({self.number})


@dataclass(frozen=True, slots=True, kw_only=True)
class Throw:
    """`number` dice of `sides` sides, those kept added up, times `times`."""

    number: int
    sides: int
    times: int = 1
    keep: Keep = Keep.ALL
    kept: int = 0
    """How many are kept, where `keep` isn't all."""

    def totals(self) -> frozenset[int]:
        """Every total that can come up."""
        added = self.number if self.keep is Keep.ALL else self.kept
        return frozenset(total * self.times for total in range(added, added * self.sides + 1))


Term: TypeAlias = Fixed | Throw


@dataclass(frozen=True, slots=True, kw_only=True)
class SignedTerm:
    """A term that is added or taken away."""

    term: Term
    minus: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Dice:
    """A sum of terms, held between a least and a greatest total where those are given."""

    terms: tuple[SignedTerm, ...]
    at_least: int | None = None
    at_most: int | None = None

    def totals(self) -> tuple[int, ...]:
        """Every total that can come up, rising."""
        reached = {0}
        for signed in self.terms:
            sign = -1 if signed.minus else 1
            reached = {sum_ + sign * more for sum_ in reached for more in signed.term.totals()}
        return tuple(sorted({self.held(total) for total in reached}))

    def held(self, total: int) -> int:
        """A total as it counts: not below the least, not above the most."""
        if self.at_least is not None:
            total = max(total, self.at_least)
        if self.at_most is not None:
            total = min(total, self.at_most)
        return total

    def __str__(self) -> str:
        """The dice as the owner writes them: `18 + 2d6`."""
        text = ""
        for signed in self.terms:
            joint = (" - " if signed.minus else " + ") if text else ("-" if signed.minus else "")
            text += joint + _term_text(signed.term)
        if self.at_least is not None:
            text += f", at least {self.at_least}"
        if self.at_most is not None:
            text += f", at most {self.at_most}"
        return text


NOUGHT = Dice(terms=(SignedTerm(term=Fixed(number=0)),))
"""Nothing is rolled, and nothing is there."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Totals:
    """Totals of a roll from `least` to `most`; `most` None: and more."""

    least: int
    most: int | None

    def holds(self, total: int) -> bool:
        """Whether a total is among them."""
        return self.least <= total and (self.most is None or total <= self.most)

    def __str__(self) -> str:
        """The totals as the owner writes them: `3`, `2-4`, `9 or more`."""
        if self.most is None:
            return f"{self.least} or more"
        return str(self.least) if self.least == self.most else f"{self.least}-{self.most}"


@dataclass(frozen=True, slots=True, kw_only=True)
class Row(Totals, Generic[N]):
    """Totals of a roll, and the number that each of them gives."""

    gives: N


@dataclass(frozen=True, slots=True, kw_only=True)
class LookUp(Generic[N]):
    """A roll whose total is looked up in rows; they hold every total exactly once."""

    roll: Dice
    gives: tuple[Row[N], ...]

    def given(self, total: int) -> N:
        """What a total of the roll gives; a KeyError where no row holds it."""
        for row in self.gives:
            if row.holds(total):
                return row.gives
        raise KeyError(total)

    def totals(self) -> tuple[N, ...]:
        """Every number that can come out, rising."""
        return tuple(sorted({self.given(total) for total in self.roll.totals()}))


def _term_text(term: Term) -> str:
    match term:
        case Fixed(number=number):
            return str(number)
        case Throw():
            text = f"{term.number}d{term.sides}"
            if term.keep is not Keep.ALL:
                text = f"{term.keep} {term.kept} of {text}"
            return text if term.times == 1 else f"{text} x {term.times}"
