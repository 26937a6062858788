"""The sections `supporting troops` and `limits`: what may be added for points."""

from dataclasses import dataclass

from paradestate.core.span import Window
from paradestate.core.support.entry import (
    Attachment,
    Availability,
    Circumstance,
    Entry,
    GroupLimit,
    Improvement,
    Limit,
    Position,
    Refusal,
    Replacement,
    Rounding,
    Variation,
)
from paradestate.core.support.mission import Missions, RollOn
from paradestate.text.codec import ListOf, MappingOf, NameOf, Plain, Schema
from paradestate.text.context import Context
from paradestate.text.format import value
from paradestate.text.format.counts import Counts
from paradestate.text.format.game import ENTRIES, POSTURES
from paradestate.text.format.price import COST, COST_BY_GRADE, GRADES
from paradestate.text.format.roll import BANDS
from paradestate.text.format.scenario import TOTALS
from paradestate.text.format.troops import FORMATIONS, STANDS, THEATRE, WINDOW_WORDS
from paradestate.text.record import Named, record, word
from paradestate.text.slip import Invalid
from paradestate.text.tree import Node, Scalar

GROUPS = "groups"


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
        return "any" if value == Limit(most=None) else _LIMIT.write(value)

    def schema(self) -> Schema:
        """Either form."""
        return {"anyOf": [{"const": "any"}, _LIMIT.schema()]}


_LIMIT = record(
    Limit,
    word("most", value.or_count("any"), about="purchases; one when left out"),
    word("for every", value.WHOLE),
    word("of", NameOf(kind=FORMATIONS)),
    word("round", value.words_of(Rounding)),
    word("plus", value.COUNT, about="purchases beside those for every so many"),
    word("least", value.COUNT, about="purchases that a force must hold"),
    by_hand=False,
)


_AVAILABILITY = record(
    Availability,
    word("roll", value.DICE, required=True),
    word("allows", BANDS, required=True),
    word("shared roll", value.NAME, about="entries of one name here have one roll between them"),
    by_hand=False,
)
_REPLACEMENT = record(
    Replacement,
    word("of", NameOf(kind=STANDS), required=True),
    word("number", value.WHOLE, required=True),
    word("with", NameOf(kind=STANDS), attribute="with_", required=True),
    by_hand=False,
)
_IMPROVEMENT = record(
    Improvement,
    word("of", NameOf(kind=FORMATIONS), required=True),
    word("scale", NameOf(kind=GRADES), required=True, about="a scale of grades"),
    word("number", value.WHOLE, about="how many of them, once a purchase"),
    word("steps", value.WHOLE, about="how far up the scale"),
    by_hand=False,
)
_ATTACHMENT = record(
    Attachment,
    word("to", NameOf(kind=FORMATIONS), required=True),
    word("most per host", value.WHOLE),
    word("no two alike", value.YES_NO),
    by_hand=False,
)
_ROLL_ON = record(
    RollOn,
    word("roll", value.DICE, required=True),
    word("on", TOTALS, required=True),
    by_hand=False,
)
_MISSIONS = record(
    Missions,
    word("arrives", _ROLL_ON, about="rolled for each mission: the totals on which it arrives"),
    word("falls silent", _ROLL_ON, about="rolled after each that arrives: no more come then"),
    by_hand=False,
)
_CIRCUMSTANCE = record(
    Circumstance, word("posture", NameOf(kind=POSTURES), required=True), by_hand=False
)
_VARIATION = record(
    Variation,
    word("cost", COST),
    word("limit", AnyOrLimit()),
    word("availability", _AVAILABILITY),
    by_hand=False,
)
_NEEDS = Counts(kind=ENTRIES, bare_names=True)

ENTRY = record(
    Entry,
    word("held at", value.FREE, about="who lends it"),
    word("cost", COST, required=True, about="points, by number taken"),
    word("cost by grade", COST_BY_GRADE, about="prices that hold at a grade instead"),
    word("repeats cost more", ListOf(of=value.POINTS), about="the second, the third and so on"),
    word("each", Counts(kind=STANDS), about="the stands that each of them puts down"),
    word("limit", AnyOrLimit(), about="purchases; one in the force when left out"),
    word("availability", _AVAILABILITY),
    word("when refused", value.words_of(Refusal)),
    word("needs", _NEEDS),
    word("needs any of", _NEEDS),
    word("needs for each", _NEEDS, about="purchases of others for each purchase of this one"),
    word("bars", ListOf(of=NameOf(kind=ENTRIES))),
    word("opens", ListOf(of=NameOf(kind=ENTRIES))),
    word("grants", Counts(kind=STANDS), about="stands that come free"),
    word("replaces", _REPLACEMENT),
    word("improves", _IMPROVEMENT, about="formations that are better than the rest of the force"),
    word("choice", ListOf(of=value.NAME)),
    word(
        "choice costs",
        MappingOf(key=value.NAME, value=value.POINTS),
        about="points that a choice adds for each one taken",
    ),
    word("group", value.NAME),
    word("attach", _ATTACHMENT),
    word("place", value.words_of(Position)),
    word("missions", _MISSIONS, about="what is rolled where each one taken is a fire mission"),
    word("only in", _CIRCUMSTANCE),
    word("not in", _CIRCUMSTANCE),
    word(
        "in posture",
        MappingOf(key=NameOf(kind=POSTURES), value=_VARIATION),
        about="what is otherwise in games of one posture",
    ),
    *WINDOW_WORDS,
    THEATRE,
    nested={"window": Window},
)
ENTRIES_SECTION = Named(entry=ENTRY)


GROUP_LIMITS = ListOf(
    of=record(
        GroupLimit,
        word("group", NameOf(kind=GROUPS), required=True),
        word("least", value.COUNT, about="purchases of the group that must be there"),
        word("most", value.COUNT, about="purchases of the group"),
        word("least points", value.PERCENT, about="share of the points that must go to it"),
        word("most points", value.PERCENT, about="share of the points"),
    )
)
