"""What was typed beside a command, as a choice for one sum."""

import datetime
from collections.abc import Callable, Container, Mapping, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from typing import NotRequired, TypedDict, TypeVar, Unpack

from paradestate.core.choice import CHOSEN_HERE, Choice
from paradestate.core.finding import Finding, Level
from paradestate.core.force import Wanted, Wishes
from paradestate.core.game import Purchase
from paradestate.core.play.event import Opened
from paradestate.core.span import DateSpan
from paradestate.text.money import read_money
from paradestate.text.number import read_decimal, read_percent, read_whole
from paradestate.text.slip import Slip
from paradestate.text.typed import (
    name_twice,
    read_amounts,
    read_dates,
    read_named_words,
    read_names,
    read_numbers,
    read_purchases,
    read_results,
    read_typed_date,
)

T = TypeVar("T")

LAST_BEGINNING = 9000
"""No plan begins in a later year, so that the calendar doesn't end before it does."""


def choice_of(
    *,
    numbers: Sequence[str] = (),
    date: str = "",
    theatre: str | None = None,
    wished: str = "",
    game: str = "",
) -> tuple[Choice, tuple[Finding, ...]]:
    """The choice, and a stop for each text that can't be read."""
    findings: list[Finding] = []
    read_date = read_typed_date(date) if date else None
    read_wished = _wanted(wished) if wished else None
    chosen: dict[str, int] = {}
    for text in numbers:
        read = read_numbers(text)
        if isinstance(read, Slip):
            findings.append(typed_finding(read))
        else:
            chosen |= read
    findings.extend(
        typed_finding(slip) for slip in (read_date, read_wished) if isinstance(slip, Slip)
    )
    choice = Choice(
        numbers=chosen,
        date=read_date if isinstance(read_date, DateSpan) else None,
        theatre=theatre,
        wished=None if isinstance(read_wished, Slip) else read_wished,
        game=game or None,
    )
    return choice, tuple(findings)


def agreed_choice(terms: Opened) -> Choice:
    """The choice by the terms on which a game was opened."""
    choice, _ = choice_of(date=terms.date, game=terms.game)
    return replace(choice, numbers=terms.numbers)


def _wanted(text: str) -> Wanted | Slip:
    return Wishes(text) if text in {"all", "none"} else read_names(text)


def against_of(text: str) -> tuple[Choice, tuple[Finding, ...]]:
    """The other establishment to compare with: `date=1941`, `company=3`, `theatre=islands`."""
    word, _, value = text.partition("=")
    match word.strip():
        case "date":
            return choice_of(date=value)
        case "theatre":
            return choice_of(theatre=value.strip())
        case "wished":
            return choice_of(wished=value.strip())
        case "game":
            return choice_of(game=value.strip())
        case _:
            return choice_of(numbers=(text,))


def typed_finding(slip: Slip) -> Finding:
    """A slip in what was typed beside the command, as a stop."""
    return Finding(
        level=Level.STOP,
        code=slip.code,
        message=slip.message,
        effect="Nothing is worked out.",
        hint=slip.hint,
        place=CHOSEN_HERE,
    )


def want_of(text: str) -> tuple[Mapping[str, int] | None, tuple[Finding, ...]]:
    """The want that was typed: None where nothing was."""
    read = read_numbers(text) if text else None
    return (None, (typed_finding(read),)) if isinstance(read, Slip) else (read, ())


def number_of(text: str, *, of: str) -> tuple[int | None, tuple[Finding, ...]]:
    """The whole number that was typed into a box, `of` what it is; None where none was."""
    number, findings = _typed(text, read=lambda typed: read_whole(typed, least=0))
    return number, tuple(replace(each, message=f"{of}: {each.message}") for each in findings)


def names_of(text: str) -> tuple[tuple[str, ...], tuple[Finding, ...]]:
    """The names that were typed."""
    read = read_names(text) if text else ()
    return ((), (typed_finding(read),)) if isinstance(read, Slip) else (read, ())


def amount_of(text: str) -> tuple[Fraction, tuple[Finding, ...]]:
    """The amount of money that was typed, in units of the force's currency; nought where none."""
    read = read_decimal(text, what="an amount of money") if text else Fraction(0)
    return (Fraction(0), (typed_finding(read),)) if isinstance(read, Slip) else (read, ())


def money_of(text: str) -> tuple[Fraction | None, tuple[Finding, ...]]:
    """The amount of money that was typed, nought or more; None where none was."""
    return _typed(text, read=read_money)


def share_of(text: str) -> tuple[Fraction | None, tuple[Finding, ...]]:
    """The share that was typed in per cent, with or without the sign; None where none was."""
    return _typed(text, read=lambda typed: read_percent(f"{typed.removesuffix('%')}%"))


def beginning_of(text: str) -> tuple[datetime.date | None, tuple[Finding, ...]]:
    """The first day of the date that was typed; None where none was."""
    read, findings = _typed(text, read=_read_beginning)
    return (None if read is None else read.first), findings


def _read_beginning(text: str) -> DateSpan | Slip:
    read = read_typed_date(text)
    if isinstance(read, DateSpan) and read.first.year > LAST_BEGINNING:
        return Slip(
            code="not-a-date",
            message=f"No plan begins in {text}.",
            hint="Write the year and month, such as 2026-11.",
        )
    return read


def day_of(text: str) -> tuple[datetime.date | None, tuple[Finding, ...]]:
    """The day that was typed; None where none was."""
    return _typed(text, read=_read_day)


def _read_day(text: str) -> datetime.date | Slip:
    read = read_typed_date(text)
    hint = "Write the day, such as 2026-03-05."
    if isinstance(read, Slip):
        return replace(read, hint=hint)
    if read.first != read.last:
        return Slip(code="not-a-date", message=f"'{text}' is more than one day.", hint=hint)
    return read.first


def _typed(text: str, *, read: Callable[[str], T | Slip]) -> tuple[T | None, tuple[Finding, ...]]:
    value = read(text) if text else None
    return (None, (typed_finding(value),)) if isinstance(value, Slip) else (value, ())


def amounts_of(texts: Sequence[str]) -> tuple[Mapping[str, Fraction], tuple[Finding, ...]]:
    """The amounts that were typed by name, in units of the force's currency."""
    return _by_name(texts, read=read_amounts)


def dates_of(texts: Sequence[str]) -> tuple[Mapping[str, DateSpan], tuple[Finding, ...]]:
    """The dates that were typed by name."""
    return _by_name(texts, read=read_dates)


def _by_name(
    texts: Sequence[str], *, read: Callable[[str], dict[str, T] | Slip]
) -> tuple[Mapping[str, T], tuple[Finding, ...]]:
    """All that was typed by name, a name only once, and a stop for each text with a slip."""
    found: dict[str, T] = {}
    findings: list[Finding] = []
    for text in texts:
        values = read(text)
        if isinstance(values, Slip):
            findings.append(typed_finding(values))
            continue
        findings.extend(typed_finding(name_twice(name)) for name in values if name in found)
        found |= values
    return found, tuple(findings)


class TermsTyped(TypedDict):
    """What may be typed of the terms of a game, each as it stands beside the command."""

    numbers: tuple[str, ...]
    date: str
    theatre: str | None
    wished: str
    game: str
    grades: tuple[str, ...]
    points: NotRequired[str]


@dataclass(frozen=True, slots=True, kw_only=True)
class TermsAsked:
    """What was typed of the terms of a game: the choice, the grades and the points left."""

    choice: Choice
    grades: Mapping[str, str]
    points: int | None
    """None: not rolled yet."""


def terms_asked(**typed: Unpack[TermsTyped]) -> tuple[TermsAsked, tuple[Finding, ...]]:
    """The terms of a game as they were typed, and a stop for each text that can't be read."""
    choice, findings = choice_of(
        numbers=typed["numbers"],
        date=typed["date"],
        theatre=typed["theatre"],
        wished=typed["wished"],
        game=typed["game"],
    )
    chosen, no_grades = grades_of(typed["grades"])
    left, no_points = number_of(typed.get("points", ""), of="Points")
    asked = TermsAsked(choice=choice, grades=chosen, points=left)
    return asked, (*findings, *no_grades, *no_points)


def grades_of(texts: Sequence[str]) -> tuple[Mapping[str, str], tuple[Finding, ...]]:
    """The grades that were typed: scale to grade."""
    return words_by_name(texts)


def words_by_name(texts: Sequence[str]) -> tuple[Mapping[str, str], tuple[Finding, ...]]:
    """Names with a word each that were typed: name to word."""
    return _by_name(texts, read=read_named_words)


def plan_of(
    text: str, *, entries: Container[str]
) -> tuple[tuple[Purchase, ...], tuple[Finding, ...]]:
    """The plan that was typed; empty where nothing was."""
    read = read_purchases(text, entries=entries) if text.strip() else ()
    return ((), (typed_finding(read),)) if isinstance(read, Slip) else (read, ())


def results_of(texts: Sequence[str]) -> tuple[tuple[tuple[str, int], ...], tuple[Finding, ...]]:
    """What the dice allowed, as it was typed: entries with numbers, roll after roll."""
    found: list[tuple[str, int]] = []
    findings: list[Finding] = []
    for text in texts:
        read = read_results(text)
        if isinstance(read, Slip):
            findings.append(typed_finding(read))
        else:
            found.extend(read)
    return tuple(found), tuple(findings)
