"""How an evening of asking goes on from where it stands, for many standings at once."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from itertools import islice, product

import numpy as np

from paradestate.chance.fallback.condition import holds
from paradestate.chance.fallback.early import Holding, holdings_of, holds_more
from paradestate.chance.fallback.knot import Knot, knots_of
from paradestate.chance.fallback.prospect import Prospect, Room, is_refund, needed_by
from paradestate.chance.fallback.rolled import EntryRoll, Option, Rolled, options_of
from paradestate.chance.fallback.standing import UNSEEN, Flags, Places, Standings, Whole
from paradestate.core.game import Purchase
from paradestate.core.support.offer import Offer
from paradestate.core.support.plan import plan_points

NO_LIMIT = 2**40
"""A group that may take so much is never full."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Move:
    """One purchase of sure troops before something is asked for, in standings that hold alike."""

    before: tuple[int, ...]
    """Which holding was held of each entry that may be bought early."""
    early: tuple[int, ...]
    """Which is held then."""
    points: int
    rows: Places
    """The standings in which it may be bought."""
    after: Standings
    """Where it leads from each of them."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Rules:
    """How standings follow one another. What follows has to be settled to be a standing."""

    prospect: Prospect
    place: Mapping[str, int]
    """Rolled entry to its place."""
    early: tuple[str, ...]
    holdings: tuple[tuple[Holding, ...], ...]
    """Of each entry that may be bought early; the first is what is held at the start."""
    shared: tuple[int, ...]
    """Rolls that decide more than one entry."""
    plain: int
    """A bit for each rolled entry that has to do with no other."""
    watched: Whole
    """For each rolled entry a row: 1 for each rolled one that asks whether it is there."""
    watched_for_good: int
    """A bit for each rolled entry of which sure ones ask whether it is there."""
    with_refunds: bool
    use: Whole
    """The most that each rolled entry, a row, could take of each group."""
    use_of_sure: Whole
    """The most that sure troops could take of each group."""
    knots: tuple[Knot, ...]

    def start(self) -> Standings:
        """The one standing where it begins."""
        held = self.prospect.held
        bought = {purchase.entry for purchase in held.taken}
        room = [room.most - self._used(room, held.taken) for room in self.prospect.rooms]
        return self.settled(
            Standings(
                asked=np.array([[name in bought | held.asked for name in self.place]], dtype=bool),
                taken=np.array([[name in bought for name in self.place]], dtype=bool),
                early=np.zeros((1, len(self.early)), dtype=np.int64),
                room=np.array([[min(left, NO_LIMIT) for left in room]], dtype=np.int64),
                seen=np.full((1, len(self.shared)), UNSEEN),
            )
        )

    def legal_options(self, standings: Standings, index: int) -> Flags:
        """For each option of an entry, a column, whether it may be asked for, points aside."""
        rolled = self.prospect.rolled[index]
        may_ask = ~standings.asked[:, index] & self._hold(standings, rolled.offer)
        legal = np.repeat(may_ask[:, None], len(rolled.options), axis=1)
        for at, room in self._rooms_of(rolled.offer.name):
            takes = [option.price if room.in_points else 1 for option in rolled.options]
            legal &= standings.room[:, at, None] >= np.array(takes)
        return legal

    def cases_seen(self, standings: Standings, index: int) -> Whole:
        """The case that the roll of an entry came to, or `UNSEEN`."""
        roll = self.prospect.rolled[index].roll
        if roll not in self.shared:
            return np.full(len(standings), UNSEEN)
        return standings.seen[:, self.shared.index(roll)]

    def effect(self, index: int, place: int | None) -> int:
        """A number that is the same for options which lead on alike when they are taken."""
        if place is None or self.plain >> index & 1:
            return 0
        name = self.prospect.rolled[index].offer.name
        return place + 1 if any(room.in_points for _, room in self._rooms_of(name)) else 1

    def after(
        self, standings: Standings, index: int, *, taken: Option | None, case: int
    ) -> Standings:
        """What follows when an entry is asked for, by the case of its roll and what is taken."""
        rolled = self.prospect.rolled[index]
        asked, held, seen = standings.asked.copy(), standings.taken.copy(), standings.seen.copy()
        asked[:, index] = True
        if rolled.roll in self.shared:
            seen[:, self.shared.index(rolled.roll)] = case
        room = standings.room
        if taken is not None:
            held[:, index] = True
            room = room - self._taken_of_rooms(rolled.offer.name, number=1, points=taken.price)
        return replace(standings, asked=asked, taken=held, room=room, seen=seen)

    def moves(self, standings: Standings, knot: Knot) -> Iterator[Move]:
        """What of a knot may be bought for a request in it, or for the points it brings."""
        is_wanted = (~standings.asked[:, knot.rolled]).any(axis=1) | self.with_refunds
        if not knot.early or not is_wanted.any():
            return
        for held in np.unique(standings.early[is_wanted], axis=0).tolist():
            rows = np.flatnonzero(is_wanted & (standings.early == held).all(axis=1))
            choices = [
                [at for at in range(len(each)) if holds_more(each[before], each[at])]
                if place in knot.early
                else [before]
                for place, (before, each) in enumerate(zip(held, self.holdings, strict=True))
            ]
            # The first holds no more than is held already.
            for early in islice(product(*choices), 1, None):
                move = self._bought(standings, rows, before=tuple(held), early=early)
                if len(move.rows):
                    yield move

    def settled(self, standings: Standings) -> Standings:
        """The same standings without what can make no difference any more."""
        still = self._still_open(standings)
        numbers = still.astype(np.int64)
        matters = numbers @ self.watched.T > 0
        for_good = [at for at in self.place.values() if self.watched_for_good >> at & 1]
        matters[:, for_good] = True
        seen = standings.seen.copy()
        for at, roll in enumerate(self.shared):
            seen[:, at] = self._still_told(self.prospect.rolls[roll], seen[:, at], still=still)
        return Standings(
            asked=~still,
            taken=standings.taken & matters,
            early=standings.early,
            room=np.minimum(standings.room, numbers @ self.use + self.use_of_sure),
            seen=seen,
        )

    def still_to_roll(self, standings: Standings) -> Flags:
        """For each roll, a column, whether it is still to come."""
        found = np.empty((len(standings), len(self.prospect.rolls)), dtype=bool)
        for at, roll in enumerate(self.prospect.rolls):
            is_open = (~standings.asked[:, roll.members]).any(axis=1)
            found[:, at] = is_open & (self.cases_seen(standings, roll.members[0]) == UNSEEN)
        return found

    def depths(self, standings: Standings) -> Whole:
        """A number that grows with every step."""
        bought = (self._counts(standings, name) for name in self.early)
        return sum(bought, start=standings.asked.sum(axis=1, dtype=np.int64))

    def _bought(
        self, standings: Standings, rows: Places, *, before: tuple[int, ...], early: tuple[int, ...]
    ) -> Move:
        """Moving from holdings to others, in those of the rows where it may be done."""
        here = standings.those(rows)
        room, points = here.room, 0
        for name, each, held, more in zip(self.early, self.holdings, before, early, strict=True):
            number = len(each[more].purchases) - len(each[held].purchases)
            paid = each[more].points - each[held].points
            room = room - self._taken_of_rooms(name, number=number, points=paid)
            points += paid
        after = replace(here, early=np.tile(np.array(early), (len(rows), 1)), room=room)
        fits = ((room >= 0) | (room == here.room)).all(axis=1)
        for name in self.early:
            fits &= self._hold(after, self.prospect.offers[name]) | (self._counts(after, name) == 0)
        return Move(
            before=before, early=early, points=points, rows=rows[fits], after=after.those(fits)
        )

    def _counts(self, standings: Standings, name: str) -> Whole:
        """How many purchases of an entry are held, as far as it matters."""
        if name in self.place:
            return standings.taken[:, self.place[name]].astype(np.int64)
        if name in self.early:
            at = self.early.index(name)
            numbers = np.array([len(holding.purchases) for holding in self.holdings[at]])
            return numbers[standings.early[:, at]]
        return np.zeros(len(standings), dtype=np.int64)

    def _hold(self, standings: Standings, offer: Offer) -> Flags:
        """Whether the conditions hold of as many purchases as are held, or of one where none is."""
        names = (offer.name, *needed_by(offer), *offer.bars)
        if len(names) == 1:
            return np.ones(len(standings), dtype=bool)
        counts = np.stack([self._counts(standings, name) for name in names], axis=1)
        kinds, kind_of = np.unique(counts, axis=0, return_inverse=True)
        judged = [
            holds(offer, dict(zip(names, kind, strict=True)).__getitem__, times=max(1, kind[0]))
            for kind in kinds.tolist()
        ]
        return np.array(judged)[kind_of.ravel()]

    def _rooms_of(self, name: str) -> list[tuple[int, Room]]:
        rooms = enumerate(self.prospect.rooms)
        return [(at, room) for at, room in rooms if name in room.members]

    def _taken_of_rooms(self, name: str, *, number: int, points: int) -> Whole:
        """What so many purchases of an entry for so many points take of each group."""
        return np.array(
            [
                (points if room.in_points else number) if name in room.members else 0
                for room in self.prospect.rooms
            ],
            dtype=np.int64,
        )

    def _used(self, room: Room, bought: tuple[Purchase, ...]) -> int:
        within = [purchase for purchase in bought if purchase.entry in room.members]
        if not room.in_points:
            return len(within)
        return plan_points(self.prospect.offers, within)

    def _still_open(self, standings: Standings) -> Flags:
        """For each rolled entry, a column, whether it may still be asked for, now or ever."""
        still = ~standings.asked
        changed = True
        while changed:
            changed = False
            for index, rolled in enumerate(self.prospect.rolled):
                if self.plain >> index & 1 or not still[:, index].any():
                    continue
                closed = still[:, index] & ~self._can_ever(standings, rolled, still=still)
                still[closed, index] = False
                changed = changed or bool(closed.any())
        return still

    def _can_ever(self, standings: Standings, rolled: Rolled, *, still: Flags) -> Flags:
        offer = rolled.offer
        can = np.ones(len(standings), dtype=bool)
        for name in offer.bars:
            can &= self._counts(standings, name) == 0
        for needs in (offer.needs, offer.needs_for_each):
            for name, number in needs.items():
                can &= self._may_reach(standings, name, number=number, still=still)
        if offer.needs_any_of:
            can &= np.logical_or.reduce(
                [
                    self._may_reach(standings, name, number=number, still=still)
                    for name, number in offer.needs_any_of.items()
                ]
            )
        for at, room in () if self.with_refunds else self._rooms_of(offer.name):
            can &= standings.room[:, at] >= (rolled.options[0].price if room.in_points else 1)
        return can

    def _may_reach(self, standings: Standings, name: str, *, number: int, still: Flags) -> Flags:
        """Whether so many purchases of an entry may be there later, as far as is easily seen."""
        if name in self.place and number <= 1:
            at = self.place[name]
            return standings.taken[:, at] | still[:, at]
        return np.full(len(standings), name in self.early)

    def _still_told(self, roll: EntryRoll, seen: Whole, *, still: Flags) -> Whole:
        """The first case that allows as much as that seen of all who may still be asked for."""
        kinds, kind_of = np.unique(still[:, roll.members], axis=0, return_inverse=True)
        first = np.array([_first_alike(roll, kind) for kind in kinds.tolist()])
        return first[kind_of.ravel(), seen]


def _first_alike(roll: EntryRoll, is_open: list[bool]) -> list[int]:
    """For each case the first that allows as much of those open; at the end for `UNSEEN`."""
    if not any(is_open):
        return [UNSEEN] * (len(roll.cases) + 1)
    told = [
        [number for number, counts in zip(case.allowed, is_open, strict=True) if counts]
        for case in roll.cases
    ]
    return [*map(told.index, told), UNSEEN]


def rules_of(prospect: Prospect) -> Rules:
    """The rules of a prospect."""
    place = {rolled.offer.name: index for index, rolled in enumerate(prospect.rolled)}
    offers = prospect.offers
    watchers: dict[str, set[str]] = {}
    for offer in offers.values():
        for name in needed_by(offer):
            watchers.setdefault(name, set()).add(offer.name)
        if offer.availability is None:
            for name in offer.bars:
                watchers.setdefault(name, set()).add(offer.name)
    return Rules(
        prospect=prospect,
        place=place,
        early=tuple(prospect.early),
        holdings=tuple(holdings_of(prospect, name) for name in prospect.early),
        shared=prospect.shared,
        plain=sum(
            1 << index
            for index, rolled in enumerate(prospect.rolled)
            if _is_plain(prospect, rolled)
        ),
        watched=np.array(
            [[other in watchers.get(name, ()) for other in place] for name in place],
            dtype=np.int64,
        ).reshape(len(place), len(place)),
        watched_for_good=sum(
            1 << index
            for name, index in place.items()
            if any(other not in place for other in watchers.get(name, ()))
        ),
        with_refunds=any(is_refund(offer) for offer in offers.values()),
        use=np.array(
            [
                [_use(offers[name], room, top=prospect.top) for room in prospect.rooms]
                for name in place
            ],
            dtype=np.int64,
        ).reshape(len(place), len(prospect.rooms)),
        use_of_sure=np.array(
            [
                min(sum(_use(offer, room, top=prospect.top) for offer in prospect.sure), NO_LIMIT)
                for room in prospect.rooms
            ],
            dtype=np.int64,
        ),
        knots=knots_of(prospect),
    )


def _use(offer: Offer, room: Room, *, top: int) -> int:
    """The most that an entry could take of a group; without end no more than `top` points."""
    if offer.name not in room.members:
        return 0
    times = offer.most if offer.availability is None else 1
    if times is None:
        return top if room.in_points else room.most
    if not room.in_points:
        return times
    return times * max(0, options_of(offer)[-1].price) + max(0, offer.surcharge(times))


def _is_plain(prospect: Prospect, rolled: Rolled) -> bool:
    """Whether an entry shares no roll, no group and no condition with any other."""
    offer = rolled.offer
    return not (
        offer.bars
        or needed_by(offer)
        or any(offer.name in needed_by(other) for other in prospect.offers.values())
        or len(prospect.rolls[rolled.roll].members) > 1
        or any(offer.name in room.members for room in prospect.rooms)
    )
