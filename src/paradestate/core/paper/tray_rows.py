"""In which tray and row stands lie, in words, where their owner has laid the trays."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from paradestate.core.sentence.wording import capital, listed, runs
from paradestate.core.tray.lid import Lid


@dataclass(frozen=True, slots=True, kw_only=True)
class TrayRow:
    """A row of a tray."""

    tray: str
    row: int
    """From the far side, from 1."""


def tray_rows(lids: Iterable[Lid]) -> Mapping[str, TrayRow]:
    """Stand to where it lies."""
    return {
        stand.name: TrayRow(tray=lid.tray, row=row.number)
        for lid in lids
        for row in lid.rows
        for stand in row.stands
    }


def where_words(laid: Mapping[str, TrayRow], names: Iterable[str]) -> str:
    """`Case 1, rows 2 and 4`, with how many have no place; empty where nothing is laid."""
    if not laid:
        return ""
    rows: dict[str, set[int]] = {}
    without = 0
    for name in names:
        at = laid.get(name)
        if at is None:
            without += 1
        else:
            rows.setdefault(at.tray, set()).add(at.row)
    said = [
        f"{capital(tray)}, {'row' if len(found) == 1 else 'rows'} {listed(runs(found))}"
        for tray, found in rows.items()
    ]
    if without:
        said.append(f"{without} without a place")
    return "; ".join(said)
