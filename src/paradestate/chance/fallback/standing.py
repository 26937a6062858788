"""Where an evening of asking may stand, points aside, and how it goes on from there.

Two standings that leave the same to come are the same standing, so that there are few.
"""

from collections.abc import Collection, Iterable, Iterator
from dataclasses import dataclass, field
from itertools import product
from typing import NamedTuple

from paradestate.chance.fallback.condition import holds
from paradestate.chance.fallback.early import Holding, bought_between, holdings_of, holds_more
from paradestate.chance.fallback.knot import Knot, knots_of
from paradestate.chance.fallback.prospect import Prospect, Room, is_refund, needed_by
from paradestate.chance.fallback.rolled import Option, Rolled, options_of
from paradestate.core.game import Purchase
from paradestate.core.support.plan import plan_points

UNSEEN = -1


class Standing(NamedTuple):
    """A tuple, because there are many, and each is looked up many times."""

    asked: int
    """A bit for each rolled entry that was asked for, or never can be."""
    taken: int
    """A bit for each rolled entry that is held and still matters to others."""
    early: tuple[int, ...]
    """Which holding is held of each entry that may be bought early."""
    room: tuple[int, ...]
    """What each group may still take, no more than could be taken of it."""
    seen: tuple[int, ...]
    """The case that each roll came to, among those that decide more than one entry."""


@dataclass(frozen=True, slots=True, kw_only=True)
class EarlyBuy:
    """What is bought before something is asked for, and where that leads."""

    purchases: tuple[Purchase, ...]
    points: int
    standing: Standing


@dataclass(frozen=True, slots=True, kw_only=True)
class Rules:
    """How standings follow one another."""

    prospect: Prospect
    place: dict[str, int]
    """Rolled entry to its bit."""
    early: tuple[str, ...]
    holdings: tuple[tuple[Holding, ...], ...]
    """Of each entry that may be bought early; the first is what is held at the start."""
    shared: tuple[int, ...]
    """Rolls that decide more than one entry."""
    plain: int
    """A bit for each rolled entry that has to do with no other."""
    watched: tuple[int, ...]
    """For each rolled entry the bits of rolled ones that ask whether it is there."""
    watched_for_good: int
    """A bit for each rolled entry of which sure ones ask whether it is there."""
    with_refunds: bool
    roll_ways: tuple[tuple[int, int], ...]
    """For each roll a bit for each entry that it decides, and its ways."""
    knots: tuple[Knot, ...]
    known: dict[object, Standing] = field(default_factory=dict)
    """Where it led before."""
    known_options: dict[object, tuple[int, ...]] = field(default_factory=dict)
    known_buys: dict[object, tuple[EarlyBuy, ...]] = field(default_factory=dict)

    @property
    def everyone(self) -> int:
        """A bit for each rolled entry."""
        return (1 << len(self.place)) - 1

    def start(self) -> Standing:
        """Where it begins."""
        held = self.prospect.held
        bought = {purchase.entry for purchase in held.taken}
        asked = sum(1 << bit for name, bit in self.place.items() if name in bought | held.asked)
        standing = Standing(
            asked=asked,
            taken=sum(1 << bit for name, bit in self.place.items() if name in bought),
            early=(0,) * len(self.early),
            room=tuple(room.most - self._used(room, held.taken) for room in self.prospect.rooms),
            seen=(UNSEEN,) * len(self.shared),
        )
        return self._settled(standing)

    def legal_options(self, standing: Standing, index: int) -> tuple[int, ...]:
        """Places of the options of an entry that may be asked for now, points aside."""
        key = (index, *standing[1:4])
        if key not in self.known_options:
            self.known_options[key] = self._legal_options(standing, index)
        return self.known_options[key]

    def _legal_options(self, standing: Standing, index: int) -> tuple[int, ...]:
        rolled = self.prospect.rolled[index]
        if not holds(rolled.offer, lambda name: self._count(standing, name)):
            return ()
        rooms = self._rooms_of(standing, rolled.offer.name)
        return tuple(
            place
            for place, option in enumerate(rolled.options)
            if all(room >= (option.price if each.in_points else 1) for each, room in rooms)
        )

    def effect(self, index: int, place: int | None) -> int:
        """A number that is the same for options which lead on alike when they are taken."""
        if place is None or self.plain >> index & 1:
            return 0
        name = self.prospect.rolled[index].offer.name
        if any(room.in_points and name in room.members for room in self.prospect.rooms):
            return place + 1
        return 1

    def after(self, standing: Standing, index: int, *, taken: Option | None, case: int) -> Standing:
        """Where it leads to ask for an entry, by the case of its roll and what is taken."""
        bit = 1 << index
        if self.plain & bit:
            return standing._replace(asked=standing.asked | bit)
        key = (standing, index, taken, case)
        if key not in self.known:
            self.known[key] = self._after(standing, index, taken=taken, case=case)
        return self.known[key]

    def _after(
        self, standing: Standing, index: int, *, taken: Option | None, case: int
    ) -> Standing:
        rolled = self.prospect.rolled[index]
        seen = standing.seen
        if rolled.roll in self.shared:
            at = self.shared.index(rolled.roll)
            seen = (*seen[:at], case, *seen[at + 1 :])
        room = standing.room
        if taken is not None:
            room = self._room_after(room, (taken.purchase,), points=taken.price)
        return self._settled(
            Standing(
                asked=standing.asked | 1 << index,
                taken=standing.taken if taken is None else standing.taken | 1 << index,
                early=standing.early,
                room=room,
                seen=seen,
            )
        )

    def case_seen(self, standing: Standing, index: int) -> int:
        """The case that the roll of an entry came to, or `UNSEEN`."""
        roll = self.prospect.rolled[index].roll
        return standing.seen[self.shared.index(roll)] if roll in self.shared else UNSEEN

    def early_buys(self, standing: Standing) -> tuple[EarlyBuy, ...]:
        """What sure troops may be bought now, before the next request, if there can be one."""
        return () if standing.asked == self.everyone else self.buys_in(standing, self.knots)

    def buys_in(self, standing: Standing, knots: Iterable[Knot]) -> tuple[EarlyBuy, ...]:
        """What of these knots may be bought for a request in them, or for the points it brings."""
        places = frozenset(
            at
            for knot in knots
            if self.with_refunds or knot.rolled & ~standing.asked
            for at in knot.early
        )
        key = (standing, places)
        if places and key not in self.known_buys:
            self.known_buys[key] = tuple(self._early_buys(standing, among=places))
        return self.known_buys[key] if places else ()

    def _early_buys(self, standing: Standing, *, among: Collection[int]) -> Iterator[EarlyBuy]:
        choices = [
            [place for place in range(len(each)) if holds_more(each[held], each[place])]
            if at in among
            else [held]
            for at, (held, each) in enumerate(zip(standing.early, self.holdings, strict=True))
        ]
        for early in product(*choices):
            if early == standing.early:
                continue
            bought = [
                (each[held], each[place])
                for held, place, each in zip(standing.early, early, self.holdings, strict=True)
            ]
            room = standing.room
            for before, after in bought:
                more = after.purchases[len(before.purchases) :]
                room = self._room_after(room, more, points=after.points - before.points)
            moved = standing._replace(early=early, room=room)
            fits = all(now >= 0 for was, now in zip(standing.room, room, strict=True) if now != was)
            if fits and self._early_hold(moved):
                yield EarlyBuy(
                    purchases=tuple(p for pair in bought for p in bought_between(*pair)),
                    points=sum(after.points - before.points for before, after in bought),
                    standing=self._settled(moved),
                )

    def scale(self, standing: Standing) -> int:
        """The product of the ways of all rolls that are still to come."""
        told = 0
        for roll, case in zip(self.shared, standing.seen, strict=True):
            told |= 0 if case == UNSEEN else 1 << roll
        scale = 1
        for roll, (members, ways) in enumerate(self.roll_ways):
            if members & ~standing.asked and not told >> roll & 1:
                scale *= ways
        return scale

    def depth(self, standing: Standing) -> int:
        """A number that grows with every step."""
        bought = sum(
            len(each[place].purchases)
            for place, each in zip(standing.early, self.holdings, strict=True)
        )
        return standing.asked.bit_count() + bought

    def _count(self, standing: Standing, name: str) -> int:
        if name in self.place:
            return standing.taken >> self.place[name] & 1
        if name in self.early:
            at = self.early.index(name)
            return len(self.holdings[at][standing.early[at]].purchases)
        return 0

    def _early_hold(self, standing: Standing) -> bool:
        def count(name: str) -> int:
            return self._count(standing, name)

        return all(
            holds(self.prospect.offers[name], count, times=count(name))
            for name in self.early
            if count(name)
        )

    def _rooms_of(self, standing: Standing, name: str) -> list[tuple[Room, int]]:
        pairs = zip(self.prospect.rooms, standing.room, strict=True)
        return [(room, left) for room, left in pairs if name in room.members]

    def _room_after(
        self, room: tuple[int, ...], bought: tuple[Purchase, ...], *, points: int
    ) -> tuple[int, ...]:
        """What is left to each group after purchases of one entry for so many points."""
        if not bought:
            return room
        name = bought[0].entry
        return tuple(
            left - (points if each.in_points else len(bought)) if name in each.members else left
            for each, left in zip(self.prospect.rooms, room, strict=True)
        )

    def _used(self, room: Room, bought: tuple[Purchase, ...]) -> int:
        within = [purchase for purchase in bought if purchase.entry in room.members]
        if not room.in_points:
            return len(within)
        return plan_points(self.prospect.offers, within)

    def _settled(self, standing: Standing) -> Standing:
        """The same standing without what can make no difference any more."""
        asked = self._closed(standing)
        standing = standing._replace(asked=asked)
        idle = 0
        for index, watchers in enumerate(self.watched):
            if not watchers & ~asked and not self.watched_for_good >> index & 1:
                idle |= 1 << index
        return standing._replace(
            taken=standing.taken & ~idle,
            room=tuple(
                min(left, self._most_use(room, asked))
                for room, left in zip(self.prospect.rooms, standing.room, strict=True)
            ),
            seen=tuple(
                self._still_told(roll, case=case, asked=asked)
                for roll, case in zip(self.shared, standing.seen, strict=True)
            ),
        )

    def _closed(self, standing: Standing) -> int:
        """The bits of what was asked for, and of what never can be from here."""
        asked = standing.asked
        changed = True
        while changed:
            changed = False
            for index, rolled in enumerate(self.prospect.rolled):
                bit = 1 << index
                if (asked | self.plain) & bit:
                    continue
                if not self._can_ever(standing._replace(asked=asked), rolled):
                    asked |= bit
                    changed = True
        return asked

    def _can_ever(self, standing: Standing, rolled: Rolled) -> bool:
        offer = rolled.offer
        if any(self._count(standing, name) for name in offer.bars):
            return False
        if not all(
            self._may_reach(standing, name, number=number)
            for needs in (offer.needs, offer.needs_for_each)
            for name, number in needs.items()
        ):
            return False
        if offer.needs_any_of and not any(
            self._may_reach(standing, name, number=number)
            for name, number in offer.needs_any_of.items()
        ):
            return False
        cheapest = rolled.options[0].price
        return self.with_refunds or all(
            left >= (cheapest if room.in_points else 1)
            for room, left in self._rooms_of(standing, offer.name)
        )

    def _may_reach(self, standing: Standing, name: str, *, number: int) -> bool:
        """Whether so many purchases of an entry may be there later, as far as is easily seen."""
        if name in self.place:
            bit = 1 << self.place[name]
            return number <= 1 and bool(standing.taken & bit or not standing.asked & bit)
        return name in self.early

    def _most_use(self, room: Room, asked: int) -> int:
        """The most that a group could still take; never more than all points where it is points."""
        most = 0
        for offer in self.prospect.offers.values():
            if offer.name not in room.members:
                continue
            if offer.name in self.place:
                times = 0 if asked >> self.place[offer.name] & 1 else 1
            elif offer.most is None:
                return self.prospect.top if room.in_points else room.most
            else:
                times = offer.most
            if room.in_points:
                dearest = max(0, options_of(offer)[-1].price)
                most += times * dearest + max(0, offer.surcharge(times))
            else:
                most += times
        return most

    def _still_told(self, roll: int, *, case: int, asked: int) -> int:
        """The first case that allows as much as this one of all who may still be asked for."""
        entry_roll = self.prospect.rolls[roll]
        seats = [seat for seat, member in enumerate(entry_roll.members) if not asked >> member & 1]
        if case == UNSEEN or not seats:
            return UNSEEN
        told = [entry_roll.cases[case].allowed[seat] for seat in seats]
        return next(
            place
            for place, other in enumerate(entry_roll.cases)
            if [other.allowed[seat] for seat in seats] == told
        )


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
        watched=tuple(
            sum(1 << place[other] for other in watchers.get(name, ()) if other in place)
            for name in place
        ),
        watched_for_good=sum(
            1 << index
            for name, index in place.items()
            if any(other not in place for other in watchers.get(name, ()))
        ),
        with_refunds=any(is_refund(offer) for offer in offers.values()),
        roll_ways=tuple(
            (sum(1 << member for member in roll.members), roll.ways) for roll in prospect.rolls
        ),
        knots=knots_of(prospect),
    )


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
