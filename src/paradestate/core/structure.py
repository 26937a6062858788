"""The raised organisation with every choice made: date, theatre, numbers and weak strength."""

import datetime
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction

from paradestate.core.finding import Finding, Level, stops
from paradestate.core.force import Force, Raise
from paradestate.core.formation import Formation, Need
from paradestate.core.money import half_up
from paradestate.core.place import nearest_place
from paradestate.core.span import DateSpan, Hold, Window, month
from paradestate.core.variant import Composition, Compositions, LocatedPart, compositions

FULL = Fraction(1)
"""Paper strength."""

MOST_INSIDE = 40
"""Formations inside one another; no army has so many levels (a bound against slips)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Step:
    """So many of a thing directly under a formation, all choices made."""

    of: str
    number: int
    need: Need
    share: Fraction
    """Strength at which what is below it stands; FULL unless something above is weak."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Node:
    """A formation at a strength, with the steps under it in file order."""

    formation: Formation
    share: Fraction
    steps: tuple[Step, ...]

    @property
    def men(self) -> int:
        """Its own men, where it has no parts; weak strength rounded half up."""
        own = self.formation.men if self.formation.men is not None and not self.steps else 0
        return half_up(own * self.share)


NodeKey = tuple[str, Fraction]


@dataclass(frozen=True, slots=True, kw_only=True)
class Structure:
    """The raised formation and everything below it."""

    root: NodeKey
    date: DateSpan | None
    nodes: Mapping[NodeKey, Node]
    """In an order in which what holds comes before what is held."""


def structure(force: Force) -> tuple[Structure | None, tuple[Finding, ...]]:
    """The raised organisation, or None with the stops that prevent it."""
    raise_ = force.raise_
    made, findings = compositions(force)
    if raise_ is None or raise_.formation not in made or stops(findings):
        return None, findings
    date, date_findings = _date_within(force, raise_)
    settling = _Settling(force=force, raise_=raise_, made=made, date=date)
    tangle = tangle_from(made, raise_.formation)
    if tangle is not None:
        return None, (*findings, *date_findings, tangle_finding(force, tangle))
    root = settling.node_of(raise_.formation, FULL)
    settling.note_vain_numbers()
    all_findings = (*findings, *date_findings, *dict.fromkeys(settling.findings))
    if stops(all_findings):
        return None, all_findings
    ordered = dict(reversed(settling.nodes.items()))
    return Structure(root=root, date=date, nodes=ordered), all_findings


def _strength(formation: Formation) -> Fraction:
    return FULL if formation.weak is None else formation.weak


def tangle_from(made: Compositions, start: str) -> tuple[str, ...] | None:
    """The formations of a loop that can be reached from `start`, the first again at the end.

    Also, without that end, a chain of formations inside one another that is longer than
    MOST_INSIDE. None where neither is there.
    """
    deepest: dict[str, tuple[str, ...]] = {}
    path: list[str] = []

    def visit(name: str) -> tuple[str, ...] | None:
        if name in path:
            return (*path[path.index(name) :], name)
        if name in deepest or name not in made:
            return None
        if len(path) == MOST_INSIDE:
            return (*path, name)
        path.append(name)
        for located in made[name].parts:
            tangle = visit(located.part.of)
            if tangle is not None:
                return tangle
        path.pop()
        below = (deepest.get(located.part.of, ()) for located in made[name].parts)
        deepest[name] = (name, *max(below, key=len, default=()))
        return deepest[name] if len(deepest[name]) > MOST_INSIDE else None

    return visit(start)


def tangle_finding(force: Force, tangle: tuple[str, ...]) -> Finding:
    """The stop for a formation that contains itself, or for too many inside one another."""
    contains = ", which contains ".join(tangle[1:])
    is_loop = tangle[0] == tangle[-1]
    if is_loop:
        message = f"{tangle[0]} contains {contains}. A formation can't contain itself."
        names = ", ".join(dict.fromkeys(tangle))
        hint = f"Take one of these out of the other's parts: {names}."
    else:
        message = f"{tangle[0]} has more than {MOST_INSIDE} formations inside one another."
        hint = f"Look for one that is a part of the wrong one, down to {tangle[-1]}."
    others = dict.fromkeys(tangle[1:-1]) if is_loop else (tangle[-1],)
    return Finding(
        level=Level.STOP,
        code="loop" if is_loop else "too-deep",
        message=message,
        effect="Nothing can be counted.",
        hint=hint,
        place=nearest_place(force.places, ("formations", tangle[0])),
        related=tuple(nearest_place(force.places, ("formations", name)) for name in others),
    )


def _date_within(force: Force, raise_: Raise) -> tuple[DateSpan | None, tuple[Finding, ...]]:
    """The chosen date within what the folder covers; outside, its last or first day."""
    date, covers = raise_.date, force.covers
    if date is None or covers.holds(date) is Hold.IN:
        return date, ()
    late = covers.ends is not None and date.last > covers.last
    end = "after this folder ends" if late else "before this folder begins"
    day = covers.last if late else covers.first
    first = min(max(date.first, covers.first), covers.last)
    last = max(min(date.last, covers.last), covers.first)
    finding = Finding(
        level=Level.WARN,
        code="date-outside",
        message=f"{date} is {end} ({day.isoformat()}).",
        effect=f"Sums use the {'last' if late else 'first'} establishment.",
        hint="Choose a date that the folder covers, or widen 'covers'.",
        place=nearest_place(force.places, ("raise", "date")),
    )
    return DateSpan(first=first, last=last), (finding,)


class _Settling:
    """Makes the choices of every formation below the raised one, once each."""

    def __init__(
        self, *, force: Force, raise_: Raise, made: Compositions, date: DateSpan | None
    ) -> None:
        self.force = force
        self.raise_ = raise_
        self.made = made
        self.date = date
        self.nodes: dict[NodeKey, Node] = {}
        self.findings: list[Finding] = []
        self.ranged: set[str] = set()
        self.seen: set[str] = set()

    def node_of(self, name: str, share: Fraction) -> NodeKey:
        """Settles a formation and all below it; returns the key of its node."""
        composition = self.made[name]
        own = share * _strength(composition.formation)
        key = (name, own)
        if key in self.nodes:
            return key
        steps = tuple(self._steps(composition, own))
        for step in steps:
            if step.of in self.made:
                self.node_of(step.of, own)
        self.nodes[key] = Node(formation=composition.formation, share=own, steps=steps)
        return key

    def _steps(self, composition: Composition, share: Fraction) -> Iterator[Step]:
        for located in composition.parts:
            part = located.part
            self.seen.add(part.of)
            if part.of not in self.made and part.of not in self.force.stands:
                continue
            if not self._in_force(composition, located):
                continue
            number = self._number(composition, located)
            weak = _strength(self.made[part.of].formation) if part.of in self.made else FULL
            yield Step(
                of=part.of,
                number=half_up(number * share),
                need=part.need,
                share=share * weak,
            )

    def _in_force(self, composition: Composition, located: LocatedPart) -> bool:
        part = located.part
        if part.theatre and part.theatre != self.raise_.theatre:
            if not self.raise_.theatre:
                self.findings.append(self._without_theatre(composition, located))
            return False
        if part.window.is_open:
            return True
        if self.date is None:
            self._stop(
                located,
                code="date-missing",
                message=f"{_said(composition, located)} depends on the date, and none is chosen.",
                hint="Add 'date:' under raise, or choose one with --date.",
            )
            return False
        hold = part.window.holds(self.date)
        if hold is Hold.PARTLY:
            self._stop_partly(composition, located, date=self.date)
        return hold is Hold.IN

    def _stop_partly(
        self, composition: Composition, located: LocatedPart, *, date: DateSpan
    ) -> None:
        change = _change_within(located.part.window, date)
        eve = change - datetime.timedelta(days=1)
        whole_months = change.day == 1
        before = str(month(eve.year, eve.month)) if whole_months else eve.isoformat()
        after = str(month(change.year, change.month)) if whole_months else change.isoformat()
        self._stop(
            located,
            code="date-holds-a-change",
            message=f"{date} holds a change on {change.isoformat()} "
            f"({_said(composition, located)}).",
            hint=f"Choose {before} or {after}.",
        )

    def _without_theatre(self, composition: Composition, located: LocatedPart) -> Finding:
        return Finding(
            level=Level.REMARK,
            code="theatre-not-raised",
            message=f"{_said(composition, located)} belongs to the theatre "
            f"'{located.part.theatre}', and none is raised.",
            effect="It isn't counted.",
            hint="Add 'theatre:' under raise, or choose one with --theatre.",
            place=nearest_place(self.force.places, (*located.path, "theatre")),
        )

    def _number(self, composition: Composition, located: LocatedPart) -> int:
        part = located.part
        chosen = self.raise_.numbers.get(part.of)
        if part.number.is_single:
            return part.number.least
        self.ranged.add(part.of)
        number = part.usual if chosen is None else chosen
        if number is None:
            self._stop(
                located,
                code="number-missing",
                message=f"{_said(composition, located)} may number {part.number}; nobody chose.",
                hint=f"Add 'usual:', or {part.of} under 'raise: numbers', or --set {part.of}=...",
            )
            return part.number.least
        if number not in part.number:
            self._stop(
                located,
                code="number-outside-range",
                message=f"{number} isn't within {part.number} for {_said(composition, located)}.",
                hint=f"Choose a number from {part.number.least} to {part.number.most}.",
            )
        return number

    def note_vain_numbers(self) -> None:
        """A stop for each number chosen for a part that isn't a range."""
        for name in self.raise_.numbers:
            if name in self.seen and name not in self.ranged:
                self.findings.append(
                    Finding(
                        level=Level.STOP,
                        code="number-not-open",
                        message=f"A number is chosen for '{name}', whose number is fixed.",
                        effect="Nothing is counted until this is settled.",
                        hint="Write a range where it is a part, such as 2-4, or take this out.",
                        place=nearest_place(self.force.places, ("raise", "numbers", name)),
                    )
                )

    def _stop(self, located: LocatedPart, *, code: str, message: str, hint: str) -> None:
        self.findings.append(
            Finding(
                level=Level.STOP,
                code=code,
                message=message,
                effect="Nothing is counted until this is settled.",
                hint=hint,
                place=nearest_place(self.force.places, located.path),
            )
        )


def _change_within(window: Window, date: DateSpan) -> datetime.date:
    """The first day on which a window begins, or is over, within a span."""
    if date.first < window.first <= date.last:
        return window.first
    return window.last + datetime.timedelta(days=1)


def _said(composition: Composition, located: LocatedPart) -> str:
    return f"{located.part.of} in {composition.formation.name}"
