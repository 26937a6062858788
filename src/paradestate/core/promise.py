"""Figures promised for a day: never more than are held, and never to two forces unsaid."""

import datetime
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field

from paradestate.core.choice import CHOSEN_HERE
from paradestate.core.cover import Substitutes, cover
from paradestate.core.finding import Finding, Level
from paradestate.core.journal import Promise
from paradestate.core.log_finding import log_stop
from paradestate.core.sentence.wording import capital, day_words, listed, plural, several


@dataclass(frozen=True, slots=True, kw_only=True)
class Cupboard:
    """What can be promised, of all forces of a collection together."""

    held: Mapping[str, int]
    """Kind to figures owned and here, those on whole stands included."""
    substitutes: Substitutes = Substitutes()
    parts: Mapping[str, Mapping[str, int]] = field(default_factory=dict)
    """Kind, then stand pattern, to figures that the promise of a whole force needs."""

    def lacking(self, promises: Iterable[Promise]) -> Mapping[str, int]:
        """Kind to figures that these promises lack, if all of them are to be kept on one day."""
        want: dict[str, int] = {}
        for promise in promises:
            for kind, number in promise.figures.items():
                want[kind] = want.get(kind, 0) + number
        return cover(want, owned=self.held, bought={}, substitutes=self.substitutes).lacking


def promise_findings(
    new: Promise, earlier: Iterable[Promise], *, cupboard: Cupboard
) -> Iterator[Finding]:
    """Stops where a force is promised more than is held, warnings where two need the same."""
    same_day = [promise for promise in earlier if promise.day == new.day]
    own = [promise for promise in same_day if promise.force == new.force]
    stopped = _grown(cupboard.lacking(own), cupboard.lacking([*own, new]))
    for kind in stopped:
        yield _more_than_held(kind, new=new, own=own, cupboard=cupboard)
    if stopped:
        return
    clashes = _grown(cupboard.lacking(same_day), cupboard.lacking([*same_day, new]))
    for kind, number in clashes.items():
        others = dict.fromkeys(
            promise.force
            for promise in same_day
            if promise.force != new.force and kind in promise.figures
        )
        yield _twice(kind, number, new=new, others=tuple(others), held=cupboard.held.get(kind, 0))


def broken_promises(
    promises: Iterable[Promise], *, since: datetime.date, before: Cupboard, after: Cupboard
) -> Iterator[Finding]:
    """A warning for each day from which figures are taken away that were promised for it."""
    by_day: dict[datetime.date, list[Promise]] = {}
    for promise in promises:
        if promise.day >= since:
            by_day.setdefault(promise.day, []).append(promise)
    for day, promised in sorted(by_day.items()):
        for kind, number in _grown(before.lacking(promised), after.lacking(promised)).items():
            yield _broken(kind, number, day=day)


def _grown(before: Mapping[str, int], after: Mapping[str, int]) -> Mapping[str, int]:
    """Of each kind how many more are lacking than before."""
    more = {kind: number - before.get(kind, 0) for kind, number in after.items()}
    return {kind: number for kind, number in more.items() if number > 0}


def _more_than_held(
    kind: str, *, new: Promise, own: Iterable[Promise], cupboard: Cupboard
) -> Finding:
    before = sum(promise.figures.get(kind, 0) for promise in own)
    parts = [f"{number} in {name}" for name, number in cupboard.parts.get(kind, {}).items()]
    if before:
        parts.append(f"{before} promised before")
    inside = f" ({listed(parts)})" if parts else ""
    promised = new.figures.get(kind, 0) + before
    return log_stop(
        code="promised-more-than-held",
        message=f"{capital(plural(kind))}: {cupboard.held.get(kind, 0)} held, {promised} promised"
        f"{inside} for {weekday_words(new.day)}.",
        hint='Promise fewer by naming them ("rifleman=20"), or log what was received first.',
    )


def _twice(kind: str, number: int, *, new: Promise, others: tuple[str, ...], held: int) -> Finding:
    forces = (new.force, *others)
    to = f"to {listed(forces)}" if others else f"to {new.force} and as stand-ins elsewhere"
    return Finding(
        level=Level.WARN,
        code="promised-twice",
        message=f"{several(number, kind)} too many {'is' if number == 1 else 'are'} promised {to} "
        f"on {weekday_words(new.day)}: {held} held.",
        effect="The promise is written; on the day only one of them can have those.",
        hint="Promise fewer, another day, or strike the other promise out.",
        place=CHOSEN_HERE,
    )


def _broken(kind: str, number: int, *, day: datetime.date) -> Finding:
    return Finding(
        level=Level.WARN,
        code="promise-broken",
        message=f"{several(number, kind)} {'is' if number == 1 else 'are'} promised for "
        f"{weekday_words(day)}, and won't be here.",
        effect="It is written; the promise can't be kept as it stands.",
        hint="Strike the promise out, or see that they are back by then.",
        place=CHOSEN_HERE,
    )


WEEKDAYS = ("Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday")


def weekday_words(day: datetime.date) -> str:
    """`Thursday 12 March 2026`."""
    return f"{WEEKDAYS[day.weekday()]} {day_words(day)}"
