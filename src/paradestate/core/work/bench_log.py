"""What the journal says of work at the bench: minutes by day, and what they brought on.

Sessions of one force count, and those of the collection as a whole. Work that hasn't brought
anything on yet belongs to what is brought on next, so that an evening on a batch that is half done
isn't lost. What is brought over several stages is brought to each of them. Where a day brought
something on from or to a stage that the force has no more, or stands that it has no more, nobody
can say what its minutes were for: up to that day they are left out.
"""

import datetime
from collections.abc import Hashable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from itertools import groupby
from typing import TypeVar

from paradestate.core.holdings import Pile, piles
from paradestate.core.journal_entry import BRINGS_ON, JournalEntry


@dataclass(frozen=True, slots=True, kw_only=True)
class Stretch:
    """The work up to a day on which something was brought on, since the day before of that sort."""

    last: datetime.date
    minutes: int
    reached: Mapping[tuple[str, str], int]
    """Figure kind and stage to figures that were brought to it."""
    on_stands: Mapping[tuple[str, str, str], int] = field(default_factory=dict)
    """Pattern, kind and stage to those of these figures that were brought on as such stands."""


@dataclass(frozen=True, slots=True, kw_only=True)
class BenchLog:
    """Work by day and by what it brought."""

    minutes: Mapping[datetime.date, int] = field(default_factory=dict)
    stretches: tuple[Stretch, ...] = ()
    unfinished: int = 0
    """Minutes since something was last brought on."""
    left_out: int = 0
    """Minutes of which nobody can say what they were for."""
    unknown: frozenset[str] = frozenset()
    """Stages and stand patterns of that work, which the force doesn't have."""
    sessions: int = 0
    """Sessions with minutes; several of a day are several."""

    @property
    def since(self) -> datetime.date | None:
        """The day of the first session."""
        return min(self.minutes, default=None)


@dataclass(frozen=True, slots=True, kw_only=True)
class Making:
    """What must be known of a force to read its work."""

    stages: Sequence[str]
    on_stand: Mapping[str, Mapping[str, int]]
    """Stand pattern to the figures on one of it."""
    patterns: Mapping[str, str] = field(default_factory=dict)
    """Stand of the force by its name to its pattern."""


def log_of_bench(
    entries: Iterable[JournalEntry],
    making: Making,
    *,
    force: str,
    before: BenchLog | None = None,
) -> BenchLog:
    """The work of a force from entries that count, in the order in which they count.

    They may go on from `before`, which is that of all entries of the days before them.
    """
    known = before or BenchLog()
    minutes = dict(known.minutes)
    stretches = list(known.stretches)
    spent, left_out, unknown = known.unfinished, known.left_out, known.unknown
    sessions = known.sessions
    own = [entry for entry in entries if entry.force in {force, ""} and entry.kind in BRINGS_ON]
    for day, grouped in groupby(own, key=lambda entry: entry.on):
        of_day = tuple(grouped)
        sessions += sum(entry.minutes > 0 for entry in of_day)
        worked = sum(entry.minutes for entry in of_day)
        if worked:
            minutes[day] = worked
        spent += worked
        strange = frozenset(name for entry in of_day for name in _strange(entry, making))
        if strange and spent:
            unknown |= strange
            left_out += spent
            spent = 0
            continue
        reached = _added(step for entry in of_day for step in _steps(entry, making))
        if reached and spent:
            on_stands = _added(step for entry in of_day for step in _on_stands(entry, making))
            stretches.append(Stretch(last=day, minutes=spent, reached=reached, on_stands=on_stands))
            spent = 0
    return BenchLog(
        minutes=minutes,
        stretches=tuple(stretches),
        unfinished=spent,
        left_out=left_out,
        unknown=unknown,
        sessions=sessions,
    )


T = TypeVar("T", bound=Hashable)


def _added(steps: Iterable[tuple[T, int]]) -> Mapping[T, int]:
    total: dict[T, int] = {}
    for step, number in steps:
        total[step] = total.get(step, 0) + number
    return total


def _strange(entry: JournalEntry, making: Making) -> Iterator[str]:
    """The stages and stand patterns of an entry that the force doesn't have."""
    for pile in (*piles(entry.leaves), *piles(entry.comes)):
        if pile.stage not in making.stages:
            yield pile.stage
        if pile.is_stand and pile.name not in making.on_stand:
            yield pile.name


def _steps(entry: JournalEntry, making: Making) -> Iterator[tuple[tuple[str, str], int]]:
    """Each stage that an entry brought figures to, and how many; what goes back brings none."""
    goal = max((_rank(pile, making) for pile in piles(entry.comes)), default=-1)
    for pile in piles(entry.leaves):
        start = _rank(pile, making)
        stages = making.stages[start + 1 : goal + 1] if start >= 0 else ()
        for kind, each in _figures(pile, making).items():
            for stage in stages:
                yield (kind, stage), each


def _on_stands(entry: JournalEntry, making: Making) -> Iterator[tuple[tuple[str, str, str], int]]:
    """The same with the pattern of the stands that the figures are on; of others none."""
    names = (entry.stand, *entry.stands)
    patterns = [
        *(*entry.comes.stands, *entry.leaves.stands),
        *(making.patterns[name] for name in names if name in making.patterns),
    ]
    if patterns:
        for (kind, stage), number in _steps(entry, making):
            yield (patterns[0], kind, stage), number


def _rank(pile: Pile, making: Making) -> int:
    """The place of a pile's stage in their order; -1 for one that the force doesn't have."""
    return making.stages.index(pile.stage) if pile.stage in making.stages else -1


def _figures(pile: Pile, making: Making) -> Mapping[str, int]:
    if not pile.is_stand:
        return {pile.name: pile.number}
    on_one = making.on_stand.get(pile.name, {})
    return {kind: each * pile.number for kind, each in on_one.items()}
