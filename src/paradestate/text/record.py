"""The codec of an entry with fixed words, each read by a codec of its own."""

from collections.abc import Callable, Mapping
from dataclasses import MISSING, dataclass, fields, is_dataclass
from typing import Any, Generic, TypeVar

from paradestate.text.codec import Codec, FreeText, Plain, Schema, keys_schema, shape_slip
from paradestate.text.context import Context
from paradestate.text.slip import INVALID, NOT_USED, Invalid, Slip
from paradestate.text.spelling import nearest_hint
from paradestate.text.tree import Fields, Node

T = TypeVar("T")


@dataclass(frozen=True, slots=True, kw_only=True)
class Word:
    """One word of an entry: its codec, the attribute it fills, and whether it must be there.

    `attribute` may lead into a nested value with a point, such as `window.begins`.
    """

    word: str
    codec: Codec[Any]  # a record mixes codecs of all types; the record's own type is checked
    attribute: str
    required: bool = False
    missing_code: str = "missing-word"
    missing_message: str = ""
    """What is said where it isn't there; `{entry}` stands for the name of the entry."""
    about: str = ""


def word(
    name: str,
    codec: Codec[Any],
    *,
    attribute: str = "",
    required: bool = False,
    missing_code: str = "missing-word",
    missing_message: str = "",
    about: str = "",
) -> Word:
    """A word whose attribute is named after it unless told otherwise."""
    return Word(
        word=name,
        codec=codec,
        attribute=attribute or name.replace(" ", "_").replace("-", "_"),
        required=required,
        missing_code=missing_code,
        missing_message=missing_message,
        about=about,
    )


BY_HAND = word(
    "by hand", FreeText(), about="what the format can't say: printed, and not checked by machine"
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Record(Generic[T]):
    """An entry made by `make` from its words; `nested` makes the values behind a point."""

    make: Callable[..., T]
    words: Mapping[str, Word]
    nested: Mapping[str, Callable[..., object]]

    def read(self, node: Node, context: Context) -> T | Invalid:
        """The entry, with a finding for every word that is unknown, missing or invalid."""
        values = self.read_values(node, context)
        return INVALID if isinstance(values, Invalid) else self.make(**values)

    def read_values(self, node: Node, context: Context) -> dict[str, Any] | Invalid:
        """The attributes of the entry, ready for `make`."""
        if not isinstance(node, Fields):
            slip = shape_slip(node, wanted="a mapping", example=self._example())
            context.stop(slip, node.place)
            return INVALID
        values, whole = self.read_valid(node, context)
        return values if whole else INVALID

    def read_valid(self, node: Fields, context: Context) -> tuple[dict[str, Any], bool]:
        """The attributes that could be read, and whether that is all of them."""
        known = [self._no_unknown(node, context), self._none_missing(node, context)]
        values: dict[str, Any] = {}
        whole = all(known)
        for name, child in node.nodes.items():
            if name not in self.words:
                continue
            value = self.words[name].codec.read(child, context)
            if isinstance(value, Invalid):
                whole = False
            else:
                values[self.words[name].attribute] = value
        return self._gathered(values), whole

    def _example(self) -> str:
        """The words that must be there, or the first of them all."""
        required = [name for name, known in self.words.items() if known.required]
        shown = required or [next(iter(self.words))]
        return f"{{{', '.join(f'{name}: ...' for name in shown)}}}"

    def _no_unknown(self, node: Fields, context: Context) -> bool:
        unknown = [name for name in node.nodes if name not in self.words]
        for name in unknown:
            free = [known for known in self.words if known not in node.nodes]
            slip = Slip(
                code="unknown-word",
                message=f"'{name}' isn't known here.",
                hint=nearest_hint(name, free),
            )
            context.stop(slip, node.keys[name].place)
        return not unknown

    def _none_missing(self, node: Fields, context: Context) -> bool:
        if context.partial and not node.place.path:  # it may stand in what couldn't be read
            return True
        missing = [
            known for name, known in self.words.items() if known.required and name not in node.nodes
        ]
        for known in missing:
            path = node.place.path
            entry = known.missing_message.format(entry=path[-1]) if path else ""
            slip = Slip(
                code=known.missing_code,
                message=entry or f"'{known.word}' is missing.",
                hint=f"Add the line '{known.word}: ...'.",
                effect=NOT_USED,
            )
            context.stop(slip, node.place, about=path[:-1] if entry else path)
        return not missing

    def _gathered(self, values: dict[str, Any]) -> dict[str, Any]:
        flat = {name: value for name, value in values.items() if "." not in name}
        for outer, make in self.nested.items():
            prefix = f"{outer}."
            inner = {
                name.removeprefix(prefix): value
                for name, value in values.items()
                if name.startswith(prefix)
            }
            if inner:
                flat[outer] = make(**inner)
        return flat

    def write(self, value: T) -> Plain:
        """Every word whose attribute isn't the usual one, in the order of the definition."""
        usual = usual_values(value)
        written: dict[str, Plain] = {}
        for name, known in self.words.items():
            attribute: object = value
            default: object = usual
            for step in known.attribute.split("."):
                attribute = getattr(attribute, step)
                default = getattr(default, step, MISSING)
            if known.required or attribute != default:
                written[name] = known.codec.write(attribute)
        return written

    def properties(self) -> Schema:
        """The schema of each word."""
        described: Schema = {}
        for name, known in self.words.items():
            schema = known.codec.schema()
            described[name] = {**schema, "description": known.about} if known.about else schema
        return described

    def schema(self) -> Schema:
        """A closed object."""
        closed: Schema = {
            "type": "object",
            "properties": self.properties(),
            "additionalProperties": False,
        }
        required = [name for name, known in self.words.items() if known.required]
        if required:
            closed["required"] = required
        return closed


class _Usual:
    """Holds the default of each attribute of a dataclass that has one."""


def usual_values(value: object) -> object:
    """An object whose attributes are the defaults of the dataclass of `value`."""
    usual = _Usual()
    if is_dataclass(value):
        for known in fields(value):
            if known.default is not MISSING:
                setattr(usual, known.name, known.default)
            elif known.default_factory is not MISSING:
                setattr(usual, known.name, known.default_factory())
    return usual


def record(
    make: Callable[..., T],
    *words: Word,
    nested: Mapping[str, Callable[..., object]] | None = None,
    by_hand: bool = True,
) -> Record[T]:
    """The codec of an entry; `by hand` may stand in each unless told otherwise."""
    all_words = (*words, BY_HAND) if by_hand else words
    return Record(
        make=make,
        words={known.word: known for known in all_words},
        nested=nested or {},
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class Named(Generic[T]):
    """A whole section: names to entries, of which each knows its name; valid ones are kept."""

    entry: Record[T]
    attribute: str = "name"
    kind: str = ""
    """The kind of the names, where they are defined elsewhere."""

    def read(self, node: Node, context: Context) -> Mapping[str, T] | Invalid:
        """The entries that could be read."""
        if not isinstance(node, Fields):
            slip = shape_slip(node, wanted="a mapping of names", example="{name: {...}}")
            context.stop(slip, node.place)
            return INVALID
        found: dict[str, T] = {}
        for name, child in node.nodes.items():
            is_known = not self.kind or context.refer(name, node.keys[name].place, kind=self.kind)
            values = self.entry.read_values(child, context)
            if is_known and not isinstance(values, Invalid):
                found[name] = self.entry.make(**{self.attribute: name}, **values)
        return found

    def write(self, value: Mapping[str, T]) -> Plain:
        """The entries by name."""
        return {name: self.entry.write(item) for name, item in value.items()}

    def schema(self) -> Schema:
        """An object of entries."""
        keys = keys_schema(self.kind) if self.kind else {}
        return {"type": "object", **keys, "additionalProperties": self.entry.schema()}
