"""The sections about the work and the table: bench, marks, opponent, trays, table and aim."""

from collections.abc import Mapping
from dataclasses import dataclass

from paradestate.core.bench import Bench, Coat, Milestone
from paradestate.core.force import Aim, Marks
from paradestate.core.span import Window
from paradestate.core.table import Opponent, Table, Tray
from paradestate.text.codec import ListOf, MappingOf, NameOf, Plain, Schema, shape_slip
from paradestate.text.context import Context
from paradestate.text.format import value
from paradestate.text.format.counts import Counts
from paradestate.text.format.purchase import STAGES
from paradestate.text.format.supplies import SUPPLIES
from paradestate.text.format.troops import ELEMENTS, FORMATIONS, KINDS_AND_SORTS, STANDS
from paradestate.text.record import Named, record, word
from paradestate.text.slip import INVALID, Invalid, Slip
from paradestate.text.tree import Fields, Node

_COAT = record(
    Coat,
    word("colour", value.NAME, required=True),
    word("coats", value.WHOLE),
    word("share", value.PERCENT),
    by_hand=False,
)
_MILESTONE = record(
    Milestone,
    word("name", value.NAME, required=True),
    word("numbers", Counts(kind=ELEMENTS, nought=True)),
    word("weight", value.POSITIVE),
)
_STAGE_MINUTES = MappingOf(key=NameOf(kind=STAGES), value=value.MINUTES)


@dataclass(frozen=True, slots=True, kw_only=True)
class Stages:
    """The stages of the work in order: at least one, and each once."""

    def read(self, node: Node, context: Context) -> tuple[str, ...] | Invalid:
        """The stages."""
        stages = _NAMES.read(node, context)
        if isinstance(stages, Invalid):
            return INVALID
        twice = next((stage for stage in stages if stages.count(stage) > 1), None)
        if not stages:
            context.stop(_NO_STAGE, node.place)
        elif twice is not None:
            context.stop(_stage_twice(twice), node.place)
        return INVALID if twice or not stages else stages

    def write(self, value: tuple[str, ...]) -> Plain:
        """In order."""
        return _NAMES.write(value)

    def schema(self) -> Schema:
        """An array of different names."""
        return {**_NAMES.schema(), "minItems": 1, "uniqueItems": True}


_NAMES = ListOf(of=value.NAME)
_NO_STAGE = Slip(
    code="empty-value",
    message="there is no stage here.",
    hint="Name at least one, such as [in packet, painted], or take the line out.",
)


def _stage_twice(stage: str) -> Slip:
    return Slip(
        code="name-twice",
        message=f"'{stage}' is there twice.",
        hint="Keep it once, where it belongs in the order.",
    )


BENCH = record(
    Bench,
    word("stages", Stages(), about="in order; the last is finished"),
    word(
        "minutes",
        MappingOf(key=NameOf(kind=KINDS_AND_SORTS), value=_STAGE_MINUTES),
        about="per figure, to reach the stage from the one before",
    ),
    word("minutes per stand", MappingOf(key=NameOf(kind=STANDS), value=value.MINUTES)),
    word("set up", value.DURATION, about="per batch"),
    word("dry", MappingOf(key=NameOf(kind=STAGES), value=value.DURATION)),
    word("week", value.WEEK, about="time at the bench in a week"),
    word("away", ListOf(of=value.DAYS)),
    word("colours", MappingOf(key=value.NAME, value=ListOf(of=_COAT))),
    word("playable", ListOf(of=_MILESTONE)),
    word("supplies", SUPPLIES, about="what the work uses up, as you measured it"),
)


@dataclass(frozen=True, slots=True, kw_only=True)
class MarksOfFormations:
    """Formations to the colours of their instances, and `colours` to their values."""

    def read(self, node: Node, context: Context) -> Marks | Invalid:
        """The marks."""
        if not isinstance(node, Fields):
            context.stop(
                shape_slip(
                    node,
                    wanted="a mapping of formations",
                    example="{company: {colours: [brown, blue]}}",
                ),
                node.place,
            )
            return INVALID
        by_formation: dict[str, _Mark] = {}
        colours: Mapping[str, str] | Invalid = {}
        for text, child in node.nodes.items():
            if text == "colours":
                colours = _COLOURS.read(child, context)
                continue
            name = NameOf(kind=FORMATIONS).read(node.keys[text], context)
            names = _MARK.read(child, context)
            if not isinstance(name, Invalid) and not isinstance(names, Invalid):
                by_formation[name] = names
        known = len(by_formation) + ("colours" in node.nodes)
        if isinstance(colours, Invalid) or known < len(node.nodes):
            return INVALID
        return Marks(
            by_formation={name: mark.colours for name, mark in by_formation.items()},
            colours=colours,
            rear_bars=frozenset(name for name, mark in by_formation.items() if mark.has_rear_bar),
        )

    def write(self, value: Marks) -> Plain:
        """As it was."""
        written: dict[str, Plain] = {
            name: _MARK.write(_Mark(colours=colours, has_rear_bar=name in value.rear_bars))
            for name, colours in value.by_formation.items()
        }
        if value.colours:
            written["colours"] = _COLOURS.write(value.colours)
        return written

    def schema(self) -> Schema:
        """An object of formations, and the colours."""
        return {
            "type": "object",
            "properties": {"colours": _COLOURS.schema()},
            "additionalProperties": _MARK.schema(),
        }


@dataclass(frozen=True, slots=True, kw_only=True)
class _Mark:
    """How the bodies of one formation are told apart."""

    colours: tuple[str, ...]
    has_rear_bar: bool = False


_MARK = record(
    _Mark,
    word("colours", ListOf(of=value.NAME), required=True),
    word(
        "rear bar",
        value.YES_NO,
        attribute="has_rear_bar",
        about="a bar along the foot, which the enemy's marks haven't",
    ),
    by_hand=False,
)
_COLOURS = MappingOf(key=value.NAME, value=value.HEX_COLOUR)
MARKS = MarksOfFormations()

OPPONENT = record(
    Opponent,
    word("front", value.LINE, about="his platoon's stands in line: 2 x 50 mm"),
    word("gap", value.LENGTH),
    word("colours", ListOf(of=value.NAME)),
    word("least difference allowed", value.PERCENT, attribute="difference_allowed"),
)
TRAY = record(
    Tray,
    word("inside", value.RECTANGLE, required=True),
    word("height", value.LENGTH),
    word("gap", value.LENGTH),
    word("number", value.WHOLE),
)
TRAYS_SECTION = Named(entry=TRAY)
PACKED = MappingOf(key=value.NAME, value=MappingOf(key=value.NAME, value=value.TRAY_PLACE))
TABLE = record(
    Table,
    word("size", value.RECTANGLE, required=True),
    word("ground scale", value.GROUND_SCALE),
    word("gap", value.LENGTH, about="between stands in line"),
)
AIM = record(
    Aim,
    word("text", value.FREE),
    word("deadline", value.DATE),
    word("a month", value.POSITIVE, about="what may be spent in a month"),
    word("game nights", ListOf(of=value.GAME_NIGHTS), about="when games are played"),
)
COVERS = record(
    Window,
    word("from", value.DATE, attribute="begins"),
    word("until", value.DATE, attribute="ends"),
    by_hand=False,
)
