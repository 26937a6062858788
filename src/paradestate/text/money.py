"""Money, currencies and rates from text."""

import re
from fractions import Fraction

from paradestate.core.money import Currency, Minor
from paradestate.core.outline import decimal_text
from paradestate.text.number import read_decimal
from paradestate.text.slip import Slip

_CURRENCY = re.compile(r"[A-Z]{3}")


def read_currency(text: str) -> Currency | Slip:
    """An ISO 4217 code: three capital letters."""
    if _CURRENCY.fullmatch(text):
        return Currency(text)
    return Slip(
        code="not-a-currency",
        message=f"'{text}' isn't a currency.",
        hint="Write its three capital letters, such as GBP, EUR or USD.",
    )


def read_amount(text: str, *, places: int) -> Minor | Slip:
    """An amount in minor units, of a currency with so many decimal `places`; nought or more."""
    number = read_money(text)
    return number if isinstance(number, Slip) else in_minor(number, places=places)


def read_money(text: str) -> Fraction | Slip:
    """An amount of whatever currency, nought or more."""
    number = read_decimal(text, what="an amount of money")
    if isinstance(number, Fraction) and number < 0:
        return Slip(
            code="price-negative",
            message=f"{text} is less than nothing.",
            hint="Write the amount without a minus sign.",
        )
    return number


def in_minor(amount: Fraction, *, places: int) -> Minor | Slip:
    """An amount in minor units of a currency with so many decimal `places`, if it is whole."""
    minor = amount * 10**places
    if minor.denominator != 1:
        return Slip(
            code="amount-too-fine",
            message=f"{decimal_text(amount)} has more decimals than this currency, "
            f"which has {places}.",
            hint=f"Write at most {places} decimals.",
        )
    return Minor(minor.numerator)
