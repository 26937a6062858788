"""What a roll gives: rows of totals, and what stands beside each."""

from collections.abc import Callable
from dataclasses import dataclass
from fractions import Fraction
from typing import Generic, TypeVar

from paradestate.core.dice import Dice, LookUp, Row, Totals
from paradestate.core.game import Allowance
from paradestate.core.support.entry import Band
from paradestate.text.codec import Codec, Plain, Schema, Text, shape_slip
from paradestate.text.context import Context
from paradestate.text.dice import read_band
from paradestate.text.format import value
from paradestate.text.record import Record, record, word
from paradestate.text.slip import INVALID, Invalid
from paradestate.text.tree import Fields, Node, Scalar

R = TypeVar("R", bound=Totals)
V = TypeVar("V")
N = TypeVar("N", int, Fraction)

_TOTALS = Text(parse=read_band, show=str, described={})


@dataclass(frozen=True, slots=True, kw_only=True)
class RowsOf(Generic[R, V]):
    """Totals of a roll to what each of them gives; `make` and `given` make a row and open it."""

    beside: Codec[V]
    make: Callable[[tuple[int, int | None], V], R]
    given: Callable[[R], V]
    wanted: str
    example: str

    def read(self, node: Node, context: Context) -> tuple[R, ...] | Invalid:
        """The rows in file order."""
        if not isinstance(node, Fields):
            context.stop(shape_slip(node, wanted=self.wanted, example=self.example), node.place)
            return INVALID
        read = [self._row(node, context, text=text) for text in node.nodes]
        rows = tuple(row for row in read if not isinstance(row, Invalid))
        return rows if len(rows) == len(read) else INVALID

    def _row(self, node: Fields, context: Context, *, text: str) -> R | Invalid:
        totals = _TOTALS.read(node.keys[text], context)
        given = self.beside.read(node.nodes[text], context)
        if isinstance(totals, Invalid) or isinstance(given, Invalid):
            return INVALID
        return self.make(totals, given)

    def write(self, value: tuple[R, ...]) -> Plain:
        """The rows in order."""
        return {str(row): self.beside.write(self.given(row)) for row in value}

    def schema(self) -> Schema:
        """An object of totals."""
        return {"type": "object", "additionalProperties": self.beside.schema()}


BANDS: RowsOf[Band, int | None] = RowsOf(
    beside=value.or_count("all"),
    make=lambda totals, allows: Band(least=totals[0], most=totals[1], allows=allows),
    given=lambda band: band.allows,
    wanted="rolls and what they allow",
    example="{1-3: 0, 4-6: all}",
)


def looked_up(beside: Codec[N], *, example: str) -> Record[LookUp[N]]:
    """The codec of a roll whose total is looked up in rows."""
    rows: RowsOf[Row[N], N] = RowsOf(
        beside=beside,
        make=lambda totals, gives: Row(least=totals[0], most=totals[1], gives=gives),
        given=lambda row: row.gives,
        wanted="rolls and what they give",
        example=example,
    )
    return record(
        LookUp,
        word("roll", value.DICE, required=True),
        word("gives", rows, required=True),
        by_hand=False,
    )


_POINTS_LOOKED_UP = looked_up(value.POINTS, example="{2-6: 10, 7 or more: 14}")


@dataclass(frozen=True, slots=True, kw_only=True)
class AllowanceOfGame:
    """Dice, or a roll that is looked up."""

    def read(self, node: Node, context: Context) -> Allowance | Invalid:
        """Either form."""
        if isinstance(node, Scalar):
            return value.DICE.read(node, context)
        return _POINTS_LOOKED_UP.read(node, context)

    def write(self, value: Allowance) -> Plain:
        """As it was."""
        return str(value) if isinstance(value, Dice) else _POINTS_LOOKED_UP.write(value)

    def schema(self) -> Schema:
        """Either form."""
        return {"anyOf": [value.DICE.schema(), _POINTS_LOOKED_UP.schema()]}


ALLOWANCE = AllowanceOfGame()
