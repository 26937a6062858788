"""Milestones: forces that one wants to be able to play with, each as stands of the widest force.

The widest force has of every open number the greatest that any milestone names, and the stands
that the plans of games put down beside it. Of several like bodies a milestone takes those with the
least work left, then those that stand first in the files.
"""

import datetime
from collections.abc import Callable, Collection, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from fractions import Fraction
from typing import TypeVar

from paradestate.core.establishment import Establishment
from paradestate.core.formation import Need
from paradestate.core.number import NONE
from paradestate.core.place import Place
from paradestate.core.repair import Repair
from paradestate.core.sentence.wording import day_words
from paradestate.core.stand import StandPattern
from paradestate.core.structure import NodeKey, Structure
from paradestate.core.unfolding import SEPARATOR, Stand, capitals

NOTHING = Fraction(0)


@dataclass(frozen=True, slots=True, kw_only=True)
class Aimed:
    """What a milestone holds, said in numbers."""

    name: str
    weight: Fraction
    numbers: Mapping[str, int]
    """Of parts whose number is open; those left out are as usual."""
    cut: Mapping[str, int] = field(default_factory=dict)
    """Part to how many are kept of it under each parent, where the owner leaves must-haves out."""
    beside: Mapping[str, int] = field(default_factory=dict)
    """Stands of supporting troops, by pattern."""
    instead: tuple[tuple[str, int], ...] = ()
    """Patterns of which so many stands, on one body, are exchanged for others."""
    is_wished_too: bool = False
    place: Place | None = None
    """Where the owner wrote it; None where nobody did."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Milestone:
    """A milestone with its stands."""

    name: str
    weight: Fraction
    stands: tuple[str, ...]
    """Names, in the order of the widest force; printed ones included."""
    left_out: tuple[str, ...] = ()
    """Stands that the least legal number wants, and the owner leaves out."""
    wanted: datetime.date | None = None
    """Of repairs: the day on which they are wanted; None of a force."""


def repairs_wanted(repairs: Iterable[Repair], *, stands: Collection[str]) -> Iterator[Milestone]:
    """What is in repair of these stands, by the day on which it is wanted, the earliest first.

    Each stand weighs as much as a force that one wants to play with once.
    """
    by_day: dict[datetime.date, list[str]] = {}
    for repair in sorted(repairs, key=lambda repair: repair.wanted):
        if repair.stand in stands:
            by_day.setdefault(repair.wanted, []).append(repair.stand)
    for day, names in by_day.items():
        yield Milestone(
            name=f"repairs for {day_words(day)}",
            weight=Fraction(len(names)),
            stands=tuple(names),
            wanted=day,
        )


Minutes = Mapping[str, Fraction]
"""Stand by its name to the minutes of work left on it."""


BESIDE = "supporting troops"
"""Stands that the plan of a game puts down beside the force are wishes of this name."""


def milestone_of(
    aimed: Aimed, widest: Establishment, *, settled: Structure, minutes: Minutes
) -> Milestone:
    """The stands of a milestone; `settled` is the structure with its numbers."""
    ground = _Ground(widest, settled=settled, minutes=minutes)
    whole = ground.picked(cut={})
    kept = ground.picked(cut=aimed.cut) if aimed.cut else whole
    names = {stand.name for stand in kept.stands} | set(_beside(widest, aimed.beside))
    for pattern, number in aimed.instead:
        names -= set(_exchanged(kept.stands, pattern, number=number, minutes=minutes))
    if aimed.is_wished_too:
        names |= {
            stand.name for stand in widest.stands if _is_wish_of(stand, widest, bodies=kept.bodies)
        }
    return Milestone(
        name=aimed.name,
        weight=aimed.weight,
        stands=tuple(stand.name for stand in widest.stands if stand.name in names),
        left_out=tuple(
            stand.name
            for stand in whole.stands
            if aimed.cut and stand.name not in names and not stand.printed
        ),
    )


def stand_beside(pattern: StandPattern, *, number: int) -> Stand:
    """One of the stands of a pattern that a plan puts down beside the force."""
    called = pattern.called or capitals(pattern.name)
    return Stand(
        name=f"{capitals(BESIDE)}{SEPARATOR}{number} {called}",
        pattern=pattern.name,
        wishes=(BESIDE,),
        is_wanted=True,
        figures={} if pattern.printed else pattern.figures,
        men=pattern.men or NONE,
        printed=pattern.printed,
        company="",
        level=None,
        within=0,
    )


def is_beside(stand: Stand) -> bool:
    """Whether it belongs to supporting troops."""
    return stand.wishes == (BESIDE,)


def _beside(widest: Establishment, numbers: Mapping[str, int]) -> Iterator[str]:
    """The first stands of each pattern that are beside the force."""
    for pattern, number in numbers.items():
        alike = [each for each in widest.stands if is_beside(each) and each.pattern == pattern]
        yield from (each.name for each in alike[:number])


def _exchanged(
    stands: Sequence[Stand], pattern: str, *, number: int, minutes: Minutes
) -> Sequence[str]:
    """Stands of a pattern on one body that others come in place of: those that save most work."""
    on_body: dict[int, list[Stand]] = {}
    for stand in stands:
        if stand.pattern == pattern:
            on_body.setdefault(stand.within, []).append(stand)
    for alike in on_body.values():
        alike.sort(key=lambda stand: -minutes.get(stand.name, NOTHING))
    able = [alike[:number] for alike in on_body.values() if len(alike) >= number]
    best = max(able, key=lambda alike: _sum(alike, minutes=minutes), default=[])
    return [stand.name for stand in best]


def _sum(stands: Sequence[Stand], *, minutes: Minutes) -> Fraction:
    return sum((minutes.get(stand.name, NOTHING) for stand in stands), NOTHING)


def _is_wish_of(stand: Stand, widest: Establishment, *, bodies: frozenset[int]) -> bool:
    """Whether a stand is a wanted wished item on or below one of the bodies."""
    if not stand.wishes or not stand.is_wanted or is_beside(stand):
        return False
    within: int | None = stand.within
    while within is not None and widest.bodies[within].layer is Need.WISHED:
        within = widest.bodies[within].within
    return within in bodies


@dataclass(frozen=True, slots=True, kw_only=True)
class _Picked:
    """Stands of the must layer that are taken, and the bodies on which they stand."""

    stands: tuple[Stand, ...]
    bodies: frozenset[int]


class _Ground:
    """The must layer of the widest force, from which milestones pick."""

    def __init__(self, widest: Establishment, *, settled: Structure, minutes: Minutes) -> None:
        self._settled = settled
        self._minutes = minutes
        self._stands: dict[int, list[Stand]] = {}
        for stand in widest.stands:
            if stand.layer is Need.MUST:
                self._stands.setdefault(stand.within, []).append(stand)
        self._bodies: dict[int, list[tuple[int, str]]] = {}
        for number, body in enumerate(widest.bodies):
            if body.within is not None and body.layer is Need.MUST:
                self._bodies.setdefault(body.within, []).append((number, body.formation))

    def picked(self, *, cut: Mapping[str, int]) -> _Picked:
        """What a milestone takes of the whole."""
        return self._of_body(0, self._settled.root, cut=cut)

    def _of_body(self, body: int, key: NodeKey, *, cut: Mapping[str, int]) -> _Picked:
        steps = [step for step in self._settled.nodes[key].steps if step.need is Need.MUST]
        below = {step.of: (step.of, step.share) for step in steps}
        quota: dict[str, int] = {}
        for step in steps:
            quota[step.of] = quota.get(step.of, 0) + step.number
        quota = {of: min(number, cut.get(of, number)) for of, number in quota.items()}
        stands: list[Stand] = []
        # Stands by fixed ratio are no part of their own: they go with their body.
        for pattern, alike in _alike(self._stands.get(body, ()), key=_pattern).items():
            stands += self._least(alike, number=quota.get(pattern, len(alike)))
        bodies = {body}
        for formation, numbers in _alike(self._bodies.get(body, ()), key=_formation).items():
            each = [self._of_body(number, below[formation], cut=cut) for number, _ in numbers]
            each.sort(key=lambda picked: _sum(picked.stands, minutes=self._minutes))
            for picked in each[: quota[formation]]:
                stands += picked.stands
                bodies |= picked.bodies
        return _Picked(stands=tuple(stands), bodies=frozenset(bodies))

    def _least(self, alike: Sequence[Stand], *, number: int) -> Sequence[Stand]:
        in_order = sorted(alike, key=lambda stand: self._minutes.get(stand.name, NOTHING))
        return in_order[:number]


T = TypeVar("T")


def _alike(things: Iterable[T], *, key: Callable[[T], str]) -> Mapping[str, list[T]]:
    grouped: dict[str, list[T]] = {}
    for thing in things:
        grouped.setdefault(key(thing), []).append(thing)
    return grouped


def _pattern(stand: Stand) -> str:
    return stand.pattern


def _formation(body: tuple[int, str]) -> str:
    return body[1]
