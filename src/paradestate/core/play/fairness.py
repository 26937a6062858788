"""Whether the faces of a season's dice came as often as they should.

Pearson's chi-square: the sum over the faces of (came - expected) squared by expected, on one degree
less than there are faces. The chance is that of fair dice coming out as unevenly or more so.
It says nothing of a single evening, and accuses nobody: of twenty fair dice one alarms.
Source: K. Pearson (1900); the chance by the closed forms for whole degrees, as in Abramowitz and
Stegun, "Handbook of Mathematical Functions", 26.4.4 and 26.4.5, with erf by its series 7.1.6.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal, localcontext
from fractions import Fraction

ALARM = Fraction(1, 20)
"""Below this chance it is remarkable: five in a hundred, the usual level."""

LEAST_EXPECTED = 5
"""Each face has to be expected so often before the chance can be trusted (W. G. Cochran, 1954)."""

DECIMALS = 6
"""To which a chance is rounded."""

DIGITS = 50
NOTHING_MORE = Decimal("1e-40")
PI = Decimal("3.14159265358979323846264338327950288419716939937510")


@dataclass(frozen=True, slots=True, kw_only=True)
class Fairness:
    """How evenly the faces of one sort of die came."""

    came: tuple[int, ...]
    """Face 1 first."""
    statistic: Fraction
    """Chi-square, exactly."""
    chance: Fraction
    """That fair dice are as uneven; rounded to six decimals."""

    @property
    def rolls(self) -> int:
        """Faces in all."""
        return sum(self.came)

    @property
    def degrees(self) -> int:
        """Degrees of freedom."""
        return len(self.came) - 1

    @property
    def is_enough(self) -> bool:
        """Whether so many were rolled that something can be said."""
        return self.rolls >= LEAST_EXPECTED * len(self.came)

    @property
    def is_alarming(self) -> bool:
        """Whether fair dice are seldom so uneven."""
        return self.is_enough and self.chance < ALARM


def fairness(came: Sequence[int]) -> Fairness:
    """How even it is that each face came so often; there are two faces or more, and a roll."""
    expected = Fraction(sum(came), len(came))
    statistic = sum(((each - expected) ** 2 / expected for each in came), Fraction(0))
    chance = uneven_chance(statistic, degrees=len(came) - 1)
    return Fairness(came=tuple(came), statistic=statistic, chance=chance)


def uneven_chance(statistic: Fraction, *, degrees: int) -> Fraction:
    """The chance that chi-square on so many degrees is that or more, to six decimals."""
    with localcontext() as exact:
        exact.prec = DIGITS
        half = Decimal(statistic.numerator) / Decimal(2 * statistic.denominator)
        begin, first = (Decimal(0), 0) if degrees % 2 == 0 else (1 - _erf(half.sqrt()), 1)
        chance, term = begin, _first_term(half, is_odd=bool(first))
        for place in range(first, degrees, 2):
            chance += term
            term = term * half / (Decimal(place + 2) / 2)
        return Fraction(chance.quantize(Decimal(1).scaleb(-DECIMALS)))


def _first_term(half: Decimal, *, is_odd: bool) -> Decimal:
    """exp(-x/2), times the root of x/2 by Gamma(3/2) where the degrees are odd."""
    return (-half).exp() * (2 * (half / PI).sqrt() if is_odd else 1)


def _erf(root: Decimal) -> Decimal:
    """The error function by its series of positive terms."""
    square = root * root
    term = 2 * root / PI.sqrt() * (-square).exp()
    total, place = Decimal(0), 1
    while term > NOTHING_MORE or place < square:
        total += term
        term = term * 2 * square / (2 * place + 1)
        place += 1
    return total
