"""What a force leaves open to its owner: numbers within ranges, dates, theatres.

Nothing is decided here; it says between what one may choose, and what is chosen now.
"""

import datetime
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass

from paradestate.core.force import Force, Raise
from paradestate.core.formation import Part
from paradestate.core.number import NumberRange
from paradestate.core.span import DateSpan, Hold, Window, day, month
from paradestate.core.variant import compositions

ONE_DAY = datetime.timedelta(days=1)


@dataclass(frozen=True, slots=True, kw_only=True)
class OpenNumber:
    """A part whose number is a range."""

    of: str
    within: NumberRange
    """What every range in which it is a part allows."""
    now: int | None
    """None where nobody chose."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Period:
    """Days between two changes: on all of them the same is in force."""

    first: datetime.date | None
    """None: since ever."""
    last: datetime.date | None
    date: DateSpan
    """A date within it, to be chosen for all of them; the written one where that lies in it."""
    is_now: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Leeway:
    """What may be chosen."""

    numbers: tuple[OpenNumber, ...]
    periods: tuple[Period, ...]
    """In order of time; none where nothing changes with time."""
    theatres: tuple[str, ...]
    """Theatres on which something depends."""


def leeway(force: Force) -> Leeway:
    """What is left open below the raised formation, and in the list of supporting troops."""
    raise_ = force.raise_
    if raise_ is None:
        return Leeway(numbers=(), periods=(), theatres=())
    parts = tuple(_parts(force, raise_.formation))
    entries = force.supporting_troops.values()
    windows = [*(part.window for part in parts), *(entry.window for entry in entries)]
    theatres = [*(part.theatre for part in parts), *(entry.theatre for entry in entries)]
    return Leeway(
        numbers=tuple(_numbers(parts, raise_)),
        periods=tuple(_periods(force, windows, date=raise_.date)),
        theatres=tuple(dict.fromkeys(name for name in theatres if name)),
    )


def _parts(force: Force, root: str) -> Iterator[Part]:
    """Every part that can be reached, once, in the order of the files."""
    made, _ = compositions(force)
    waiting, seen = [root], {root}
    while waiting:
        name = waiting.pop(0)
        for located in made[name].parts if name in made else ():
            yield located.part
            if located.part.of not in seen:
                seen.add(located.part.of)
                waiting.append(located.part.of)


def _numbers(parts: Iterable[Part], raise_: Raise) -> Iterator[OpenNumber]:
    ranged: dict[str, list[Part]] = {}
    for part in parts:
        if not part.number.is_single and _may_be_in_force(part, raise_):
            ranged.setdefault(part.of, []).append(part)
    for name, alike in ranged.items():
        usual = {part.usual for part in alike}
        least = max(part.number.least for part in alike)
        most = min(part.number.most for part in alike)
        if least <= most:
            yield OpenNumber(
                of=name,
                within=NumberRange(least=least, most=most),
                now=raise_.numbers.get(name, usual.pop() if len(usual) == 1 else None),
            )


def _may_be_in_force(part: Part, raise_: Raise) -> bool:
    if part.theatre and part.theatre != raise_.theatre:
        return False
    return raise_.date is None or part.window.holds(raise_.date) is not Hold.OUT


def _periods(force: Force, windows: Iterable[Window], *, date: DateSpan | None) -> Iterator[Period]:
    days = _change_days(force.covers, windows)
    if not days:
        return
    firsts = (force.covers.first if force.covers.begins else None, *days)
    lasts = (*(each - ONE_DAY for each in days), force.covers.last if force.covers.ends else None)
    for first, last in zip(firsts, lasts, strict=True):
        is_now = date is not None and _lies_in(date, first=first, last=last)
        inside = date if date is not None and is_now else _date_in(first, last)
        yield Period(first=first, last=last, date=inside, is_now=is_now)


def _change_days(covers: Window, windows: Iterable[Window]) -> tuple[datetime.date, ...]:
    """The days on which something begins, or is over since the day before, in order."""
    days = set()
    for window in windows:
        if window.begins is not None:
            days.add(window.first)
        if window.ends is not None and window.last < datetime.date.max:
            days.add(window.last + ONE_DAY)
    return tuple(sorted(each for each in days if covers.first < each <= covers.last))


def _lies_in(date: DateSpan, *, first: datetime.date | None, last: datetime.date | None) -> bool:
    return (first is None or first <= date.first) and (last is None or date.last <= last)


def _date_in(first: datetime.date | None, last: datetime.date | None) -> DateSpan:
    """The month with which the period begins, where it holds that whole, else that day."""
    edge = first or last or datetime.date.min
    whole = month(edge.year, edge.month)
    return whole if _lies_in(whole, first=first, last=last) else day(edge)


def differing(numbers: Mapping[str, int], open_: Leeway) -> Mapping[str, int]:
    """Those of the numbers that aren't what is chosen now."""
    now = {number.of: number.now for number in open_.numbers}
    return {name: number for name, number in numbers.items() if now.get(name) != number}
