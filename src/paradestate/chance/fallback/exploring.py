"""Finding all standings of an evening, and what leads from which to which, many at a time."""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from typing import NamedTuple, TypeAlias

import numpy as np

from paradestate.chance.fallback.knot import Knot
from paradestate.chance.fallback.play import After, Buy, KnotPlay, Play, Request, cases_of
from paradestate.chance.fallback.rules import Rules
from paradestate.chance.fallback.standing import UNSEEN, Places, Standings, joined

MOST_STANDINGS = 100_000
"""Standings that are still gone through; sixteen open rolls alone make 65,536."""

MOST_AT_ONCE = 4096
"""Standings that are gone on from at once; more take no less time each, but more memory."""


class Asked(NamedTuple):
    """What makes requests the same."""

    place: int
    """The entry's place among those rolled for."""
    case: int
    options: tuple[int, ...]


class Bought(NamedTuple):
    """What makes purchases of sure troops the same: which holdings were held, and are."""

    before: tuple[int, ...]
    early: tuple[int, ...]
    points: int


Lead: TypeAlias = Asked | Bought

BOUGHT: After = (UNSEEN, 0)
"""After a purchase of sure troops nothing was rolled."""


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
        depths = np.add.outer(rules.depths(each.standings), depths).ravel()
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


@dataclass(frozen=True, slots=True, kw_only=True)
class _Draft:
    """One knot, while it is gone through."""

    rules: Rules
    knot: Knot
    numbers: dict[bytes, int] = field(default_factory=dict)
    parts: list[Standings] = field(default_factory=list)
    """All standings in order of their numbers, at most so many together as are gone on from."""
    found: dict[Lead, list[tuple[Places, Mapping[After, Places]]]] = field(default_factory=dict)
    """The numbers of standings, and of those that follow them."""

    def number(self, standings: Standings) -> Places:
        """The numbers of standings; those that are met for the first time get one."""
        known = len(self.numbers)
        numbers = np.array(
            [self.numbers.setdefault(key, len(self.numbers)) for key in standings.told()]
        )
        every, first = np.unique(numbers, return_index=True)
        first = first[every >= known]
        for start in range(0, len(first), MOST_AT_ONCE):
            self.parts.append(standings.those(first[start : start + MOST_AT_ONCE]))
        return numbers

    def go_on(self, part: Standings, *, first: int) -> None:
        """Writes down what leads on from standings with numbers from `first` on."""
        every = [*self._requests(part), *self._moves(part)]
        ends = [after for _, _, afters in every for after in afters.values()]
        if not ends:
            return
        numbers = self.number(self.rules.settled(joined(ends)))
        follow = iter(np.split(numbers, np.cumsum([len(after) for after in ends])))
        for lead, rows, afters in every:
            numbered = {key: next(follow) for key in afters}
            self.found.setdefault(lead, []).append((rows + first, numbered))

    def _requests(
        self, part: Standings
    ) -> Iterator[tuple[Lead, Places, Mapping[After, Standings]]]:
        for index in self.knot.rolled:
            legal = self.rules.legal_options(part, index)
            told = np.column_stack([self.rules.cases_seen(part, index), legal])
            kinds, kind_of = np.unique(told, axis=0, return_inverse=True)
            for kind, (case, *may_ask) in enumerate(kinds.tolist()):
                options = tuple(np.flatnonzero(may_ask).tolist())
                if options:
                    rows = np.flatnonzero(kind_of.ravel() == kind)
                    lead = Asked(index, case, options)
                    yield lead, rows, dict(self._afters(part.those(rows), lead))

    def _afters(self, standings: Standings, lead: Asked) -> Iterator[tuple[After, Standings]]:
        """What follows a request, by the case of its roll and the effect of what is taken."""
        rules, index = self.rules, lead.place
        rolled = rules.prospect.rolled[index]
        roll = rules.prospect.rolls[rolled.roll]
        every: tuple[int | None, ...] = (None, *lead.options)
        first_with = {rules.effect(index, place): place for place in reversed(every)}
        is_shared = rolled.roll in rules.shared
        for case in dict(cases_of(roll, seen=lead.case, is_shared=is_shared)):
            for effect, place in first_with.items():
                taken = None if place is None else rolled.options[place]
                yield (case, effect), rules.after(standings, index, taken=taken, case=case)

    def _moves(self, part: Standings) -> Iterator[tuple[Lead, Places, Mapping[After, Standings]]]:
        for move in self.rules.moves(part, self.knot):
            lead = Bought(move.before, move.early, move.points)
            yield lead, move.rows, {BOUGHT: move.after}


def _explored(rules: Rules, knot: Knot, *, most: int) -> KnotPlay | None:
    draft = _Draft(rules=rules, knot=knot)
    start = rules.start()
    has_requests = not start.asked.all()
    others = [index for index in rules.place.values() if index not in knot.rolled]
    start.asked[:, others] = True
    draft.number(start)
    first = 0
    for part in draft.parts:  # it grows on the way
        if len(draft.numbers) > most:
            return None
        if has_requests:
            draft.go_on(part, first=first)
        first += len(part)
    requests, buys = [], []
    for lead, pairs in draft.found.items():
        rows, after = _merged(pairs)
        if isinstance(lead, Asked):
            index, case, options = lead
            requests.append(
                Request(index=index, case=case, options=options, rows=rows, after=after)
            )
        else:
            buys.append(Buy(points=lead.points, early=lead.early, rows=rows, after=after[BOUGHT]))
    return KnotPlay(
        knot=knot,
        standings=joined(draft.parts),
        requests=tuple(requests),
        buys=tuple(buys),
    )


def _merged(
    pairs: Iterable[tuple[Places, Mapping[After, Places]]],
) -> tuple[Places, Mapping[After, Places]]:
    """All rows of one lead, and what follows them."""
    rows = np.concatenate([rows for rows, _ in pairs])
    keys = next(iter(pairs))[1]
    return rows, {key: np.concatenate([after[key] for _, after in pairs]) for key in keys}
