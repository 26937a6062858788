"""The slow twin of the order program: every order there is, priced by a till of its own."""

import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction
from functools import cache
from itertools import combinations, product
from typing import TypeAlias

from paradestate.core.money import decimal_places
from paradestate.core.order import OrderProblem, PackName
from paradestate.core.source import Pack, Source


@dataclass(frozen=True, slots=True, kw_only=True)
class Listed:
    """One order of the list."""

    total: int
    left_over: int
    packs: tuple[tuple[PackName, int], ...]
    """Names and numbers in order of names, packs not bought left out."""

    @property
    def rank(self) -> tuple[int, int, int, tuple[tuple[PackName, int], ...]]:
        """By total, left over, number of packs, names."""
        return self.total, self.left_over, sum(number for _, number in self.packs), self.packs


def every_order(problem: OrderProblem) -> list[Listed]:
    """Every order that meets the want and every limit, with numbers up to what could ever help."""
    lacking = _most_lacking(problem, {})
    listed = []
    for parts in product(*(_baskets(problem, each) for each in problem.sources.values())):
        held: dict[str, int] = {}
        for _, _, holds in parts:
            for kind, number in holds.items():
                held[kind] = held.get(kind, 0) + number
        packs = [pack for _, basket, _ in parts for pack in basket]
        parcels = len({source for (source, _), _ in packs})
        if _most_lacking(problem, held) == 0 and parcels <= (problem.most_parcels or parcels):
            listed.append(
                Listed(
                    total=sum(charge for charge, _, _ in parts),
                    left_over=sum(held.values()) - lacking,
                    packs=tuple(sorted(packs)),
                )
            )
    return sorted(listed, key=lambda order: order.rank)


def _most_lacking(problem: OrderProblem, bought: Mapping[str, int]) -> int:
    """How much is lacking, by the theorem of Hall in Ore's form: the worst set of wanted kinds.

    Of each set of wanted kinds so many lack as nothing able to serve any of them is there.
    """
    kinds = list(problem.want)
    return max(
        sum(problem.want[kind] for kind in group)
        - sum(
            number
            for there, is_bought in ((problem.owned, False), (bought, True))
            for kind, number in there.items()
            if {kind, *problem.substitutes.of(kind, bought=is_bought)} & set(group)
        )
        for size in range(len(kinds) + 1)
        for group in combinations(kinds, size)
    )


def steps(orders: list[Listed]) -> list[tuple[int, int]]:
    """The pairs of total and left over that no other order beats."""
    pairs = {(order.total, order.left_over) for order in orders}
    return sorted(
        pair
        for pair in pairs
        if not any(other != pair and other[0] <= pair[0] and other[1] <= pair[1] for other in pairs)
    )


def unpadded(orders: list[Listed]) -> Iterator[Listed]:
    """Those orders that are dearer, or not enough, without some of their packs."""
    for order in orders:
        numbers = dict(order.packs)
        if not any(
            fewer.packs != order.packs
            and fewer.total <= order.total
            and all(numbers.get(name, 0) >= number for name, number in fewer.packs)
            for fewer in orders
        ):
            yield order


_Basket: TypeAlias = tuple[int, list[tuple[PackName, int]], Mapping[str, int]]
"""What a basket costs in the force's currency, its packs, and what they hold."""


def _baskets(problem: OrderProblem, source: Source) -> list[_Basket]:
    """Every basket of one source that it sends."""
    ranges = [range(_most(problem, source, pack=pack) + 1) for pack in source.packs.values()]
    found: list[_Basket] = []
    for numbers in product(*ranges):
        bought = [
            (pack, number)
            for pack, number in zip(source.packs.values(), numbers, strict=True)
            if number
        ]
        charge = _charge(source, bought, problem=problem)
        if charge is None:
            continue
        holds: dict[str, int] = {}
        for pack, number in bought:
            for kind, each in pack.holds.items():
                holds[kind] = holds.get(kind, 0) + each * number
        found.append((charge, [((source.name, pack.name), n) for pack, n in bought], holds))
    return found


def _most(problem: OrderProblem, source: Source, *, pack: Pack) -> int:
    """A generous bound: enough for every want, to cross every step, and two lots more."""
    wanted = sum(problem.want.values()) if problem.substitutes.bought_too else None
    fills = max(
        math.ceil(Fraction(wanted or problem.want.get(kind, 0), each))
        for kind, each in pack.holds.items()
    )
    largest = max([1, *pack.multibuy])
    a_pack = min(
        [Fraction(pack.price), *(Fraction(cost, size) for size, cost in pack.multibuy.items())]
    )
    top = max([*source.carriage, *source.discount, source.least_order])
    lifts = math.ceil(top / a_pack) if a_pack else 0
    most = fills + lifts + 2 * largest
    return most if pack.most is None else min(most, pack.most)


def _charge(source: Source, bought: list[tuple[Pack, int]], *, problem: OrderProblem) -> int | None:
    """What a source charges in the force's currency; None where it doesn't send so little."""
    if not bought:
        return 0
    goods = sum(
        _cheapest(pack.price, tuple(pack.multibuy.items()), number=number)
        for pack, number in bought
    )
    if goods < source.least_order:
        return None
    discount = Fraction(0)
    for step in sorted(source.discount):
        if step <= goods:
            discount = source.discount[step]
    carriage = 0
    for step in sorted(source.carriage):
        if step <= goods:
            carriage = source.carriage[step]
    charge = Fraction(goods - math.floor(goods * discount + Fraction(1, 2)) + carriage)
    if source.rate is not None:
        minor_to_whole = Fraction(1, 10 ** decimal_places(source.currency))
        whole_to_minor = 10 ** decimal_places(problem.currency)
        charge = charge * minor_to_whole * source.rate * whole_to_minor
    return math.floor(charge + Fraction(1, 2))


@cache
def _cheapest(price: int, multibuy: tuple[tuple[int, int], ...], *, number: int) -> int:
    """The least cost of so many packs, found by trying every way to take the last."""
    if number == 0:
        return 0
    ways = [price + _cheapest(price, multibuy, number=number - 1)]
    for size, cost in multibuy:
        if size <= number:
            ways.append(cost + _cheapest(price, multibuy, number=number - size))
    return min(ways)
