"""The expected worth of stocks over all games that are played, exactly."""

from collections.abc import Iterable, Iterator, Sequence
from fractions import Fraction
from functools import reduce
from math import isqrt
from typing import Any, TypeAlias

import numpy
from numpy.typing import NDArray

from paradestate.chance.force.fielding import Depot
from paradestate.chance.next.game_worth import GREATEST_SUM, GameWorth, Units
from paradestate.chance.next.reach import ReachKey
from paradestate.core.certainty import NotComputed, Sampled

Stock: TypeAlias = tuple[Depot, ...]
"""What there is for each game."""

Totals: TypeAlias = NDArray[Any]

Z = Fraction(49, 25)
"""Standard errors on either side of a mean that hold 19 cases of 20 (the normal law)."""
FINE = 10**6
"""A half width is rounded up to one over this."""


class Expectation:
    """The mean worth of the best force that a stock lets be fielded, over games and dice."""

    def __init__(self, games: Sequence[GameWorth | None]) -> None:
        self.games = games
        """None: nothing is legal in it, and its worth is nought."""
        self._known: list[dict[ReachKey, Fraction]] = [{} for _ in games]

    @property
    def legal(self) -> Iterator[tuple[int, GameWorth]]:
        """The games in which something is legal, with their places."""
        for place, game in enumerate(self.games):
            if game is not None:
                yield place, game

    def values(self, stocks: Sequence[Stock]) -> list[Fraction] | NotComputed:
        """The expected worth of each stock."""
        total = [Fraction(0)] * len(stocks)
        for place, game in self.legal:
            known = self._known[place]
            keys = [game.ground.key(stock[place]) for stock in stocks]
            new = [key for key in dict.fromkeys(keys) if key not in known]
            refusal = game.refusal(new)
            if refusal is not None:
                return refusal
            for some, units in game.units(new):
                known |= zip(some, _means(game, units), strict=True)
            share = game.play.share
            total = [sum_ + share * known[key] for sum_, key in zip(total, keys, strict=True)]
        return total

    def foresight(self, stocks: Iterable[Stock]) -> Fraction:
        """The mean worth if the best of these stocks could be chosen once all dice are rolled.

        Of stocks whose values are known.
        """
        every = list(stocks)
        total = Fraction(0)
        for place, game in self.legal:
            best = reduce(
                numpy.maximum,
                (
                    units.max(axis=0, keepdims=True)
                    for _, units in game.units(game.ground.key(stock[place]) for stock in every)
                ),
            )
            total += game.play.share * _means(game, best)[0]
        return total

    def sampled(self, stock: Stock, *, instead_of: Stock | None = None) -> Sampled | None:
        """How sure the value of a stock is, or what it adds to another; None where it is exact.

        Half of the interval that holds the truth in 19 of 20 cases, by the spread of the draws.
        """
        spread = Fraction(0)
        lot = None
        for place, game in self.legal:
            if game.outcomes.lot is None:
                continue
            lot = game.outcomes.lot
            with_it = self._by_draw(game, stock[place])
            without = [Fraction(0)] * len(with_it)
            if instead_of is not None:
                without = self._by_draw(game, instead_of[place])
            more = [one - other for one, other in zip(with_it, without, strict=True)]
            spread += game.play.share**2 * _variance(more, game.outcomes.ways) / lot.draws
        if lot is None:
            return None
        return Sampled(plus_or_minus=_root_above(Z**2 * spread), draws=lot.draws, seed=lot.seed)

    def _by_draw(self, game: GameWorth, owned: Depot) -> list[Fraction]:
        """The worth for each outcome that was drawn."""
        ((_, units),) = game.units([game.ground.key(owned)])
        ways = game.scale * game.play.points.ways
        return [Fraction(int(total), ways) for total in _over_points(game, units)[0]]


def _over_points(game: GameWorth, units: Units) -> Totals:
    """For each stock and outcome of the rolls the sum over points left, each times its ways."""
    level_ways = [game.play.points.counts[level] for level in game.levels]
    # Where all worths are nought the ways alone may be too great.
    most = max(1, int(units.max(initial=0))) * sum(level_ways) * sum(game.outcomes.ways)
    kind = numpy.int64 if most < GREATEST_SUM else object
    totals: Totals = (units.astype(kind) * numpy.array(level_ways, dtype=kind)).sum(axis=2)
    return totals


def _means(game: GameWorth, units: Units) -> list[Fraction]:
    """The mean over points left and rolls, for each stock."""
    totals = _over_points(game, units)
    ways = game.outcomes.ways
    kind = numpy.int64 if totals.dtype != object and sum(ways) < GREATEST_SUM else object
    sums = (totals.astype(kind) * numpy.array(ways, dtype=kind)).sum(axis=1)
    every = game.scale * game.play.points.ways * sum(ways)
    return [Fraction(int(each), every) for each in sums]


def _variance(numbers: Sequence[Fraction], times: Sequence[int]) -> Fraction:
    """The variance of numbers that were drawn so often, as estimated from the draws."""
    draws = sum(times)
    mean = sum((n * t for n, t in zip(numbers, times, strict=True)), Fraction(0)) / draws
    squares = ((n - mean) ** 2 * t for n, t in zip(numbers, times, strict=True))
    return sum(squares, Fraction(0)) / (draws - 1)


def _root_above(square: Fraction) -> Fraction:
    """A number that is no less than a square root, and greater by less than one of FINE."""
    return Fraction(isqrt(int(square * FINE**2)) + 1, FINE) if square else Fraction(0)
