"""An amendment of what is raised: what a form asks for, and the controls that ask for it."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from urllib.parse import parse_qsl, urlencode

from paradestate.core.choice import Choice, chosen, unknown_choice
from paradestate.core.finding import Finding, stops
from paradestate.core.force import Force, Raise
from paradestate.core.leeway import Leeway, OpenNumber, Period, differing, leeway
from paradestate.core.number import NumberRange
from paradestate.core.sentence.wording import capital, day_words, listed, plural, spelled
from paradestate.core.span import DateSpan, month
from paradestate.journeys.choosing import choice_of, typed_finding
from paradestate.text.number import read_whole
from paradestate.text.slip import Slip

NUMBER = "number "
"""Begins the name of the field of an open number; the name of the part follows."""

DATE, OTHER_DATE, THEATRE = "date", "other date", "theatre"

DATE_SHOWN = "date shown"
"""The date that was picked when the form was made, so that a new pick can be told from an old."""

MOST_OPTIONS = 12
"""Numbers that are offered one by one; of more one is typed."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Option:
    """One thing that may be chosen."""

    value: str
    text: str
    is_now: bool
    is_chosen: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Control:
    """One field of the form: options to choose from, or a number or date to type."""

    name: str
    legend: str
    options: tuple[Option, ...]
    typed: NumberRange | None
    """Between what a number may be typed; None where options say all."""
    value: str
    """What is typed."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Amendment:
    """What is asked for."""

    choice: Choice
    """Only what differs from what is written."""
    findings: tuple[Finding, ...]
    """Stops where it can't be read."""
    words: str
    """Such as `Three companies instead of four`; empty where nothing differs."""
    fields: Mapping[str, str]
    """What to send again to ask for the same."""
    controls: tuple[Control, ...]

    @property
    def is_asked(self) -> bool:
        """Whether it would change anything."""
        return bool(self.words)

    @property
    def query(self) -> str:
        """The fields in one text, so that no browser alters a name with quotes in a form."""
        return urlencode(self.fields)


def fields_of(query: str) -> Mapping[str, str]:
    """The fields that such a text holds."""
    return dict(parse_qsl(query, keep_blank_values=True))


def amendment_of(force: Force, values: Mapping[str, str]) -> Amendment:
    """What the fields of a form ask for, against the force as it is written."""
    open_, raise_ = leeway(force), force.raise_
    if raise_ is None:
        return Amendment(choice=Choice(), findings=(), words="", fields={}, controls=())
    numbers, number_findings = _numbers(values)
    dated, date_findings = choice_of(date=_date_text(values))
    theatre = values.get(THEATRE, raise_.theatre).strip()
    choice = Choice(
        numbers=differing(numbers, open_),
        date=None if dated.date == raise_.date else dated.date,
        theatre=None if theatre == raise_.theatre else theatre,
    )
    picked, choice_findings = chosen(force, choice)
    findings = (
        *number_findings,
        *date_findings,
        *choice_findings,
        *_theatre_findings(theatre, raise_=raise_, open_=open_),
    )
    return Amendment(
        choice=choice,
        findings=findings,
        words=_words(choice, raise_=raise_, open_=open_),
        fields=_fields(choice),
        controls=tuple(_controls(picked if not stops(findings) else force, force, values=values)),
    )


def _numbers(values: Mapping[str, str]) -> tuple[Mapping[str, int], tuple[Finding, ...]]:
    numbers: dict[str, int] = {}
    findings: list[Finding] = []
    for field, text in values.items():
        if not field.startswith(NUMBER) or not text.strip():
            continue
        read = read_whole(text.strip(), least=0)
        if isinstance(read, Slip):
            findings.append(typed_finding(read))
        else:
            numbers[field.removeprefix(NUMBER)] = read
    return numbers, tuple(findings)


def _date_text(values: Mapping[str, str]) -> str:
    """What was typed, unless something else was picked since."""
    typed, picked = values.get(OTHER_DATE, "").strip(), values.get(DATE, "").strip()
    is_new_pick = picked != values.get(DATE_SHOWN, picked).strip()
    return picked if is_new_pick or not typed else typed


def _theatre_findings(theatre: str, *, raise_: Raise, open_: Leeway) -> Iterator[Finding]:
    if theatre and theatre != raise_.theatre and theatre not in open_.theatres:
        yield unknown_choice(theatre, open_.theatres, what="theatre")


def _words(choice: Choice, *, raise_: Raise, open_: Leeway) -> str:
    now = {number.of: number.now for number in open_.numbers}
    words = []
    for name, number in choice.numbers.items():
        before = now.get(name)
        was = "what is written" if before is None else spelled(before)
        words.append(f"{spelled(number)} {name if number == 1 else plural(name)} instead of {was}")
    if choice.date is not None:
        words.append(f"{choice.date} instead of {raise_.date or 'no date'}")
    if choice.theatre is not None:
        words.append(f"{choice.theatre or 'no'} theatre instead of {raise_.theatre or 'none'}")
    return capital(listed(words))


def _fields(choice: Choice) -> Mapping[str, str]:
    fields = {f"{NUMBER}{name}": str(number) for name, number in choice.numbers.items()}
    if choice.date is not None:
        fields[DATE] = str(choice.date)
    if choice.theatre is not None:
        fields[THEATRE] = choice.theatre
    return fields


def _controls(picked: Force, written: Force, *, values: Mapping[str, str]) -> Iterator[Control]:
    """The controls of the force as it is asked for, each saying what is written now."""
    open_, before = leeway(picked), leeway(written)
    now = {number.of: number.now for number in before.numbers}
    for number in open_.numbers:
        yield _number_control(number, now=now.get(number.of), values=values)
    if open_.periods:
        yield from _date_controls(open_, before, values=values)
    raised, was = picked.raise_, written.raise_
    if open_.theatres and raised is not None and was is not None:
        options = tuple(
            Option(
                value=name,
                text=name or "none",
                is_now=name == was.theatre,
                is_chosen=name == raised.theatre,
            )
            for name in ("", *open_.theatres)
        )
        yield Control(name=THEATRE, legend="Theatre", options=options, typed=None, value="")


def _number_control(number: OpenNumber, *, now: int | None, values: Mapping[str, str]) -> Control:
    within = number.within
    name = f"{NUMBER}{number.of}"
    is_typed = within.most - within.least >= MOST_OPTIONS
    offered = () if is_typed else range(within.least, within.most + 1)
    return Control(
        name=name,
        legend=capital(plural(number.of)),
        options=tuple(
            Option(
                value=str(each),
                text=str(each),
                is_now=each == now,
                is_chosen=each == number.now,
            )
            for each in offered
        ),
        typed=within if is_typed else None,
        value=values.get(name, "" if number.now is None else str(number.now)),
    )


def _date_controls(
    open_: Leeway, before: Leeway, *, values: Mapping[str, str]
) -> Iterator[Control]:
    """The periods; the date that is asked for stands in the one that it lies in."""
    options = tuple(
        _period_option(asked, was) for asked, was in zip(open_.periods, before.periods, strict=True)
    )
    text = _date_text(values)
    is_settled = any(option.is_chosen for option in options)
    is_typed = text == values.get(OTHER_DATE, "").strip() and not is_settled
    yield Control(name=DATE, legend="Establishment", options=options, typed=None, value="")
    yield Control(
        name=OTHER_DATE,
        legend="or of another date",
        options=(),
        typed=None,
        value=text if is_typed else "",
    )


def _period_option(asked: Period, was: Period) -> Option:
    """A period with the date that is asked for, where that lies in it."""
    is_other = asked.is_now and asked.date != was.date
    return Option(
        value=str(asked.date if asked.is_now else was.date),
        text=f"{period_words(was)}: {asked.date}" if is_other else period_words(was),
        is_now=was.is_now,
        is_chosen=asked.is_now,
    )


def period_words(period: Period) -> str:
    """When it is: `until May 1942`, `June to December 1942`."""
    span = DateSpan(first=period.first or period.date.first, last=period.last or period.date.last)
    begins = month_or_day(span, is_end=False)
    ends = month_or_day(span, is_end=True)
    if period.first is None:
        return f"until {ends}"
    if period.last is None:
        return f"from {begins}"
    is_one_year = period.first.year == period.last.year
    return f"{begins.removesuffix(f' {period.first.year}') if is_one_year else begins} to {ends}"


def month_or_day(span: DateSpan, *, is_end: bool) -> str:
    """The first or last day of a span; only its month where that is a whole one."""
    edge = span.last if is_end else span.first
    whole = month(edge.year, edge.month)
    is_whole = edge == (whole.last if is_end else whole.first)
    return day_words(edge).removeprefix(f"{edge.day} ") if is_whole else day_words(edge)
