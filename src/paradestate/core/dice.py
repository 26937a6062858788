"""Dice as a value: what may be rolled, not a roll.

Imports nothing of the project. Chances are worked out elsewhere.
"""

from dataclasses import dataclass
from enum import StrEnum
from typing import TypeAlias


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
        return tuple(sorted({self._held(total) for total in reached}))

    def _held(self, total: int) -> int:
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


def _term_text(term: Term) -> str:
    match term:
        case Fixed(number=number):
            return str(number)
        case Throw():
            text = f"{term.number}d{term.sides}"
            if term.keep is not Keep.ALL:
                text = f"{term.keep} {term.kept} of {text}"
            return text if term.times == 1 else f"{text} x {term.times}"
