"""Days as a calendar that other programs read (RFC 5545, RFC 7986).

Every event is a whole day. Its UID is made of what the event is about, so that a date that moves
replaces the one before; the time at which the calendar was made is handed in.
"""

import datetime
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from uuid import UUID, uuid5

MOST_OCTETS = 75
"""Of a line without its end (RFC 5545, 3.1)."""

HEAD = ("BEGIN:VCALENDAR", "VERSION:2.0", "PRODID:-//Parade State//bench//EN")
"""How our calendars begin, by which one is known as ours."""

STAMP = "DTSTAMP:"
"""What the line begins with that says when an event was made."""

_SPACE = UUID("6d2c3a1e-8f04-5b97-a3d1-7c40e95b2f68")
"""Of the names that UIDs are made of."""


@dataclass(frozen=True, slots=True, kw_only=True)
class CalendarDay:
    """A day with what is on it."""

    about: tuple[str, ...]
    """What the event is, whatever its day: such as the force, a milestone and a chance."""
    day: datetime.date
    summary: str
    description: str = ""


def calendar_text(days: Iterable[CalendarDay], *, made: datetime.datetime) -> str:
    """A calendar file. Its lines end with carriage return and line feed; it is UTF-8."""
    lines = [
        *HEAD,
        "CALSCALE:GREGORIAN",
        *(line for day in days for line in _event(day, made=made)),
        "END:VCALENDAR",
    ]
    return "".join(f"{_folded(line)}\r\n" for line in lines)


def is_ours(text: str) -> bool:
    """Whether a file holds a calendar that was made here."""
    return text.splitlines()[: len(HEAD)] == list(HEAD)


def says_the_same(one: str, other: str) -> bool:
    """Whether two calendars differ at most in when they were made."""
    return _unstamped(one) == _unstamped(other)


def _unstamped(text: str) -> list[str]:
    return [line for line in text.splitlines() if not line.startswith(STAMP)]


def _event(day: CalendarDay, *, made: datetime.datetime) -> Iterator[str]:
    yield "BEGIN:VEVENT"
    yield f"UID:{uuid5(_SPACE, chr(0).join(day.about))}"
    yield f"{STAMP}{made.astimezone(datetime.UTC):%Y%m%dT%H%M%SZ}"
    yield f"DTSTART;VALUE=DATE:{_date(day.day)}"
    yield "TRANSP:TRANSPARENT"
    yield f"SUMMARY:{_text(day.summary)}"
    if day.description:
        yield f"DESCRIPTION:{_text(day.description)}"
    yield "END:VEVENT"


def _date(day: datetime.date) -> str:
    return day.isoformat().replace("-", "")


def _text(words: str) -> str:
    """Text as a value: what separates is escaped, and no character that can't be seen is left."""
    one = "\n".join(words.splitlines())
    seen = "".join(
        each if each.isprintable() or each == "\n" else "\N{REPLACEMENT CHARACTER}" for each in one
    )
    for sign, written in (("\\", "\\\\"), (";", "\\;"), (",", "\\,"), ("\n", "\\n")):
        seen = seen.replace(sign, written)
    return seen


def _folded(line: str) -> str:
    """A line broken so that no part has too many octets, and no character is cut."""
    parts, part, size = [], "", 0
    for letter in line:
        octets = len(letter.encode())
        if size + octets > MOST_OCTETS:
            parts.append(part)
            part, size = " ", 1
        part += letter
        size += octets
    return "\r\n".join([*parts, part])
