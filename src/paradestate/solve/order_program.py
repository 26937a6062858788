"""The whole order as one whole-number program: packs, tiers, discounts, carriage and rates."""

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction

from paradestate.core.money import Minor
from paradestate.core.order import Basket, OrderProblem, PackName
from paradestate.core.receipt import exchange_rate, step_reached
from paradestate.core.source import Pack, Source
from paradestate.solve.program import Program, Solution

MOST_WEIGHED = 10**10
"""Objectives up to here leave floating point enough room for a proof."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Tier:
    """Goods values from `least` to `most` at which carriage and discount stay the same."""

    least: int
    most: int
    carriage: int
    discount: Fraction


@dataclass(frozen=True, slots=True, kw_only=True)
class Lot:
    """Packs bought together at one price: a single pack, or a multi-buy."""

    variable: int
    packs: int
    price: int


class OrderProgram:
    """The program of one problem; it may be narrowed and solved several times."""

    def __init__(self, problem: OrderProblem) -> None:
        self.problem = problem
        self.program = Program()
        self.lots: dict[PackName, tuple[Lot, ...]] = {}
        self.most_of_variable: dict[int, int] = {}
        self.total: dict[int, int] = {}
        """Variable to its factor in the total, in minor units of the force's currency."""
        for source in problem.sources.values():
            self._add_source(source)
        for kind, wanted in problem.want.items():
            self.program.row(self._figures(kind), least=wanted)

    def _add_source(self, source: Source) -> None:
        packs = {(source.name, name): pack for name, pack in source.packs.items() if pack.holds}
        for name, pack in packs.items():
            most = most_useful(self.problem, source, pack=pack)
            self.lots[name] = self._lots_of(pack, most=most)
            self._limit(name, pack)
        lots = [lot for name in packs for lot in self.lots[name]]
        goods = {lot.variable: lot.price for lot in lots}
        if lots:
            self._add_till(source, goods)

    def _lots_of(self, pack: Pack, *, most: int) -> tuple[Lot, ...]:
        sizes = {1: pack.price, **{size: int(cost) for size, cost in pack.multibuy.items()}}
        lots = []
        for size, price in sizes.items():
            if size <= most:
                variable = self.program.variable(most=most // size)
                self.most_of_variable[variable] = most // size
                lots.append(Lot(variable=variable, packs=size, price=price))
        return tuple(lots)

    def _limit(self, name: PackName, pack: Pack) -> None:
        if pack.most is not None:
            self.program.row(self.number_of(name), most=pack.most)

    def number_of(self, name: PackName) -> dict[int, int]:
        """The number of a pack as a sum of variables."""
        return {lot.variable: lot.packs for lot in self.lots.get(name, ())}

    def _figures(self, kind: str) -> dict[int, int]:
        """The figures of a kind in all packs bought."""
        return self._summed({name: pack.holds.get(kind, 0) for name, pack in self.problem.packs()})

    def figures_bought(self) -> dict[int, int]:
        """All figures bought, of every kind."""
        return self._summed({name: sum(pack.holds.values()) for name, pack in self.problem.packs()})

    def _summed(self, factors: Mapping[PackName, int]) -> dict[int, int]:
        return {
            variable: packs * factors[name]
            for name in self.lots
            for variable, packs in self.number_of(name).items()
        }

    def _add_till(self, source: Source, goods: Mapping[int, int]) -> None:
        """One tier of carriage and discount, or none where nothing is bought."""
        program = self.program
        greatest = greatest_goods(self.problem, source)
        charged: dict[int, int] = {}
        tier_of_goods: dict[int, int] = {}
        chosen: dict[int, int] = {}
        for tier in tiers(source, greatest=greatest):
            choice = program.variable(most=1)
            value = program.variable(most=greatest, whole=False)
            program.row({value: 1, choice: -tier.least}, least=0)
            program.row({value: 1, choice: -tier.most}, most=0)
            charged |= {value: 1, choice: tier.carriage}
            charged |= self._discount(tier, value=value, choice=choice)
            tier_of_goods[value] = 1
            chosen[choice] = 1
        program.row(chosen, most=1)
        program.row(
            {**tier_of_goods, **{lot: -price for lot, price in goods.items()}}, least=0, most=0
        )
        self._charge_free_packs(goods, chosen)
        self.total |= self._exchanged(source, charged, greatest=greatest)

    def _discount(self, tier: Tier, *, value: int, choice: int) -> dict[int, int]:
        """The discount of a tier as a whole number, half up: D <= G r + 1/2."""
        if not tier.discount:
            return {}
        discount = self.program.variable(most=tier.most)
        upper, lower = tier.discount.numerator, tier.discount.denominator
        self.program.row({discount: 2 * lower, value: -2 * upper, choice: -lower}, most=0)
        return {discount: -1}

    def _charge_free_packs(self, goods: Mapping[int, int], chosen: Mapping[int, int]) -> None:
        """Packs that cost nothing are bought too: a tier must be chosen for them."""
        for name in self.lots:
            for lot in self.lots[name]:
                if lot.variable in goods and not lot.price:
                    most = sum(self.problem.want.values())
                    row = {lot.variable: 1, **dict.fromkeys(chosen, -max(most, 1))}
                    self.program.row(row, most=0)

    def _exchanged(
        self, source: Source, charged: Mapping[int, int], *, greatest: int
    ) -> Mapping[int, int]:
        """The source's total in the force's currency, half up: E >= T r - 1/2, E whole."""
        rate = exchange_rate(source, self.problem.currency)
        if rate == 1:
            return charged
        upper, lower = rate.numerator, rate.denominator
        dearest = greatest + max(source.carriage.values(), default=0)
        exchanged = self.program.variable(most=int(dearest * rate) + 1)
        row = {variable: -2 * upper * factor for variable, factor in charged.items()}
        self.program.row({**row, exchanged: 2 * lower}, least=1 - lower)
        return {exchanged: 1}

    def weight_of_total(self) -> int:
        """A weight at which one minor unit of the total outweighs all figures of any order.

        1 where that would be too great for the solver: then ties are left as they fall.
        """
        figures = sum(
            factor * self.most_of_variable[variable]
            for variable, factor in self.figures_bought().items()
        )
        dearest = sum(
            greatest_goods(self.problem, source) for source in self.problem.sources.values()
        )
        return figures + 1 if (figures + 1) * dearest <= MOST_WEIGHED else 1

    def basket(self, solution: Solution) -> Basket:
        """The packs that a solution buys."""
        return {
            name: sum(solution.values[lot.variable] * lot.packs for lot in lots)
            for name, lots in self.lots.items()
        }


def tiers(source: Source, *, greatest: int) -> tuple[Tier, ...]:
    """The tiers of a source from its least order up to `greatest` goods."""
    edges = {int(source.least_order), *map(int, source.carriage), *map(int, source.discount)}
    starts = sorted(edge for edge in edges if source.least_order <= edge <= greatest)
    ends = [*(start - 1 for start in starts[1:]), greatest]
    return tuple(
        Tier(
            least=start,
            most=end,
            carriage=int(step_reached(source.carriage, start, default=Minor(0))),
            discount=step_reached(source.discount, start, default=Fraction(0)),
        )
        for start, end in zip(starts, ends, strict=True)
    )


def most_useful(problem: OrderProblem, source: Source, *, pack: Pack) -> int:
    """More of a pack than this never helps.

    So many fill every want by themselves; beyond that they can only lift the goods over a step.
    """
    fills = max((_packs_for(problem, pack, kind=kind) for kind in pack.holds), default=0)
    lifts = -(-_highest_step(source) // pack.price) if pack.price else 0
    most = fills + lifts + max(pack.multibuy, default=0)
    return most if pack.most is None else min(most, pack.most)


def _packs_for(problem: OrderProblem, pack: Pack, *, kind: str) -> int:
    return -(-problem.want.get(kind, 0) // pack.holds[kind]) if pack.holds[kind] else 0


def _highest_step(source: Source) -> int:
    return max((*source.carriage, *source.discount, source.least_order), default=0)


def greatest_goods(problem: OrderProblem, source: Source) -> int:
    """No order worth making has more goods at this source.

    Every pack beyond the highest step is needed for some figure, so there are at most as many as
    figures wanted.
    """
    dearest = max(
        (max((pack.price, *pack.multibuy.values())) for pack in source.packs.values()), default=0
    )
    needed = sum(problem.want.values()) * dearest
    by_pack = sum(
        most_useful(problem, source, pack=pack) * pack.price for pack in source.packs.values()
    )
    return _highest_step(source) + dearest + min(needed, by_pack)
