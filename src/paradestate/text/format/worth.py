"""The section `worths`: the owner's own opinion of supporting troops."""

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction

from paradestate.core.outline import decimal_text
from paradestate.core.support.entry import Worth
from paradestate.text.codec import MappingOf, NameOf, Plain, Schema, shape_slip
from paradestate.text.context import Context
from paradestate.text.format import value
from paradestate.text.format.game import ENTRIES
from paradestate.text.slip import INVALID, Invalid
from paradestate.text.tree import Fields, Node


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
