"""The whole order as one whole-number program: packs, tills, wants and limits."""

from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass

from paradestate.core.order import Basket, Order, OrderProblem, PackName
from paradestate.core.source import Source
from paradestate.solve.order_bound import greatest_goods, most_useful
from paradestate.solve.pack_program import PackTerms, add_pack, values_for
from paradestate.solve.program import Program, Solution, Start
from paradestate.solve.till_program import TillTerms, add_till

MOST_WEIGHED = 10**10
"""Costs up to here leave floating point enough room for a proof to the last unit."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Measure:
    """Something by which orders are compared: a sum of variables, and the row that limits it."""

    terms: Mapping[int, int]
    row: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Weights:
    """How much a unit counts: of the total more than all figures, of those more than all packs.

    Where that would be too great for the solver to be exact, packs or figures count nothing.
    """

    total: int
    figures: int
    packs: int

    def least_total(self, bound: int) -> int:
        """No total is less where no weighted sum is less than `bound`."""
        return max(0, bound // self.total)

    def is_settled(self, order: Order, *, bound: int) -> bool:
        """Whether `bound` proves that no order of the same total leaves less over."""
        if not self.figures:
            return False
        ratio = self.total // self.figures
        return ratio * order.total + order.number_bought <= bound // self.figures


class OrderProgram:
    """The program of one problem; it may be narrowed and solved several times.

    It has room for every order that isn't padded and costs no more than `most_total`.
    """

    def __init__(self, problem: OrderProblem, *, most_total: int | None = None) -> None:
        self.problem = problem
        self._most_total = most_total
        self.program = Program()
        self.packs: dict[PackName, PackTerms] = {}
        self.tills: dict[str, TillTerms] = {}
        for source in problem.sources.values():
            self._add_source(source)
        self.held = {kind: self._held(kind) for kind in self._kinds()}
        self._serve()
        self._limit_parcels()
        self.total = self._measure(*(till.charged for till in self.tills.values()))
        self.figures = self._measure(*self.held.values())
        self.packs_bought = self._measure(*(each.number for each in self.packs.values()))

    def weights(self) -> Weights:
        """The weights at which the best order by total, left over and packs costs least."""
        figures = self.program.greatest(self.figures.terms) + 1
        packs = self.program.greatest(self.packs_bought.terms) + 1
        total = self.program.greatest(self.total.terms) + 1
        if total * figures * packs <= MOST_WEIGHED:
            return Weights(total=figures * packs, figures=packs, packs=1)
        if total * figures <= MOST_WEIGHED:
            return Weights(total=figures, figures=1, packs=0)
        return Weights(total=1, figures=0, packs=0)

    def weighted(self, weights: Weights) -> Mapping[int, int]:
        """What is to be least, as one sum of variables."""
        weighed = (
            (weights.total, self.total),
            (weights.figures, self.figures),
            (weights.packs, self.packs_bought),
        )
        terms: dict[int, int] = {}
        for weight, measure in weighed:
            for variable, factor in measure.terms.items():
                terms[variable] = terms.get(variable, 0) + weight * factor
        return terms

    def _measure(self, *sums: Mapping[int, int]) -> Measure:
        terms: dict[int, int] = {}
        for each in sums:
            for variable, factor in each.items():
                terms[variable] = terms.get(variable, 0) + factor
        return Measure(terms=terms, row=self.program.row(terms))

    def _add_source(self, source: Source) -> None:
        problem, name = self.problem, source.name
        for pack in source.packs.values():
            if pack.holds:
                most = most_useful(problem, source, pack=pack)
                self.packs[name, pack.name] = add_pack(self.program, pack, most=most)
        packs = [terms for (seller, _), terms in self.packs.items() if seller == name]
        if packs:
            self.tills[name] = add_till(
                self.program,
                source,
                packs=packs,
                greatest=greatest_goods(problem, source, most_total=self._most_total),
                currency=problem.currency,
            )

    def _serve(self) -> None:
        """Each want is met; a figure serves as itself or stands in, once and by one step.

        A kind sends no more figures to others than there are of it, those that come in left out.
        """
        sums = {kind: dict(self.held.get(kind, {})) for kind in self.problem.want}
        sent: dict[str, dict[int, int]] = {}
        for kind, other, most in self._places():
            number = self.program.variable(most=most, whole=False)
            sums[other][number] = 1
            sums.setdefault(kind, {})[number] = -1
            sent.setdefault(kind, {})[number] = 1
        for kind, wanted in self.problem.want.items():
            least = wanted - self.problem.owned.get(kind, 0)
            self.program.row(_no_more_than(least, sums[kind]), least=least)
        for kind, terms in sent.items():
            held = self.held.get(kind, {}) if self.problem.substitutes.bought_too else {}
            minus = {variable: -number for variable, number in held.items()}
            self.program.row({**terms, **minus}, most=self.problem.owned.get(kind, 0))

    def _places(self) -> Iterator[tuple[str, str, int]]:
        """A kind, another in whose place it may stand, and how many may at the most."""
        for kind in dict.fromkeys((*self.problem.owned, *self.held)):
            for other, most in self.problem.places_of(kind):
                yield kind, other, most

    def _limit_parcels(self) -> None:
        if self.problem.most_parcels is not None:
            tiers = [tier for till in self.tills.values() for tier in till.tiers]
            self.program.row({tier.chosen: 1 for tier in tiers}, most=self.problem.most_parcels)

    def _kinds(self) -> Mapping[str, None]:
        return dict.fromkeys(kind for each in self.packs.values() for kind in each.pack.holds)

    def _held(self, kind: str) -> Mapping[int, int]:
        """The figures of a kind in all packs bought."""
        return {
            variable: each.pack.holds[kind] * factor
            for each in self.packs.values()
            if each.pack.holds.get(kind)
            for variable, factor in each.number.items()
        }

    @contextmanager
    def at_most(self, measure: Measure, most: int) -> Iterator[None]:
        """Holds a measure to at most so much, on top of limits held already."""
        before = self.program.limit(measure.row)
        self.program.set_limit(measure.row, most=most if before is None else min(most, before))
        try:
            yield
        finally:
            self.program.set_limit(measure.row, most=before)

    def exclude(self, order: Order) -> None:
        """Demands an order that isn't this one, with packs added or without."""
        fewer: dict[int, int] = {}
        for name, number in order.packs.items():
            terms = self.packs[name]
            has_fewer = self.program.variable(most=1)
            self.program.row({**terms.number, has_fewer: terms.most - number + 1}, most=terms.most)
            fewer[has_fewer] = 1
        self.program.row(fewer, least=1)

    def start(self, packs: Basket) -> Start:
        """The variables of all packs in a solution that buys these."""
        return {
            variable: value
            for name, terms in self.packs.items()
            for variable, value in values_for(terms, packs.get(name, 0)).items()
        }

    def basket(self, solution: Solution) -> Basket:
        """The packs that a solution buys."""
        return {
            name: sum(
                factor * solution.values[variable] for variable, factor in terms.number.items()
            )
            for name, terms in self.packs.items()
        }


def _no_more_than(least: int, terms: Mapping[int, int]) -> Mapping[int, int]:
    """The same demand where a sum of `least` is enough and nothing takes away from it.

    One that holds more than is asked for counts what is asked: the program in parts of packs comes
    nearer to that in whole packs.
    """
    if least <= 0 or any(factor < 0 for factor in terms.values()):
        return terms
    return {variable: min(factor, least) for variable, factor in terms.items()}
