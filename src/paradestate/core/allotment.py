"""The allotment: which figures serve which want, stand-ins included, each figure once.

Must before wished; then least lacking; then the least cost of match (itself 0, good 1, poor 3);
then kinds with the smallest want first, then in order of their names; finished figures before
unfinished. A figure stands in by one step only: what it stands in for passes nothing on.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from paradestate.core.figure import FigureKind, Match
from paradestate.core.flow import Arc, cheapest_flow
from paradestate.core.formation import Need

MATCH_COST = {Match.GOOD: 1, Match.POOR: 3}
"""What a stand-in counts for each figure; a figure as itself counts nothing."""

SOURCE, SINK = "owned", "wanted"


@dataclass(frozen=True, slots=True, kw_only=True)
class Serving:
    """So many figures of one kind and stage that serve a want."""

    kind: str
    stage: str
    stands_for: str
    layer: Need
    number: int


@dataclass(frozen=True, slots=True, kw_only=True)
class AllotmentProblem:
    """What is wanted and what there is."""

    want: Mapping[tuple[Need, str], int]
    """Layer and figure kind to number."""
    held: Mapping[str, Mapping[str, int]]
    """Figure kind, then stage, to number."""
    figures: Mapping[str, FigureKind]
    stages: Sequence[str]
    """The last is finished."""

    def match_cost(self, kind: str, *, stands_for: str) -> int | None:
        """What a figure counts in the place of another; None where it may not stand there."""
        if kind == stands_for:
            return 0
        known = self.figures.get(kind)
        match = known.may_stand_for.get(stands_for) if known else None
        return None if match is None else MATCH_COST[match]


def allotted(problem: AllotmentProblem) -> tuple[Serving, ...]:
    """Who serves whom: must first, own kinds first, the most finished first."""
    numbers: dict[tuple[str, Need, str], int] = {}
    for wanted, able in _together(problem):
        numbers |= _flow(problem, wanted, able=able)
    stock = {kind: dict(stages) for kind, stages in problem.held.items()}
    in_order = sorted(numbers, key=lambda pair: (pair[1] is Need.WISHED, pair[0] != pair[2], pair))
    return tuple(
        Serving(kind=kind, stage=stage, stands_for=other, layer=layer, number=given)
        for kind, layer, other in in_order
        for stage, given in _taken(
            stock[kind], number=numbers[kind, layer, other], stages=problem.stages
        )
    )


def _taken(
    stock: dict[str, int], *, number: int, stages: Sequence[str]
) -> Iterator[tuple[str, int]]:
    """Takes so many figures out of the stock of a kind, the most finished first."""
    for stage in reversed(stages):
        given = min(number, stock.get(stage, 0))
        if given:
            stock[stage] -= given
            number -= given
            yield stage, given


def _together(problem: AllotmentProblem) -> Iterator[tuple[set[str], set[str]]]:
    """Groups of wanted kinds that compete for figures, each with the kinds able to serve it."""
    groups: list[tuple[set[str], set[str]]] = []
    for wanted in dict.fromkeys(kind for _, kind in problem.want):
        able = {
            kind for kind in problem.held if problem.match_cost(kind, stands_for=wanted) is not None
        }
        touching = [group for group in groups if group[1] & able]
        groups = [group for group in groups if not group[1] & able]
        groups.append(
            (
                {wanted}.union(*(group[0] for group in touching)),
                able.union(*(group[1] for group in touching)),
            )
        )
    yield from groups


def _flow(
    problem: AllotmentProblem, kinds: set[str], *, able: set[str]
) -> Mapping[tuple[str, Need, str], int]:
    """Held kind, layer and wanted kind to how many serve there."""
    want = {key: number for key, number in problem.want.items() if key[1] in kinds and number}
    weights = _Weights(problem, want)
    arcs: list[Arc] = []
    ways: dict[int, tuple[str, Need, str]] = {}
    for (layer, wanted), number in want.items():
        node = f"{layer} {wanted}"
        arcs.append(Arc(tail=node, head=SINK, room=number))
        arcs.append(
            Arc(tail=SOURCE, head=node, room=number, cost=weights.lacking(layer, kind=wanted))
        )
    for kind in sorted(able):
        places = [
            (key, cost)
            for key in want
            if (cost := problem.match_cost(kind, stands_for=key[1])) is not None
        ]
        for stage, number in problem.held[kind].items():
            node = f"{stage}: {kind}"
            arcs.append(Arc(tail=SOURCE, head=node, room=number, cost=weights.unfinished(stage)))
            for (layer, wanted), cost in places:
                ways[len(arcs)] = (kind, layer, wanted)
                arcs.append(
                    Arc(
                        tail=node,
                        head=f"{layer} {wanted}",
                        room=number,
                        cost=cost * weights.match,
                    )
                )
    serving: dict[tuple[str, Need, str], int] = {}
    flow = cheapest_flow(arcs, source=SOURCE, sink=SINK)
    for way, pair in ways.items():
        if flow[way]:
            serving[pair] = serving.get(pair, 0) + flow[way]
    return serving


class _Weights:
    """The rules in order of rank as one whole number: one of a rank is more than all below it."""

    def __init__(self, problem: AllotmentProblem, want: Mapping[tuple[Need, str], int]) -> None:
        self._stages = problem.stages
        figures = sum(want.values()) + 1
        by_kind: dict[str, int] = {}
        for (_, kind), number in want.items():
            by_kind[kind] = by_kind.get(kind, 0) + number
        weight = figures * len(problem.stages)
        self._unfinished = weight
        self._kind: dict[str, int] = {}
        for kind in sorted(by_kind, key=lambda kind: (by_kind[kind], kind), reverse=True):
            weight *= figures
            self._kind[kind] = weight
        weight *= figures
        self.match = weight
        weight *= figures * max(MATCH_COST.values())
        self._layer = {Need.WISHED: weight, Need.MUST: weight * figures}

    def lacking(self, layer: Need, *, kind: str) -> int:
        """What a figure that is lacking counts."""
        return self._layer[layer] + self._kind[kind]

    def unfinished(self, stage: str) -> int:
        """What the use of a figure counts by how far it is from finished."""
        steps = len(self._stages) - 1 - self._stages.index(stage)
        return steps + (self._unfinished if steps else 0)
