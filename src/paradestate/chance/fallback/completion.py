"""The best sure troops to end with, beside what is held, for every number of points at once.

Entries are gone through in file order. What is remembered on the way is only what later ones ask
about: how many there are of entries in conditions, and what groups may still take.
"""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any, NamedTuple, TypeAlias

import numpy as np
import numpy.typing as npt

from paradestate.chance.fallback.condition import holds
from paradestate.chance.fallback.knot import Knot
from paradestate.chance.fallback.opinion import Opinion
from paradestate.chance.fallback.prospect import needed_by
from paradestate.chance.fallback.rolled import points_saved
from paradestate.chance.fallback.rules import Rules
from paradestate.chance.fallback.standing import Standing, Standings, Whole
from paradestate.chance.fallback.sure_way import SureWay, sure_ways
from paradestate.core.game import Purchase
from paradestate.core.support.offer import Offer

Numbers: TypeAlias = npt.NDArray[Any]
"""Exact whole numbers: of 64 bits where no sum can be larger, else Python's own."""

SAFE = 2**60
"""Sums of 64 bits are used where nothing can be larger than this."""


def number_kind(bound: int) -> type:
    """The numbers in which sums up to a bound are exact: of 64 bits, or Python's own."""
    return np.int64 if bound < SAFE else object


def never(bound: int) -> int:
    """Stands for the worth of what can't be: lower than all others, and half of it still is."""
    return -4 * max(bound, SAFE // 8)


class Beside(NamedTuple):
    """What the sure troops chosen so far leave to later ones."""

    counts: tuple[int, ...]
    """Purchases of each sure entry, nought where none asks any more."""
    room: tuple[int, ...]


class HeldAtEnd(NamedTuple):
    """What of a standing matters to the troops that are bought at the end."""

    taken: int
    early: tuple[int, ...]
    room: tuple[int, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class BestSet:
    """What is best bought at the end."""

    worth: int
    points: int
    purchases: tuple[Purchase, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Completions:
    """The best ends of all standings of one fall-back. It remembers what it worked out."""

    rules: Rules
    sure: tuple[Offer, ...]
    exact: tuple[bool, ...]
    """For each sure entry whether others ask how many there are of it."""
    judged_at: tuple[tuple[int, ...], ...]
    """For each sure entry those whose conditions can be judged once it is decided."""
    asked_until: tuple[int, ...]
    """For each sure entry the last one at which somebody asks how many there are of it."""
    room_until: tuple[int, ...]
    """For each group the last sure entry in it; -1: none."""
    judged_rolled_at: tuple[tuple[int, ...], ...]
    """For each sure entry the rolled ones whose conditions can be judged then."""
    saved: int
    ways: dict[tuple[int, int], tuple[SureWay, ...]] = field(default_factory=dict)

    def held(self, standing: Standing) -> HeldAtEnd:
        """What of a standing matters here; it may be refused by no later purchase."""
        return HeldAtEnd(
            standing.taken & self.rules.watched_for_good, standing.early, standing.room
        )

    def held_of(self, standings: Standings, knot: Knot) -> Whole:
        """What of it each of the standings, a row, tells of one knot."""
        for_good = [at for at in knot.rolled if self.rules.watched_for_good >> at & 1]
        return np.hstack(
            [
                standings.taken[:, for_good],
                standings.early[:, knot.early],
                standings.room[:, knot.rooms],
            ]
        ).astype(np.int64)

    def worths(self, held: HeldAtEnd, opinions: Sequence[Opinion], *, bound: int) -> Numbers:
        """The greatest worths, an opinion a row, with 0 to the most points a column.

        No worth is further from nought than `bound`; what can't be is `never(bound)` or about it.
        """
        dtype, lowest = number_kind(bound), never(bound)
        width = 2 * self.saved + self.rules.prospect.top + 1
        start: Numbers = np.full((len(opinions), width), lowest, dtype=dtype)
        start[:, self.saved] = 0
        beside = self._start(held)
        reached: dict[Beside, Numbers] = {beside: start} if beside else {}
        for index in range(len(self.sure)):
            moves = self._moves(held, index, opinions=opinions)
            newer: dict[Beside, Numbers] = {}
            for before, after, number, points in self._steps(
                reached, held, index=index, ways=moves
            ):
                more = _moved(reached[before], points, lowest=lowest)
                more = more + np.array(moves[number, points], dtype=dtype)[:, None]
                newer[after] = np.maximum(newer[after], more) if after in newer else more
            reached = newer
        best = np.full_like(start, lowest)
        for table in reached.values():
            best = np.maximum(best, table)
        rising: Numbers = np.maximum.accumulate(best, axis=1)
        return rising[:, self.saved : self.saved + self.rules.prospect.top + 1]

    def best_sets(self, held: HeldAtEnd, opinion: Opinion) -> tuple[BestSet | None, ...]:
        """The best troops for each number of points; of equal worth those of the fewest points.

        The same sum as `worths` in plain steps, so that each is a check of the other.
        """
        start = BestSet(worth=0, points=0, purchases=())
        beside = self._start(held)
        reached: dict[Beside, dict[int, BestSet]] = {beside: {0: start}} if beside else {}
        for index, offer in enumerate(self.sure):
            newer: dict[Beside, dict[int, BestSet]] = {}
            for way in self._ways(held, index):
                worth = opinion.worth(offer, way.totals)
                key = (way.number if self.exact[index] else 0, way.points)
                most = self.saved + self.rules.prospect.top - way.points
                for before, after, _, _ in self._steps(reached, held, index=index, ways=[key]):
                    within = {at: best for at, best in reached[before].items() if at <= most}
                    _extend(newer.setdefault(after, {}), within, way=way, worth=worth)
            reached = newer
        return self._by_points(list(reached.values()))

    def _steps(
        self,
        reached: Iterable[Beside],
        held: HeldAtEnd,
        *,
        index: int,
        ways: Iterable[tuple[int, int]],
    ) -> Iterator[tuple[Beside, Beside, int, int]]:
        """What may follow for one entry: from where, to where, with which number and points."""
        for before in reached:
            for number, points in ways:
                after = self._after(held, before, index=index, number=number, points=points)
                if after is not None:
                    yield before, after, number, points

    def _by_points(self, tables: list[dict[int, BestSet]]) -> tuple[BestSet | None, ...]:
        every = sorted(
            (each for table in tables for each in table.values()), key=lambda each: each.points
        )
        found: list[BestSet | None] = []
        best, place = None, 0
        for points in range(self.rules.prospect.top + 1):
            while place < len(every) and every[place].points <= points:
                best = _better(best, every[place])
                place += 1
            found.append(best)
        return tuple(found)

    def _start(self, held: HeldAtEnd) -> Beside | None:
        """Where it begins, or None where what is held is too much for a group for good."""
        pairs = tuple(zip(held.room, self.room_until, strict=True))
        if any(left < 0 and until < 0 for left, until in pairs):
            return None
        room = tuple(left if until >= 0 else 0 for left, until in pairs)
        return Beside((0,) * len(self.sure), room)

    def _ways(self, held: HeldAtEnd, index: int) -> tuple[SureWay, ...]:
        """All ways to end up with purchases of one sure entry."""
        name = self.sure[index].name
        early = self.rules.early
        at = early.index(name) if name in early else -1
        place = held.early[at] if at >= 0 else 0
        if (index, place) not in self.ways:
            self.ways[index, place] = sure_ways(
                self.sure[index],
                held=self.rules.holdings[at][place].purchases if at >= 0 else (),
                points=self.rules.prospect.top,
                exact_number=self.exact[index],
            )
        return self.ways[index, place]

    def _moves(
        self, held: HeldAtEnd, index: int, *, opinions: Sequence[Opinion]
    ) -> Mapping[tuple[int, int], list[int]]:
        """Number that matters and points to the greatest worth in each opinion."""
        found: dict[tuple[int, int], list[int]] = {}
        offer = self.sure[index]
        most = self.saved + self.rules.prospect.top
        for way in self._ways(held, index):
            if way.points > most:
                continue
            key = (way.number if self.exact[index] else 0, way.points)
            worth = [opinion.worth(offer, way.totals) for opinion in opinions]
            known = found.get(key, worth)
            found[key] = [max(pair) for pair in zip(known, worth, strict=True)]
        return found

    def _after(
        self, held: HeldAtEnd, beside: Beside, *, index: int, number: int, points: int
    ) -> Beside | None:
        """What a choice for one entry leaves to later ones, or None where it can't be."""
        counts = (*beside.counts[:index], number, *beside.counts[index + 1 :])
        if not self._holds(held, index, counts=counts):
            return None
        room = self._room_after(held, beside, index=index, number=number, points=points)
        if room is None:
            return None
        live = tuple(
            count if until > index else 0
            for count, until in zip(counts, self.asked_until, strict=True)
        )
        return Beside(live, room)

    def _holds(self, held: HeldAtEnd, index: int, *, counts: tuple[int, ...]) -> bool:
        """Whether all conditions hold that can be judged once a sure entry is decided."""
        places = {offer.name: place for place, offer in enumerate(self.sure)}

        def count(name: str) -> int:
            if name in places:
                return counts[places[name]]
            bit = self.rules.place.get(name)
            return 0 if bit is None else held.taken >> bit & 1

        rolled = self.rules.prospect.rolled
        return all(
            holds(self.sure[place], count, times=counts[place])
            for place in self.judged_at[index]
            if counts[place]
        ) and all(
            holds(rolled[place].offer, count)
            for place in self.judged_rolled_at[index]
            if held.taken >> place & 1
        )

    def _room_after(
        self, held: HeldAtEnd, beside: Beside, *, index: int, number: int, points: int
    ) -> tuple[int, ...] | None:
        name = self.sure[index].name
        found: list[int] = []
        for room, left, until in zip(
            self.rules.prospect.rooms, beside.room, self.room_until, strict=True
        ):
            more = left
            if name in room.members:
                more -= points if room.in_points else number - self._held_number(held, name)
            if more < 0 and (until <= index or not self.rules.with_refunds):
                return None
            found.append(more if until > index else 0)
        return tuple(found)

    def _held_number(self, held: HeldAtEnd, name: str) -> int:
        if name not in self.rules.early:
            return 0
        at = self.rules.early.index(name)
        return len(self.rules.holdings[at][held.early[at]].purchases)


def _moved(table: Numbers, points: int, *, lowest: int) -> Numbers:
    """The table for what costs so many points more."""
    moved = np.full_like(table, lowest)
    if points >= 0:
        moved[:, points:] = table[:, : table.shape[1] - points]
    else:
        moved[:, :points] = table[:, -points:]
    return moved


def _better(known: BestSet | None, other: BestSet) -> BestSet:
    """The one that is worth more; of equal ones the one that was known, of no more points."""
    return other if known is None or other.worth > known.worth else known


def _extend(
    newer: dict[int, BestSet], table: dict[int, BestSet], *, way: SureWay, worth: int
) -> None:
    for points, best in table.items():
        more = BestSet(
            worth=best.worth + worth,
            points=points + way.points,
            purchases=(*best.purchases, *way.bought),
        )
        known = newer.get(more.points)
        if known is None or more.worth > known.worth:
            newer[more.points] = more


def completions_of(rules: Rules, *, judge_rolled: bool = False) -> Completions:
    """The ends of a fall-back, nothing worked out yet.

    With `judge_rolled` rolled entries may be held whose conditions only sure ones will meet.
    """
    sure = rules.prospect.sure
    place = {offer.name: index for index, offer in enumerate(sure)}
    judged_at: list[list[int]] = [[] for _ in sure]
    judged_rolled_at: list[list[int]] = [[] for _ in sure]
    asked_until = [-1] * len(sure)
    rolled = [each.offer for each in rules.prospect.rolled] if judge_rolled else []
    for judged, offers in ((judged_at, sure), (judged_rolled_at, rolled)):
        for index, offer in enumerate(offers):
            involved = tuple(_involved(offer, place))
            if involved and (offer.bars or needed_by(offer)):
                judged[max(involved)].append(index)
            for other in involved if offer.bars or needed_by(offer) else ():
                asked_until[other] = max(asked_until[other], *involved)
    counted = {name for room in rules.prospect.rooms if not room.in_points for name in room.members}
    return Completions(
        rules=rules,
        sure=sure,
        exact=tuple(
            asked_until[index] >= 0 or offer.name in counted for index, offer in enumerate(sure)
        ),
        judged_at=tuple(map(tuple, judged_at)),
        judged_rolled_at=tuple(map(tuple, judged_rolled_at)),
        asked_until=tuple(asked_until),
        room_until=tuple(
            max((place[name] for name in room.members if name in place), default=-1)
            for room in rules.prospect.rooms
        ),
        saved=points_saved(rules.prospect.offers),
    )


def _involved(offer: Offer, place: Mapping[str, int]) -> Iterator[int]:
    """Places of a sure entry itself, and of all sure ones that its conditions ask about."""
    for name in (offer.name, *needed_by(offer), *offer.bars):
        if name in place:
            yield place[name]
