"""Chances and means in words: `13/18, 72 in 100`.

`0 in 100` and `100 in 100` are said only where it is none at all, or all.
"""

from fractions import Fraction
from math import floor

LONGEST = 11
"""Letters of a fraction that is still read at a glance."""
HALF = Fraction(1, 2)
DECIMALS = 2


def hundredths_words(share: Fraction) -> str:
    """A share to the nearest hundredth: `72 in 100`; a half of one goes up."""
    nearest = floor(share * 100 + HALF)
    if nearest == 0 and share > 0:
        return "less than 1 in 100"
    if nearest == 100 and share < 1:  # noqa: PLR2004 - of a hundred
        return "more than 99 in 100"
    return f"{nearest} in 100"


def chance_words(chance: Fraction) -> str:
    """A chance exactly and near enough: `13/18, 72 in 100`; of a long fraction only the latter."""
    if chance in (0, 1):
        return "always" if chance else "never"
    exact = f"{chance.numerator}/{chance.denominator}"
    near = hundredths_words(chance)
    if len(exact) <= LONGEST:
        return f"{exact}, {near}"
    return near if near.startswith(("less", "more")) else f"about {near}"


def near_text(number: Fraction) -> str:
    """A number to two decimals, without idle noughts: `17.11`; a half of the last goes up."""
    scaled = floor(number * 10**DECIMALS + HALF)
    sign = "-" if scaled < 0 else ""
    whole, rest = divmod(abs(scaled), 10**DECIMALS)
    return f"{sign}{whole}.{rest:0{DECIMALS}d}".rstrip("0").rstrip(".")
