"""What a club has to give out of what it owns: finished and here, or not finished yet."""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass

from paradestate.core.club.enough import Stock
from paradestate.core.force import Force
from paradestate.core.holdings import Holdings, Pile, piles
from paradestate.core.number import summed


@dataclass(frozen=True, slots=True, kw_only=True)
class _Known:
    """A pile with the figures of one piece of it, and the stages of the force that has it."""

    pile: Pile
    figures: Mapping[str, int]
    stages: tuple[str, ...]

    @property
    def numbers(self) -> Mapping[str, int]:
        """Kind to figures of the whole pile."""
        return {kind: each * self.pile.number for kind, each in self.figures.items()}


def sound_stock(force: Force) -> Stock:
    """Figures at the last stage, loose or on stands; what went back to an earlier one is in repair.

    What is lent is no part of the stock of a force that is counted without it.
    """
    return club_stock(Holdings(figures=force.stock, stands=force.stock_stands), (force,))


def club_stock(held: Holdings, forces: Sequence[Force]) -> Stock:
    """The same of all that several forces hold together, by the first force that has the thing.

    What none of them has, or is at no stage of that force, is given out to nobody.
    """
    known = tuple(_known(held, forces))
    return Stock(
        sound=_numbers(each.numbers for each in known if each.pile.stage == each.stages[-1]),
        in_repair=_numbers(each.numbers for each in known if each.pile.stage in each.stages[:-1]),
        figures={name: kind for force in reversed(forces) for name, kind in force.figures.items()},
    )


def _known(held: Holdings, forces: Sequence[Force]) -> Iterator[_Known]:
    for pile in piles(held):
        for force in forces:
            stand = force.stands.get(pile.name) if pile.is_stand else None
            if stand is None and (pile.is_stand or pile.name not in force.figures):
                continue
            figures = {pile.name: 1} if stand is None else stand.modelled
            yield _Known(pile=pile, figures=figures, stages=force.bench.stages)
            break


def _numbers(every: Iterable[Mapping[str, int]]) -> Mapping[str, int]:
    return {kind: number for kind, number in summed(every).items() if number > 0}
