"""An order: packs by source, what they cost, and the plain check of it.

Whoever made an order, by hand or by a solver, it is priced and checked here.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field

from paradestate.core.certainty import Certainty
from paradestate.core.money import Currency, money_text
from paradestate.core.receipt import Receipt, receipt
from paradestate.core.source import Pack, Source

PackName = tuple[str, str]
"""A source and the name of one of its packs."""


@dataclass(frozen=True, slots=True, kw_only=True)
class OrderProblem:
    """What is wanted, by figure kind, and where it can be bought."""

    want: Mapping[str, int]
    sources: Mapping[str, Source]
    currency: Currency
    """The force's currency, in which totals are compared."""

    def packs(self) -> Iterator[tuple[PackName, Pack]]:
        """Every pack of every source, in file order."""
        for source in self.sources.values():
            for pack in source.packs.values():
                yield (source.name, pack.name), pack


Basket = Mapping[PackName, int]
"""Packs to buy."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Order:
    """A priced order. Amounts in minor units of the force's currency."""

    packs: Basket
    receipts: tuple[Receipt, ...]
    held: Mapping[str, int]
    """Kind to figures bought."""
    left_over: Mapping[str, int]
    """Kind to figures bought and not wanted."""

    @property
    def total(self) -> int:
        """What all sources charge together."""
        return sum(each.exchanged for each in self.receipts)

    @property
    def number_left_over(self) -> int:
        """Figures bought and not wanted, of all kinds."""
        return sum(self.left_over.values())

    @property
    def number_of_packs(self) -> int:
        """Packs bought."""
        return sum(self.packs.values())


@dataclass(frozen=True, slots=True, kw_only=True)
class OrderAnswer:
    """The order that was found, and how sure it is that nothing is cheaper."""

    order: Order
    certainty: Certainty
    steps: tuple[Order, ...] = ()
    """Orders that no other beats both in total and in what is left over, cheapest first."""
    next_best: tuple[Order, ...] = field(default=())


def priced(problem: OrderProblem, packs: Basket) -> Order:
    """The order of these packs; names must be those of the problem."""
    bought = {name: number for name, number in packs.items() if number}
    receipts = []
    for source in problem.sources.values():
        own = {name: number for (seller, name), number in bought.items() if seller == source.name}
        if own:
            receipts.append(receipt(source, own, currency=problem.currency))
    return Order(
        packs=bought,
        receipts=tuple(receipts),
        held=holds(problem, bought),
        left_over=_left_over(problem, bought),
    )


def holds(problem: OrderProblem, packs: Basket) -> Mapping[str, int]:
    """Kind to figures in these packs."""
    total: dict[str, int] = {}
    for (source, name), number in packs.items():
        for kind, each in problem.sources[source].packs[name].holds.items():
            total[kind] = total.get(kind, 0) + each * number
    return total


def _left_over(problem: OrderProblem, packs: Basket) -> Mapping[str, int]:
    over = {
        kind: number - problem.want.get(kind, 0) for kind, number in holds(problem, packs).items()
    }
    return {kind: number for kind, number in over.items() if number > 0}


def shortcomings(problem: OrderProblem, packs: Basket) -> tuple[str, ...]:
    """What is wrong with an order, in words; empty where it meets the want and every limit."""
    return tuple(_shortcomings(problem, packs))


def _shortcomings(problem: OrderProblem, packs: Basket) -> Iterator[str]:
    unknown = [
        name
        for name in packs
        if name[0] not in problem.sources or name[1] not in problem.sources[name[0]].packs
    ]
    if unknown:
        yield from (f"no source sells {' '.join(name)}" for name in unknown)
        return
    for (source, name), number in packs.items():
        most = problem.sources[source].packs[name].most
        if number < 0:
            yield f"{number} of {name}"
        if most is not None and number > most:
            yield f"{number} of {name}, of which {most} can be had"
    held = holds(problem, packs)
    for kind, number in problem.want.items():
        if held.get(kind, 0) < number:
            yield f"{held.get(kind, 0)} {kind} of {number} wanted"
    for each in priced(problem, packs).receipts:
        least = problem.sources[each.source].least_order
        if each.goods < least:
            yield f"{each.source} sends nothing below {money_text(least, each.currency)}"


def unsold(problem: OrderProblem) -> tuple[str, ...]:
    """Wanted kinds that no pack holds, in order of the want."""
    sold = {kind for _, pack in problem.packs() for kind, number in pack.holds.items() if number}
    return tuple(kind for kind, number in problem.want.items() if number and kind not in sold)
