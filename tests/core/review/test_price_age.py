"""Prices that were noted long ago."""

import datetime

import pytest

from paradestate.core.review.price_age import months_between, old_prices
from tests.forces import force_from

NOTED = "North: {currency: GBP, carriage: {0: 1}, noted: 2025-01-05, packs: {}}"
NEVER = "South: {currency: GBP, carriage: {0: 1}, packs: {}}"


@pytest.mark.parametrize(
    ("today", "months"),
    [
        (datetime.date(2026, 3, 5), 14),
        (datetime.date(2026, 1, 5), 12),
        (datetime.date(2026, 1, 4), None),
    ],
)
def test_a_price_is_old_after_a_year(today: datetime.date, months: int | None) -> None:
    force = force_from("formations: {top: {men: 1}}", f"sources: {{{NOTED}, {NEVER}}}")
    found = [finding.message for finding in old_prices(force, today=today)]
    expected = [] if months is None else [f"The prices of North were noted {months} months ago."]
    assert found == expected


def test_whole_months() -> None:
    assert months_between(datetime.date(2025, 1, 31), datetime.date(2025, 2, 28)) == 0
    assert months_between(datetime.date(2025, 1, 31), datetime.date(2025, 3, 31)) == 2
