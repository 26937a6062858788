"""Money and currencies from text."""

import pytest

from paradestate.text.money import read_amount, read_currency
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
