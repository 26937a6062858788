"""How many losses a body has by the board, which effects are in force, and what comes next."""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import groupby

from paradestate.core.campaign.casualty import OUT
from paradestate.core.establishment import Establishment
from paradestate.core.force import Force
from paradestate.core.game import Purchase
from paradestate.core.mark.unit import Unit, Units
from paradestate.core.play.board import NOTHING_TOLD, Standing
from paradestate.core.play.brought import brought_stands
from paradestate.core.play.event import Subject
from paradestate.core.play.loss_limit import FIGURES, LEADERS, LossLimit
from paradestate.core.stand import StandPattern
from paradestate.core.support.entry import Entry, Position
from paradestate.core.unfolding import Body, Stand

LEADER_HIT = "leader hit"
"""What is told of a unit whose leader was hit."""

UNKNOWN = StandPattern(name="", base=None)
"""Stands in for a pattern that supporting troops bring and the force doesn't have."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Member:
    """Something that a body may lose."""

    name: str
    counts: int


@dataclass(frozen=True, slots=True, kw_only=True)
class TroopMembers:
    """What an entry adds to what may be lost, once it is taken."""

    entry: Entry
    counts: Mapping[str, int]
    """Stand pattern to what one of it counts; those that count nothing are left out."""

    def members(self, plan: Iterable[Purchase]) -> Iterator[Member]:
        """The stands that all its purchases bring."""
        mine = (each for each in plan if each.entry == self.entry.name)
        for stand in brought_stands(mine, entries={self.entry.name: self.entry}):
            if stand.pattern in self.counts:
                yield Member(name=stand.name, counts=self.counts[stand.pattern])


@dataclass(frozen=True, slots=True, kw_only=True)
class LossStep:
    """The losses by which effects are reached, in the owner's words."""

    needs: int
    effects: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class LimitedBody:
    """One body with a limit to its losses."""

    limit: LossLimit
    number: int
    """Which of the limits it is, from 1."""
    name: str
    """Empty for the whole force."""
    unit: Unit | None
    """The unit in which it lies, or that it is; None where it holds several."""
    company: str | None
    """Name of the body with a colour of its own that it is or lies in; None where in none."""
    aspect: str
    """What is told of a member that is lost."""
    members: tuple[Member, ...]
    steps: tuple[LossStep, ...]
    """Those that can be reached, rising."""
    troops: tuple[TroopMembers, ...] = ()
    """Supporting troops that count as well, once they are taken."""

    @property
    def total(self) -> int:
        """All that there is to lose."""
        return sum(each.counts for each in self.members)

    def counts(self, subject: Subject) -> bool:
        """Whether its losses hang on what is told of this."""
        return subject.aspect == self.aspect and any(
            each.name == subject.name for each in self.members
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class LossCount:
    """How one of them stands; where two tell differently there is a least and a most."""

    body: LimitedBody
    least: int
    most: int

    @property
    def is_disputed(self) -> bool:
        """Whether two tell differently without having seen each other."""
        return self.least != self.most

    @property
    def in_force(self) -> tuple[str, ...]:
        """Effects that hold whoever is right."""
        return _effects(each for each in self.body.steps if each.needs <= self.least)

    @property
    def in_doubt(self) -> tuple[str, ...]:
        """Effects that hold if the one who tells of more losses is right."""
        return _effects(each for each in self.body.steps if self.least < each.needs <= self.most)

    @property
    def next(self) -> LossStep | None:
        """What comes next, whoever is right; None where nothing does."""
        return next((each for each in self.body.steps if each.needs > self.most), None)

    @property
    def until_next(self) -> int | None:
        """How many more there may be at the most until it is reached; None where nothing is."""
        return None if self.next is None else self.next.needs - self.least


def _effects(steps: Iterator[LossStep]) -> tuple[str, ...]:
    return tuple(effect for each in steps for effect in each.effects)


def loss_counts(
    bodies: Sequence[LimitedBody], board: Mapping[Subject, Standing]
) -> tuple[LossCount, ...]:
    """How each stands by what was told."""
    return tuple(_counted(each, board) for each in bodies)


def _counted(body: LimitedBody, board: Mapping[Subject, Standing]) -> LossCount:
    told = [
        (each.counts, board.get(Subject(body.aspect, each.name), NOTHING_TOLD).values)
        for each in body.members
    ]
    return LossCount(
        body=body,
        least=sum(counts for counts, values in told if all(values)),
        most=sum(counts for counts, values in told if any(values)),
    )


def with_taken(body: LimitedBody, plan: Sequence[Purchase]) -> LimitedBody:
    """The body with the supporting troops that were taken, where they count."""
    if not body.troops:
        return body
    members = (*body.members, *(each for troop in body.troops for each in troop.members(plan)))
    steps = steps_of(body.limit, sum(each.counts for each in members))
    return replace(body, members=members, steps=steps)


def fielded_bodies(
    force: Force, made: Establishment, *, plan: Sequence[Purchase]
) -> tuple[LimitedBody, ...]:
    """The same with the supporting troops of a plan; none that has nothing to lose."""
    found = (with_taken(each, plan) for each in limited_bodies(force, made))
    return tuple(each for each in found if each.total)


def limited_bodies(force: Force, made: Establishment) -> tuple[LimitedBody, ...]:
    """Every body that a limit is for, limit by limit; none that never has anything to lose."""
    if not force.loss_limits:
        return ()
    limiting = _Limiting(force, made)
    found = (
        limiting.body(limit, number=number, place=place)
        for number, limit in enumerate(force.loss_limits, start=1)
        for place in _limited(limit, made.bodies)
    )
    return tuple(each for each in found if each.total or each.troops)


def _limited(limit: LossLimit, bodies: Sequence[Body]) -> Iterator[int]:
    """Places of the bodies that a limit is for; the raised formation where it names none."""
    if not limit.of and limit.echelon is None:
        yield 0
        return
    for place, body in enumerate(bodies):
        if body.is_wanted and (
            body.formation == limit.of
            or (limit.echelon is not None and body.echelon is limit.echelon)
        ):
            yield place


def steps_of(limit: LossLimit, total: int) -> tuple[LossStep, ...]:
    """What happens at how many of so many; what takes more than all is left out."""
    needed = sorted(
        ((threshold.least(total), effect) for threshold, effect in limit.at.items()),
        key=lambda each: each[0],  # effects of one number in the order of the file
    )
    return tuple(
        LossStep(needs=needs, effects=tuple(effect for _, effect in same))
        for needs, same in groupby(needed, key=lambda each: each[0])
        if 0 < needs <= total
    )


class _Limiting:
    """Looks at one establishment for all limits."""

    def __init__(self, force: Force, made: Establishment) -> None:
        self._force = force
        self._made = made
        self._units = Units(made.bodies, named=tuple(force.marks.by_formation))
        self._stands: list[list[Stand]] = [[] for _ in made.bodies]
        """For each body the wanted stands right under it."""
        for each in made.stands:
            if each.is_wanted:
                self._stands[each.within].append(each)

    def body(self, limit: LossLimit, *, number: int, place: int) -> LimitedBody:
        body = self._made.bodies[place]
        within = self._within(place)
        units = tuple(dict.fromkeys(self._units.by_body[each] for each in within))
        mine = [stand for below in within for stand in self._stands[below]]
        named = _of_stands(limit, mine) if limit.counts_stands else self._of_units(limit, mine)
        members = tuple(Member(name=name, counts=counts) for name, counts in named if counts)
        is_more = limit.supporting_troops
        return LimitedBody(
            limit=limit,
            number=number,
            name=body.name,
            unit=units[0] if len(units) == 1 and not is_more else None,
            company=None if is_more else self._company({each.company for each in units}),
            aspect=_aspect(limit),
            members=members,
            steps=steps_of(limit, sum(each.counts for each in members)),
            troops=tuple(self._troops(limit)) if is_more else (),
        )

    def _company(self, companies: set[int | None]) -> str | None:
        """The company of all units, where they are of one."""
        (first, *others) = companies
        if others or first is None:
            return None
        return self._made.bodies[self._units.companies[first]].name

    def _troops(self, limit: LossLimit) -> Iterator[TroopMembers]:
        """The entries that bring stands to the table."""
        stands = self._force.stands
        for entry in self._force.supporting_troops.values():
            every = {
                name: _counts(limit, name, like=stands.get(name, UNKNOWN))
                for name in (*entry.each, *entry.grants)
            }
            counts = {name: number for name, number in every.items() if number}
            if counts and entry.place is not Position.OFF_TABLE:
                yield TroopMembers(entry=entry, counts=counts)

    def _within(self, place: int) -> range:
        """Places of a body and of all below it, which stand right after it."""
        bodies, end = self._made.bodies, place + 1
        while end < len(bodies) and (bodies[end].within or 0) >= place:
            end += 1
        return range(place, end)

    def _of_units(self, limit: LossLimit, stands: Sequence[Stand]) -> Iterator[tuple[str, int]]:
        """The units of these stands, by the names under which is told of them."""
        units = dict.fromkeys(self._units.by_body[each.within] for each in stands)
        for unit in units:
            if limit.among in {"", unit.formation}:
                yield unit.name or self._made.formation, 1


def _of_stands(limit: LossLimit, stands: Sequence[Stand]) -> Iterator[tuple[str, int]]:
    """Each stand and what it counts."""
    for each in stands:
        yield each.name, _counts(limit, each.pattern, like=each)


def _counts(limit: LossLimit, pattern: str, *, like: Stand | StandPattern) -> int:
    """What one stand of a pattern counts; a printed one nothing, unless the limit says so."""
    usual = sum(like.figures.values()) if limit.count == FIGURES else 1
    return limit.counts_as.get(pattern, 0 if like.printed else usual)


def _aspect(limit: LossLimit) -> str:
    if limit.counts_stands:
        return OUT
    return LEADER_HIT if limit.count == LEADERS else limit.count
