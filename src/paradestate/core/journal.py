"""The journal added up: what is held, lent and promised, from everything that happened.

Entries count by the day that they hold for, then in the order they were written, so that what was
written late still stands on its day.
"""

import datetime
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace

from paradestate.core.holdings import Holdings, Tally, part_of, piles
from paradestate.core.journal_entry import EntryKind, JournalEntry
from paradestate.core.on_order import OnOrder, less_received
from paradestate.core.repair import Repair, is_in_repair
from paradestate.core.sentence.wording import several


@dataclass(frozen=True, slots=True, kw_only=True)
class Promise:
    """Figures that a force is to have on a day."""

    day: datetime.date
    force: str
    figures: Mapping[str, int]
    note: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Shortfall:
    """A number that an entry brought below nought."""

    entry: JournalEntry
    name: str
    stage: str
    lacking: int


def more_words(short: Shortfall) -> str:
    """How many are lacking: `1 more rifleman`, `2 more riflemen`."""
    return f"{short.lacking} more {several(short.lacking, short.name).split(' ', 1)[1]}"


@dataclass(frozen=True, slots=True, kw_only=True)
class JournalState:
    """What all entries up to a day come to."""

    held: Holdings = Holdings()
    """What is owned and here."""
    lent: Holdings = Holdings()
    """What is owned and away, at the stage at which it left."""
    minutes: Mapping[datetime.date, int] = field(default_factory=dict)
    """Day to minutes of its sessions."""
    promises: tuple[Promise, ...] = ()
    on_order: tuple[OnOrder, ...] = ()
    """What was ordered and hasn't come, oldest first."""
    shortfalls: tuple[Shortfall, ...] = ()
    worked: Mapping[tuple[str, str], Holdings] = field(default_factory=dict)
    """Force and stand to what was worked on as that stand; part of what is held, while it is."""
    repairs: tuple[Repair, ...] = ()
    """Stands that went back to be repaired and aren't finished again, the oldest first."""
    last_day: datetime.date = datetime.date.min
    """The latest day on which the holdings changed, or what is on order."""


def strikes(entries: Sequence[JournalEntry]) -> Mapping[str, JournalEntry]:
    """Id of each entry that no longer counts, to the one that strikes it out.

    A strike that is struck out strikes nothing. Where several strike the same it is the latest.
    """
    void: dict[str, JournalEntry] = {}
    for entry in reversed(entries):
        if entry.kind is EntryKind.STRUCK_OUT and entry.id not in void:
            void.setdefault(entry.struck_out, entry)
    return void


def struck_out(entries: Sequence[JournalEntry]) -> frozenset[str]:
    """The ids of entries that no longer count."""
    return frozenset(strikes(entries))


def in_force(entries: Sequence[JournalEntry]) -> tuple[JournalEntry, ...]:
    """Entries that aren't struck out, strikes left out, in the order in which they count."""
    void = struck_out(entries)
    kept = [
        entry
        for entry in entries
        if entry.id not in void and entry.kind is not EntryKind.STRUCK_OUT
    ]
    return tuple(sorted(kept, key=lambda entry: entry.on))


def can_follow(state: JournalState, entries: Iterable[JournalEntry]) -> bool:
    """Whether these entries can be added to a state, or all before them must be added up anew."""
    own: set[str] = set()
    for entry in entries:
        strikes_earlier = entry.kind is EntryKind.STRUCK_OUT and entry.struck_out not in own
        comes_late = _changes_holdings(entry) and entry.on < state.last_day
        if comes_late or strikes_earlier:
            return False
        own.add(entry.id)
    return True


def _changes_holdings(entry: JournalEntry) -> bool:
    """Whether it matters after which others the entry is added up."""
    return bool(entry.leaves or entry.comes or entry.ordered or entry.cancelled)


def added_up(
    start: JournalState, entries: Sequence[JournalEntry], *, until: datetime.date | None = None
) -> JournalState:
    """The state after all entries, or after those up to the end of a day.

    What is promised for later days is part of it.
    """
    counted = in_force(entries)
    upto = [entry for entry in counted if until is None or entry.on <= until or entry.promised]
    sums = _Sums(start)
    shortfalls = [*start.shortfalls]
    for entry in upto:
        shortfalls.extend(sums.take(entry))
    return replace(
        sums.state(start),
        shortfalls=tuple(shortfalls),
        last_day=max([start.last_day, *(e.on for e in upto if _changes_holdings(e))]),
    )


class _Sums:
    """The state while it is added up."""

    def __init__(self, start: JournalState) -> None:
        self._held = Tally(start.held)
        self._lent = Tally(start.lent)
        self._minutes = dict(start.minutes)
        self._promises = list(start.promises)
        self._on_order = list(start.on_order)
        self._worked = {stand: Tally(worked) for stand, worked in start.worked.items()}
        self._repairs = {(each.force, each.stand): each for each in start.repairs}

    def take(self, entry: JournalEntry) -> Iterator[Shortfall]:
        """Adds an entry, and gives what it brought below nought."""
        if entry.kind is EntryKind.COUNTED:
            self._held.put(entry.comes)
            return
        origin = self._lent if entry.kind is EntryKind.RETURNED else self._held
        origin.add(entry.leaves, times=-1)
        if entry.kind is EntryKind.LENT:
            self._lent.add(entry.leaves)
        self._held.add(entry.comes)
        self._order(entry)
        if entry.stand or entry.stands:
            self._work_on(entry)
        if entry.minutes:
            self._minutes[entry.on] = self._minutes.get(entry.on, 0) + entry.minutes
        if entry.promised:
            self._promises.append(
                Promise(day=entry.on, force=entry.force, figures=entry.promised, note=entry.note)
            )
        for pile in origin.below_nought(entry.leaves):
            yield Shortfall(entry=entry, name=pile.name, stage=pile.stage, lacking=-pile.number)

    def _order(self, entry: JournalEntry) -> None:
        """Remembers what was ordered, and takes off it what came from its source, or won't."""
        if entry.ordered:
            self._on_order.append(
                OnOrder(
                    entry=entry.id,
                    source=entry.source,
                    day=entry.on,
                    expected=entry.expected,
                    figures=entry.ordered,
                )
            )
        elif entry.source:
            came = {name: sum(stages.values()) for name, stages in entry.comes.figures.items()}
            gone = came or entry.cancelled
            self._on_order = [*less_received(self._on_order, source=entry.source, came=gone)]

    def _work_on(self, entry: JournalEntry) -> None:
        """Remembers with each stand that is named its part of what was done."""
        names = entry.stands or (entry.stand,)
        leaves, comes = (part_of(each, among=len(names)) for each in (entry.leaves, entry.comes))
        for name in names:
            worked = self._worked.setdefault((entry.force, name), Tally())
            worked.add(leaves, times=-1)
            worked.add(comes)
            self._repair(entry, name, worked=worked.there())

    def _repair(self, entry: JournalEntry, name: str, *, worked: Holdings) -> None:
        """Remembers a stand that goes back to be repaired, and forgets one that is back from it."""
        key = (entry.force, name)
        known = self._repairs.get(key)
        if known is not None and (entry.wanted or not is_in_repair(known, worked)):
            del self._repairs[key]
        left = next((pile.stage for pile in piles(entry.leaves)), "")
        if entry.wanted is not None:
            self._repairs[key] = Repair(
                entry=entry.id,
                force=entry.force,
                stand=name,
                day=entry.on,
                wanted=entry.wanted,
                left=left,
                note=entry.note,
            )

    def state(self, start: JournalState) -> JournalState:
        return replace(
            start,
            held=self._held.holdings(),
            lent=self._lent.holdings(),
            minutes=self._minutes,
            promises=tuple(self._promises),
            on_order=tuple(self._on_order),
            repairs=tuple(self._repairs.values()),
            worked={
                stand: worked for stand, tally in self._worked.items() if (worked := tally.there())
            },
        )
