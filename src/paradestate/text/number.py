"""Numbers from text, exactly and within bounds."""

import re
from fractions import Fraction

from paradestate.core.number import NumberRange, exactly
from paradestate.text.slip import Slip

GREATEST = 1_000_000_000
"""No number in a force folder is greater (a bound against slips and attacks)."""

WHOLE_PERCENT = 100

MOST_DIGITS = 15
"""Digits in one number, with its decimals."""

LONGEST_SHOWN = 40
"""Letters of a number with too many digits that are shown again."""

_DIGITS = rf"\d{{1,{MOST_DIGITS}}}"
WHOLE = re.compile(rf"-?{_DIGITS}", re.ASCII)
DECIMAL = re.compile(rf"-?{_DIGITS}(?:\.{_DIGITS})?", re.ASCII)
FRACTION = re.compile(rf"(?:({_DIGITS}) )?({_DIGITS})/({_DIGITS})", re.ASCII)
IN_A_ROW = re.compile(r"\d+", re.ASCII)
ANY_LENGTH = re.compile(r"-?\d+(?:[ ./\-\u2013]+\d+)*", re.ASCII)
COMMA_DECIMAL = re.compile(r"(?<!\d)(-?\d+),(\d+)", re.ASCII)
"""Never begun within a number: of a row of digits each would be tried as its beginning."""
RANGE = re.compile(rf"({_DIGITS}) ?[-\u2013] ?({_DIGITS})", re.ASCII)


def comma_slip(text: str) -> Slip | None:
    """The slip for a comma used as decimal point, if `text` holds one."""
    found = COMMA_DECIMAL.search(text)
    if found is None:
        return None
    right = text.replace(found.group(), f"{found.group(1)}.{found.group(2)}")
    return Slip(
        code="comma-decimal",
        message=f"'{text}' has a comma for a decimal point.",
        hint=f"Write {right}.",
    )


def _long_slip(text: str) -> Slip | None:
    """The slip for a number, fraction or range with more digits in a row than are read."""
    most = max(map(len, IN_A_ROW.findall(text)), default=0)
    if most <= MOST_DIGITS or ANY_LENGTH.fullmatch(text) is None:
        return None
    shown = text if len(text) <= LONGEST_SHOWN else f"{text[:LONGEST_SHOWN]}..."
    return Slip(
        code="too-many-digits",
        message=f"{shown} has {most} digits in a row; at most {MOST_DIGITS} are read.",
        hint="Write fewer digits, such as 3 or 3.50.",
    )


def read_whole(text: str, *, least: int = 1) -> int | Slip:
    """A whole number from `least` up."""
    if WHOLE.fullmatch(text) and least <= int(text) <= GREATEST:  # mostly; the rest is for slips
        return int(text)
    number = read_decimal(text, what="a whole number")
    if isinstance(number, Slip):
        return number
    if number.denominator != 1 or number < least:
        return Slip(
            code="not-a-whole-number",
            message=f"{text} isn't a whole number from {least} up.",
            hint=f"Write a whole number from {least} up.",
        )
    return number.numerator


def read_decimal(text: str, *, what: str = "a number") -> Fraction | Slip:
    """A decimal number, exactly."""
    if DECIMAL.fullmatch(text) is None:
        return (
            comma_slip(text)
            or _long_slip(text)
            or Slip(
                code="not-a-number",
                message=f"'{text}' isn't {what}.",
                hint="Write digits, with a point before the decimals: 3 or 3.50.",
            )
        )
    number = Fraction(text)
    if abs(number) > GREATEST:
        return Slip(
            code="number-too-great",
            message=f"{text} is greater than {GREATEST:,}, the greatest number read.",
            hint="Write a smaller number.",
        )
    return number


def read_positive(text: str) -> Fraction | Slip:
    """A decimal number above nought."""
    number = read_decimal(text)
    if isinstance(number, Fraction) and number <= 0:
        return Slip(
            code="not-above-nought",
            message=f"{text} isn't above nought.",
            hint="Write a number greater than 0.",
        )
    return number


def read_not_below_nought(text: str) -> Fraction | Slip:
    """A decimal number from nought up."""
    number = read_decimal(text)
    if isinstance(number, Fraction) and number < 0:
        return Slip(
            code="below-nought",
            message=f"{text} is below nought.",
            hint="Write 0 or more.",
        )
    return number


def read_measure(text: str) -> Fraction | Slip:
    """A number with decimals or a fraction, as on a ruler: `38.1`, `3/4`, `1 1/2`."""
    found = FRACTION.fullmatch(text)
    if found is None:
        return read_decimal(text)
    whole, upper, lower = found.groups()
    if int(lower) == 0:
        return Slip(
            code="not-a-number",
            message=f"'{text}' divides by nought.",
            hint="Write the fraction with a number above nought below the stroke: 3/4.",
        )
    return Fraction(int(whole or 0)) + Fraction(int(upper), int(lower))


def read_range(text: str, *, least: int = 1) -> NumberRange | Slip:
    """A whole number, or two with a dash: `3`, `2-4`."""
    found = RANGE.fullmatch(text)
    if found is None:
        number = read_whole(text, least=least)
        return number if isinstance(number, Slip) else exactly(number)
    low, high = int(found.group(1)), int(found.group(2))
    if low > high:
        return Slip(
            code="range-backwards",
            message=f"{text} runs backwards.",
            hint=f"Did you mean {high}-{low}?",
        )
    if low < least or high > GREATEST:
        return Slip(
            code="not-a-whole-number",
            message=f"{text} isn't a range of whole numbers from {least} up.",
            hint=f"Write whole numbers from {least} up, such as 2-4.",
        )
    return NumberRange(least=low, most=high)


def read_percent(text: str) -> Fraction | Slip:
    """A share from 0% to 100%."""
    number = read_measure(text.removesuffix("%").rstrip())
    if isinstance(number, Slip) or not text.endswith("%") or not 0 <= number <= WHOLE_PERCENT:
        return Slip(
            code="not-a-share",
            message=f"'{text}' isn't a share from 0% to 100%.",
            hint="Write a number with a per cent sign: 34%.",
        )
    return number / WHOLE_PERCENT


def read_part(text: str) -> Fraction | Slip:
    """A share from 0% up to, and not with, 100%."""
    share = read_percent(text)
    if share == 1:
        return Slip(
            code="not-a-share",
            message=f"{text} leaves nothing over.",
            hint="Write a share below 100%, such as 50%.",
        )
    return share
