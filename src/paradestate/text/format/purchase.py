"""The sections `stock`, `stock stands` and `sources`."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache

from paradestate.core.money import Currency, decimal_places
from paradestate.core.source import Pack, Source
from paradestate.text.codec import MappingOf, NameOf, Plain, Schema, keys_schema, shape_slip
from paradestate.text.context import Context
from paradestate.text.format import value
from paradestate.text.format.counts import Counts
from paradestate.text.format.troops import FIGURES, STANDS
from paradestate.text.money import read_currency
from paradestate.text.record import Named, Record, record, word
from paradestate.text.slip import INVALID, Invalid, Slip
from paradestate.text.tree import Fields, Node, Scalar

SOURCES = "sources"
STAGES = "stages"
HELD = "held"
"""In stock: how many there are in all; what the stages leave over is at the first stage."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Stock:
    """Names to stages to numbers, with `held` as a total to compare."""

    kind: str

    def read(self, node: Node, context: Context) -> Mapping[str, Mapping[str, int]] | Invalid:
        """Name to stage to number, for those that could be read."""
        if not isinstance(node, Fields):
            slip = shape_slip(
                node, wanted="a mapping of names", example="{rifleman: {painted: 10}}"
            )
            context.stop(slip, node.place)
            return INVALID
        found: dict[str, Mapping[str, int]] = {}
        for text, child in node.nodes.items():
            name = NameOf(kind=self.kind).read(node.keys[text], context)
            stages = self._stages(child, context)
            if not isinstance(name, Invalid) and not isinstance(stages, Invalid):
                found[name] = stages
        return found

    def _stages(self, node: Node, context: Context) -> Mapping[str, int] | Invalid:
        if not isinstance(node, Fields):
            slip = shape_slip(node, wanted="stages with numbers", example="{painted: 10}")
            context.stop(slip, node.place)
            return INVALID
        counts = MappingOf(key=value.NAME, value=value.COUNT).read(node, context)
        if isinstance(counts, Invalid):
            return INVALID
        known = [
            stage == HELD or context.refer(stage, node.keys[stage].place, kind=STAGES)
            for stage in counts
        ]
        return _with_rest(node, context, counts=counts) if all(known) else INVALID

    def write(self, value: Mapping[str, Mapping[str, int]]) -> Plain:
        """Without `held`: the stages say it all."""
        return {
            name: {stage: str(number) for stage, number in stages.items()}
            for name, stages in value.items()
        }

    def schema(self) -> Schema:
        """An object of objects of counts."""
        inner: Schema = {
            "type": "object",
            **keys_schema(STAGES),
            "additionalProperties": value.COUNT.schema(),
        }
        return {
            "type": "object",
            **keys_schema(self.kind),
            "additionalProperties": inner,
        }


def _with_rest(
    node: Fields, context: Context, *, counts: Mapping[str, int]
) -> Mapping[str, int] | Invalid:
    """The stages of one name, with what `held` leaves over put at the first stage."""
    held = counts.get(HELD)
    stages = {stage: number for stage, number in counts.items() if stage != HELD}
    if held is None:
        return stages
    made = sum(stages.values())
    if made > held:
        said = " and ".join(stage for stage, number in stages.items() if number)
        slip = Slip(
            code="more-than-held",
            message=f"{said} {made} of {held} held. Count again?",
            hint=f"Let the stages add up to at most what is held, or correct '{HELD}'.",
        )
        last = node.nodes[list(stages)[-1]].place
        context.stop(slip, last, about=last.path[:-1])
        return INVALID
    first = next(iter(context.names[STAGES]), None)
    if first is None:  # there is no stage at all, which is said where stages are named
        return INVALID
    if made < held:
        stages[first] = stages.get(first, 0) + held - made
    return stages


@cache
def source_record(places: int) -> Record[Source]:
    """The codec of a source whose currency has so many decimal places."""
    money = value.amount(places)
    pack = record(
        Pack,
        word("name", value.FREE, attribute="title"),
        word(
            "price",
            money,
            required=True,
            missing_code="pack-without-price",
            missing_message="{entry} has no price.",
        ),
        word(
            "holds",
            Counts(kind=FIGURES),
            required=True,
            missing_code="pack-without-contents",
            missing_message="pack '{entry}' has no contents, so it can't fill any want.",
        ),
        word("most", value.WHOLE, about="how many can be had"),
        word("lead days", value.COUNT, about="days from order to arrival"),
        word("multibuy", MappingOf(key=value.WHOLE, value=money), about="so many for one price"),
    )
    return record(
        Source,
        word("currency", value.CURRENCY, required=True, about="ISO 4217"),
        word("rate", value.POSITIVE, about="of the force's currency for one of this"),
        word("rate date", value.DATE),
        word("carriage", MappingOf(key=money, value=money), required=True),
        word("discount", MappingOf(key=money, value=value.PERCENT)),
        word("least order", money),
        word("noted", value.DATE, about="when the prices were noted"),
        word("packs", Named(entry=pack), required=True),
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class Sources:
    """All sources by name; the currency of each decides how its amounts are read."""

    def read(self, node: Node, context: Context) -> Mapping[str, Source] | Invalid:
        """The sources that could be read."""
        if not isinstance(node, Fields):
            slip = shape_slip(
                node, wanted="a mapping of sources", example="{North: {currency: GBP, ...}}"
            )
            context.stop(slip, node.place)
            return INVALID
        found: dict[str, Source] = {}
        for name, child in node.nodes.items():
            values = source_record(_places(child)).read_values(child, context)
            if not isinstance(values, Invalid):
                found[name] = Source(name=name, **values)
        return found

    def write(self, value: Mapping[str, Source]) -> Plain:
        """The sources by name."""
        return {
            name: source_record(decimal_places(source.currency)).write(source)
            for name, source in value.items()
        }

    def schema(self) -> Schema:
        """An object of sources."""
        return {"type": "object", "additionalProperties": source_record(2).schema()}


def _places(node: Node) -> int:
    """Decimal places of a source's amounts; 2 where its currency can't be read."""
    written = node.nodes.get("currency") if isinstance(node, Fields) else None
    currency = read_currency(written.text) if isinstance(written, Scalar) else None
    return decimal_places(Currency(currency)) if isinstance(currency, str) else 2


STOCK = Stock(kind=FIGURES)
STOCK_STANDS = Stock(kind=STANDS)
