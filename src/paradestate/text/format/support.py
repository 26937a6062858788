"""The sections `games`, `grades`, `supporting troops`, `limits`, `reserves` and `worths`."""

import re
from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction

from paradestate.core.game import (
    CostByNumber,
    FormationCost,
    Game,
    Grade,
    Purchase,
    ReserveMethod,
    Reserves,
)
from paradestate.core.outline import decimal_text
from paradestate.core.span import Window
from paradestate.core.support.entry import (
    Attachment,
    Availability,
    Band,
    Circumstance,
    Entry,
    GroupLimit,
    Limit,
    Position,
    Refusal,
    Replacement,
    Rounding,
    Worth,
)
from paradestate.text.codec import (
    ListOf,
    MappingOf,
    NameOf,
    Plain,
    Schema,
    Text,
    shape_slip,
)
from paradestate.text.context import Context
from paradestate.text.dice import read_band
from paradestate.text.format import value
from paradestate.text.format.counts import Counts
from paradestate.text.format.troops import (
    ELEMENTS,
    FORMATIONS,
    STANDS,
    THEATRE,
    WINDOW_WORDS,
)
from paradestate.text.number import read_whole
from paradestate.text.record import Named, record, word
from paradestate.text.slip import INVALID, Invalid, Slip
from paradestate.text.tree import Fields, Node, Scalar

ENTRIES = "supporting troops"
POSTURES = "postures"
GROUPS = "groups"

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
    word("allowance", value.DICE, required=True, about="points to spend: 18 + 2d6"),
    word("posture", value.NAME, required=True, about="attack, defence, encounter"),
    word("weight", value.POSITIVE, about="how often it is played, against the others"),
    word("numbers", Counts(kind=ELEMENTS, nought=True)),
    word("plan", ListOf(of=Planned())),
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


GRADE = record(
    Grade,
    word("usual", value.NAME, required=True),
    word("points", MappingOf(key=value.NAME, value=value.POINTS), required=True),
)
GRADES_SECTION = Named(entry=GRADE)


@dataclass(frozen=True, slots=True, kw_only=True)
class CostTable:
    """Points by number taken; a single number is the cost of one."""

    def read(self, node: Node, context: Context) -> Mapping[int, int] | Invalid:
        """Number taken to points."""
        if isinstance(node, Scalar):
            points = value.POINTS.read(node, context)
            return INVALID if isinstance(points, Invalid) else {1: points}
        return MappingOf(key=value.WHOLE, value=value.POINTS).read(node, context)

    def write(self, value: Mapping[int, int]) -> Plain:
        """The table."""
        return {str(number): str(points) for number, points in value.items()}

    def schema(self) -> Schema:
        """Either form."""
        table = MappingOf(key=value.WHOLE, value=value.POINTS).schema()
        return {"anyOf": [value.POINTS.schema(), table]}


@dataclass(frozen=True, slots=True, kw_only=True)
class AnyOrLimit:
    """`any`, or a limit in its words."""

    def read(self, node: Node, context: Context) -> Limit | Invalid:
        """The limit."""
        if isinstance(node, Scalar) and node.text == "any":
            return Limit(most=None)
        return _LIMIT.read(node, context)

    def write(self, value: Limit) -> Plain:
        """As it was."""
        return "any" if value.most is None else _LIMIT.write(value)

    def schema(self) -> Schema:
        """Either form."""
        return {"anyOf": [{"const": "any"}, _LIMIT.schema()]}


_LIMIT = record(
    Limit,
    word("most", value.COUNT, required=True),
    word("for every", value.WHOLE),
    word("of", NameOf(kind=FORMATIONS)),
    word("round", value.words_of(Rounding)),
    by_hand=False,
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Bands:
    """Totals of a roll to how many are allowed then."""

    def read(self, node: Node, context: Context) -> tuple[Band, ...] | Invalid:
        """The bands in file order."""
        if not isinstance(node, Fields):
            context.stop(
                shape_slip(node, wanted="rolls and what they allow", example="{1-3: 0, 4-6: all}"),
                node.place,
            )
            return INVALID
        read = [self._band(node, context, text=text) for text in node.nodes]
        bands = tuple(band for band in read if isinstance(band, Band))
        return bands if len(bands) == len(read) else INVALID

    def _band(self, node: Fields, context: Context, *, text: str) -> Band | Invalid:
        totals = Text(parse=read_band, show=str, described={}).read(node.keys[text], context)
        child = node.nodes[text]
        if isinstance(child, Scalar) and child.text == "all":
            allows = None
        else:
            number = value.COUNT.read(child, context)
            if isinstance(number, Invalid):
                return INVALID
            allows = number
        if isinstance(totals, Invalid):
            return INVALID
        return Band(least=totals[0], most=totals[1], allows=allows)

    def write(self, value: tuple[Band, ...]) -> Plain:
        """The bands in order."""
        return {str(band): "all" if band.allows is None else str(band.allows) for band in value}

    def schema(self) -> Schema:
        """An object of bands."""
        allowed: Schema = {"anyOf": [value.COUNT.schema(), {"const": "all"}]}
        return {"type": "object", "additionalProperties": allowed}


_AVAILABILITY = record(
    Availability,
    word("roll", value.DICE, required=True),
    word("allows", Bands(), required=True),
    by_hand=False,
)
_REPLACEMENT = record(
    Replacement,
    word("of", NameOf(kind=STANDS), required=True),
    word("number", value.WHOLE, required=True),
    word("with", NameOf(kind=STANDS), attribute="with_", required=True),
    by_hand=False,
)
_ATTACHMENT = record(
    Attachment,
    word("to", NameOf(kind=FORMATIONS), required=True),
    word("most per host", value.WHOLE),
    word("no two alike", value.YES_NO),
    by_hand=False,
)
_CIRCUMSTANCE = record(
    Circumstance, word("posture", NameOf(kind=POSTURES), required=True), by_hand=False
)
_NEEDS = Counts(kind=ENTRIES, bare_names=True)

ENTRY = record(
    Entry,
    word("held at", value.FREE, about="who lends it"),
    word("cost", CostTable(), required=True, about="points, by number taken"),
    word("each", Counts(kind=STANDS), about="the stands that each of them puts down"),
    word("limit", AnyOrLimit(), about="purchases; one in the force when left out"),
    word("availability", _AVAILABILITY),
    word("when refused", value.words_of(Refusal)),
    word("needs", _NEEDS),
    word("needs any of", _NEEDS),
    word("bars", ListOf(of=NameOf(kind=ENTRIES))),
    word("opens", ListOf(of=NameOf(kind=ENTRIES))),
    word("grants", Counts(kind=STANDS), about="stands that come free"),
    word("replaces", _REPLACEMENT),
    word("choice", ListOf(of=value.NAME)),
    word("group", value.NAME),
    word("attach", _ATTACHMENT),
    word("place", value.words_of(Position)),
    word("only in", _CIRCUMSTANCE),
    word("not in", _CIRCUMSTANCE),
    *WINDOW_WORDS,
    THEATRE,
    nested={"window": Window},
)
ENTRIES_SECTION = Named(entry=ENTRY)


GROUP_LIMITS = ListOf(
    of=record(
        GroupLimit,
        word("group", NameOf(kind=GROUPS), required=True),
        word("most", value.COUNT, about="purchases of the group"),
        word("most points", value.PERCENT, about="share of the points"),
    )
)
RESERVES = record(
    Reserves,
    word("method", value.words_of(ReserveMethod), required=True),
    word("most", value.PERCENT, required=True),
    word("of", NameOf(kind=FORMATIONS), required=True),
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Worths:
    """Entry to worth by number taken, or by choice and then number."""

    def read(self, node: Node, context: Context) -> Mapping[str, Worth] | Invalid:
        """The worths that could be read."""
        if not isinstance(node, Fields):
            context.stop(
                shape_slip(
                    node, wanted="entries and their worth", example="{light tanks: {2: 10}}"
                ),
                node.place,
            )
            return INVALID
        found: dict[str, Worth] = {}
        for text, child in node.nodes.items():
            entry = NameOf(kind=ENTRIES).read(node.keys[text], context)
            table = self._table(child, context)
            if not isinstance(entry, Invalid) and not isinstance(table, Invalid):
                found[entry] = Worth(entry=entry, by_choice=table)
        return found

    def _table(
        self, node: Node, context: Context
    ) -> Mapping[str, Mapping[int, Fraction]] | Invalid:
        by_number = MappingOf(key=value.WHOLE, value=value.NUMBER)
        if isinstance(node, Fields) and any(isinstance(n, Fields) for n in node.nodes.values()):
            return MappingOf(key=value.NAME, value=by_number).read(node, context)
        table = by_number.read(node, context)
        return INVALID if isinstance(table, Invalid) else {"": table}

    def write(self, value: Mapping[str, Worth]) -> Plain:
        """As it was."""
        return {entry: self._written(worth.by_choice) for entry, worth in value.items()}

    def _written(self, by_choice: Mapping[str, Mapping[int, Fraction]]) -> Plain:
        tables: dict[str, Plain] = {
            choice: {str(number): decimal_text(worth) for number, worth in table.items()}
            for choice, table in by_choice.items()
        }
        return tables[""] if set(tables) == {""} else tables

    def schema(self) -> Schema:
        """Either form."""
        numbers: Schema = {"type": "object", "additionalProperties": value.NUMBER.schema()}
        by_choice: Schema = {"type": "object", "additionalProperties": numbers}
        return {"type": "object", "additionalProperties": {"anyOf": [numbers, by_choice]}}


WORTHS = Worths()
