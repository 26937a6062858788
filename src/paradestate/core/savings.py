"""Money put aside month by month for buying figures, and the days of those months.

An order is taken to be bought as early as it can be: in the first month on the day on which the
plan begins, in any other on the first day of the month.
"""

import datetime
from dataclasses import dataclass

from paradestate.core.money import Currency

MONTHS_OF_A_YEAR = 12


@dataclass(frozen=True, slots=True, kw_only=True)
class Savings:
    """What may be spent, in minor units of `currency`."""

    a_month: int
    carried: int
    """What is there before the first month."""
    currency: Currency
    begins: datetime.date
    """The day on which the plan begins; its month is month 1."""

    def day(self, month: int) -> datetime.date:
        """The first day in a month of the plan on which something can be bought."""
        if month == 1:
            return self.begins
        years, months = divmod(self.begins.month - 1 + month - 1, MONTHS_OF_A_YEAR)
        return datetime.date(self.begins.year + years, months + 1, 1)

    def month(self, day: datetime.date) -> int:
        """The last month in which a day isn't yet past for buying; nought or less for none."""
        years = day.year - self.begins.year
        number = MONTHS_OF_A_YEAR * years + day.month - self.begins.month + 1
        return 0 if number == 1 and day < self.begins else number
