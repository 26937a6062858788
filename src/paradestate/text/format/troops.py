"""The sections `figures`, `stands`, `formations` and `raise`."""

from dataclasses import dataclass

from paradestate.core.figure import FigureKind, Match, Sort
from paradestate.core.force import Raise, Wanted, Wishes
from paradestate.core.formation import Arm, Echelon, Formation, Need, Part
from paradestate.core.span import Window
from paradestate.core.stand import Sight, StandPattern
from paradestate.text.codec import ListOf, MappingOf, NameOf, Plain, Schema, keys_schema, shape_slip
from paradestate.text.context import Context
from paradestate.text.format import value
from paradestate.text.format.counts import Counts
from paradestate.text.record import Named, record, word
from paradestate.text.slip import INVALID, Invalid
from paradestate.text.tree import Fields, Items, Node, Scalar

FIGURES = "figures"
STANDS = "stands"
FORMATIONS = "formations"
ELEMENTS = "stands and formations"
"""What a formation may be made of."""
KINDS_AND_SORTS = "figures and sorts"
"""What minutes and surfaces may be given for."""

FIGURE = record(
    FigureKind,
    word("height", value.LENGTH, about="of the figure: 10 mm"),
    word("footprint", value.FOOTPRINT, about="a disc by its diameter, or width x depth"),
    word("sort", value.words_of(Sort), about="foot unless said otherwise"),
    word(
        "may stand for",
        MappingOf(key=NameOf(kind=FIGURES), value=value.words_of(Match)),
        about="kinds it may stand in for, with how well it does",
    ),
)
FIGURES_SECTION = Named(entry=FIGURE)

STAND = record(
    StandPattern,
    word("base", value.BASE, required=True, about="front x depth, a disc, or none"),
    word("footprint", value.FOOTPRINT, about="of a model without a base"),
    word("edge", value.LENGTH, about="kept free along the rim"),
    word("gap", value.LENGTH, about="kept free between figures"),
    word("height", value.LENGTH),
    word("men", value.RANGE, about="real men it stands for"),
    word("figures", Counts(kind=FIGURES)),
    word("printed", value.YES_NO, about="a printed marker suffices"),
    word("modelled as", Counts(kind=FIGURES), about="the wished version of a printed stand"),
    word("shows", ListOf(of=NameOf(kind=FIGURES)), about="figures by which it is known"),
    word("must not show", ListOf(of=NameOf(kind=FIGURES))),
    word("carries", value.WHOLE, about="how many stands ride on it"),
    word("stays", value.YES_NO, about="a gun that stays where it starts, and needs no tow"),
    word("called", value.FREE, about="the printed word"),
    word("seen by opponent", value.words_of(Sight)),
)
STANDS_SECTION = Named(entry=STAND)

WINDOW_WORDS = (
    word("from", value.DATE, attribute="window.begins", about="in force from its first day"),
    word("until", value.DATE, attribute="window.ends", about="in force until its last day"),
)
THEATRE = word("theatre", value.NAME, about="in force in this theatre only")

PART = record(
    Part,
    word("of", NameOf(kind=ELEMENTS), required=True),
    word("number", value.RANGE, required=True, about="one number, or a range such as 2-4"),
    word("usual", value.WHOLE, about="the number of a range when nobody chose"),
    word("need", value.words_of(Need), about="must unless said otherwise"),
    *WINDOW_WORDS,
    THEATRE,
    nested={"window": Window},
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Parts:
    """Parts as a mapping of name to number, or as a list of entries."""

    def read(self, node: Node, context: Context) -> tuple[Part, ...] | Invalid:
        """The parts in file order."""
        match node:
            case Items():
                return ListOf(of=PART).read(node, context)
            case Fields():
                return self._short(node, context)
            case Scalar():
                slip = shape_slip(
                    node, wanted="a list of parts", example="[{of: platoon, number: 3}]"
                )
                context.stop(slip, node.place)
                return INVALID

    def _short(self, node: Fields, context: Context) -> tuple[Part, ...] | Invalid:
        parts: list[Part] = []
        for text, child in node.nodes.items():
            name = NameOf(kind=ELEMENTS).read(node.keys[text], context)
            number = value.RANGE.read(child, context)
            if not isinstance(name, Invalid) and not isinstance(number, Invalid):
                parts.append(Part(of=name, number=number))
        return tuple(parts) if len(parts) == len(node.nodes) else INVALID

    def write(self, value: tuple[Part, ...]) -> Plain:
        """The long form."""
        return [PART.write(part) for part in value]

    def schema(self) -> Schema:
        """Either form."""
        short: Schema = {
            "type": "object",
            **keys_schema(ELEMENTS),
            "additionalProperties": value.RANGE.schema(),
        }
        return {"anyOf": [short, ListOf(of=PART).schema()]}


FORMATION = record(
    Formation,
    word("echelon", value.words_of(Echelon)),
    word("arm", value.words_of(Arm)),
    word("men", value.COUNT, about="with parts a printed total to compare, else the men"),
    word("men per figure", value.POSITIVE, about="fixed ratio"),
    word("figure", NameOf(kind=FIGURES), about="the kind shared out by the ratio"),
    word("figures per stand", value.WHOLE),
    word("may detach", Counts(kind=STANDS), about="stands that may leave it and act alone"),
    word("weak", value.PERCENT, about="share of every number below, rounded half up"),
    word("like", NameOf(kind=FORMATIONS), about="the formation of which this is a variant"),
    word("add", Parts()),
    word("drop", ListOf(of=NameOf(kind=ELEMENTS))),
    word("called", value.FREE, about="the printed word"),
    word("parts", Parts()),
)
FORMATIONS_SECTION = Named(entry=FORMATION)


@dataclass(frozen=True, slots=True, kw_only=True)
class InstanceNames:
    """A list of names, or one pattern in which # is the number."""

    def read(self, node: Node, context: Context) -> str | tuple[str, ...] | Invalid:
        """The list or the pattern."""
        if isinstance(node, Items):
            return ListOf(of=value.NAME).read(node, context)
        return value.NAME.read(node, context)

    def write(self, value: str | tuple[str, ...]) -> Plain:
        """As it was."""
        return value if isinstance(value, str) else list(value)

    def schema(self) -> Schema:
        """Either form."""
        return {"anyOf": [value.NAME.schema(), ListOf(of=value.NAME).schema()]}


@dataclass(frozen=True, slots=True, kw_only=True)
class WishedItems:
    """All, none, or a list of wished items by name."""

    def read(self, node: Node, context: Context) -> Wanted | Invalid:
        """What is wanted."""
        if isinstance(node, Items):
            return ListOf(of=NameOf(kind=ELEMENTS)).read(node, context)
        return value.words_of(Wishes).read(node, context)

    def write(self, value: Wanted) -> Plain:
        """As it was."""
        return list(value) if isinstance(value, tuple) else str(value)

    def schema(self) -> Schema:
        """Either form."""
        return {
            "anyOf": [
                value.words_of(Wishes).schema(),
                ListOf(of=NameOf(kind=ELEMENTS)).schema(),
            ]
        }


RAISE = record(
    Raise,
    word("formation", NameOf(kind=FORMATIONS), required=True),
    word("date", value.DATE),
    word("theatre", value.NAME),
    word("numbers", Counts(kind=ELEMENTS, nought=True), about="for parts that are ranges"),
    word(
        "names",
        MappingOf(key=NameOf(kind=ELEMENTS), value=InstanceNames()),
        about="of instances: a list, or a pattern in which # is the number",
    ),
    word("wished", WishedItems()),
)
