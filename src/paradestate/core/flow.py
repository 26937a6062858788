"""The cheapest whole-number flow through a network, exact whatever the size of the costs.

Successive cheapest paths (Ahuja, Magnanti, Orlin, *Network Flows*, 1993, section 9.7). Imports
nothing of the project.
"""

from collections.abc import Sequence
from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Arc:
    """A way from one node to another. Costs are for each unit and not below nought."""

    tail: str
    head: str
    room: int
    cost: int = 0


def cheapest_flow(arcs: Sequence[Arc], *, source: str, sink: str) -> tuple[int, ...]:
    """Units on each arc of the greatest flow from `source` to `sink` that costs least."""
    flow = [0] * len(arcs)
    while path := _cheapest_path(arcs, flow, source=source, sink=sink):
        units = min(_room(arcs, flow, step=step) for step in path)
        for number, sign in path:
            flow[number] += sign * units
    return tuple(flow)


def _room(arcs: Sequence[Arc], flow: Sequence[int], *, step: tuple[int, int]) -> int:
    number, sign = step
    return arcs[number].room - flow[number] if sign > 0 else flow[number]


def _cheapest_path(
    arcs: Sequence[Arc], flow: Sequence[int], *, source: str, sink: str
) -> list[tuple[int, int]]:
    """Steps along arcs (1) or back along used ones (-1); empty where no way is left."""
    cost = {source: 0}
    before: dict[str, tuple[str, tuple[int, int]]] = {}
    steps = [(arc.tail, arc.head, arc.cost, (number, 1)) for number, arc in enumerate(arcs)] + [
        (arc.head, arc.tail, -arc.cost, (number, -1)) for number, arc in enumerate(arcs)
    ]
    open_steps = [step for step in steps if _room(arcs, flow, step=step[3])]
    improved = True
    while improved:
        improved = False
        for tail, head, each, step in open_steps:
            if tail in cost and (head not in cost or cost[tail] + each < cost[head]):
                cost[head] = cost[tail] + each
                before[head] = (tail, step)
                improved = True
    path: list[tuple[int, int]] = []
    node = sink
    while node in before:
        node, step = before[node]
        path.append(step)
    return path
