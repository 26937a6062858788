"""What every standing is worth by the best play, solved backward, for all points at once.

V(s, p) = max of ending here and, over requests, of the sum over what the roll allows of its chance
times the best of what may be taken then. Source: backward induction, any text on decisions under
chance (Bellman). There are no fractions inside: the value of a standing is scaled by the product
of the ways of all rolls still to come, so that chances become whole numbers of ways.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from math import prod

import numpy as np

from paradestate.chance.fallback.completion import (
    Completions,
    HeldAtEnd,
    Numbers,
    never,
    number_kind,
)
from paradestate.chance.fallback.opinion import Opinion
from paradestate.chance.fallback.play import Buy, Play, Request, cases_of
from paradestate.chance.fallback.rolled import Option
from paradestate.chance.fallback.standing import Places
from paradestate.chance.fallback.sure_way import listed_totals


@dataclass(frozen=True, slots=True, kw_only=True)
class Values:
    """The value of each standing: a table a layer, with a row for each standing in it.

    Each row has a line for each opinion and a column for each number of points.
    """

    play: Play
    opinions: Sequence[Opinion]
    layers: tuple[Numbers, ...]
    scales: tuple[int, ...]
    """By the number of the standing."""
    held: Sequence[HeldAtEnd]
    """What of standings matters at the end, each only once."""
    held_in: Places
    """Standing to the place of what matters of it."""
    ends: Numbers
    """The worth at the end of each of these, by points: a line for each opinion."""

    def of(self, standing: int, *, points: int, opinion: int = 0) -> int:
        """The scaled value of a standing."""
        layer, row = self.play.layer_of[standing], self.play.row_of[standing]
        return int(self.layers[layer][row, opinion, points])


def values_of(play: Play, completions: Completions, *, opinions: Sequence[Opinion]) -> Values:
    """The values of all standings, in each of the opinions."""
    bound = greatest_worth(completions, opinions)
    kinds, kind_of = _kinds(play, completions)
    known = {held: completions.worths(held, opinions, bound=bound) for held in dict.fromkeys(kinds)}
    ends = np.stack([known[held] for held in kinds])
    sums = _Sums(play=play, opinions=opinions, scales=scales_of(play))
    for place in reversed(range(len(play.layers))):
        layer = play.layers[place]
        scale = sums.scales[layer]
        largest = bound * int(scale.max())
        dtype = number_kind(largest)
        table: Numbers = ends[kind_of[layer]].astype(dtype)
        table *= scale.astype(dtype)[:, None, None]
        for request in play.requests(layer):
            sums.ask(layer, table=table, request=request, lowest=never(largest))
        for buy in play.buys(layer):
            sums.buy(layer, table=table, buy=buy)
        sums.tables[place] = table
    return Values(
        play=play,
        opinions=opinions,
        layers=tuple(sums.tables[place] for place in range(len(play.layers))),
        scales=tuple(sums.scales.tolist()),
        held=kinds,
        held_in=kind_of,
        ends=ends,
    )


def scales_of(play: Play) -> Numbers:
    """The product of the ways of all rolls still to come, for each standing."""
    rolls = play.rules.prospect.rolls
    dtype = number_kind(prod(roll.ways for roll in rolls))
    found: Numbers = np.ones(1, dtype=dtype)
    for each in play.knots:
        own: Numbers = np.ones(len(each.standings), dtype=dtype)
        for roll, is_to_come in zip(rolls, play.rules.still_to_roll(each.standings).T, strict=True):
            own[is_to_come] *= roll.ways
        found = np.multiply.outer(own, found).ravel()
    return found


def _kinds(play: Play, completions: Completions) -> tuple[list[HeldAtEnd], Places]:
    """What of the standings matters at the end, each only once, and the place of each standing's.

    What matters of a standing is what matters of it in each knot.
    """
    kind_of: Places = np.zeros(1, dtype=np.int64)
    for each in play.knots:
        told = completions.held_of(each.standings, each.knot)
        parts, own = np.unique(told, axis=0, return_inverse=True)
        both = np.add.outer(own.ravel(), kind_of * len(parts)).ravel()
        _, kind_of = np.unique(both, return_inverse=True)
    _, first = np.unique(kind_of, return_index=True)
    return [completions.held(play.standing(number)) for number in first.tolist()], kind_of


def greatest_worth(completions: Completions, opinions: Sequence[Opinion]) -> int:
    """No worth of any force is further from nought than this, in any of the opinions."""
    most = 0
    for opinion in opinions:
        total = 0
        for offer in completions.rules.prospect.offers.values():
            for choice, table in offer.worths.items():
                worths = (opinion.worth(offer, {choice: number}) for number in table)
                total += max((abs(worth) for worth in worths), default=0)
        most = max(most, total)
    return most


@dataclass(frozen=True, slots=True, kw_only=True)
class _Sums:
    """One layer's sums over those below."""

    play: Play
    opinions: Sequence[Opinion]
    scales: Numbers
    tables: dict[int, Numbers] = field(default_factory=dict)

    def ask(self, layer: Places, *, table: Numbers, request: Request, lowest: int) -> None:
        """Raises the table to what asking brings, where that is more."""
        prospect = self.play.rules.prospect
        rolled = prospect.rolled[request.index]
        ways = prospect.rolls[rolled.roll].ways if request.case < 0 else 1
        parents = self.scales[layer[request.rows]] // ways
        below = {
            key: self._below(numbers, scales=parents, dtype=table.dtype.type)
            for key, numbers in request.after.items()
        }
        scale = parents.astype(table.dtype)[:, None]
        worth = {
            place: scale * np.array(self._worths(request, place), dtype=table.dtype)[None, :]
            for place in request.options
        }
        for place in request.options:
            option = rolled.options[place]
            first = max(0, option.price)
            if first >= table.shape[2]:
                continue
            view = _View(below=below, worth=worth, first=first, lowest=lowest)
            asked = self._asked(request, option, view=view)
            part = table[request.rows, :, first:]
            table[request.rows, :, first:] = np.maximum(part, asked)

    def buy(self, layer: Places, *, table: Numbers, buy: Buy) -> None:
        """Raises the table to what buying sure troops early brings, where that is more."""
        first = max(0, buy.points)
        if first >= table.shape[2]:
            return
        scale = self.scales[layer[buy.rows]]
        below = self._below(buy.after, scales=scale, dtype=table.dtype.type)
        part = table[buy.rows, :, first:]
        left = _paid(below, buy.points, first=first, lowest=0)  # nothing is paid that isn't there
        table[buy.rows, :, first:] = np.maximum(part, left)

    def _worths(self, request: Request, place: int) -> list[int]:
        rolled = self.play.rules.prospect.rolled[request.index]
        totals = listed_totals(rolled.offer, (rolled.options[place].purchase,))
        return [opinion.worth(rolled.offer, totals) for opinion in self.opinions]

    def _asked(
        self,
        request: Request,
        option: Option,
        *,
        view: "_View",
    ) -> Numbers:
        """What one request brings, from `first` points on."""
        total: Numbers | None = None
        for ways, allowed, case in self._allowances(request, option):
            best = self._best_taken(request, option, allowed=allowed, case=case, view=view)
            total = best * ways if total is None else total + best * ways
        assert total is not None  # noqa: S101 - a roll has a case
        return total

    def _allowances(self, request: Request, option: Option) -> Iterator[tuple[int, int, int]]:
        """Ways, how many are allowed of what was asked, and the case to go on with."""
        rules = self.play.rules
        rolled = rules.prospect.rolled[request.index]
        is_shared = rolled.roll in rules.shared
        merged: dict[tuple[int, int], int] = {}
        roll = rules.prospect.rolls[rolled.roll]
        for number, case in cases_of(roll, seen=request.case, is_shared=is_shared):
            key = (min(case.allowed[rolled.seat], option.purchase.number), number)
            merged[key] = merged.get(key, 0) + case.ways
        yield from ((ways, allowed, case) for (allowed, case), ways in merged.items())

    def _best_taken(
        self,
        request: Request,
        asked: Option,
        *,
        allowed: int,
        case: int,
        view: "_View",
    ) -> Numbers:
        rules = self.play.rules
        rolled = rules.prospect.rolled[request.index]
        best = view.paid((case, rules.effect(request.index, None)), rolled.paid(asked, None))
        for option in rolled.takes(asked, allowed=allowed):
            place = rolled.options.index(option)
            if place in request.options:
                key = (case, rules.effect(request.index, place))
                more = view.paid(key, rolled.paid(asked, option))
                best = np.maximum(best, more + view.worth[place][:, :, None])
        return best

    def _below(self, numbers: Places, *, scales: Numbers, dtype: type) -> Numbers:
        """Values of the standings with these numbers, each on the scale wanted."""
        layers, rows = self.play.layer_of[numbers], self.play.row_of[numbers]
        shape = (len(numbers), *self.tables[int(layers[0])].shape[1:])
        found: Numbers = np.empty(shape, dtype=dtype)
        for layer in np.unique(layers).tolist():
            there = layers == layer
            found[there] = self.tables[layer][rows[there]]
        factors = scales // self.scales[numbers]
        if (factors != 1).any():
            found *= factors.astype(dtype)[:, None, None]
        return found


@dataclass(frozen=True, slots=True, kw_only=True)
class _View:
    """What lies below one request, for the points with which it can be asked."""

    below: dict[tuple[int, int], Numbers]
    """Case and effect to the values of the standings after it."""
    worth: dict[int, Numbers]
    """Place of an option to its worth, scaled."""
    first: int
    """The fewest points with which it can be asked."""
    lowest: int

    def paid(self, key: tuple[int, int], points: int) -> Numbers:
        """The values after a case and an effect when so much is paid."""
        return _paid(self.below[key], points, first=self.first, lowest=self.lowest)


def _paid(table: Numbers, points: int, *, first: int, lowest: int) -> Numbers:
    """The columns for what is left of `first` points and more when so many are paid.

    The greatest number of points stands for all above it, which are never there.
    """
    width = table.shape[2]
    if first >= points >= 0:
        return table[:, :, first - points : width - points]
    columns = np.arange(first, width) - points
    part: Numbers = table[:, :, np.clip(columns, 0, width - 1)]
    part[:, :, columns < 0] = lowest
    return part
