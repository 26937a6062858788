"""The packing list: what goes into which tray, row by row, with a box to tick."""

from collections.abc import Sequence
from dataclasses import dataclass

from paradestate.core.mark.code import Mark
from paradestate.core.paper.paper import Draft
from paradestate.core.sentence.cross_check import Tick
from paradestate.core.sentence.wording import capital, several
from paradestate.core.tray.lid import Lid, LidRow
from paradestate.core.unfolding import name_within, spoken


@dataclass(frozen=True, slots=True, kw_only=True)
class PackingLine:
    """One stand."""

    number: int
    """As on the plan for the lid."""
    name: str
    mark: Mark | None


@dataclass(frozen=True, slots=True, kw_only=True)
class PackingRow:
    """A row of a tray, from left to right."""

    number: int
    company: str
    """To whom all of it belongs; empty where it is shared."""
    lines: tuple[PackingLine, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class PackingTray:
    """One tray, from the far side."""

    name: str
    words: str
    """How many stands in how many rows."""
    rows: tuple[PackingRow, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class PackingList:
    """All trays, and what has no place in them."""

    trays: tuple[PackingTray, ...]
    sure: tuple[str, ...]
    left_out: tuple[str, ...]


def packing_list(
    lids: Sequence[Lid],
    *,
    sure: Sequence[str],
    left_out: Sequence[str],
    to_pack: int,
) -> Draft[PackingList]:
    """The list; none where nothing has to be packed."""
    if not lids and not left_out:
        return Draft(shown=None)
    packed = len({stand.name for lid in lids for stand in lid.stands})
    return Draft(
        shown=PackingList(
            trays=tuple(_tray(lid) for lid in lids),
            sure=tuple(sure),
            left_out=tuple(map(spoken, left_out)),
        ),
        ticks=(packing_tick(packed, left_out=len(left_out), to_pack=to_pack),),
    )


def packing_tick(packed: int, *, left_out: int, to_pack: int) -> Tick:
    """The trays hold what the packing list says: each stand once, and no other."""
    out = f" and {left_out} without a place" if left_out else ""
    return Tick(
        words=f"{several(packed, 'stand')} in trays{out} for {several(to_pack, 'stand')} to pack",
        holds=packed + left_out == to_pack,
    )


def _tray(lid: Lid) -> PackingTray:
    number = len(lid.stands)
    return PackingTray(
        name=capital(lid.tray),
        words=f"{several(number, 'stand')} in {several(len(lid.rows), 'row')}",
        rows=tuple(_row(row) for row in lid.rows),
    )


def _row(row: LidRow) -> PackingRow:
    companies = {stand.company for stand in row.stands}
    company = companies.pop() if len(companies) == 1 else ""
    return PackingRow(
        number=row.number,
        company=spoken(company),
        lines=tuple(
            PackingLine(
                number=stand.number,
                name=spoken(name_within(stand.name, company)),
                mark=stand.mark,
            )
            for stand in row.stands
        ),
    )
