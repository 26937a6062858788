"""A problem as arrays: packs, prices, tills and wants, for searches that don't prove anything.

Costs are floats here; whether an order is cheaper is only ever decided by its plain price.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from typing import TypeAlias

import numpy
from numpy.typing import NDArray

from paradestate.core.money import Minor
from paradestate.core.order import Basket, OrderProblem, PackName, shortcomings
from paradestate.core.receipt import exchange_rate, lots_of, receipt, step_reached
from paradestate.core.source import Pack, Source

Numbers: TypeAlias = NDArray[numpy.int64]
Amounts: TypeAlias = NDArray[numpy.float64]
Packs: TypeAlias = Mapping[int, int]
"""Number of a pack on the shelf to how many are bought."""
Steps: TypeAlias = tuple[int, ...]
"""For each source the step of its till that holds."""

CLOSED = -1
"""In place of a step: nothing is bought there."""

ENDLESS = float("inf")


@dataclass(frozen=True, slots=True, kw_only=True)
class Lots:
    """Packs as they are sold, one column for each price of a pack.

    The figures of column c stand from `start[c]` up to `start[c + 1]`.
    """

    pack: Numbers
    size: Numbers
    price: Amounts
    """In the source's currency."""
    seller: Numbers
    most: Amounts
    start: Numbers
    row: Numbers
    number: Amounts

    def __len__(self) -> int:
        return len(self.pack)

    def only(self, columns: Numbers) -> "Lots":
        """Only these columns."""
        length = numpy.diff(self.start)[columns]
        start = numpy.concatenate(([0], numpy.cumsum(length)))
        where = numpy.repeat(self.start[columns] - start[:-1], length) + numpy.arange(start[-1])
        return Lots(
            pack=self.pack[columns],
            size=self.size[columns],
            price=self.price[columns],
            seller=self.seller[columns],
            most=self.most[columns],
            start=start,
            row=self.row[where],
            number=self.number[where],
        )

    def clipped(self, useful: Amounts) -> "Lots":
        """The same, counting no more figures of a kind than can be of use."""
        return replace(self, number=numpy.minimum(self.number, useful[self.row]))

    def worth(self, each: Amounts) -> Amounts:
        """What a column is worth at so much a figure."""
        sums = numpy.concatenate(([0.0], numpy.cumsum(self.number * each[self.row])))
        return sums[self.start[1:]] - sums[self.start[:-1]]

    def table(self, rows: int) -> Amounts:
        """Columns by rows."""
        table = numpy.zeros((len(self), rows))
        table[numpy.repeat(numpy.arange(len(self)), numpy.diff(self.start)), self.row] = self.number
        return table


@dataclass(frozen=True, slots=True, kw_only=True)
class Place:
    """A kind that may stand in for another, both by row, and how many at the most."""

    kind: int
    other: int
    most: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Step:
    """Goods from `least` on, of which `share` is paid, and carriage; in the source's currency."""

    least: int
    share: float
    carriage: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Shelf:
    """A problem as arrays."""

    problem: OrderProblem
    names: Sequence[PackName]
    packs: Sequence[Pack]
    holds: Sequence[Mapping[int, int]]
    """By pack: row to figures."""
    sellers: Sequence[Source]
    rate: Amounts
    steps: Sequence[Sequence[Step]]
    lots: Lots
    want: Amounts
    """By row, less what is owned of the kind itself."""
    owned: Amounts
    places: Sequence[Place]

    def held(self, packs: Packs) -> Amounts:
        """Figures by row."""
        total = numpy.zeros(len(self.want))
        for pack, number in packs.items():
            for row, each in self.holds[pack].items():
                total[row] += each * number
        return total

    def useful(self, held: Amounts) -> Amounts:
        """With more figures than these beside those held, one is of no use."""
        room = numpy.maximum(0.0, self.want - held)
        for place in self.places:  # a bought figure stands in, or frees an owned one for that
            room[place.kind] += place.most
        return room

    def cost(self, lots: Lots, steps: Steps) -> Amounts:
        """What the columns cost after discount in the force's currency."""
        share = [
            0.0 if step == CLOSED else terms[step].share
            for terms, step in zip(self.steps, steps, strict=True)
        ]
        return lots.price * (numpy.array(share) * self.rate)[lots.seller]

    def carriage(self, steps: Steps) -> float:
        """What the sources charge for carriage on these steps."""
        return sum(
            self.steps[seller][step].carriage * float(self.rate[seller])
            for seller, step in enumerate(steps)
            if step != CLOSED
        )

    def is_enough(self, packs: Packs) -> bool:
        """Whether these packs meet the want and every limit, by the plain check."""
        return not shortcomings(self.problem, self.basket(packs))

    def basket(self, packs: Packs) -> Basket:
        """The same packs by name."""
        return {self.names[pack]: number for pack, number in packs.items() if number}

    def receipts(self, packs: Packs) -> Iterator[tuple[int, int, int]]:
        """Each source that is bought from, the goods there and what it charges."""
        bought: dict[int, dict[str, int]] = {}
        where = {source.name: seller for seller, source in enumerate(self.sellers)}
        for (sold_by, name), number in self.basket(packs).items():
            bought.setdefault(where[sold_by], {})[name] = number
        for seller, own in bought.items():
            source = self.sellers[seller]
            short = replace(source, packs={name: source.packs[name] for name in own})
            said = receipt(short, own, currency=self.problem.currency)
            yield seller, said.goods, said.exchanged

    def total(self, packs: Packs) -> int:
        """What all sources charge together: the plain price."""
        return sum(exchanged for _, _, exchanged in self.receipts(packs))

    def steps_of(self, packs: Packs) -> Steps:
        """The steps on which these packs are."""
        steps = [CLOSED] * len(self.sellers)
        for seller, goods, _ in self.receipts(packs):
            steps[seller] = reached(self.steps[seller], goods)
        return tuple(steps)


def reached(steps: Sequence[Step], goods: float) -> int:
    """The number of the highest step that goods reach."""
    below = [number for number, step in enumerate(steps) if step.least <= goods]
    return max(below, default=0)


def shelf_of(problem: OrderProblem) -> Shelf:
    """A problem as arrays; packs without any use are left out."""
    substitutes = problem.substitutes
    kinds = dict.fromkeys((*problem.want, *substitutes.may_stand_for))
    rows = {kind: row for row, kind in enumerate(kinds)}
    want = numpy.array([problem.want.get(kind, 0) for kind in rows], dtype=float)
    owned = numpy.array([problem.owned.get(kind, 0) for kind in rows], dtype=float)
    sellers = tuple(problem.sources.values())
    names: list[PackName] = []
    packs: list[Pack] = []
    holds: list[dict[int, int]] = []
    for name, pack in problem.packs():
        own = {rows[kind]: number for kind, number in pack.holds.items() if number and kind in rows}
        if own:
            names.append(name)
            packs.append(pack)
            holds.append(own)
    shelf = Shelf(
        problem=problem,
        names=names,
        packs=packs,
        holds=holds,
        sellers=sellers,
        rate=numpy.array([float(exchange_rate(each, problem.currency)) for each in sellers]),
        steps=tuple(_steps(each) for each in sellers),
        lots=_lots(names, packs=packs, holds=holds, sellers=sellers),
        want=want - owned,
        owned=owned,
        places=tuple(_places(problem, rows)),
    )
    useful = shelf.useful(numpy.zeros(len(want)))
    return replace(shelf, lots=shelf.lots.clipped(useful))


def _steps(source: Source) -> tuple[Step, ...]:
    least = int(source.least_order)
    edges = {least, *(int(edge) for edge in (*source.carriage, *source.discount) if edge > least)}
    steps: list[Step] = []
    for edge in sorted(edges):
        share = 1.0 - float(step_reached(source.discount, edge, default=Fraction(0)))
        carriage = float(step_reached(source.carriage, edge, default=Minor(0)))
        if not steps or (steps[-1].share, steps[-1].carriage) != (share, carriage):
            steps.append(Step(least=edge, share=share, carriage=carriage))
    return tuple(steps)


def _places(problem: OrderProblem, rows: Mapping[str, int]) -> Iterator[Place]:
    for kind in problem.substitutes.may_stand_for:
        for other, most in problem.places_of(kind):
            yield Place(kind=rows[kind], other=rows[other], most=most)


def _lots(
    names: Sequence[PackName],
    *,
    packs: Sequence[Pack],
    holds: Sequence[Mapping[int, int]],
    sellers: Sequence[Source],
) -> Lots:
    numbers = {source.name: seller for seller, source in enumerate(sellers)}
    sold: list[tuple[int, int, int, int, float]] = []
    row: list[int] = []
    figures: list[int] = []
    start = [0]
    for number, pack in enumerate(packs):
        seller = numbers[names[number][0]]
        for size, price, most in _prices(pack):
            sold.append((number, size, price, seller, most))
            row.extend(holds[number])
            figures.extend(each * size for each in holds[number].values())
            start.append(len(row))
    columns = numpy.array(sold, dtype=float).reshape(-1, 5).T
    return Lots(
        pack=columns[0].astype(int),
        size=columns[1].astype(int),
        price=columns[2],
        seller=columns[3].astype(int),
        most=columns[4],
        start=numpy.array(start),
        row=numpy.array(row, dtype=int),
        number=numpy.array(figures, dtype=float),
    )


def _prices(pack: Pack) -> Iterator[tuple[int, int, float]]:
    """Sizes, prices and how often; fewer than the best size are bought otherwise."""
    most = ENDLESS if pack.most is None else float(pack.most)
    if not pack.multibuy:
        yield 1, pack.price, most
        return
    lots = lots_of(pack)
    for lot in lots:
        room = most // lot.size if pack.most is not None else most
        yield lot.size, lot.price, room if lot == lots[0] else min(room, lots[0].size - 1)
