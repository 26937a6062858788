"""The stock-take sheet: what is held of each kind at each stage, with a box to tally in.

It is counted on with a pencil, and typed in at home: nothing is typed at the club.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from paradestate.core.force import Force
from paradestate.core.holdings import Holdings, Staged, all_stages, piles
from paradestate.core.paper.paper import Draft
from paradestate.core.sentence.wording import capital, several

MOST_STAGES = 5
"""Side by side, so that a tally of twenty goes into a box."""


@dataclass(frozen=True, slots=True, kw_only=True)
class CountRow:
    """One kind with what is held of it, stage by stage."""

    name: str
    held: tuple[int, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class CountTable:
    """Kinds down, stages across."""

    title: str
    stages: tuple[str, ...]
    rows: tuple[CountRow, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class StockTakeSheet:
    """All that can be counted."""

    tables: tuple[CountTable, ...]
    away: tuple[str, ...]
    """What is lent, and so isn't there to be counted."""


def stock_take_sheet(force: Force, *, held: Holdings, lent: Holdings) -> Draft[StockTakeSheet]:
    """A box for every kind of the force and every stage, with what else is held."""
    stages = force.bench.stages
    tables = (
        *_tables("Figures", held.figures, rows=tuple(force.figures), usual=stages),
        *_tables("Whole stands", held.stands, rows=_patterns(force), usual=stages),
    )
    if not tables:
        return Draft(shown=None)
    return Draft(
        shown=StockTakeSheet(
            tables=tables,
            away=tuple(
                f"{capital(pile.stage)}: {several(pile.number, pile.name)}"
                for pile in piles(lent)
                if pile.number
            ),
        )
    )


def _patterns(force: Force) -> tuple[str, ...]:
    """Stands that hold figures, and so are made."""
    return tuple(name for name, stand in force.stands.items() if stand.modelled)


def _tables(
    title: str, held: Staged, *, rows: Sequence[str], usual: Sequence[str]
) -> Iterator[CountTable]:
    """The stages go on in a further table where they are too many for one."""
    names = tuple(dict.fromkeys((*rows, *held)))
    stages = all_stages(held, usual=usual)
    for first in range(0, len(stages) if names else 0, MOST_STAGES):
        some = stages[first : first + MOST_STAGES]
        yield CountTable(
            title=title if not first else f"{title}, further stages",
            stages=some,
            rows=tuple(_row(name, held.get(name, {}), stages=some) for name in names),
        )


def _row(name: str, held: Mapping[str, int], *, stages: Sequence[str]) -> CountRow:
    return CountRow(name=name, held=tuple(held.get(stage, 0) for stage in stages))
