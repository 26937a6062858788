"""An order: packs by source, what they cost, and the plain check of it.

Whoever made an order, by hand or by a solver, it is priced and checked here.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field, replace
from typing import TypeAlias

from paradestate.core.cover import Cover, Substitutes, cover
from paradestate.core.figure import StandIn
from paradestate.core.money import Currency, money_text
from paradestate.core.receipt import OrderLine, Receipt, receipt
from paradestate.core.source import Pack, Source

PackName: TypeAlias = tuple[str, str]
"""A source and the name of one of its packs."""

Basket: TypeAlias = Mapping[PackName, int]
"""Packs to buy."""


@dataclass(frozen=True, slots=True, kw_only=True)
class OrderProblem:
    """What is wanted, by figure kind, what there is of it, and where it can be bought."""

    want: Mapping[str, int]
    sources: Mapping[str, Source]
    currency: Currency
    """The force's currency, in which totals are compared."""
    owned: Mapping[str, int] = field(default_factory=dict)
    """Kind to figures that are there and serve the want before any is bought."""
    substitutes: Substitutes = field(default_factory=Substitutes)
    most_parcels: int | None = None
    """From how many sources an order may come."""

    def packs(self) -> Iterator[tuple[PackName, Pack]]:
        """Every pack of every source, in file order."""
        for source in self.sources.values():
            for pack in source.packs.values():
                yield (source.name, pack.name), pack

    def pack(self, name: PackName) -> Pack | None:
        """The pack of this name, if it is sold."""
        source = self.sources.get(name[0])
        return None if source is None else source.packs.get(name[1])

    def covered(self, bought: Mapping[str, int]) -> Cover:
        """How far the want is covered by what is owned and these figures bought."""
        return cover(self.want, owned=self.owned, bought=bought, substitutes=self.substitutes)

    @property
    def number_lacking(self) -> int:
        """Figures that have to be bought, of all kinds, whatever serves as what."""
        return self.covered({}).number_lacking

    def places_of(self, kind: str) -> Iterator[tuple[str, int]]:
        """The other kinds in whose place a kind may stand, and how many may at the most."""
        for other in self.substitutes.of(kind, bought=False):
            wanted = self.want.get(other, 0)
            most = wanted if self.substitutes.bought_too else min(wanted, self.owned.get(kind, 0))
            if most and other != kind:
                yield other, most

    def uses_of(self, kind: str) -> int:
        """With more bought figures of a kind than this, one is left over."""
        places = (kind, *self.substitutes.of(kind, bought=True))
        return sum(self.want.get(place, 0) for place in dict.fromkeys(places))


@dataclass(frozen=True, slots=True, kw_only=True)
class Order:
    """A priced order. Amounts in minor units of the force's currency."""

    packs: Basket
    receipts: tuple[Receipt, ...]
    held: Mapping[str, int]
    """Kind to figures bought."""
    left_over: Mapping[str, int]
    """Kind to figures bought that serve no want."""
    stand_ins: tuple[StandIn, ...]
    """Figures, owned or bought, that stand in for another kind."""

    @property
    def lines(self) -> tuple[OrderLine, ...]:
        """What is bought, source by source."""
        return tuple(line for each in self.receipts for line in each.lines)

    @property
    def total(self) -> int:
        """What all sources charge together."""
        return sum(each.exchanged for each in self.receipts)

    @property
    def number_bought(self) -> int:
        """Figures bought, of all kinds."""
        return sum(self.held.values())

    @property
    def number_left_over(self) -> int:
        """Figures bought that serve no want, of all kinds."""
        return sum(self.left_over.values())

    @property
    def number_of_packs(self) -> int:
        """Packs bought."""
        return sum(self.packs.values())


def netted(problem: OrderProblem) -> OrderProblem:
    """The same problem, with what can serve only as itself taken off the want."""
    substitutes, tangled = problem.substitutes.may_stand_for, set[str]()
    for kind, others in substitutes.items():
        wanted = [other for other in others if problem.want.get(other) and other != kind]
        if wanted:
            tangled.update((kind, *wanted))
    owned = {kind: number for kind, number in problem.owned.items() if kind in tangled}
    want = {
        kind: number if kind in tangled else number - problem.owned.get(kind, 0)
        for kind, number in problem.want.items()
    }
    return replace(
        problem, want={kind: each for kind, each in want.items() if each > 0}, owned=owned
    )


def priced(problem: OrderProblem, packs: Basket) -> Order:
    """The order of these packs; names must be those of the problem."""
    bought = {name: packs[name] for name, _ in problem.packs() if packs.get(name)}
    receipts = []
    for source in problem.sources.values():
        own = {name: number for (seller, name), number in bought.items() if seller == source.name}
        if own:
            receipts.append(receipt(source, own, currency=problem.currency))
    held = _held(problem, bought)
    covered = problem.covered(held)
    return Order(
        packs=bought,
        receipts=tuple(receipts),
        held=held,
        left_over=covered.left_over,
        stand_ins=covered.stand_ins,
    )


def _held(problem: OrderProblem, packs: Basket) -> Mapping[str, int]:
    total: dict[str, int] = {}
    for (source, name), number in packs.items():
        for kind, each in problem.sources[source].packs[name].holds.items():
            total[kind] = total.get(kind, 0) + each * number
    return total


def in_order_of_choice(order: Order) -> tuple[int, int, int, tuple[tuple[PackName, int], ...]]:
    """What orders are sorted by: total, left over, number of packs, names."""
    named = tuple(sorted(order.packs.items()))
    return order.total, order.number_left_over, order.number_of_packs, named


def is_padded(order: Order, *, better: Order) -> bool:
    """Whether an order is a better one with more packs added."""
    return all(order.packs.get(name, 0) >= number for name, number in better.packs.items())


def shortcomings(problem: OrderProblem, packs: Basket) -> tuple[str, ...]:
    """What is wrong with an order, in words; empty where it meets the want and every limit."""
    unknown = [name for name in packs if problem.pack(name) is None]
    if unknown:
        return tuple(f"no source sells {' '.join(name)}" for name in unknown)
    below = [f"{number} of {' '.join(name)}" for name, number in packs.items() if number < 0]
    return tuple(below) or tuple(_shortcomings(problem, packs))


def _shortcomings(problem: OrderProblem, packs: Basket) -> Iterator[str]:
    order = priced(problem, packs)
    for (source, name), number in order.packs.items():
        most = problem.sources[source].packs[name].most
        if most is not None and number > most:
            yield f"{number} of {source} {name}, of which {most} can be had"
    for kind, lacking in problem.covered(order.held).lacking.items():
        wanted = problem.want[kind]
        yield f"{wanted - lacking} {kind} of {wanted} wanted"
    if problem.most_parcels is not None and len(order.receipts) > problem.most_parcels:
        yield f"{len(order.receipts)} parcels where {problem.most_parcels} may come"
    for each in order.receipts:
        least = problem.sources[each.source].least_order
        if each.goods < least:
            yield f"{each.source} sends nothing below {money_text(least, each.currency)}"


def order_problems(problem: OrderProblem, order: Order) -> tuple[str, ...]:
    """What is wrong with an order or with anything it says of itself, all recomputed."""
    wrong = shortcomings(problem, order.packs)
    if wrong:
        return wrong
    again = priced(problem, order.packs)
    said = {
        "packs": (order.packs, again.packs),
        "receipts": (order.receipts, again.receipts),
        "figures bought": (order.held, again.held),
        "left over": (order.left_over, again.left_over),
        "stand-ins": (order.stand_ins, again.stand_ins),
    }
    return tuple(
        f"{what}: {stated} is said, {right} is right"
        for what, (stated, right) in said.items()
        if stated != right
    )
