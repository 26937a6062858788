"""Prices of supporting troops: by number taken, and by grade."""

from collections.abc import Mapping
from dataclasses import dataclass

from paradestate.core.number import NumberRange
from paradestate.text.codec import MappingOf, NameOf, Plain, Schema, empty_slip, shape_slip
from paradestate.text.context import Context
from paradestate.text.format import value
from paradestate.text.number import GREATEST
from paradestate.text.record import record, word
from paradestate.text.slip import INVALID, Invalid, Slip
from paradestate.text.tree import Fields, Node, Scalar

GRADES = "grades"
MOST_NUMBERS = 200
"""Numbers that one price for each may be given for."""

EACH = "each"
NUMBERS = "numbers"


def grade_kind(scale: str) -> str:
    """The kind of name that the grades of a scale are."""
    return f"grade of {scale}"


@dataclass(frozen=True, slots=True, kw_only=True)
class PriceForEach:
    """One price for each, and the numbers that can be taken."""

    each: int
    numbers: NumberRange


_FOR_EACH = record(
    PriceForEach,
    word(EACH, value.POINTS, required=True, about="points for each one taken"),
    word(NUMBERS, value.RANGE, required=True, about="the numbers that can be taken"),
    by_hand=False,
)
_TABLE = MappingOf(key=value.WHOLE, value=value.POINTS)


@dataclass(frozen=True, slots=True, kw_only=True)
class CostTable:
    """Points by number taken; a single number is the cost of one.

    `{each: 10, numbers: 4-12}` stands for the table of its multiples.
    """

    def read(self, node: Node, context: Context) -> Mapping[int, int] | Invalid:
        """Number taken to points."""
        if isinstance(node, Scalar):
            points = value.POINTS.read(node, context)
            return INVALID if isinstance(points, Invalid) else {1: points}
        if isinstance(node, Fields) and {EACH, NUMBERS} & set(node.nodes):
            return self._multiples(node, context)
        table = _TABLE.read(node, context)
        if not isinstance(table, Invalid) and not table:
            context.stop(empty_slip(), node.place)
        return table or INVALID

    def _multiples(self, node: Fields, context: Context) -> Mapping[int, int] | Invalid:
        price = _FOR_EACH.read(node, context)
        if isinstance(price, Invalid):
            return INVALID
        slip = _too_many(price)
        if slip is not None:
            context.stop(slip, node.nodes[NUMBERS].place)
            return INVALID
        numbers = range(price.numbers.least, price.numbers.most + 1)
        return {number: price.each * number for number in numbers}

    def write(self, value: Mapping[int, int]) -> Plain:
        """The table."""
        return {str(number): str(points) for number, points in value.items()}

    def schema(self) -> Schema:
        """Any of the forms."""
        return {"anyOf": [value.POINTS.schema(), _TABLE.schema(), _FOR_EACH.schema()]}


def _too_many(price: PriceForEach) -> Slip | None:
    """What is wrong with numbers that make too long a table, or too great a price."""
    how_many = price.numbers.most - price.numbers.least + 1
    if how_many > MOST_NUMBERS:
        return Slip(
            code="too-large",
            message=f"{price.numbers} are {how_many:,} numbers, more than {MOST_NUMBERS:,}.",
            hint="Write fewer, such as 4-12.",
        )
    greatest = abs(price.each) * price.numbers.most
    if greatest > GREATEST:
        return Slip(
            code="number-too-great",
            message=f"{price.numbers.most} of them cost {greatest}, which is above {GREATEST:,}, "
            "the greatest number read.",
            hint="Write a smaller number, or a smaller price.",
        )
    return None


COST = CostTable()


@dataclass(frozen=True, slots=True, kw_only=True)
class CostByGrade:
    """Scale, then grade, to the prices that hold at it."""

    def read(
        self, node: Node, context: Context
    ) -> Mapping[str, Mapping[str, Mapping[int, int]]] | Invalid:
        """The prices."""
        if not isinstance(node, Fields):
            slip = shape_slip(
                node, wanted="scales with grades", example="{training: {recruits: 2}}"
            )
            context.stop(slip, node.place)
            return INVALID
        found: dict[str, Mapping[str, Mapping[int, int]]] = {}
        for text, child in node.nodes.items():
            scale = NameOf(kind=GRADES).read(node.keys[text], context)
            if not isinstance(scale, Invalid):
                grade = NameOf(kind=grade_kind(scale))
                prices = MappingOf(key=grade, value=COST).read(child, context)
                found |= {} if isinstance(prices, Invalid) else {scale: prices}
        return found if len(found) == len(node.nodes) else INVALID

    def write(self, value: Mapping[str, Mapping[str, Mapping[int, int]]]) -> Plain:
        """The tables."""
        return {
            scale: {grade: COST.write(cost) for grade, cost in by_grade.items()}
            for scale, by_grade in value.items()
        }

    def schema(self) -> Schema:
        """Objects in an object."""
        grades: Schema = {"type": "object", "additionalProperties": COST.schema()}
        return {"type": "object", "additionalProperties": grades}


COST_BY_GRADE = CostByGrade()
