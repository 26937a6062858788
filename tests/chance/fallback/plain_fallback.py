"""The best play as a plain recursion with fractions, written straight from its formula.

V(s) = max of ending here and, over requests, of the sum over what a roll shows of its chance times
the best of what may be taken then. Before each request any sure troops may be bought. All that is
held is always a legal force, leasts aside.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field, replace
from fractions import Fraction
from itertools import combinations_with_replacement, product

from paradestate.core.game import Purchase
from paradestate.core.support.entry import Availability, Band
from paradestate.core.support.offer import Offer
from paradestate.core.support.plan import plan_worth
from paradestate.core.support.terms import Terms
from tests.support_terms import Plan, plain_points, plainly_legal, single_purchases

Seen = frozenset[tuple[str, int]]
"""Shared rolls with what they showed."""


def without_leasts(terms: Terms) -> Terms:
    """The same terms, but nothing has to be taken."""
    return replace(
        terms,
        offers={name: replace(offer, least=0) for name, offer in terms.offers.items()},
        groups=tuple(replace(limit, least=0, least_points=Fraction(0)) for limit in terms.groups),
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class PlainFallback:
    """The best play of one game from one number of points."""

    terms: Terms
    points: int
    known: dict[object, Fraction] = field(default_factory=dict)

    def value(
        self,
        held: Plan = (),
        asked: frozenset[str] = frozenset(),
        *,
        seen: Seen = frozenset(),
        left: int | None = None,
    ) -> Fraction:
        """The mean worth of the whole force by the best play."""
        left = self.points if left is None else left
        key = (tuple(sorted(held, key=str)), asked, seen, left)
        if key not in self.known:
            self.known[key] = max(
                value
                for more in self.sure_sets(held, left=left)
                for value in self._worths_after(held, more, asked=asked, seen=seen, left=left)
            )
        return self.known[key]

    def sure_sets(self, held: Plan, *, left: int) -> Iterator[Plan]:
        """Every set of sure troops that may be bought beside what is held."""
        sure = [each for each in self.terms.offers.values() if each.availability is None]
        ways = [tuple(self._multisets(offer)) for offer in sure]
        for parts in product(*ways):
            more = tuple(each for part in parts for each in part)
            if self._price(held, more) <= left and self.is_legal((*held, *more)):
                yield more

    def is_legal(self, plan: Plan) -> bool:
        """Whether so much may be held together."""
        return keeps_conditions(self.terms, plan, points=self.points)

    def requests(
        self, held: Plan, more: Plan, *, asked: frozenset[str], left: int
    ) -> Iterator[Purchase]:
        """What may be asked for once more is bought."""
        for offer in self.terms.offers.values():
            if offer.availability is None or offer.name in asked:
                continue
            for request in single_purchases(offer):
                price = self._price(held, (*more, request))
                if price <= left and self.is_legal((*held, *more, request)):
                    yield request

    def asking(
        self, held: Plan, request: Purchase, *, asked: frozenset[str], seen: Seen, left: int
    ) -> Fraction:
        """The mean worth when this is asked for now."""
        availability = self.terms.offers[request.entry].availability
        assert availability is not None
        shown = dict(seen).get(availability.shared_roll)
        totals = faces(availability) if shown is None else {shown: Fraction(1)}
        mean = Fraction(0)
        for total, chance in totals.items():
            told = seen | (
                {(availability.shared_roll, total)} if availability.shared_roll else set()
            )
            allowed = allows(availability, total, asked=request.number)
            mean += chance * max(
                self._taking(
                    held, request, taken=taken, asked=asked, seen=frozenset(told), left=left
                )
                for taken in self._takes(held, request, allowed=allowed, left=left)
            )
        return mean

    def _worths_after(
        self, held: Plan, more: Plan, *, asked: frozenset[str], seen: Seen, left: int
    ) -> Iterator[Fraction]:
        here = (*held, *more)
        rest = left - self._price(held, more)
        yield plan_worth(self.terms.offers, here)
        for request in self.requests(held, more, asked=asked, left=left):
            yield self.asking(here, request, asked=asked, seen=seen, left=rest)

    def _takes(
        self, held: Plan, request: Purchase, *, allowed: int, left: int
    ) -> Iterator[Purchase | None]:
        yield None
        offer = self.terms.offers[request.entry]
        for taken in single_purchases(offer):
            if (
                taken.choice == request.choice
                and taken.number <= allowed
                and self.is_legal((*held, taken))
                and self._paid(request, taken=taken) <= left
            ):
                yield taken

    def _taking(
        self,
        held: Plan,
        request: Purchase,
        *,
        taken: Purchase | None,
        asked: frozenset[str],
        seen: Seen,
        left: int,
    ) -> Fraction:
        paid = self._paid(request, taken=taken)
        after = held if taken is None else (*held, taken)
        return self.value(after, asked | {request.entry}, seen=seen, left=left - paid)

    def _paid(self, request: Purchase, *, taken: Purchase | None) -> int:
        offer = self.terms.offers[request.entry]
        asked = plain_points(self.terms, (request,))
        if offer.loses_points and asked > 0:
            return asked
        return plain_points(self.terms, (taken,)) if taken else 0

    def _price(self, held: Plan, more: Plan) -> int:
        return plain_points(self.terms, (*held, *more)) - plain_points(self.terms, held)

    def _multisets(self, offer: Offer) -> Iterator[Plan]:
        most = self.points + 4 if offer.most is None else offer.most
        for times in range(most + 1):
            yield from combinations_with_replacement(single_purchases(offer), times)


def faces(availability: Availability) -> Mapping[int, Fraction]:
    """The totals of a roll of one die; all are equally likely."""
    totals = availability.roll.totals()
    return {total: Fraction(1, len(totals)) for total in totals}


def allows(availability: Availability, total: int, *, asked: int) -> int:
    """What a total allows of a request."""
    for band in availability.allows:
        if _holds(band, total):
            return asked if band.allows is None else min(asked, band.allows)
    raise AssertionError(total)


def _holds(band: Band, total: int) -> bool:
    return band.least <= total and (band.most is None or total <= band.most)


def keeps_conditions(terms: Terms, plan: Plan, *, points: int) -> bool:
    """Whether so much may be held together, whatever was paid for it."""
    price = plain_points(terms, plan)
    if price <= points:
        return plainly_legal(terms, plan, points=points)
    # Where points are lost a smaller number may be dearer than what was asked and paid.
    free = replace(
        terms,
        groups=tuple(
            replace(limit, most_points=limit.most_points and limit.most_points * points / price)
            for limit in terms.groups
        ),
    )
    return plainly_legal(free, plan, points=price)
