"""The decimal places are checked from memory of ISO 4217, list one."""

from fractions import Fraction

import pytest

from paradestate.core.money import Currency, amount_text, decimal_places, half_up, money_text

POUND, YEN, DINAR = Currency("GBP"), Currency("JPY"), Currency("KWD")


@pytest.mark.parametrize(("currency", "places"), [(POUND, 2), (YEN, 0), (DINAR, 3)])
def test_decimal_places_are_those_of_the_currency(currency: Currency, places: int) -> None:
    assert decimal_places(currency) == places


@pytest.mark.parametrize(
    ("number", "whole"),
    [(Fraction(5, 2), 3), (Fraction(12, 5), 2), (Fraction(-5, 2), -2), (Fraction(3), 3)],
)
def test_a_half_goes_up(number: Fraction, whole: int) -> None:
    assert half_up(number) == whole


@pytest.mark.parametrize(
    ("amount", "currency", "text", "money"),
    [
        (4850, POUND, "48.50", "£48.50"),
        (5, POUND, "0.05", "£0.05"),
        (-150, POUND, "-1.50", "-£1.50"),
        (100, YEN, "100", "100 JPY"),
        (1234, DINAR, "1.234", "1.234 KWD"),
    ],
)
def test_an_amount_is_written_with_its_places(
    amount: int, currency: Currency, text: str, money: str
) -> None:
    assert amount_text(amount, currency) == text
    assert money_text(amount, currency) == money
