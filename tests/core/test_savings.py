"""The months of a plan and their days."""

import datetime

import pytest

from paradestate.core.savings import Savings
from tests.orders import GBP

BEGINS = datetime.date(2026, 11, 25)
SAVINGS = Savings(a_month=3000, carried=0, currency=GBP, begins=BEGINS)


@pytest.mark.parametrize(
    ("month", "day"),
    [
        (1, BEGINS),
        (2, datetime.date(2026, 12, 1)),
        (3, datetime.date(2027, 1, 1)),
        (26, datetime.date(2028, 12, 1)),
    ],
)
def test_a_month_begins_on_its_first_day_and_the_first_on_the_day_of_the_plan(
    month: int, day: datetime.date
) -> None:
    assert SAVINGS.day(month) == day


@pytest.mark.parametrize(
    ("day", "month"),
    [
        (BEGINS, 1),
        (datetime.date(2026, 11, 24), 0),
        (datetime.date(2026, 10, 31), 0),
        (datetime.date(2025, 12, 31), -10),
        (datetime.date(2026, 12, 1), 2),
        (datetime.date(2027, 1, 31), 3),
    ],
)
def test_the_month_by_which_to_buy_is_that_of_the_last_day(day: datetime.date, month: int) -> None:
    assert SAVINGS.month(day) == month


def test_an_order_is_late_exactly_where_its_earliest_day_is_past_the_last() -> None:
    for month in range(1, 9):
        for days in range(-40, 250):
            last = BEGINS + datetime.timedelta(days=days)
            assert (month > SAVINGS.month(last)) == (SAVINGS.day(month) > last)
