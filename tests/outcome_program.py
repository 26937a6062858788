"""What to buy next as one whole-number program over all outcomes: the plain way, and an oracle.

One whole number for how many of each candidate are bought, and for each outcome one binary for each
taking of each entry, of which one is true. It knows needs, bars and groups of purchases; each entry
puts down a stand of its own, of one figure of its own.
"""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

import highspy
import numpy

from paradestate.chance.force.taking import ValuedTaking
from paradestate.chance.next.game_worth import GameWorth
from paradestate.core.support.terms import Terms

Sum = Mapping[int, float]
"""Variable to factor."""
Row = tuple[Sum, float]
"""A sum, and the most that it may be."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Purse:
    """What may be bought: the entry that each candidate brings figures of, how many, its price."""

    brings: Sequence[tuple[str, int]]
    prices: Sequence[int]
    most: Sequence[int]
    money: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Answer:
    """What the solver says."""

    is_proved: bool
    basket: tuple[int, ...]
    value: float
    columns: int


def answered(game: GameWorth, *, owned: Mapping[str, int], purse: Purse, seconds: float) -> Answer:
    """The best basket by the solver, presolve and all, in so many seconds."""
    most = [float(each) for each in purse.most]
    costs = [0.0] * len(most)
    rows: list[Row] = [({v: float(p) for v, p in enumerate(purse.prices)}, float(purse.money))]
    equal: list[Sum] = []
    every_way = sum(game.outcomes.ways) * game.play.points.ways * game.scale
    for at, ways in enumerate(game.outcomes.ways):
        for level in game.levels:
            chance = Fraction(ways * game.play.points.counts[level], every_way)
            takings = _variables(game, outcome=at, first=len(most))
            most.extend(1.0 for each in takings.values() for _ in each)
            costs.extend(-float(t.worth * chance) for e in takings.values() for t in e.values())
            equal.extend(dict.fromkeys(each, 1.0) for each in takings.values())
            rows.extend(_rows(game.play.terms, takings, points=level))
            rows.extend(_fielded(takings, owned=owned, purse=purse))
    solver = _solver(most, costs, rows=rows, equal=equal, seconds=seconds)
    solver.run()
    values = solver.getSolution().col_value
    return Answer(
        is_proved=solver.getModelStatus() == highspy.HighsModelStatus.kOptimal,
        basket=tuple(round(each) for each in values[: len(purse.prices)]),
        value=-solver.getInfo().objective_function_value,
        columns=len(most),
    )


Takings = Mapping[str, Mapping[int, ValuedTaking]]
"""Entry to its takings, each by its variable."""


def _variables(game: GameWorth, *, outcome: int, first: int) -> Takings:
    rolls = game.outcomes
    found: dict[str, dict[int, ValuedTaking]] = {}
    for entry, every in game.ground.every.items():
        among = every
        if entry in rolls.classes:
            among = rolls.classes[entry][int(rolls.chosen[entry][outcome])]
        found[entry] = dict(enumerate(sorted(among), start=first))
        first += len(among)
    return found


def _rows(terms: Terms, takings: Takings, *, points: int) -> Iterator[Row]:
    """Points, needs, bars and groups."""
    yield (
        {v: float(t.points) for each in takings.values() for v, t in each.items()},
        float(points),
    )
    for name, offer in terms.offers.items():
        taken = _at_least(takings, name, number=1)
        for other, number in offer.needs.items():
            yield {**taken, **_minus(_at_least(takings, other, number=number))}, 0.0
        if offer.needs_any_of:
            ways = [_at_least(takings, other, number=n) for other, n in offer.needs_any_of.items()]
            yield {**taken, **_minus({v: 1.0 for way in ways for v in way})}, 0.0
        for other in offer.bars:
            yield {**taken, **_at_least(takings, other, number=1)}, 1.0
    for limit in terms.groups:
        if limit.most is not None:
            names = [name for name, offer in terms.offers.items() if offer.group == limit.group]
            yield (
                {v: float(t.purchases) for name in names for v, t in takings[name].items()},
                float(limit.most),
            )


def _fielded(takings: Takings, *, owned: Mapping[str, int], purse: Purse) -> Iterator[Row]:
    for entry, each in takings.items():
        brought = {
            place: -float(figures)
            for place, (name, figures) in enumerate(purse.brings)
            if name == entry
        }
        number = {v: float(taking.number) for v, taking in each.items()}
        yield {**number, **brought}, float(owned.get(entry, 0))


def _at_least(takings: Takings, entry: str, *, number: int) -> Sum:
    return {v: 1.0 for v, t in takings.get(entry, {}).items() if t.purchases >= number}


def _minus(sum_: Sum) -> Sum:
    return {v: -factor for v, factor in sum_.items()}


def _solver(
    most: Sequence[float],
    costs: Sequence[float],
    *,
    rows: Sequence[Row],
    equal: Sequence[Sum],
    seconds: float,
) -> highspy.Highs:
    model = highspy.HighsLp()
    model.num_col_, model.num_row_ = len(most), len(rows) + len(equal)
    model.col_cost_ = list(costs)
    model.col_lower_, model.col_upper_ = [0.0] * len(most), list(most)
    model.integrality_ = [highspy.HighsVarType.kInteger] * len(most)
    model.row_lower_ = [-highspy.kHighsInf] * len(rows) + [1.0] * len(equal)
    model.row_upper_ = [limit for _, limit in rows] + [1.0] * len(equal)
    sums: Iterable[Sum] = (*(sum_ for sum_, _ in rows), *equal)
    starts: list[int] = [0]
    places: list[int] = []
    factors: list[float] = []
    for sum_ in sums:
        places.extend(sum_)
        factors.extend(sum_.values())
        starts.append(len(places))
    model.a_matrix_.format_ = highspy.MatrixFormat.kRowwise
    model.a_matrix_.start_ = numpy.array(starts)
    model.a_matrix_.index_ = numpy.array(places)
    model.a_matrix_.value_ = numpy.array(factors)
    solver: highspy.Highs = highspy.Highs()  # type: ignore[no-untyped-call] # ships half typed
    options = {"output_flag": False, "threads": 1, "mip_rel_gap": 0.0, "time_limit": seconds}
    for option, value in options.items():
        solver.setOptionValue(option, value)
    solver.passModel(model)
    return solver
