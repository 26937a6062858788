"""Game nights from text."""

import re

from paradestate.core.game_night import GameNights
from paradestate.core.span import DateSpan
from paradestate.text.date import read_date
from paradestate.text.slip import Slip

_EVERY = re.compile(r"every (?:([1-9]\d?) weeks|week) from (\S+)(?: until (\S+))?", re.ASCII)
_HINT = "Write a day, or how often from when: 2026-03-05, every 2 weeks from 2026-03-05."


def read_game_nights(text: str) -> GameNights | Slip:
    """Game nights from `2026-03-05`, or `every 2 weeks from 2026-03-05 until 2026-08-31`."""
    found = _EVERY.fullmatch(text)
    if found is None and text.startswith("every "):
        return Slip(code="not-game-nights", message=f"'{text}' isn't when games are.", hint=_HINT)
    number, first_text, until_text = (None, text, None) if found is None else found.groups()
    first = _read_day(first_text)
    until = None if until_text is None else _read_day(until_text)
    if isinstance(first, Slip):
        return first
    if isinstance(until, Slip):
        return until
    if until is not None and until.last < first.first:
        return Slip(
            code="window-backwards",
            message=f"{text} ends before it begins.",
            hint=f"Did you mean from {until} until {first}?",
        )
    weeks = 0 if found is None else int(number or 1)
    return GameNights(first=first.first, weeks=weeks, until=None if until is None else until.last)


def _read_day(text: str) -> DateSpan | Slip:
    date = read_date(text)
    if isinstance(date, DateSpan) and date.first != date.last:
        return Slip(code="not-game-nights", message=f"{text} isn't a single day.", hint=_HINT)
    return date
