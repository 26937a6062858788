"""The state board: what befalls each platoon, ticked as it happens, and what fire is left."""

from collections.abc import Iterator
from dataclasses import dataclass

from paradestate.core.mark.code import Mark
from paradestate.core.paper.ground import Ground
from paradestate.core.paper.order_of_battle import troops_lines, unit_lines
from paradestate.core.paper.paper import Draft


@dataclass(frozen=True, slots=True, kw_only=True)
class StateRow:
    """A unit, or supporting troops: a box for each stand, crossed when it is out."""

    name: str
    mark: Mark | None
    stands: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class MissionRow:
    """Fire missions of one purchase, a box each."""

    name: str
    number: int


@dataclass(frozen=True, slots=True, kw_only=True)
class StateBoard:
    """One row for each platoon."""

    states: tuple[str, ...]
    """The owner's words; a box for each stands in every row."""
    rows: tuple[StateRow, ...]
    missions: tuple[MissionRow, ...]


def state_board(ground: Ground) -> Draft[StateBoard]:
    """The state board of the raised force and its supporting troops."""
    rows = tuple(_rows(ground))
    missions = tuple(
        MissionRow(name=each.name, number=each.missions)
        for each in troops_lines(ground)
        if each.missions
    )
    if not rows:
        return Draft(shown=None)
    return Draft(shown=StateBoard(states=ground.force.states, rows=rows, missions=missions))


def _rows(ground: Ground) -> Iterator[StateRow]:
    for unit in unit_lines(ground):
        yield StateRow(name=unit.name, mark=unit.mark, stands=unit.stands)
    for line in troops_lines(ground):
        if line.stands:
            yield StateRow(name=line.name, mark=None, stands=line.stands)
