"""Repairs in sentences: which stands, by when they are wanted, and whether that can be met."""

from collections.abc import Iterable, Iterator, Mapping
from datetime import date
from fractions import Fraction
from math import ceil, floor

from paradestate.core.sentence.forecast import by_words
from paradestate.core.sentence.wording import capital, day_words, hours_words, listed
from paradestate.core.work.forecast_value import GoalForecast
from paradestate.core.work.ladder import Reached, Rung
from paradestate.core.work.stand_work import StandWork


def repaired_words(works: Iterable[StandWork]) -> str:
    """The stands, each with what is wrong with it: `1 Section (bayonet snapped) and 2 Section`."""
    return listed(map(_stand_words, works))


def _stand_words(work: StandWork) -> str:
    note = "" if work.repair is None else work.repair.note
    return f"{work.stand.name} ({note})" if note else work.stand.name


def wanted_words(rung: Rung) -> Iterator[str]:
    """What of a batch is in repair, and for which day: one line for each day."""
    by_day: dict[date, list[StandWork]] = {}
    for work in rung.works:
        if work.repair is not None:
            by_day.setdefault(work.repair.wanted, []).append(work)
    for day, works in sorted(by_day.items()):
        yield f"in repair, wanted on {day_words(day)}: {repaired_words(works)}"


def repair_sentences(
    repairs: Iterable[Reached], *, forecasts: Mapping[str, GoalForecast], today: date
) -> Iterator[str]:
    """Each day on which repairs are wanted: what they are, and whether they come in time.

    Such as: `Repairs for 10 December 2026: 1 Section; done after 40 min, of 4 h before it at your
    pace; four in five by 6 December 2026.` Late ones are said to be.
    """
    for each in repairs:
        day = each.milestone.wanted
        if day is not None:
            what = f"{capital(each.milestone.name)}: {repaired_words(each.works)}"
            found = forecasts.get(each.milestone.name)
            by = "" if found is None else by_words(found)
            yield f"{what}; {_in_time(each, day=day, today=today)}{f'; {by}' if by else ''}."


def _in_time(each: Reached, *, day: date, today: date) -> str:
    """Whether they are done by the evening before, at the usual pace; nothing where none is known.

    Minutes are rounded to the worse side. What takes none is in time as soon as it is logged.
    """
    after = f"done after {hours_words(each.ends)}" if each.ends else "no minutes left"
    if day <= today:
        return f"OVERDUE, {after}"
    if not each.due:
        return after
    late = f"LATE by {hours_words(Fraction(ceil(each.late)))} of work: " if each.late else ""
    return f"{late}{after}, of {hours_words(Fraction(floor(each.due)))} before it at your pace"
