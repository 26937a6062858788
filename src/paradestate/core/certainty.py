"""How sure an answer is. Imports nothing of the project."""

from dataclasses import dataclass
from fractions import Fraction
from typing import TypeAlias


@dataclass(frozen=True, slots=True, kw_only=True)
class Exact:
    """Proved: nothing better exists."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Within:
    """The best found; nothing better than `bound` exists, in the unit of the answer."""

    bound: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Sampled:
    """Drawn by lot: so many draws from one seed, right to `plus_or_minus` in 19 of 20 cases."""

    plus_or_minus: Fraction
    draws: int
    seed: int


@dataclass(frozen=True, slots=True, kw_only=True)
class NotComputed:
    """No answer was reached, and why."""

    reason: str


Certainty: TypeAlias = Exact | Within | Sampled | NotComputed


def certainty_word(certainty: Certainty) -> str:
    """The word for it in answers to programs."""
    match certainty:
        case Exact():
            return "exact"
        case Within():
            return "within"
        case Sampled():
            return "sampled"
        case NotComputed():
            return "not computed"
