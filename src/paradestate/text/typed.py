"""What is typed beside a command: numbers, amounts and dates by name, and lists of names."""

import re
from collections.abc import Callable, Container, Iterable, Mapping
from fractions import Fraction
from typing import TypeVar

from paradestate.core.game import Purchase
from paradestate.core.sentence.support import typed_words
from paradestate.core.span import DateSpan
from paradestate.text.date import read_date
from paradestate.text.money import read_money
from paradestate.text.number import read_whole
from paradestate.text.slip import Slip

T = TypeVar("T")

_NAME = r"""\s*(?:"(?P<double>[^"]*)"|'(?P<single>(?:[^']|'')*)'|(?P<plain>[^,="']+))\s*"""
_PAIR = re.compile(rf"{_NAME}=\s*(?P<value>[^,]*)(?:,|$)")
_BRACKET = re.compile(r"\s*\(")
_ONE = re.compile(rf"{_NAME}(?:,|$)")


def read_numbers(text: str) -> dict[str, int] | Slip:
    """Names with whole numbers: `rifleman=50, officer=4`; odd names in quotes as in YAML.

    The numbers of a name that is there twice are added up.
    """
    found: dict[str, int] = {}
    for name, value in _pairs(text):
        number = read_whole(value, least=0)
        if isinstance(number, Slip):
            return number
        found[name] = found.get(name, 0) + number
    return found or _not_pairs(text)


def read_purchases(text: str, *, entries: Container[str]) -> tuple[Purchase, ...] | Slip:
    """Purchases with commas between: `machine-gun platoon=2, pioneers(flame)=1`.

    An entry that is written twice is taken twice. `entries` are those whose own names may hold
    brackets.
    """
    found: list[Purchase] = []
    for name, value in _pairs(text):
        number = read_whole(value)
        if isinstance(number, Slip):
            return number
        entry, choice = _with_choice(name, entries=entries)
        found.append(Purchase(entry=entry, number=number, choice=choice))
    return tuple(found) or Slip(
        code="not-a-purchase",
        message=f"'{text}' isn't entries and numbers.",
        hint="Write entry=number with commas between, a choice in round brackets: "
        "pioneers(flame)=1.",
    )


def read_results(text: str) -> tuple[tuple[str, int], ...] | Slip:
    """What dice allowed, in their order: `light tanks=0, pioneers=1`; a name may come again."""
    found: list[tuple[str, int]] = []
    for name, value in _pairs(text):
        number = read_whole(value, least=0)
        if isinstance(number, Slip):
            return number
        found.append((name, number))
    return tuple(found) or _not_pairs(text)


def read_by_number(
    text: str, *, entries: Container[str], read: Callable[[str], T | Slip]
) -> tuple[tuple[str, int | None, T], ...] | Slip:
    """A value for each entry, or for one number of it in round brackets: `guns=5, tanks(2)=10`.

    The number is None where none is said.
    """
    found: list[tuple[str, int | None, T]] = []
    for name, written in _pairs(text):
        entry, bracket = _with_choice(name, entries=entries)
        number = read_whole(bracket) if bracket else None
        if isinstance(number, Slip):
            return number
        value = read(written)
        if isinstance(value, Slip):
            return value
        found.append((entry, number, value))
    return tuple(found) or Slip(
        code="not-names-and-numbers",
        message=f"'{text}' isn't entries and numbers.",
        hint="Write entry=number with commas between, one of several priced numbers in round "
        "brackets: tanks(2)=10.",
    )


def _with_choice(name: str, *, entries: Container[str]) -> tuple[str, str]:
    """An entry and its choice; of several readings the one whose entry is there, else the first."""
    if name in entries or not name.endswith(")"):
        return name, ""
    readings = [
        (name[: bracket.start()], name[bracket.end() : -1].strip())
        for bracket in _BRACKET.finditer(name)
        if bracket.start() and name[bracket.end() : -1].strip()
    ]
    known = [reading for reading in readings if reading[0] in entries]
    return next(iter((*known, *readings)), (name, ""))


def purchases_text(plan: Iterable[Purchase]) -> str:
    """Purchases as they are typed, so that `read_purchases` reads just these."""
    return ", ".join(typed_words(each) for each in plan)


def numbers_text(numbers: Mapping[str, int]) -> str:
    """Names with whole numbers as they are typed, so that `read_numbers` reads just these."""
    return purchases_text(Purchase(entry=name, number=number) for name, number in numbers.items())


def read_named_words(text: str) -> dict[str, str] | Slip:
    """Names with one word each: `training=recruits`."""
    return _values(text, read=lambda written: written, what="word")


def read_amounts(text: str) -> dict[str, Fraction] | Slip:
    """Names with amounts of money: `main=48.50, lorries=24`."""
    return _values(text, read=read_money, what="amount")


def read_dates(text: str) -> dict[str, DateSpan] | Slip:
    """Names with dates: `main=2026-12-20`."""
    return _values(text, read=read_date, what="date")


def _values(text: str, *, read: Callable[[str], T | Slip], what: str) -> dict[str, T] | Slip:
    found: dict[str, T] = {}
    for name, written in _pairs(text):
        value = read(written)
        if isinstance(value, Slip):
            return value
        if name in found:
            return name_twice(name)
        found[name] = value
    return found or _not_pairs(text, what=what)


def name_twice(name: str) -> Slip:
    """The slip for a name that was typed twice with one value each."""
    return Slip(
        code="name-twice",
        message=f"'{name}' is given twice.",
        hint="Give each a name of its own.",
    )


def _pairs(text: str) -> tuple[tuple[str, str], ...]:
    """Each name with the text after its sign of equality; nothing where some piece has none."""
    found: list[tuple[str, str]] = []
    position = 0
    while position < len(text.rstrip()):
        match = _PAIR.match(text, position)
        if match is None:
            return ()
        found.append((_name(match), match["value"].strip()))
        position = match.end()
    return tuple(found)


def read_names(text: str) -> tuple[str, ...] | Slip:
    """Names with commas between: `North, South`."""
    found: list[str] = []
    position = 0
    while position < len(text.rstrip()):
        match = _ONE.match(text, position)
        if match is None:
            return _not_pairs(text)
        found.append(_name(match))
        position = match.end()
    return tuple(found)


def _name(match: re.Match[str]) -> str:
    if match["plain"] is not None:
        return match["plain"].strip()
    double = match["double"]
    return match["single"].replace("''", "'") if double is None else double


def _not_pairs(text: str, *, what: str = "number") -> Slip:
    return Slip(
        code="not-names-and-numbers",
        message=f"'{text}' isn't names and {what}s.",
        hint=f"Write name={what} with commas between; names with commas or = go in quotes.",
    )


def read_typed_date(text: str) -> DateSpan | Slip:
    """A date as it stands in files."""
    return read_date(text.strip())
