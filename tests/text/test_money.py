"""Money and currencies from text."""

from fractions import Fraction

import pytest

from paradestate.text.money import in_minor, read_amount, read_currency, read_money
from tests.text.slips import code_of, value_of


@pytest.mark.parametrize(
    ("text", "places", "amount"), [("48.50", 2, 4850), ("48", 2, 4800), ("100", 0, 100)]
)
def test_amounts_are_whole_minor_units(text: str, places: int, amount: int) -> None:
    assert value_of(read_amount(text, places=places)) == amount


@pytest.mark.parametrize(
    ("text", "places", "code"),
    [
        ("4.005", 2, "amount-too-fine"),
        ("0.5", 0, "amount-too-fine"),
        ("-1", 2, "price-negative"),
        ("3,50", 2, "comma-decimal"),
        ("free", 2, "not-a-number"),
    ],
)
def test_odd_amounts(text: str, places: int, code: str) -> None:
    assert code_of(read_amount(text, places=places)) == code


def test_currencies_are_three_capital_letters() -> None:
    assert value_of(read_currency("GBP")) == "GBP"
    assert code_of(read_currency("pounds")) == "not-a-currency"


def test_an_amount_of_whatever_currency_is_put_into_minor_units_later() -> None:
    amount = value_of(read_money("48.5"))
    assert amount == Fraction(97, 2)
    assert value_of(in_minor(amount, places=2)) == 4850
    assert code_of(in_minor(amount, places=0)) == "amount-too-fine"
    assert code_of(read_money("-1")) == "price-negative"
