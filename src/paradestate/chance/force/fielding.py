"""Which forces can be put on the table with what is owned, as ties of the decision diagram.

The must layer is served first; then all stands of a force are allotted at once, stand-ins included,
as in `core.strength`. Printed stands, and what stays off the table, can always be fielded.

What is left for supporting troops is a system of wants that can be served together, one for each
set of figure kinds that the same figures may serve: the kinds of a set may want no more than there
is for them beside the must layer. With the greatest flow r of the must layer M from the figures s
that may serve, a further want d is served whole if and only if for every set T of kinds

    d(T) <= s(T) + M(not T) - r

(the greatest flow is the least cut: Ford and Fulkerson, "Maximal flow through a network", 1956).
So each such set is one sum with a limit, and no allotment has to be made for single forces.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import combinations

from paradestate.chance.force.taking import Taking
from paradestate.chance.force.tie import Move, Sum
from paradestate.core.certainty import NotComputed
from paradestate.core.establishment import Establishment
from paradestate.core.figure import FigureKind
from paradestate.core.force import Force
from paradestate.core.formation import Need
from paradestate.core.number import summed
from paradestate.core.strength import strength
from paradestate.core.support.entry import Entry, Position

MOST_KINDS = 10
"""Kinds that the same figures may serve, one through another; of more the sets are too many."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Depot:
    """What is owned, once the must layer is served."""

    figures: Mapping[str, FigureKind]
    loose: Mapping[str, int]
    """Kind to figures that are on no finished stand, the must layer not yet served."""
    must: Mapping[str, int]
    """Kind to figures of these that the must layer wants."""
    must_lacks: int
    """Figures that the must layer lacks."""
    spare: Mapping[str, int]
    """Pattern to finished stands less the stands of the must layer; below nought where it has
    fewer."""
    on_stand: Mapping[str, Mapping[str, int]]
    """Pattern to its figures; printed stands have none."""

    def with_figures(self, figures: Mapping[str, int]) -> "Depot":
        """The same with more figures; what the must layer lacked before is still said."""
        return replace(self, loose=summed((self.loose, figures)))

    def part(self, kinds: frozenset[str]) -> "Depot":
        """What of it has to do with some kinds of figure, which no other kind may stand for."""
        on_stand = {
            pattern: held
            for pattern, figures in self.on_stand.items()
            if (held := {kind: number for kind, number in figures.items() if kind in kinds})
        }
        return replace(
            self,
            loose={
                kind: number
                for kind, number in self.loose.items()
                if not kinds.isdisjoint(served_by(self.figures, kind))
            },
            must={kind: number for kind, number in self.must.items() if kind in kinds},
            spare={pattern: self.spare[pattern] for pattern in on_stand},
            on_stand=on_stand,
        )


def served_by(figures: Mapping[str, FigureKind], kind: str) -> frozenset[str]:
    """The kinds in whose place a figure may stand, itself included."""
    known = figures.get(kind)
    return frozenset({kind, *(known.may_stand_for if known else ())})


def depot(force: Force, made: Establishment, *, finished: bool) -> Depot:
    """What a force owns for its must layer and supporting troops, or has finished of it."""
    owned = _finished(force) if finished else force
    must = [stand for stand in made.stands if stand.layer is Need.MUST]
    served = strength(owned, replace(made, stands=tuple(must)))
    last = force.bench.stages[-1]
    spare = {pattern: owned.stock_stands.get(pattern, {}).get(last, 0) for pattern in force.stands}
    for stand in must:
        if stand.figures and stand.pattern in spare:
            spare[stand.pattern] -= 1
    return Depot(
        figures=force.figures,
        loose=served.loose,
        must=served.loose_wanted,
        must_lacks=sum(served.deficiency.values()),
        spare=spare,
        on_stand={
            name: {} if stand.printed else stand.figures for name, stand in force.stands.items()
        },
    )


def _finished(force: Force) -> Force:
    """The force with nothing in its stock but what is finished."""
    last = force.bench.stages[-1]
    return replace(
        force,
        stock={kind: {last: stages.get(last, 0)} for kind, stages in force.stock.items()},
        stock_stands={
            pattern: {last: stages.get(last, 0)} for pattern, stages in force.stock_stands.items()
        },
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class Demand:
    """The stands that an entry puts down, those that it takes away below nought."""

    for_each: Mapping[str, int]
    """Pattern to stands for each one taken."""
    a_purchase: Mapping[str, int]
    """Pattern to stands for each purchase."""

    def stands(self, pattern: str, move: Move | Taking) -> int:
        """Stands of a pattern for a number of purchases with a number taken."""
        each, purchase = self.for_each.get(pattern, 0), self.a_purchase.get(pattern, 0)
        return each * move.number + purchase * move.purchases


def demand(entry: Entry) -> Demand:
    """What has to be there for an entry; what stays off the table needs nothing."""
    a_purchase = dict(entry.grants)
    if entry.replaces is not None:
        there, number = entry.replaces, entry.replaces.number
        a_purchase[there.with_] = a_purchase.get(there.with_, 0) + number
        a_purchase[there.of] = a_purchase.get(there.of, 0) - number
    return Demand(
        for_each={} if entry.place is Position.OFF_TABLE else entry.each, a_purchase=a_purchase
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class Stocked:
    """That a set of figure kinds wants no more than there is for it."""

    entries: frozenset[str]
    demands: Mapping[str, Demand]
    weights: Mapping[str, int]
    """Pattern to figures of the set on each stand."""
    spare: Mapping[str, int]
    """For patterns of which finished stands can serve some first, or that are taken away."""
    room: int
    """Figures of the set that supporting troops may want."""
    takes_away: bool
    """Whether some entry takes stands away, so that the sum is judged at the end only."""
    spans: tuple[range, ...]
    """What may be kept: figures wanted, then the stands of each pattern in `spare`."""

    @property
    def greatest(self) -> int:
        """The greatest number that it keeps."""
        most = 1
        for span in self.spans:
            most *= len(span)
        return most - 1

    def after(self, value: int, *, entry: str, move: Move) -> int | None:
        """The figures and stands wanted so far; broken above the room."""
        figures, *stands = self._kept(value)
        wanted = self.demands[entry]
        for pattern, weight in self.weights.items():
            if pattern not in self.spare:
                figures += weight * wanted.stands(pattern, move)
        for place, (pattern, spare) in enumerate(self.spare.items()):
            before = stands[place]
            stands[place] += wanted.stands(pattern, move)
            more = max(0, stands[place] - spare) - max(0, before - spare)
            figures += self.weights[pattern] * more
            stands[place] = min(stands[place], self.spans[place + 1][-1])
        if figures > self.room and not self.takes_away:
            return None
        return self._packed((min(figures, self.spans[0][-1]), *stands))

    def holds(self, value: int) -> bool:
        """Whether the figures wanted are there."""
        return self._kept(value)[0] <= self.room

    def sums(self, *, points: int) -> tuple[Sum, ...]:
        """The figures wanted, as if all finished stands were of use to the force."""
        del points
        more = sum(self.weights[pattern] * max(0, spare) for pattern, spare in self.spare.items())
        return (Sum(self.entries, self._wanted, self.room + more, is_rule=not self.spare),)

    def _wanted(self, entry: str, move: Move) -> int:
        wanted = self.demands[entry]
        return sum(
            weight * wanted.stands(pattern, move) for pattern, weight in self.weights.items()
        )

    def _kept(self, value: int) -> list[int]:
        found = []
        for span in self.spans:
            value, place = divmod(value, len(span))
            found.append(span[(place + span.index(0)) % len(span)])
        return found

    def _packed(self, numbers: Sequence[int]) -> int:
        value = 0
        for number, span in zip(reversed(numbers), reversed(self.spans), strict=True):
            value = value * len(span) + (number - span[0] - span.index(0)) % len(span)
        return value


class Fielding:
    """The ties that keep to what is owned."""

    def __init__(self, owned: Depot, entries: Mapping[str, Entry]) -> None:
        self._owned = owned
        self._demands = {name: demand(entry) for name, entry in entries.items()}
        patterns = [
            pattern
            for each in self._demands.values()
            for pattern in (*each.for_each, *each.a_purchase)
        ]
        self._patterns = {
            pattern: owned.on_stand[pattern]
            for pattern in dict.fromkeys(patterns)
            if owned.on_stand.get(pattern)
        }

    @property
    def refusal(self) -> NotComputed | None:
        """Why it can't be worked out; None where it can."""
        takes_away = any(
            number < 0 for each in self._demands.values() for number in each.a_purchase.values()
        )
        if takes_away and self._owned.must_lacks:
            return NotComputed(
                reason="the must layer lacks figures, and supporting troops take stands of it away"
            )
        if any(len(knot) > MOST_KINDS for knot in self.knots()):
            return NotComputed(
                reason=f"more than {MOST_KINDS} kinds of figure may stand for one another"
            )
        return None

    def ties(self, takings: Mapping[str, Sequence[Taking]]) -> tuple[Stocked, ...]:
        """The sums that the takings of the entries can bring above what there is."""
        found: list[Stocked] = []
        for knot in self.knots():
            rooms = self._rooms(knot)
            for kinds, room in rooms.items():
                tie = self._stocked(kinds, room=room, takings=takings)
                if tie is not None and not _follows(kinds, rooms):
                    found.append(tie)
        return tuple(found)

    def _stocked(
        self, kinds: frozenset[str], *, room: int, takings: Mapping[str, Sequence[Taking]]
    ) -> Stocked | None:
        """The tie of a set of kinds; None where no force can want more than there is."""
        weights = {
            pattern: weight
            for pattern, figures in self._patterns.items()
            if (weight := sum(figures.get(kind, 0) for kind in kinds))
        }
        spans = {pattern: self._span(pattern, takings) for pattern in weights}
        spare = {
            pattern: self._owned.spare[pattern]
            for pattern, span in spans.items()
            if span[0] < 0 or self._owned.spare[pattern] > 0
        }
        takes_away = any(span[0] < 0 for span in spans.values())
        least = sum(weights[pattern] * span[0] for pattern, span in spans.items())
        most = sum(
            weights[pattern] * max(0, span[-1] - max(0, self._owned.spare[pattern]))
            for pattern, span in spans.items()
        )
        if most <= room:
            return None
        return Stocked(
            entries=frozenset(
                name
                for name, each in self._demands.items()
                if any(
                    pattern in each.for_each or pattern in each.a_purchase for pattern in weights
                )
            ),
            demands=self._demands,
            weights=weights,
            spare=spare,
            room=room,
            takes_away=takes_away,
            spans=(
                range(least, (most if takes_away else room) + 1),
                *(
                    spans[pattern] if takes_away else range(min(spans[pattern][-1], number) + 1)
                    for pattern, number in spare.items()
                ),
            ),
        )

    def _span(self, pattern: str, takings: Mapping[str, Sequence[Taking]]) -> range:
        """How many stands of a pattern all forces may want, the fewest and the most."""
        least = most = 0
        for name, each in self._demands.items():
            numbers = [each.stands(pattern, taking) for taking in takings[name]]
            least += min((0, *numbers))
            most += max((0, *numbers))
        return range(least, most + 1)

    def knots(self) -> list[list[str]]:
        """Wanted kinds, parted so that no figure may serve in two parts.

        Parts that only the must layer wants are left out.
        """
        wanted = dict.fromkeys(kind for figures in self._patterns.values() for kind in figures)
        groups = [{kind} for kind in {**wanted, **self._owned.must}]
        for kind, number in self._owned.loose.items():
            served = self._serves(kind) if number else frozenset()
            touching = [group for group in groups if group & served]
            if len(touching) > 1:
                groups = [group for group in groups if not group & served]
                groups.append(set().union(*touching))
        return [sorted(group) for group in groups if group & wanted.keys()]

    def _serves(self, kind: str) -> frozenset[str]:
        return served_by(self._owned.figures, kind)

    def _rooms(self, knot: Sequence[str]) -> Mapping[frozenset[str], int]:
        """For each set of the kinds of supporting troops the figures that they may want."""
        wanted = {kind for figures in self._patterns.values() for kind in figures}
        must = self._owned.must
        piles = [
            (number, self._serves(kind))
            for kind, number in self._owned.loose.items()
            if not self._serves(kind).isdisjoint(knot)
        ]
        ends: dict[frozenset[str], int] = {}
        for size in range(len(knot) + 1):
            for kinds in combinations(knot, size):
                there = sum(number for number, served in piles if not served.isdisjoint(kinds))
                cut = there + sum(must.get(kind, 0) for kind in knot if kind not in kinds)
                asked = frozenset(wanted.intersection(kinds))
                ends[asked] = min(ends.get(asked, cut), cut)
        served = min(ends.values())
        return {kinds: cut - served for kinds, cut in ends.items() if kinds}


def _follows(kinds: frozenset[str], rooms: Mapping[frozenset[str], int]) -> bool:
    """Whether the limit of a set follows from those of two parts of it."""
    parts = [part for part in rooms if part < kinds]
    return any(rooms[part] + rooms[kinds - part] <= rooms[kinds] for part in parts)
