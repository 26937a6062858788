"""Small words: numbers, plurals and lists in English."""

import datetime
from collections.abc import Iterable, Iterator, Mapping
from fractions import Fraction

from paradestate.core.money import half_up
from paradestate.core.number import NumberRange
from paradestate.core.outline import decimal_text
from paradestate.core.sentence.chance import near_text
from paradestate.core.span import MONTH_NAMES, DateSpan, Window, month

SMALL = ("no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten")
LEAST_RUN = 3
"""Numbers that follow on one another and are said as one range."""


def spelled(number: int) -> str:
    """A small number as a word, a larger one in figures."""
    return SMALL[number] if 0 <= number < len(SMALL) else str(number)


def plural(word: str) -> str:
    """The plural by the usual rule; names that end in s stay as they are."""
    if word.endswith("s"):
        return word
    if word.endswith(("ch", "sh", "x")):
        return f"{word}es"
    if word.endswith("y") and word[-2:-1] not in "aeiou":
        return f"{word[:-1]}ies"
    if word.endswith("man"):
        return f"{word[:-3]}men"
    return f"{word}s"


def several(number: int | NumberRange, word: str) -> str:
    """A number of things: `4 companies`, `1 truck`, `9-11 men`."""
    return f"{number} {word if str(number) == '1' else plural(word)}"


def how_often(number: int) -> str:
    """How many times: `never`, `once`, `twice`, `three times`."""
    rare = ("never", "once", "twice")
    return rare[number] if number < len(rare) else f"{spelled(number)} times"


def listed(words: Iterable[str], *, joint: str = "and") -> str:
    """Words with commas and a last `and`."""
    every = list(words)
    if len(every) < 2:  # noqa: PLR2004 - one word needs no joint
        return "".join(every)
    return f"{', '.join(every[:-1])} {joint} {every[-1]}"


def runs(numbers: Iterable[int]) -> Iterator[str]:
    """The numbers rising, those that follow on one another together: `2`, `8 to 24`."""
    runs: list[list[int]] = []
    for number in sorted(numbers):
        if runs and number == runs[-1][-1] + 1:
            runs[-1].append(number)
        else:
            runs.append([number])
    for run in runs:
        if len(run) < LEAST_RUN:
            yield from map(str, run)
        else:
            yield f"{run[0]} to {run[-1]}"


def counted(numbers: Mapping[str, int]) -> str:
    """Names with numbers: `4 riflemen and 1 officer`."""
    return listed(several(number, name) for name, number in numbers.items())


def decimal(number: Fraction) -> str:
    """An exact number."""
    return decimal_text(number)


MINUTES_OF_AN_HOUR = 60


def hours_words(minutes: Fraction) -> str:
    """A time of work: `22.5 min`, `19 h`, `34 h 30 min`; from an hour on to the minute."""
    if minutes < MINUTES_OF_AN_HOUR:
        return f"{near_text(minutes)} min"
    hours, rest = divmod(half_up(minutes), MINUTES_OF_AN_HOUR)
    return f"{hours} h {rest} min" if rest else f"{hours} h"


def rail_words(minutes: Fraction) -> str:
    """The same to the minute beside a rail, where there is little room: `23 min`, `34 h 30`."""
    words = hours_words(Fraction(half_up(minutes)))
    return words.removesuffix(" min") if " h " in words else words


def window_words(window: Window) -> str:
    """When something is in force: ` from 1942-06 until 1943`."""
    begins = f" from {window.begins}" if window.begins else ""
    ends = f" until {window.ends}" if window.ends else ""
    return begins + ends


def month_words(date: datetime.date) -> str:
    """The month of a day: `December 2026`."""
    return f"{MONTH_NAMES[date.month - 1]} {date.year}"


def day_words(date: datetime.date) -> str:
    """A day: `20 December 2026`."""
    return f"{date.day} {month_words(date)}"


def end_words(span: DateSpan) -> str:
    """By when a span of days is over: its month where it is one, else its last day."""
    last = span.last
    return month_words(last) if span == month(last.year, last.month) else day_words(last)


def capital(text: str) -> str:
    """The text with its first letter capital."""
    return text[:1].upper() + text[1:]


def on_one_line(text: str) -> str:
    """Text that neither breaks the line nor speaks to the terminal."""
    one = " / ".join(text.splitlines())
    return "".join(each if each.isprintable() else "\N{REPLACEMENT CHARACTER}" for each in one)


def clipped(text: str, *, most: int) -> str:
    """A text of at most so many letters; of a longer one the beginning, and three dots."""
    return text if len(text) <= most else f"{text[: most - 1]}\N{HORIZONTAL ELLIPSIS}"


def by_hand_words(text: str) -> str:
    """What the format can't say."""
    return f" By hand, not checked by machine: {text}." if text else ""
