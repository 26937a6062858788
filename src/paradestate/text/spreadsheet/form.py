"""An empty form for supporting troops: a row an entry, and a sheet that says how to fill it in.

The second sheet isn't read: its name is none of ours.
"""

from collections.abc import Iterator

from paradestate.core.force import Force
from paradestate.text.format.support import ENTRY
from paradestate.text.spreadsheet.layout import LAYOUTS
from paradestate.text.spreadsheet.writing import Page

FORM = "supporting troops"
GUIDE = "how to fill it in"

COLUMNS = (
    ("entry", "the name in your book, each once", "machine-gun platoon"),
    ("held at", "who lends it", "battalion"),
    ("cost", "points by number taken; a single number is the cost of one", "1: 3, 2: 5, 3: 7"),
    ("each", "the stands that each of them puts down", "machine-gun team: 1"),
    ("limit", "purchases in the force; empty means one", "most: 1, for every: 2, of: company"),
    ("roll", "dice, where it may be refused", "1d12"),
    ("allows 0", "totals on which it is refused", "1-2"),
    ("allows 1", "totals that allow one", "3-8"),
    ("allows 2", "totals that allow two; add a column for each number you need", ""),
    ("allows all", "totals that allow all that was asked for", "9-12"),
    ("when refused", "points kept, or points lost", "points kept"),
    ("needs", "entries that must be taken with it", "light tanks"),
    ("bars", "entries that can't be taken with it", "bicycle troop"),
    ("choice", "one of these is chosen for the whole purchase", "flame, charges"),
    ("group", "a name for limits shared with others", "armour"),
    ("place", "on table, off table or either; empty means on table", "off table"),
    ("only in", "a posture", "posture: defence"),
    ("from", "first date, where the book gives one", "1942-06"),
    ("until", "last date", "1943"),
    ("by hand", "what no column can say; it is printed and not checked", ""),
)
"""Columns of the form, what stands there and an example; the usual ones, in the order of a book."""

WORKED = (
    {"entry": "field battery", "held at": "division", "cost": "1: 3, 2: 5, 3: 8"}
    | {"place": "off table"},
    {"entry": "light tanks", "cost": "2: 9, 3: 13", "limit": "most: 2", "roll": "1d12"}
    | {"allows 0": "1-4", "allows all": "5-12", "when refused": "points kept"}
    | {"group": "armour"},
    {"entry": "spear blocks", "cost": "each: 7, numbers: 8-24", "limit": "least: 1"},
)
"""Rows as they might be filled in."""


def form_pages(force: Force) -> tuple[Page, ...]:
    """The empty form, and the sheet that explains it with the names that the force knows."""
    headings = tuple(heading for heading, _, _ in COLUMNS)
    guide = tuple(_guide(force, headings=headings))
    return Page(name=FORM, rows=(headings,), blank=True), Page(name=GUIDE, rows=guide)


def _guide(force: Force, *, headings: tuple[str, ...]) -> Iterator[tuple[str, ...]]:
    yield "column", "what stands there", "for example"
    yield from COLUMNS
    yield ()
    yield "more columns", "that you may add, each with its name in the first row", ""
    for word in LAYOUTS[FORM].words:
        if word not in headings:
            yield word, ENTRY.words[word].about, ""
    yield ()
    yield "names", "as they are spelled in this force", ""
    for kind, names in (
        ("stands", force.stands),
        ("formations", force.formations),
        ("scales of grades", force.grades),
    ):
        yield kind, ", ".join(names), ""
    yield ()
    yield ("rows as they might be filled in",)
    yield headings
    for row in WORKED:
        yield tuple(row.get(heading, "") for heading in headings)
