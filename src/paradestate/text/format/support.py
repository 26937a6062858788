"""The sections `supporting troops` and `limits`: what may be added for points."""

from collections.abc import Mapping
from dataclasses import dataclass

from paradestate.core.span import Window
from paradestate.core.support.entry import (
    Attachment,
    Availability,
    Circumstance,
    Entry,
    GroupLimit,
    Limit,
    Position,
    Refusal,
    Replacement,
    Rounding,
)
from paradestate.text.codec import ListOf, MappingOf, NameOf, Plain, Schema
from paradestate.text.context import Context
from paradestate.text.format import value
from paradestate.text.format.counts import Counts
from paradestate.text.format.game import ENTRIES, POSTURES
from paradestate.text.format.roll import BANDS
from paradestate.text.format.troops import FORMATIONS, STANDS, THEATRE, WINDOW_WORDS
from paradestate.text.record import Named, record, word
from paradestate.text.slip import INVALID, Invalid
from paradestate.text.tree import Node, Scalar

GROUPS = "groups"


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


_AVAILABILITY = record(
    Availability,
    word("roll", value.DICE, required=True),
    word("allows", BANDS, required=True),
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
