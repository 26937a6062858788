"""The cover of a want: which figures, owned or bought, serve it, stand-ins included.

As little as possible is lacking; then as few bought figures as possible serve, so that what is
owned is used first; then the least cost of match. A figure stands in by one step only.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field

from paradestate.core.allotment import MATCH_COST
from paradestate.core.figure import Match, StandIn
from paradestate.core.flow import Arc, cheapest_flow

SOURCE, SINK = "there", "wanted"


@dataclass(frozen=True, slots=True, kw_only=True)
class Substitutes:
    """Which kinds may serve in the place of which, and whether bought figures do so as well."""

    may_stand_for: Mapping[str, Mapping[str, Match]] = field(default_factory=dict)
    """Kind to the kinds in whose place it may serve."""
    bought_too: bool = False

    def of(self, kind: str, *, bought: bool) -> Mapping[str, Match]:
        """The kinds in whose place an owned or a bought figure of a kind may serve."""
        return {} if bought and not self.bought_too else self.may_stand_for.get(kind, {})


@dataclass(frozen=True, slots=True, kw_only=True)
class Cover:
    """How far a want is covered."""

    lacking: Mapping[str, int]
    """Kind to figures that nothing serves; kinds that lack nothing are left out."""
    left_over: Mapping[str, int]
    """Kind to figures bought that serve nothing."""
    stand_ins: tuple[StandIn, ...]

    @property
    def number_lacking(self) -> int:
        """Figures lacking, of all kinds."""
        return sum(self.lacking.values())


def cover(
    want: Mapping[str, int],
    *,
    owned: Mapping[str, int],
    bought: Mapping[str, int],
    substitutes: Substitutes,
) -> Cover:
    """The best cover of a want with what is owned and bought, all by kind."""
    there = (*_supplies(owned, bought=False), *_supplies(bought, bought=True))
    ways = tuple(way for supply in there for way in _ways(supply, want, substitutes=substitutes))
    lacking = dict(want)
    left_over = dict(bought)
    stand_ins: dict[tuple[str, str], int] = {}
    for way, number in _numbers(ways, want=want, owned=owned).items():
        kind = way.supply.kind
        lacking[way.stands_for] -= number
        if way.supply.bought:
            left_over[kind] -= number
        if kind != way.stands_for:
            pair = kind, way.stands_for
            stand_ins[pair] = stand_ins.get(pair, 0) + number
    return Cover(
        lacking={kind: number for kind, number in lacking.items() if number > 0},
        left_over={kind: number for kind, number in left_over.items() if number > 0},
        stand_ins=tuple(
            StandIn(kind=kind, stands_for=other, number=number)
            for (kind, other), number in sorted(stand_ins.items())
            if number
        ),
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class _Supply:
    """So many figures of a kind, all owned or all bought."""

    kind: str
    bought: bool
    number: int


@dataclass(frozen=True, slots=True, kw_only=True)
class _Way:
    """A supply in some place, and what each figure counts there."""

    supply: _Supply
    stands_for: str
    match: int


def _supplies(kinds: Mapping[str, int], *, bought: bool) -> Iterator[_Supply]:
    for kind, number in kinds.items():
        if number:
            yield _Supply(kind=kind, bought=bought, number=number)


def _ways(supply: _Supply, want: Mapping[str, int], *, substitutes: Substitutes) -> Iterator[_Way]:
    matches = substitutes.of(supply.kind, bought=supply.bought)
    places = {other: MATCH_COST[match] for other, match in matches.items()} | {supply.kind: 0}
    for other, match in places.items():
        if want.get(other):
            yield _Way(supply=supply, stands_for=other, match=match)


def _numbers(
    ways: tuple[_Way, ...], *, want: Mapping[str, int], owned: Mapping[str, int]
) -> Mapping[_Way, int]:
    """How many figures serve in each way. Kinds that only serve as themselves need no flow."""
    tangled = {
        kind
        for way in ways
        if way.supply.kind != way.stands_for
        for kind in (way.supply.kind, way.stands_for)
    }
    numbers = _flow(tuple(way for way in ways if way.stands_for in tangled), want=want)
    for way in ways:
        kind = way.stands_for
        if kind not in tangled:
            served = owned.get(kind, 0) if way.supply.bought else 0
            numbers[way] = min(way.supply.number, max(0, want[kind] - served))
    return numbers


def _flow(ways: tuple[_Way, ...], *, want: Mapping[str, int]) -> dict[_Way, int]:
    """The greatest flow from what is there to what is wanted, with as little bought as can be."""
    wanted = dict.fromkeys(way.stands_for for way in ways)
    of_bought = sum(want[kind] for kind in wanted) * max(MATCH_COST.values()) + 1
    arcs = [
        Arc(
            tail=_node(way.supply),
            head=f"for {way.stands_for}",
            room=want[way.stands_for],
            cost=way.match,
        )
        for way in ways
    ]
    arcs.extend(
        Arc(
            tail=SOURCE,
            head=_node(supply),
            room=supply.number,
            cost=of_bought if supply.bought else 0,
        )
        for supply in dict.fromkeys(way.supply for way in ways)
    )
    arcs.extend(Arc(tail=f"for {kind}", head=SINK, room=want[kind]) for kind in wanted)
    flow = cheapest_flow(arcs, source=SOURCE, sink=SINK)
    return dict(zip(ways, flow, strict=False))


def _node(supply: _Supply) -> str:
    return f"{'bought' if supply.bought else 'owned'} {supply.kind}"
