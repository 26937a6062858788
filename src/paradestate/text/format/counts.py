"""Codecs of names with numbers, in the short form and the long."""

from collections.abc import Mapping
from dataclasses import dataclass

from paradestate.text.codec import NameOf, Plain, Schema, keys_schema, shape_slip
from paradestate.text.context import Context
from paradestate.text.format.value import COUNT, WHOLE
from paradestate.text.record import Record, record, word
from paradestate.text.slip import INVALID, Invalid
from paradestate.text.tree import Fields, Items, Node, Scalar


def _pair(of: str, number: int) -> tuple[str, int]:
    return of, number


@dataclass(frozen=True, slots=True, kw_only=True)
class Counts:
    """Names of one kind, each with a whole number.

    Written `{name: 3}`, or as a list of `{of: name, number: 3}`; the same name twice adds. With
    `bare_names` a list of plain names means one of each.
    """

    kind: str
    bare_names: bool = False
    nought: bool = False
    """Whether 0 may be written."""

    def read(self, node: Node, context: Context) -> Mapping[str, int] | Invalid:
        """Name to number."""
        match node:
            case Fields():
                pairs = [self._from_key(node, context, name=name) for name in node.nodes]
            case Items(nodes=nodes):
                pairs = [self._from_item(item, context) for item in nodes]
            case _:
                slip = shape_slip(node, wanted="names with numbers", example="{rifleman: 4}")
                context.stop(slip, node.place)
                return INVALID
        found: dict[str, int] = {}
        for pair in pairs:
            if not isinstance(pair, Invalid):
                found[pair[0]] = found.get(pair[0], 0) + pair[1]
        return INVALID if INVALID in pairs else found

    def _from_key(self, node: Fields, context: Context, *, name: str) -> tuple[str, int] | Invalid:
        known = NameOf(kind=self.kind).read(node.keys[name], context)
        number = (COUNT if self.nought else WHOLE).read(node.nodes[name], context)
        if isinstance(known, Invalid) or isinstance(number, Invalid):
            return INVALID
        return known, number

    def _from_item(self, node: Node, context: Context) -> tuple[str, int] | Invalid:
        if self.bare_names and isinstance(node, Scalar):
            known = NameOf(kind=self.kind).read(node, context)
            return INVALID if isinstance(known, Invalid) else (known, 1)
        return self._long().read(node, context)

    def _long(self) -> Record[tuple[str, int]]:
        return record(
            _pair,
            word("of", NameOf(kind=self.kind), required=True),
            word("number", COUNT if self.nought else WHOLE, required=True),
            by_hand=False,
        )

    def write(self, value: Mapping[str, int]) -> Plain:
        """The short form."""
        return {name: str(number) for name, number in value.items()}

    def schema(self) -> Schema:
        """Either form."""
        number: Schema = (COUNT if self.nought else WHOLE).schema()
        items: list[object] = [self._long().schema()]
        if self.bare_names:
            items.append(NameOf(kind=self.kind).schema())
        return {
            "anyOf": [
                {
                    "type": "object",
                    **keys_schema(self.kind),
                    "additionalProperties": number,
                },
                {"type": "array", "items": {"anyOf": items}},
            ]
        }
