"""The sorts of entry that have a form of their own, and the fields of each.

Labels are for the form; `word` is the word of the file format that the field writes.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum

from paradestate.core.figure import Match, Sort
from paradestate.core.place import KeyPath
from paradestate.text.format.purchase import STAGES
from paradestate.text.format.troops import ELEMENTS, FIGURES


class FieldKind(StrEnum):
    """How a field is filled in."""

    TEXT = "text"
    CHOICE = "choice"
    ROWS = "rows"
    """A key and a value in each row."""
    LINES = "lines"
    """One value a line; a single one with # is a pattern."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Field:
    """One field of a form."""

    word: str
    """Of the format; empty where the field is the whole entry."""
    label: str
    hint: str = ""
    kind: FieldKind = FieldKind.TEXT
    choices: tuple[str, ...] = ()
    """Of a choice, or of the value of a row; empty where anything may be typed."""
    names: str = ""
    """The kind of names that the keys of rows are; empty where anything may be typed."""
    key_label: str = ""
    value_label: str = ""
    is_needed: bool = False
    """Whether an entry can't be used without it."""
    first_key: str = ""
    """Of rows: the key that stands ready in the first row while there is none."""


@dataclass(frozen=True, slots=True, kw_only=True)
class EntrySort:
    """A sort of entry: where it stands, what it is called, and its fields."""

    key: str
    title: str
    one: str
    """One of them, in a sentence."""
    section: KeyPath
    """Where entries of this sort stand; `*` is the name of what they belong to."""
    fields: tuple[Field, ...]
    names: str = ""
    """The kind of names that entries are called by; empty where a name is made up."""
    begun: tuple[str, ...] = ()
    """Words that a new entry needs besides, each an empty mapping at first."""
    about: str = ""
    """What such an entry is, for whoever hears the word for the first time."""
    calling: str = "Its name"
    """What is asked for where a name is made up."""

    @property
    def belongs_to_another(self) -> bool:
        """Whether entries stand within another one, as packs within their source."""
        return "*" in self.section

    def path(self, name: str, *, of: str = "") -> KeyPath:
        """The key path of an entry."""
        return (*(of if step == "*" else step for step in self.section), name)


def _held(label: str) -> Field:
    return Field(
        word="",
        label=label,
        hint="A number for each stage; leave a row empty to take it out.",
        kind=FieldKind.ROWS,
        names=STAGES,
        key_label="Stage",
        value_label="Number",
    )


def _counts(word: str, *, label: str, is_needed: bool = False) -> Field:
    return Field(
        word=word,
        label=label,
        kind=FieldKind.ROWS,
        names=FIGURES,
        key_label="Figure kind",
        value_label="Number",
        is_needed=is_needed,
    )


_CALLED = Field(word="called", label="Printed as", hint="the word on labels and lists")

SORTS: Mapping[str, EntrySort] = {
    sort.key: sort
    for sort in (
        EntrySort(
            key="figures",
            title="Figure kinds",
            one="a figure kind",
            section=("figures",),
            fields=(
                Field(word="height", label="Height", hint="with its unit: 15 mm"),
                Field(word="footprint", label="Footprint", hint="a disc: 7 mm; or front x depth"),
                Field(
                    word="sort",
                    label="Sort",
                    hint="foot where nothing is chosen",
                    kind=FieldKind.CHOICE,
                    choices=tuple(Sort),
                ),
                Field(
                    word="may stand for",
                    label="May stand for",
                    hint="where those are lacking; one step only",
                    kind=FieldKind.ROWS,
                    names=FIGURES,
                    choices=tuple(Match),
                    key_label="Figure kind",
                    value_label="How well",
                ),
            ),
        ),
        EntrySort(
            key="stands",
            title="Stands",
            one="a stand",
            section=("stands",),
            fields=(
                Field(word="base", label="Base", hint="40 x 20 mm, 30 mm disc, or none"),
                _counts("figures", label="Figures on it"),
                Field(word="men", label="Men it stands for", hint="10, or 9-11"),
                _CALLED,
            ),
        ),
        EntrySort(
            key="stock",
            title="Figures owned at the start",
            one="what is owned of a figure kind",
            section=("stock",),
            fields=(_held("Owned at the start"),),
            names=FIGURES,
        ),
        EntrySort(
            key="sources",
            title="Sources",
            one="a source",
            section=("sources",),
            fields=(
                Field(
                    word="currency",
                    label="Currency",
                    hint="three letters: GBP, EUR, USD",
                    is_needed=True,
                ),
                Field(
                    word="carriage",
                    label="Carriage",
                    hint="what sending costs, from goods of what value: from 0, 3.50; from 40, 0. "
                    "Where nothing is charged: from 0, 0",
                    kind=FieldKind.ROWS,
                    key_label="From goods of",
                    value_label="Charge",
                    is_needed=True,
                    first_key="0",
                ),
                Field(word="least order", label="Least order", hint="nothing is sent below it"),
                Field(word="noted", label="Prices noted", hint="a day: 2026-03-05"),
            ),
            begun=("packs",),
            about="A source is where you buy: a shop, a maker, a stall at a fair. It has a "
            "currency, its charge for sending, and packs at a price each.",
            calling="What the shop or maker is called",
        ),
        EntrySort(
            key="packs",
            title="Packs",
            one="a pack",
            section=("sources", "*", "packs"),
            fields=(
                Field(word="name", label="Name on the shelf"),
                Field(word="price", label="Price", hint="18.00", is_needed=True),
                _counts("holds", label="What is in it", is_needed=True),
                Field(word="most", label="At most", hint="how many can be had"),
                Field(word="lead days", label="Days to arrival"),
            ),
            about="A pack is what is sold as one piece: a box, a bag, a blister, with some "
            "figures in it.",
            calling="What the source calls it: a number or a name",
        ),
        EntrySort(
            key="names",
            title="Names",
            one="the names of a body or stand",
            section=("raise", "names"),
            fields=(
                Field(
                    word="",
                    label="Names",
                    hint="one a line, in order; or a single line in which # is the number: No #",
                    kind=FieldKind.LINES,
                ),
            ),
            names=ELEMENTS,
        ),
    )
}
