"""The sections `games`, `grades`, `formation cost` and `reserves`; purchases as text."""

import re
from dataclasses import dataclass

from paradestate.core.game import (
    CostByNumber,
    FormationCost,
    Game,
    Grade,
    Purchase,
    ReserveMethod,
    Reserves,
)
from paradestate.text.codec import ListOf, MappingOf, NameOf, Plain, Schema, Text
from paradestate.text.context import Context
from paradestate.text.format import value
from paradestate.text.format.counts import Counts
from paradestate.text.format.price import grade_kind
from paradestate.text.format.roll import ALLOWANCE
from paradestate.text.format.scenario import ARRIVALS, STRENGTHS
from paradestate.text.format.troops import ELEMENTS, FORMATIONS
from paradestate.text.number import read_whole
from paradestate.text.record import Named, record, word
from paradestate.text.slip import INVALID, Invalid, Slip
from paradestate.text.tree import Node, Scalar

ENTRIES = "supporting troops"
POSTURES = "postures"

_PURCHASE = re.compile(r"(.+?)(?:\((.+)\))? ?= ?(\d{1,10})", re.ASCII | re.DOTALL)


def read_purchase(text: str) -> Purchase | Slip:
    """An entry, a choice in brackets, and a number: `pioneers(flame)=1`."""
    found = _PURCHASE.fullmatch(text)
    number = read_whole(found.group(3)) if found else None
    if found is None or not isinstance(number, int):
        return Slip(
            code="not-a-purchase",
            message=f"'{text}' isn't an entry and a number.",
            hint="Write entry=number, with a choice in round brackets: pioneers(flame)=1.",
        )
    return Purchase(
        entry=found.group(1).strip(), choice=(found.group(2) or "").strip(), number=number
    )


def purchase_text(purchase: Purchase) -> str:
    """A purchase as the owner writes it."""
    choice = f"({purchase.choice})" if purchase.choice else ""
    return f"{purchase.entry}{choice}={purchase.number}"


PURCHASE = Text(
    parse=read_purchase,
    show=purchase_text,
    described={"type": "string", "pattern": r"= ?\d+$", "examples": ["pioneers(flame)=1"]},
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Planned:
    """A purchase of an entry that the folder defines."""

    def read(self, node: Node, context: Context) -> Purchase | Invalid:
        """The purchase; an entry whose own name holds brackets is known by its whole name."""
        purchase = PURCHASE.read(node, context)
        if isinstance(purchase, Invalid) or not isinstance(node, Scalar):
            return INVALID
        whole = node.text.rpartition("=")[0].strip()
        if whole in context.names.get(ENTRIES, {}):
            purchase = Purchase(entry=whole, number=purchase.number)
        return purchase if context.refer(purchase.entry, node.place, kind=ENTRIES) else INVALID

    def write(self, value: Purchase) -> Plain:
        """As the owner writes it."""
        return PURCHASE.write(value)

    def schema(self) -> Schema:
        """A text that ends in a number."""
        return PURCHASE.schema()


GAME = record(
    Game,
    word("allowance", ALLOWANCE, about="points to spend: 18 + 2d6; left out: a game without them"),
    word("posture", value.NAME, required=True, about="attack, defence, encounter"),
    word("weight", value.POSITIVE, about="how often it is played, against the others"),
    word("numbers", Counts(kind=ELEMENTS, nought=True)),
    word("plan", ListOf(of=Planned())),
    word("strengths", STRENGTHS, about="share of the stands of each that takes the field"),
    word("arrivals", ARRIVALS, about="what comes onto the table later, and when"),
)
GAMES_SECTION = Named(entry=GAME)

_COST_BY = record(
    CostByNumber,
    word("by", NameOf(kind=FORMATIONS), required=True),
    word("points", MappingOf(key=value.COUNT, value=value.POINTS), required=True),
    by_hand=False,
)


@dataclass(frozen=True, slots=True, kw_only=True)
class CostOfFormation:
    """A number of points, or points by how many of a formation there are."""

    def read(self, node: Node, context: Context) -> FormationCost | Invalid:
        """Either form."""
        reader = value.POINTS if isinstance(node, Scalar) else _COST_BY
        return reader.read(node, context)

    def write(self, value: FormationCost) -> Plain:
        """As it was."""
        return str(value) if isinstance(value, int) else _COST_BY.write(value)

    def schema(self) -> Schema:
        """Either form."""
        return {"anyOf": [value.POINTS.schema(), _COST_BY.schema()]}


@dataclass(frozen=True, slots=True, kw_only=True)
class GradeOfItsScale:
    """A grade of the scale in which it stands."""

    def read(self, node: Node, context: Context) -> str | Invalid:
        """The grade, where the scale has points for it."""
        scale = node.place.path[-2]
        return NameOf(kind=grade_kind(scale)).read(node, context)

    def write(self, value: str) -> Plain:
        """The grade."""
        return value

    def schema(self) -> Schema:
        """Any name; a schema can't look it up."""
        return value.NAME.schema()


GRADE = record(
    Grade,
    word("usual", GradeOfItsScale(), required=True, about="one of the grades"),
    word("points", MappingOf(key=value.NAME, value=value.POINTS), required=True),
)
GRADES_SECTION = Named(entry=GRADE)
RESERVES = record(
    Reserves,
    word("method", value.words_of(ReserveMethod), required=True),
    word("most", value.PERCENT, required=True),
    word("of", NameOf(kind=FORMATIONS), required=True),
)
