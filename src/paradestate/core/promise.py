"""Figures promised for a day: never more than are held, and never to two forces unsaid."""

import datetime
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field

from paradestate.core.choice import CHOSEN_HERE
from paradestate.core.cover import Substitutes, cover
from paradestate.core.finding import Finding, Level
from paradestate.core.journal import Promise
from paradestate.core.log_finding import NOTHING_WRITTEN
from paradestate.core.sentence.wording import capital, day_words, listed, plural, several


@dataclass(frozen=True, slots=True, kw_only=True)
class Cupboard:
    """What can be promised."""

    held: Mapping[str, int]
    """Kind to figures owned and here, those on whole stands included."""
    substitutes: Substitutes = Substitutes()
    parts: Mapping[str, Mapping[str, int]] = field(default_factory=dict)
    """Kind, then stand pattern, to figures that the promise of a whole force needs."""


def promise_findings(
    new: Promise, earlier: Iterable[Promise], *, cupboard: Cupboard
) -> tuple[Finding, ...]:
    """A stop where a force is promised more than is held, a warning where two need the same."""
    same_day = [promise for promise in earlier if promise.day == new.day]
    own = _summed(new, *(each for each in same_day if each.force == new.force))
    lacking = _lacking(own, cupboard)
    if lacking:
        return tuple(
            _more_than_held(kind, own[kind], new=new, cupboard=cupboard) for kind in lacking
        )
    joint = _lacking(_summed(new, *same_day), cupboard)
    others = dict.fromkeys(each.force for each in same_day if each.force != new.force)
    return tuple(_twice(kind, number, new=new, others=others) for kind, number in joint.items())


def _summed(*promises: Promise) -> Mapping[str, int]:
    total: dict[str, int] = {}
    for promise in promises:
        for kind, number in promise.figures.items():
            total[kind] = total.get(kind, 0) + number
    return total


def _lacking(want: Mapping[str, int], cupboard: Cupboard) -> Mapping[str, int]:
    covered = cover(want, owned=cupboard.held, bought={}, substitutes=cupboard.substitutes)
    return covered.lacking


def _more_than_held(kind: str, promised: int, *, new: Promise, cupboard: Cupboard) -> Finding:
    parts = cupboard.parts.get(kind, {})
    by_stand = listed(f"{number} in {name}" for name, number in parts.items())
    inside = f" ({by_stand})" if by_stand else ""
    return Finding(
        level=Level.STOP,
        code="promised-more-than-held",
        message=f"{capital(plural(kind))}: {cupboard.held.get(kind, 0)} held, {promised} promised"
        f"{inside} for {weekday_words(new.day)}.",
        effect=NOTHING_WRITTEN,
        hint='Promise fewer by naming them ("rifleman=20"), or log what was received first.',
        place=CHOSEN_HERE,
    )


def _twice(kind: str, number: int, *, new: Promise, others: Iterable[str]) -> Finding:
    return Finding(
        level=Level.WARN,
        code="promised-twice",
        message=f"{several(number, kind)} {'is' if number == 1 else 'are'} promised both to "
        f"{new.force} and to {listed(others)} on {weekday_words(new.day)}.",
        effect="The promise is written; on the day only one of them can have those.",
        hint="Promise fewer, another day, or strike the other promise out.",
        place=CHOSEN_HERE,
    )


WEEKDAYS = ("Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday")


def weekday_words(day: datetime.date) -> str:
    """`Thursday 12 March 2026`."""
    return f"{WEEKDAYS[day.weekday()]} {day_words(day)}"
