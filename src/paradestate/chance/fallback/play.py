"""All standings that an evening of asking may come to, in layers, each after all it leads to.

Each knot is gone through by itself; a standing of the evening is one in each of them, and its
number is made of theirs. Here nothing is worth anything yet, and points play no part.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field, replace
from typing import TypeAlias

import numpy as np
import numpy.typing as npt

from paradestate.chance.fallback.knot import Knot
from paradestate.chance.fallback.rolled import Case, EntryRoll
from paradestate.chance.fallback.standing import UNSEEN, Rules, Standing

Places: TypeAlias = npt.NDArray[np.int64]
"""Places of standings, or of rows."""

Part: TypeAlias = tuple[int, ...]
"""What a standing tells of one knot."""

After: TypeAlias = tuple[int, int]
"""The case that is remembered of a roll, and the effect of what is taken."""

MOST_STANDINGS = 100_000
"""Standings that are still gone through; sixteen open rolls alone make 65,536."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Request:
    """Asking for one entry, in all standings of its knot in which that is the same request."""

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
    rows: Places
    after: Places


@dataclass(frozen=True, slots=True, kw_only=True)
class KnotPlay:
    """Every standing of one knot with a number, and what leads from each to which."""

    knot: Knot
    standings: tuple[Standing, ...]
    """The start first. Outside of the knot they tell nothing."""
    numbers: Mapping[Part, int]
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
    known: dict[Standing, int] = field(default_factory=dict)

    @property
    def size(self) -> int:
        """How many standings there are."""
        return len(self.layer_of)

    def number(self, standing: Standing) -> int:
        """The number of a standing."""
        if standing not in self.known:
            self.known[standing] = sum(
                step * each.numbers[_part(standing, each.knot)]
                for step, each in zip(self.steps, self.knots, strict=True)
            )
        return self.known[standing]

    def standing(self, number: int) -> Standing:
        """The standing with this number."""
        found = self.rules.start()
        for step, each in zip(self.steps, self.knots, strict=True):
            there = each.standings[number // step % len(each.standings)]
            found = _joined(found, there, knot=each.knot)
        return found

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

    def buys(self, layer: Places) -> Iterator[Buy]:
        """All that may be bought early in standings of a layer, likewise."""
        for each, step in zip(self.knots, self.steps, strict=True):
            own = layer // step % len(each.standings)
            for buy in each.buys:
                rows, at = _met(buy.rows, own)
                if len(rows):
                    others = layer[rows] - own[rows] * step
                    yield replace(buy, rows=rows, after=others + buy.after[at] * step)


def explored(rules: Rules, *, most: int = MOST_STANDINGS) -> Play | None:
    """Everything that may come of the start, or None where that is more than `most` standings."""
    knots: list[KnotPlay] = []
    steps = [1]
    for knot in rules.knots:
        each = _explored(rules, knot, most=most // steps[-1])
        if each is None:
            return None
        knots.append(each)
        steps.append(steps[-1] * len(each.standings))
    depths = np.zeros(1, dtype=np.int64)
    for each in knots:
        own = np.array([rules.depth(standing) for standing in each.standings])
        depths = np.add.outer(own, depths).ravel()
    _, layer_of = np.unique(depths, return_inverse=True)
    order = np.argsort(layer_of, kind="stable")
    layers = tuple(np.split(order, np.cumsum(np.bincount(layer_of))[:-1]))
    row_of = np.empty_like(order)
    row_of[order] = np.concatenate([np.arange(len(layer)) for layer in layers])
    return Play(
        rules=rules,
        knots=tuple(knots),
        steps=tuple(steps[:-1]),
        layers=layers,
        layer_of=layer_of,
        row_of=row_of,
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


@dataclass(frozen=True, slots=True, kw_only=True)
class _Draft:
    """One knot, while it is gone through."""

    rules: Rules
    knot: Knot
    standings: list[Standing] = field(default_factory=list)
    numbers: dict[Part, int] = field(default_factory=dict)
    requests: dict[tuple[int, int, tuple[int, ...]], list[tuple[int, dict[After, int]]]] = field(
        default_factory=dict
    )
    buys: dict[tuple[int, tuple[int, ...]], list[tuple[int, int]]] = field(default_factory=dict)

    def number(self, standing: Standing) -> int:
        """The number of a standing in the knot; when it is met for the first time it gets one."""
        number = self.numbers.setdefault(_part(standing, self.knot), len(self.standings))
        if number == len(self.standings):
            self.standings.append(standing)
        return number

    def ask(self, row: int) -> None:
        """Writes down what requests in one standing lead to."""
        rules, standing = self.rules, self.standings[row]
        for index in range(len(rules.prospect.rolled)):
            options = () if standing.asked >> index & 1 else rules.legal_options(standing, index)
            if options:
                case = rules.case_seen(standing, index)
                after = {
                    key: self.number(each)
                    for key, each in _afters(rules, standing, index=index, options=options)
                }
                self.requests.setdefault((index, case, options), []).append((row, after))

    def buy(self, row: int) -> None:
        """Writes down what may be bought early in one standing."""
        for buy in self.rules.buys_in(self.standings[row], (self.knot,)):
            key = (buy.points, buy.standing.early)
            self.buys.setdefault(key, []).append((row, self.number(buy.standing)))


def _explored(rules: Rules, knot: Knot, *, most: int) -> KnotPlay | None:
    draft = _Draft(rules=rules, knot=knot)
    start = rules.start()
    others = rules.everyone & ~knot.rolled
    draft.number(start._replace(asked=start.asked | others))
    row = 0
    while row < len(draft.standings) <= most:
        draft.ask(row)
        if start.asked != rules.everyone:
            draft.buy(row)
        row += 1
    if len(draft.standings) > most:
        return None
    return KnotPlay(
        knot=knot,
        standings=tuple(draft.standings),
        numbers=draft.numbers,
        requests=tuple(
            Request(
                index=index,
                case=case,
                options=options,
                rows=np.array([row for row, _ in pairs]),
                after={key: np.array([after[key] for _, after in pairs]) for key in pairs[0][1]},
            )
            for (index, case, options), pairs in draft.requests.items()
        ),
        buys=tuple(
            Buy(
                points=points,
                rows=np.array([row for row, _ in pairs]),
                after=np.array([after for _, after in pairs]),
            )
            for (points, _), pairs in draft.buys.items()
        ),
    )


def _afters(
    rules: Rules, standing: Standing, *, index: int, options: tuple[int, ...]
) -> Iterator[tuple[After, Standing]]:
    """What a request may lead to, by the case of its roll and the effect of what is taken."""
    rolled = rules.prospect.rolled[index]
    roll = rules.prospect.rolls[rolled.roll]
    every: tuple[int | None, ...] = (None, *options)
    first_with = {rules.effect(index, place): place for place in reversed(every)}
    seen, is_shared = rules.case_seen(standing, index), rolled.roll in rules.shared
    for case in dict(cases_of(roll, seen=seen, is_shared=is_shared)):
        for effect, place in first_with.items():
            taken = None if place is None else rolled.options[place]
            yield (case, effect), rules.after(standing, index, taken=taken, case=case)


def _part(standing: Standing, knot: Knot) -> Part:
    return (
        standing.asked & knot.rolled,
        standing.taken & knot.rolled,
        *(standing.early[at] for at in knot.early),
        *(standing.room[at] for at in knot.rooms),
        *(standing.seen[at] for at in knot.shared),
    )


def _joined(standing: Standing, there: Standing, *, knot: Knot) -> Standing:
    """The first standing, but in one knot as the other is."""
    return Standing(
        asked=standing.asked & ~knot.rolled | there.asked & knot.rolled,
        taken=standing.taken & ~knot.rolled | there.taken & knot.rolled,
        early=_replaced(standing.early, there.early, places=knot.early),
        room=_replaced(standing.room, there.room, places=knot.rooms),
        seen=_replaced(standing.seen, there.seen, places=knot.shared),
    )


def _replaced(
    numbers: tuple[int, ...], others: tuple[int, ...], *, places: tuple[int, ...]
) -> tuple[int, ...]:
    return tuple(others[at] if at in places else number for at, number in enumerate(numbers))
