"""Counting by multiplication from the top down, and the chains behind the numbers.

n(root) = 1; n(child) = sum over its parents of n(parent) x number in the parent.
"""

from collections.abc import Mapping
from dataclasses import dataclass

from paradestate.core.chain import Chain, chains
from paradestate.core.force import Force
from paradestate.core.formation import Need
from paradestate.core.number import NONE, NumberRange, exactly
from paradestate.core.ratio import shared_figures
from paradestate.core.structure import FULL, NodeKey, Step, Structure

MOST_THINGS = 100_000
"""Stands and bodies in one establishment; more is taken for a slip."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Rollup:
    """Sums over the structure, without unfolding it."""

    stands: Mapping[str, int]
    """Pattern to number in the must layer, printed ones included."""
    figures: Mapping[str, int]
    """Kind to number in the must layer."""
    number_of_things: int
    """Stands and bodies of both layers."""
    chains: Mapping[str, Chain]
    """Pattern to the multiplication behind its number in the must layer."""
    paper_men: Mapping[str, NumberRange]
    """Formation with parts to the men of its parts at paper strength."""


def rolled_up(force: Force, settled: Structure) -> Rollup:
    """All sums of a structure."""
    must, wished = _counters(settled)
    every = sum(must.values()) + sum(wished.values())
    stands: dict[str, int] = {}
    figures: dict[str, int] = {}
    for key, node in settled.nodes.items():
        in_all = must[key] + wished[key]
        for step in node.steps:
            every += step.number * in_all if step.of in force.stands else 0
            if step.of in force.stands and step.need is Need.MUST:
                stands[step.of] = stands.get(step.of, 0) + step.number * must[key]
        for sharing in shared_figures(force, settled, node=node) if every <= MOST_THINGS else ():
            every += sharing.number_of_stands * in_all
            figures[sharing.figure] = figures.get(sharing.figure, 0) + sharing.number * must[key]
    _add_figures(force, stands, to=figures)
    return Rollup(
        stands={name: number for name, number in stands.items() if number},
        figures={kind: number for kind, number in figures.items() if number},
        number_of_things=every,
        chains=chains(force, settled) if every <= MOST_THINGS else {},
        paper_men=_paper_men(force, settled),
    )


def _add_figures(force: Force, stands: Mapping[str, int], *, to: dict[str, int]) -> None:
    """Adds the figures of so many stands; printed ones hold none."""
    for pattern, number in stands.items():
        figures = {} if force.stands[pattern].printed else force.stands[pattern].figures
        for kind, each in figures.items():
            to[kind] = to.get(kind, 0) + each * number


def stands_under(force: Force, settled: Structure, *, formation: str) -> int | None:
    """Stands of the must layer in one of a formation, all levels below it; None if none is raised.

    Where some of them are weak and others aren't, those that come first.
    """
    key = next((key for key in settled.nodes if key[0] == formation), None)
    return None if key is None else _stands_of(force, settled, key=key)


def _stands_of(force: Force, settled: Structure, *, key: NodeKey) -> int:
    must = [step for step in settled.nodes[key].steps if step.need is Need.MUST]
    return sum(
        step.number
        * (1 if step.of in force.stands else _stands_of(force, settled, key=(step.of, step.share)))
        for step in must
    )


def _counters(settled: Structure) -> tuple[dict[object, int], dict[object, int]]:
    """How often each node stands in the must layer, and how often outside it."""
    must: dict[object, int] = dict.fromkeys(settled.nodes, 0)
    wished: dict[object, int] = dict.fromkeys(settled.nodes, 0)
    must[settled.root] = 1
    for key, node in settled.nodes.items():
        for step in node.steps:
            below = (step.of, step.share)
            if below not in settled.nodes:
                continue
            if step.need is Need.MUST:
                must[below] += must[key] * step.number
                wished[below] += wished[key] * step.number
            else:
                wished[below] += (must[key] + wished[key]) * step.number
    return must, wished


def _paper_men(force: Force, settled: Structure) -> Mapping[str, NumberRange]:
    """Men of the parts of each formation, from the bottom up, must layer only.

    A printed total is the paper strength, so formations with something weak below are left out.
    """
    men: dict[str, NumberRange] = {}
    sums: dict[str, NumberRange] = {}
    for (name, share), node in reversed(list(settled.nodes.items())):
        if share != FULL:
            continue
        each = [(_paper_men_of(force, step, men=men), step) for step in node.steps]
        total = NONE
        known = True
        for number, step in each:
            if number is None:
                known = False
            elif step.need is Need.MUST:
                total += number * step.number
        if known:
            men[name] = total if node.steps else exactly(node.men)
            if node.steps:
                sums[name] = total
    return sums


def _paper_men_of(
    force: Force, step: Step, *, men: Mapping[str, NumberRange]
) -> NumberRange | None:
    if step.of in force.stands:
        return force.stands[step.of].men or NONE
    return men.get(step.of)
