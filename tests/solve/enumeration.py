"""The slow twin of the order program: every order there is, priced by a till of its own."""

import math
from bisect import bisect_right
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from fractions import Fraction
from functools import cache
from itertools import combinations, product
from typing import TypeAlias

from paradestate.core.money import decimal_places
from paradestate.core.order import OrderProblem, PackName
from paradestate.core.source import Pack, Source

_Lot: TypeAlias = list[tuple[int, list[tuple[PackName, int]]]]
"""Baskets that hold the same: what each costs in the force's currency, and its packs."""
_Holds: TypeAlias = tuple[tuple[str, int], ...]
"""Kinds and numbers, in order of kinds."""


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
    listed = [
        Listed(
            total=sum(charge for charge, _ in parts),
            left_over=left_over,
            packs=tuple(sorted(pack for _, packs in parts for pack in packs)),
        )
        for lots, left_over in _enough(problem)
        for parts in product(*lots)
    ]
    return sorted(listed, key=lambda order: order.rank)


def every_least(problem: OrderProblem) -> list[tuple[int, int]]:
    """Of all those orders total and left over; of orders for the same figures only the cheapest."""
    return [
        (sum(min(charge for charge, _ in lot) for lot in lots), left_over)
        for lots, left_over in _enough(problem)
    ]


def _enough(problem: OrderProblem) -> Iterator[tuple[tuple[_Lot, ...], int]]:
    """Lots of baskets, one of each source, that are enough together, and what they leave over."""
    needs = _needs(problem)
    lacking = max(need for _, need in needs)
    for chosen in product(*(_lots(problem, each).items() for each in problem.sources.values())):
        held: dict[str, int] = {}
        for holds, _ in chosen:
            for kind, number in holds:
                held[kind] = held.get(kind, 0) + number
        is_enough = all(sum(held.get(kind, 0) for kind in able) >= need for able, need in needs)
        parcels = sum(holds != () for holds, _ in chosen)
        if is_enough and parcels <= (problem.most_parcels or parcels):
            yield tuple(lot for _, lot in chosen), sum(held.values()) - lacking


def _needs(problem: OrderProblem) -> list[tuple[list[str], int]]:
    """Of each set of wanted kinds: what can be bought that serves any of it, and how much must be.

    By the theorem of Hall in Ore's form so much lacks as the worst set needs.
    """
    packs = (pack for source in problem.sources.values() for pack in source.packs.values())
    sold = {kind for pack in packs for kind in pack.holds}

    def able(kinds: Iterable[str], *, to_serve: tuple[str, ...], is_bought: bool) -> list[str]:
        of = problem.substitutes.of
        return [kind for kind in kinds if {kind, *of(kind, bought=is_bought)} & set(to_serve)]

    kinds = list(problem.want)
    groups = [group for size in range(len(kinds) + 1) for group in combinations(kinds, size)]
    return [
        (
            able(sold, to_serve=group, is_bought=True),
            sum(problem.want[kind] for kind in group)
            - sum(
                problem.owned[kind] for kind in able(problem.owned, to_serve=group, is_bought=False)
            ),
        )
        for group in groups
    ]


def steps(orders: list[Listed]) -> list[tuple[int, int]]:
    """The pairs of total and left over that no other order beats."""
    pairs = {(order.total, order.left_over) for order in orders}
    return sorted(
        pair
        for pair in pairs
        if not any(other != pair and other[0] <= pair[0] and other[1] <= pair[1] for other in pairs)
    )


def unpadded(orders: list[Listed]) -> Iterator[Listed]:
    """Those of the list above that are dearer, or not enough, without some of their packs."""
    totals = [order.total for order in orders]
    for order in orders:
        numbers = dict(order.packs)
        if not any(
            fewer.packs != order.packs
            and all(numbers.get(name, 0) >= number for name, number in fewer.packs)
            for fewer in orders[: bisect_right(totals, order.total)]
        ):
            yield order


def _lots(problem: OrderProblem, source: Source) -> dict[_Holds, _Lot]:
    """Every basket of one source that it sends, by what it holds."""
    ranges = [range(_most(problem, source, pack=pack) + 1) for pack in source.packs.values()]
    found: dict[_Holds, _Lot] = {}
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
        basket = charge, [((source.name, pack.name), n) for pack, n in bought]
        found.setdefault(tuple(sorted(holds.items())), []).append(basket)
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
