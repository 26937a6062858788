"""The chain behind a number of stands: all ways from the top down, each a multiplication."""

from collections.abc import Mapping
from dataclasses import dataclass
from math import prod
from typing import TypeAlias

from paradestate.core.force import Force
from paradestate.core.formation import Need
from paradestate.core.structure import Node, Structure

MOST_TERMS = 12
"""Terms of one chain; the rest is said in a word."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Factor:
    """So many of one thing in each of what is above it."""

    number: int
    of: str


Way: TypeAlias = tuple[Factor, ...]
"""From the top down; the last factor is the stand itself."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Chain:
    """The ways that lead to one kind of stand; their products add up to its number."""

    ways: tuple[Way, ...]
    """The first of them, at most MOST_TERMS."""
    is_whole: bool
    """Whether there are no more."""

    @property
    def products(self) -> tuple[int, ...]:
        """What each of the ways brings."""
        return tuple(prod(factor.number for factor in way) for way in self.ways)

    def __str__(self) -> str:
        """As text: `4 company x 3 platoon x 2`, terms joined by a plus."""
        terms = [_term(way) for way in self.ways]
        return " + ".join(terms if self.is_whole else (*terms, "..."))


def chains(force: Force, settled: Structure) -> Mapping[str, Chain]:
    """Pattern to the chain behind its number in the must layer."""
    found: dict[str, list[Way]] = {}

    def walk(node: Node, above: Way) -> None:
        for step in node.steps:
            if step.need is not Need.MUST or not step.number:
                continue
            way = (*above, Factor(number=step.number, of=step.of))
            if step.of not in force.stands:
                walk(settled.nodes[step.of, step.share], way)
                continue
            ways = found.setdefault(step.of, [])
            if len(ways) <= MOST_TERMS:
                ways.append(way)

    walk(settled.nodes[settled.root], ())
    return {
        name: Chain(ways=tuple(ways[:MOST_TERMS]), is_whole=len(ways) <= MOST_TERMS)
        for name, ways in found.items()
    }


def _term(way: Way) -> str:
    above = [f"{factor.number} {factor.of}" for factor in way[:-1]]
    return " x ".join((*above, str(way[-1].number)))
