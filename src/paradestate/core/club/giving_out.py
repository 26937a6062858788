"""Figures given out to games by the cheapest flow, those of a box to the games that have it alone.

As many needs as can be are met, with as few stand-ins as that takes, good ones before poor ones.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import TypeAlias

from paradestate.core.allotment import MATCH_COST
from paradestate.core.figure import FigureKind, StandIn
from paradestate.core.flow import Arc, cheapest_flow
from paradestate.core.number import summed

SOURCE, SINK = "sound", "needed"

Numbers: TypeAlias = Mapping[str, int]
"""Figure kind to number."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Supply:
    """Figures that may be given out together."""

    figures: Numbers
    games: tuple[str, ...] | None = None
    """The only games that may have them; None: all."""

    def serves(self, game: str) -> bool:
        """Whether a game may have them."""
        return self.games is None or game in self.games


@dataclass(frozen=True, slots=True, kw_only=True)
class GivenOut:
    """What became of all needs."""

    short: Numbers
    stand_ins: tuple[StandIn, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class _Way:
    """Figures of one supply that may serve some games for a kind."""

    supply: int
    kind: str
    games: tuple[int, ...]
    other: str
    cost: int


def given_out(
    needs: Mapping[str, Numbers], supplies: Sequence[Supply], *, figures: Mapping[str, FigureKind]
) -> GivenOut:
    """Game to its needs, met out of the supplies."""
    wanted = _by_supplies(needs, supplies)
    here = [(n, kind, number) for n, one in enumerate(supplies) for kind, number in _some(one)]
    there = [(games, kind, number) for games, each in wanted.items() for kind, number in each]
    ways = [
        _Way(supply=n, kind=kind, games=games, other=other, cost=cost)
        for n, kind, _ in here
        for games, other, _ in there
        if n in games and (cost := _cost(kind, stands_for=other, figures=figures)) is not None
    ]
    room = {(n, kind): number for n, kind, number in here}
    arcs = [
        *(Arc(tail=SOURCE, head=f"{n} {kind}", room=number) for n, kind, number in here),
        *(Arc(tail=f"{kind} for {games}", head=SINK, room=each) for games, kind, each in there),
        *(
            Arc(
                tail=f"{way.supply} {way.kind}",
                head=f"{way.other} for {way.games}",
                room=room[way.supply, way.kind],
                cost=way.cost,
            )
            for way in ways
        ),
    ]
    flow = cheapest_flow(arcs, source=SOURCE, sink=SINK)
    met = flow[len(here) : len(here) + len(there)]
    lacking = summed(
        {kind: number - got} for (_, kind, number), got in zip(there, met, strict=True)
    )
    return GivenOut(
        short={kind: number for kind, number in lacking.items() if number},
        stand_ins=_stand_ins(ways, flow[len(here) + len(there) :]),
    )


def _some(supply: Supply) -> list[tuple[str, int]]:
    return [(kind, number) for kind, number in supply.figures.items() if number]


def _by_supplies(
    needs: Mapping[str, Numbers], supplies: Sequence[Supply]
) -> Mapping[tuple[int, ...], list[tuple[str, int]]]:
    """Needs of all games that have the same supplies open to them, added up."""
    grouped: dict[tuple[int, ...], list[Numbers]] = {}
    for game, each in needs.items():
        open_to_it = tuple(n for n, supply in enumerate(supplies) if supply.serves(game))
        grouped.setdefault(open_to_it, []).append(each)
    return {games: list(summed(every).items()) for games, every in grouped.items()}


def _stand_ins(ways: Sequence[_Way], flow: Sequence[int]) -> tuple[StandIn, ...]:
    total: dict[tuple[str, str], int] = {}
    for way, number in zip(ways, flow, strict=True):
        if number and way.kind != way.other:
            pair = way.kind, way.other
            total[pair] = total.get(pair, 0) + number
    return tuple(
        StandIn(kind=kind, stands_for=other, number=number)
        for (kind, other), number in total.items()
    )


def _cost(kind: str, *, stands_for: str, figures: Mapping[str, FigureKind]) -> int | None:
    if kind == stands_for:
        return 0
    known = figures.get(kind)
    match = known.may_stand_for.get(stands_for) if known else None
    return None if match is None else MATCH_COST[match]
