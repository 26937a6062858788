"""Which sheets are read, which columns they have, and how a cell becomes a node."""

from collections.abc import Mapping
from dataclasses import dataclass

from paradestate.text.format.purchase import source_record
from paradestate.text.format.support import ENTRY
from paradestate.text.spreadsheet.cell import Use

ROLL = "roll"
SHARED_ROLL = "shared roll"
OF_AVAILABILITY = frozenset({ROLL, SHARED_ROLL})
"""Columns whose word stands under `availability`."""

ALLOWS = "allows "
"""Columns `allows 0`, `allows 1`, `allows all` hold the rolls that allow so many."""

LISTS = frozenset({"bars", "opens", "choice", "repeats cost more"})
"""Words whose cell is a list with commas."""

NEEDS = frozenset({"needs", "needs any of", "needs for each"})
"""Words whose cell is a list where it holds no number."""

MAPPINGS = frozenset(
    {
        "holds",
        "multibuy",
        "carriage",
        "discount",
        "cost",
        "cost by grade",
        "each",
        "limit",
        "needs",
        "needs any of",
        "needs for each",
        "grants",
        "replaces",
        "improves",
        "attach",
        "missions",
        "only in",
        "not in",
        "choice costs",
        "in posture",
    }
)
"""Words whose cell is written as in YAML, without the braces: `rifleman: 32, officer: 4`."""

NUMBERS = frozenset({"price", "most", "lead days", "rate", "least order"})
DATES = frozenset({"from", "until", "noted", "rate date"})


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetLayout:
    """A sheet that is read: the columns that name an entry, and where the entry hangs."""

    section: str
    keys: tuple[str, ...]
    words: tuple[str, ...]
    stages: bool = False
    """Whether all other columns are stages."""


_SOURCE = source_record(2)
_PACK_WORDS = ("name", "price", "holds", "most", "lead days", "multibuy", "by hand")
_SOURCE_WORDS = tuple(word for word in _SOURCE.words if word != "packs")
_ENTRY_WORDS = tuple(word for word in ENTRY.words if word != "availability")

LAYOUTS: Mapping[str, SheetLayout] = {
    "stock": SheetLayout(section="stock", keys=("figure",), words=("held",), stages=True),
    "stock stands": SheetLayout(
        section="stock stands", keys=("stand",), words=("held",), stages=True
    ),
    "sources": SheetLayout(section="sources", keys=("source",), words=_SOURCE_WORDS),
    "packs": SheetLayout(section="sources", keys=("source", "pack"), words=_PACK_WORDS),
    "supporting troops": SheetLayout(
        section="supporting troops", keys=("entry",), words=_ENTRY_WORDS
    ),
}
"""Name of a sheet to how it is read."""


def use_of(heading: str, layout: SheetLayout) -> Use:
    """What a column is for."""
    if heading in layout.keys:
        return Use.TEXT
    if layout.stages or heading in NUMBERS:
        return Use.NUMBER
    if heading in DATES:
        return Use.DATE
    return Use.RANGE if heading.startswith(ALLOWS) else Use.TEXT
