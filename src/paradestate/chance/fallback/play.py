"""All standings that an evening of asking may come to, in layers, each after all it leads to.

Each knot is gone through by itself; a standing of the evening is one in each of them, and its
number is made of theirs. Here nothing is worth anything yet, and points play no part.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field, replace
from typing import TypeAlias

import numpy as np

from paradestate.chance.fallback.early import bought_between
from paradestate.chance.fallback.knot import Knot
from paradestate.chance.fallback.rolled import Case, EntryRoll
from paradestate.chance.fallback.rules import Rules
from paradestate.chance.fallback.standing import UNSEEN, Places, Standing, Standings
from paradestate.core.game import Purchase

START = 0
"""The number of the standing where an evening begins."""

After: TypeAlias = tuple[int, int]
"""The case that is remembered of a roll, and the effect of what is taken."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Request:
    """Asking for one entry, in all standings in which that is the same request."""

    index: int
    """The entry's place among those rolled for."""
    case: int
    """What its roll came to, where that was seen already."""
    options: tuple[int, ...]
    """Places of its options that may be asked for and taken, points aside."""
    rows: Places
    """The numbers of those standings in their knot."""
    after: Mapping[After, Places]
    """Case of its roll and effect of what is taken, to the standing after it for each row."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Buy:
    """Sure troops bought early for so many points: from which standings of a knot to which."""

    points: int
    early: tuple[int, ...]
    """Which holding is held then of each entry that may be bought early."""
    rows: Places
    after: Places


@dataclass(frozen=True, slots=True, kw_only=True)
class EarlyBuy:
    """What is bought before something is asked for, and the number of where that leads."""

    purchases: tuple[Purchase, ...]
    points: int
    standing: int


@dataclass(frozen=True, slots=True, kw_only=True)
class KnotPlay:
    """Every standing of one knot with a number, and what leads from each to which."""

    knot: Knot
    standings: Standings
    """The start first. Outside of the knot they tell nothing."""
    requests: tuple[Request, ...]
    buys: tuple[Buy, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Play:
    """Every standing of the evening by its number; the start is nought."""

    rules: Rules
    knots: tuple[KnotPlay, ...]
    steps: tuple[int, ...]
    """For each knot by how much the number of a standing grows with the number in there."""
    layers: tuple[Places, ...]
    """Standings of equal depth, the start first; what follows them is deeper."""
    layer_of: Places
    """Standing to its layer."""
    row_of: Places
    """And to its place in there."""
    known: dict[int, Mapping[int, Request]] = field(default_factory=dict)

    @property
    def size(self) -> int:
        """How many standings there are."""
        return len(self.layer_of)

    def standing(self, number: int) -> Standing:
        """The standing with this number."""
        found = self.rules.start()
        for step, each in zip(self.steps, self.knots, strict=True):
            row, knot = number // step % len(each.standings), each.knot
            found.asked[0, knot.rolled] = each.standings.asked[row, knot.rolled]
            found.taken[0, knot.rolled] = each.standings.taken[row, knot.rolled]
            found.early[0, knot.early] = each.standings.early[row, knot.early]
            found.room[0, knot.rooms] = each.standings.room[row, knot.rooms]
            found.seen[0, knot.shared] = each.standings.seen[row, knot.shared]
        return found.at(0)

    def requests(self, layer: Places) -> Iterator[Request]:
        """All requests in standings of a layer: rows in there, and numbers of the evening."""
        for each, step in zip(self.knots, self.steps, strict=True):
            own = layer // step % len(each.standings)
            for request in each.requests:
                rows, at = _met(request.rows, own)
                if len(rows):
                    others = layer[rows] - own[rows] * step
                    after = {key: others + to[at] * step for key, to in request.after.items()}
                    yield replace(request, rows=rows, after=after)

    def requests_at(self, number: int) -> Mapping[int, Request]:
        """The requests in one standing, by the entry's place, in order of it."""
        if number not in self.known:
            found = sorted(self.requests(np.array([number])), key=lambda request: request.index)
            self.known[number] = {request.index: request for request in found}
        return self.known[number]

    def buys(self, layer: Places) -> Iterator[Buy]:
        """All that may be bought early in standings of a layer, likewise."""
        for each, step in zip(self.knots, self.steps, strict=True):
            own = layer // step % len(each.standings)
            for buy in each.buys:
                rows, at = _met(buy.rows, own)
                if len(rows):
                    others = layer[rows] - own[rows] * step
                    yield replace(buy, rows=rows, after=others + buy.after[at] * step)

    def buys_at(self, number: int) -> tuple[EarlyBuy, ...]:
        """What may be bought early in one standing, in any knots, if something can be asked."""
        here = self.standing(number)
        if here.asked == (1 << len(self.rules.place)) - 1:
            return ()
        found = [(here.early, 0, number)]
        for each, step in zip(self.knots, self.steps, strict=True):
            own = number // step % len(each.standings)
            found += [
                (
                    tuple(
                        buy.early[at] if at in each.knot.early else held
                        for at, held in enumerate(early)
                    ),
                    points + buy.points,
                    before + (int(buy.after[row]) - own) * step,
                )
                for buy in each.buys
                for row in np.flatnonzero(buy.rows == own).tolist()
                for early, points, before in tuple(found)
            ]
        _, *more = sorted(found)  # the first holds no more than is held already
        return tuple(
            EarlyBuy(
                purchases=tuple(
                    purchase
                    for was, now, each in zip(here.early, early, self.rules.holdings, strict=True)
                    for purchase in bought_between(each[was], each[now])
                ),
                points=points,
                standing=standing,
            )
            for early, points, standing in more
        )


def cases_of(roll: EntryRoll, *, seen: int, is_shared: bool) -> tuple[tuple[int, Case], ...]:
    """What a roll may come to, with the number that the standing after it remembers."""
    if seen != UNSEEN:
        return ((seen, Case(allowed=roll.cases[seen].allowed, ways=1)),)
    return tuple((place if is_shared else UNSEEN, case) for place, case in enumerate(roll.cases))


def _met(wanted: Places, numbers: Places) -> tuple[Places, Places]:
    """Places among the numbers of those that are wanted, and their places among the wanted."""
    at = np.minimum(np.searchsorted(wanted, numbers), len(wanted) - 1)
    found = np.flatnonzero(wanted[at] == numbers)
    return found, at[found]
