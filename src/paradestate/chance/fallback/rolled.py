"""Entries that are rolled for, and the rolls that decide them, as a fall-back sees them."""

from collections.abc import Hashable, Iterable, Mapping
from dataclasses import dataclass
from math import gcd

from paradestate.chance.availability import roll_key
from paradestate.chance.dice import dice_chances
from paradestate.core.game import Purchase
from paradestate.core.support.entry import Availability
from paradestate.core.support.offer import Offer


@dataclass(frozen=True, slots=True, kw_only=True)
class Option:
    """One purchase that may be asked for or taken, and its points."""

    purchase: Purchase
    price: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Rolled:
    """An entry that is rolled for; it is asked for at most once."""

    offer: Offer
    options: tuple[Option, ...]
    """Fewest points first, then as the file has them."""
    roll: int
    """Its place among the rolls."""
    seat: int
    """Its place among those whom that roll decides."""

    def paid(self, asked: Option, taken: Option | None) -> int:
        """Points that are gone when so much was asked for and so much taken.

        Where refused points are lost that is what was asked, whatever is taken, unless it would
        bring points.
        """
        if self.is_prepaid(asked):
            return asked.price
        return 0 if taken is None else taken.price

    def is_prepaid(self, asked: Option) -> bool:
        """Whether what was asked is paid even when it is refused."""
        return self.offer.is_prepaid(asked.purchase.number, choice=asked.purchase.choice)

    def takes(self, asked: Option, *, allowed: int) -> tuple[Option, ...]:
        """What may be taken of a request when so many are allowed, smallest number first."""
        within = (
            option
            for option in self.options
            if option.purchase.choice == asked.purchase.choice
            and option.purchase.number <= min(allowed, asked.purchase.number)
        )
        return tuple(sorted(within, key=lambda option: option.purchase.number))


@dataclass(frozen=True, slots=True, kw_only=True)
class Case:
    """What a roll may allow: for each entry it decides the greatest number, and in how many ways.

    The numbers are priced ones; nought: refused.
    """

    allowed: tuple[int, ...]
    ways: int


@dataclass(frozen=True, slots=True, kw_only=True)
class EntryRoll:
    """One roll, the entries that it decides, and its cases; no two of them allow the same."""

    members: tuple[int, ...]
    """Places of those entries among all that are rolled for."""
    cases: tuple[Case, ...]

    @property
    def ways(self) -> int:
        """The ways of all cases, which have no common divisor."""
        return sum(case.ways for case in self.cases)


def options_of(offer: Offer) -> tuple[Option, ...]:
    """All purchases of an entry that have a price, fewest points first, then as in the file."""
    every = [
        Option(
            purchase=Purchase(entry=offer.name, number=number, choice=choice),
            price=offer.price(number, choice=choice),
        )
        for number in offer.cost
        for choice in offer.choices
    ]
    return tuple(sorted(every, key=lambda option: option.price))


def rolled_entries(
    offers: Iterable[Offer],
) -> tuple[tuple[Rolled, ...], tuple[EntryRoll, ...]]:
    """Those of the offers that are rolled for, and the rolls."""
    found: list[tuple[Offer, Availability]] = []
    seats: dict[Hashable, list[int]] = {}
    for offer in offers:
        if offer.availability is not None:
            key = roll_key(offer.availability, own=offer.name)
            seats.setdefault(key, []).append(len(found))
            found.append((offer, offer.availability))
    place_of = {
        member: (roll, seat)
        for roll, members in enumerate(seats.values())
        for seat, member in enumerate(members)
    }
    rolled = tuple(
        Rolled(
            offer=offer,
            options=options_of(offer),
            roll=place_of[index][0],
            seat=place_of[index][1],
        )
        for index, (offer, _) in enumerate(found)
    )
    rolls = tuple(
        EntryRoll(members=tuple(members), cases=_cases([found[member] for member in members]))
        for members in seats.values()
    )
    return rolled, rolls


def _cases(decided: list[tuple[Offer, Availability]]) -> tuple[Case, ...]:
    """What one roll may allow, the greatest numbers first."""
    ways: dict[tuple[int, ...], int] = {}
    for total, number in dice_chances(decided[0][1].roll).counts.items():
        allowed = tuple(
            _greatest(offer, availability, total=total) for offer, availability in decided
        )
        ways[allowed] = ways.get(allowed, 0) + number
    shared = gcd(*ways.values())
    return tuple(
        Case(allowed=allowed, ways=ways[allowed] // shared)
        for allowed in sorted(ways, reverse=True)
    )


def _greatest(offer: Offer, availability: Availability, *, total: int) -> int:
    allowed = availability.allowed(total, asked=max(offer.cost))
    return offer.greatest_number(allowed=allowed)


def points_saved(offers: Mapping[str, Offer]) -> int:
    """The most points that all refunds together bring."""
    return sum(_refund(offer) for offer in offers.values())


def _refund(offer: Offer) -> int:
    cheapest = min(option.price for option in options_of(offer))
    if offer.most is None:
        return 0  # terms have no entry of which any number may be had for nothing
    most = 1 if offer.availability is not None else offer.most
    # Past the listed steps each purchase brings or costs as much as the one before.
    bent = range(min(most, len(offer.repeats_cost_more) + 1) + 1)
    gains: list[int] = [-cheapest * n - offer.surcharge(n) for n in (*bent, most)]
    return max(gains)
