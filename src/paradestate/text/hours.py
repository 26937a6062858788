"""Hours of a day from text."""

import re
from dataclasses import replace

from paradestate.core.club.booking import DAY, HOUR, Hours
from paradestate.core.span import DateSpan
from paradestate.text.date import read_date
from paradestate.text.slip import Slip

_HOURS = re.compile(r"(\S+) (\d{1,2}):(\d\d) ?- ?(\d{1,2}):(\d\d)", re.ASCII)
_HINT = "Write a day and two times: 2026-12-03 20:00-22:00; the end of the day is 24:00."
NO_DATE = "not-a-date"
LAST_MINUTE = HOUR - 1


def read_hours(text: str) -> Hours | Slip:
    """Hours such as `2026-12-03 20:00-22:00`."""
    found = _HOURS.fullmatch(text)
    if found is None:
        return _slip(f"'{text}' isn't a day with hours.")
    day = read_date(found.group(1))
    if isinstance(day, Slip):
        return replace(day, hint=_HINT) if day.code == NO_DATE else day
    if day.first != day.last:
        return _slip(f"{day} isn't a single day.")
    return _within(day, [int(each) for each in found.groups()[1:]])


def _within(day: DateSpan, numbers: list[int]) -> Hours | Slip:
    hour, minute, last_hour, last_minute = numbers
    start, end = hour * HOUR + minute, last_hour * HOUR + last_minute
    if max(minute, last_minute) > LAST_MINUTE or max(start, end) > DAY:
        return _slip("There is no such time of day.")
    if end == start:
        return _slip("It ends as it begins.")
    if end < start:
        return _slip("It ends before it begins; a game past midnight is two bookings.")
    return Hours(on=day.first, start=start, end=end)


def _slip(message: str) -> Slip:
    return Slip(code="not-hours", message=message, hint=_HINT)
