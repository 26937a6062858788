"""What a game's rolls and requests come to: points left, what is bought, refused, still open.

Nothing is decided here that isn't written down: a roll that refuses settles its request; one that
allows some is open until it is said how many are taken.
"""

from collections.abc import Hashable, Mapping
from dataclasses import dataclass, field, replace

from paradestate.core.dice import LookUp
from paradestate.core.game import Purchase
from paradestate.core.play.event import Asked, Rolled
from paradestate.core.play.game_record import GameRecord, Line
from paradestate.core.support.entry import Asking
from paradestate.core.support.offer import Offer
from paradestate.core.support.plan import plan_points
from paradestate.core.support.terms import Terms

ALLOWANCE = "allowance"
"""What the roll for the points is for."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Request:
    """Something that was asked for."""

    asked: Purchase
    allowed: int | None = None
    """How many the dice allowed, as far as they are sold; None where nothing is rolled."""
    taken: int | None = None
    """None: it isn't said yet."""
    roll: str = ""
    """Id of the roll's entry."""

    @property
    def bought(self) -> Purchase | None:
        """What came of it."""
        return replace(self.asked, number=self.taken) if self.taken else None

    @property
    def is_open(self) -> bool:
        """Whether it isn't said yet how many are taken."""
        return self.taken is None


@dataclass(frozen=True, slots=True, kw_only=True)
class Account:
    """How far choosing has come in a game."""

    terms: Terms
    allowance: int | None
    """Points before anything is taken off; None: not rolled yet."""
    requests: tuple[Request, ...] = ()
    """In the order in which they were rolled for, or bought."""
    declared: tuple[Purchase, ...] = ()
    """Named, and not rolled for yet."""
    second: frozenset[str] = frozenset()
    """Ids of rolls for what had been rolled for already; the first counts."""
    undeclared: frozenset[str] = frozenset()
    """Ids of rolls for what wasn't named before the first one, where all has to be."""
    shared: Mapping[str, int] = field(default_factory=dict)
    """Name of a roll that entries share to its total."""

    @property
    def start(self) -> int | None:
        """Points left before anything is bought."""
        return None if self.allowance is None else self.allowance - self.terms.taken_off

    @property
    def bought(self) -> tuple[Purchase, ...]:
        """All that was taken."""
        return tuple(each.bought for each in self.requests if each.bought is not None)

    @property
    def refused(self) -> tuple[Purchase, ...]:
        """All that was asked for in vain, or declined."""
        return tuple(each.asked for each in self.requests if each.taken == 0)

    @property
    def open(self) -> Request | None:
        """The request of which it is to be said next how many are taken."""
        return next((each for each in self.requests if each.is_open), None)

    @property
    def lost(self) -> int:
        """Points that were paid for nothing."""
        return sum(_lost(each, self.terms.offers[each.asked.entry]) for each in self.requests)

    @property
    def paid(self) -> int:
        """Points that are gone."""
        return plan_points(self.terms.offers, self.bought) + self.lost

    @property
    def left(self) -> int | None:
        """Points that can still be spent."""
        return None if self.start is None else self.start - self.paid

    @property
    def is_partly_lost(self) -> bool:
        """Whether points were lost on a part of a request."""
        offers = self.terms.offers
        return any(each.taken and _lost(each, offers[each.asked.entry]) for each in self.requests)


def _lost(request: Request, offer: Offer) -> int:
    """Points that a request cost without bringing anything."""
    asked = request.asked
    if request.taken is None or not offer.is_prepaid(asked.number, choice=asked.choice):
        return 0
    came = offer.price(request.taken, choice=asked.choice) if request.taken else 0
    return offer.price(asked.number, choice=asked.choice) - came


def account(record: GameRecord, terms: Terms) -> Account:
    """What the lines of a game that hold come to."""
    sums = _Sums(terms)
    for line in record.lines:
        if line.holds:
            sums.take(line)
    return Account(
        terms=terms,
        allowance=sums.allowance,
        requests=tuple(sums.requests),
        declared=tuple(sums.declared.values()),
        second=frozenset(sums.second),
        undeclared=frozenset(sums.undeclared),
        shared=sums.shared,
    )


class _Sums:
    """The account while it is added up."""

    def __init__(self, terms: Terms) -> None:
        self._terms = terms
        totals = terms.game.allowance.totals()
        self.allowance = totals[0] if len(totals) == 1 else None
        self.requests: list[Request] = []
        self.declared: dict[str, Purchase] = {}
        self.second: set[str] = set()
        self.undeclared: set[str] = set()
        self.shared: dict[str, int] = {}
        self._is_rolled = False
        self._rolled: dict[Hashable, list[int]] = {}

    def take(self, line: Line) -> None:
        match line.event:
            case Rolled(purpose=purpose) as rolled if purpose == ALLOWANCE:
                self._take_allowance(line, rolled)
            case Rolled(purpose=purpose) as rolled if purpose in self._terms.offers:
                self._take_roll(line, rolled, offer=self._terms.offers[purpose])
            case Asked(entry=entry) as asked if entry in self._terms.offers:
                self._take_asked(asked, offer=self._terms.offers[entry])
            case _:
                pass

    def _take_allowance(self, line: Line, rolled: Rolled) -> None:
        if self._is_rolled:
            self.second.add(line.id)
            return
        allowance = self._terms.game.allowance
        points = allowance.given(rolled.total) if isinstance(allowance, LookUp) else rolled.total
        self.allowance, self._is_rolled = points, True

    def _take_roll(self, line: Line, rolled: Rolled, *, offer: Offer) -> None:
        availability = offer.availability
        if availability is None:
            return
        shared = availability.shared_roll
        key = (shared, availability.roll) if shared else offer.name
        before = self._rolled.setdefault(key, [])
        if not self._may_roll(offer, before, is_shared=bool(shared)):
            self.second.add(line.id)
            return
        if self._terms.asking is Asking.ALL_DECLARED_FIRST and offer.name not in self.declared:
            self.undeclared.add(line.id)
        if shared:
            self.shared[shared] = rolled.total
        self.declared.pop(offer.name, None)
        allowed = availability.allowed(rolled.total, asked=rolled.number)
        sold = offer.greatest_number(allowed=allowed)
        before.append(len(self.requests))
        self.requests.append(
            Request(
                asked=Purchase(entry=offer.name, number=rolled.number, choice=rolled.choice),
                allowed=sold,
                taken=None if sold else 0,
                roll=line.id,
            )
        )

    def _may_roll(self, offer: Offer, before: list[int], *, is_shared: bool) -> bool:
        """Whether a roll is for another purchase than those before it."""
        if is_shared or not before:
            return not before
        last = self.requests[before[-1]]
        return bool(last.taken) and (offer.most is None or len(before) < offer.most)

    def _take_asked(self, asked: Asked, *, offer: Offer) -> None:
        purchase = Purchase(entry=asked.entry, number=asked.number, choice=asked.choice)
        if offer.availability is None:
            if asked.taken:
                self.requests.append(Request(asked=purchase, taken=asked.taken))
            return
        for place, request in enumerate(self.requests):
            if request.is_open and request.asked.entry == asked.entry:
                self.requests[place] = replace(request, taken=asked.taken)
                return
        if asked.allowed is None:
            self.declared[asked.entry] = purchase
        else:  # by a roll that it shares with others
            self.declared.pop(asked.entry, None)
            self.requests.append(Request(asked=purchase, allowed=asked.allowed, taken=asked.taken))
