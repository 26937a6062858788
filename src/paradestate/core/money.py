"""Money in whole minor units (pence, cents).

The number of decimal places of each currency is the published one of ISO 4217 (list one).
Imports nothing of the project.
"""

from fractions import Fraction
from typing import NewType

Minor = NewType("Minor", int)
"""An amount in whole minor units of some currency."""

Currency = NewType("Currency", str)
"""An ISO 4217 code of three capital letters."""

NO_DECIMALS = "BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX UYI VND VUV XAF XOF XPF"
THREE_DECIMALS = "BHD IQD JOD KWD LYD OMR TND"
FOUR_DECIMALS = "CLF UYW"

DECIMAL_PLACES = {
    **dict.fromkeys(NO_DECIMALS.split(), 0),
    **dict.fromkeys(THREE_DECIMALS.split(), 3),
    **dict.fromkeys(FOUR_DECIMALS.split(), 4),
}
"""ISO 4217 currencies whose minor unit isn't a hundredth."""

SIGNS = {"GBP": "£", "EUR": "€", "USD": "$"}


def decimal_places(currency: Currency) -> int:
    """How many digits follow the point in an amount of `currency` (ISO 4217)."""
    return DECIMAL_PLACES.get(currency, 2)


def half_up(number: Fraction) -> int:
    """The nearest whole number; a half goes up."""
    return int((number + Fraction(1, 2)).__floor__())


def amount_text(amount: int, currency: Currency) -> str:
    """An amount as a decimal string without its currency: `48.50`."""
    return minor_text(amount, places=decimal_places(currency))


def minor_text(amount: int, *, places: int) -> str:
    """An amount of minor units as a decimal string with so many places."""
    if places == 0:
        return str(amount)
    sign = "-" if amount < 0 else ""
    digits = f"{abs(amount):0{places + 1}d}"
    return f"{sign}{digits[:-places]}.{digits[-places:]}"


def money_text(amount: int, currency: Currency) -> str:
    """An amount with its currency, for people: `£48.50`, `100 JPY`."""
    sign = SIGNS.get(currency)
    text = amount_text(abs(amount), currency)
    minus = "-" if amount < 0 else ""
    return f"{minus}{sign}{text}" if sign else f"{minus}{text} {currency}"
