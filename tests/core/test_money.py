"""The decimal places are checked from memory of ISO 4217, list one."""

from fractions import Fraction

import pytest

from paradestate.core.money import (
    DECIMAL_PLACES,
    Currency,
    amount_text,
    decimal_places,
    half_up,
    money_text,
)

NO_DECIMALS = "BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX UYI VND VUV XAF XOF XPF"
TWO_DECIMALS = "AUD CAD CHF CZK DKK EUR GBP HUF IDR MGA MRU NOK NZD PLN SEK TWD USD UYU"
THREE_DECIMALS = "BHD IQD JOD KWD LYD OMR TND"
FOUR_DECIMALS = "CLF UYW"

POUND, YEN, DINAR = Currency("GBP"), Currency("JPY"), Currency("KWD")


@pytest.mark.parametrize(
    ("currencies", "places"),
    [(NO_DECIMALS, 0), (TWO_DECIMALS, 2), (THREE_DECIMALS, 3), (FOUR_DECIMALS, 4)],
)
def test_decimal_places_are_the_published_ones(currencies: str, places: int) -> None:
    assert {decimal_places(Currency(currency)) for currency in currencies.split()} == {places}


def test_no_other_currency_is_odd() -> None:
    odd = f"{NO_DECIMALS} {THREE_DECIMALS} {FOUR_DECIMALS}"
    assert set(DECIMAL_PLACES) == set(odd.split())


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
        (5, Currency("CLF"), "0.0005", "0.0005 CLF"),
    ],
)
def test_an_amount_is_written_with_its_places(
    amount: int, currency: Currency, text: str, money: str
) -> None:
    assert amount_text(amount, currency) == text
    assert money_text(amount, currency) == money
