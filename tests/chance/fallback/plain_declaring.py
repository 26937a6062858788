"""The best set to name before the first roll, by going through every set and every joint roll."""

from collections.abc import Iterator, Mapping
from fractions import Fraction
from itertools import product

from paradestate.core.game import Purchase
from paradestate.core.support.offer import Offer
from paradestate.core.support.plan import plan_worth
from paradestate.core.support.terms import Terms
from tests.chance.fallback.plain_fallback import PlainFallback, allows, faces
from tests.support_terms import Plan, plain_points, single_purchases

Rolls = Mapping[str, int]
"""Roll, named by what shares it or by its entry, to what it showed."""


def plain_declared(terms: Terms, *, points: int) -> Fraction:
    """The greatest mean worth of any set that may be named."""
    game = PlainFallback(terms=terms, points=points)
    return max(_mean(game, named) for named in _sets(game))


def _sets(game: PlainFallback) -> Iterator[Plan]:
    rolled = [each for each in game.terms.offers.values() if each.availability is not None]
    ways = [(None, *single_purchases(offer)) for offer in rolled]
    for picked in product(*ways):
        named = tuple(each for each in picked if each is not None)
        prices = [plain_points(game.terms, (each,)) for each in named]
        left = game.points - sum(prices)
        if sum(max(0, price) for price in prices) <= game.points and any(
            True for _ in game.sure_sets(named, left=left)
        ):
            yield named


def _mean(game: PlainFallback, named: Plan) -> Fraction:
    gone = sum(plain_points(game.terms, (each,)) for each in named if _is_lost(game, each))
    mean = Fraction(0)
    for shown, chance in _rolls(game.terms, named):
        ways = [(None, *_takes(game.terms.offers[each.entry], each, shown=shown)) for each in named]
        mean += chance * max(
            value
            for picked in product(*ways)
            for value in _held(game, named, picked=picked, left=game.points - gone)
        )
    return mean


def _held(
    game: PlainFallback, named: Plan, *, picked: tuple[Purchase | None, ...], left: int
) -> Iterator[Fraction]:
    pairs = [(asked, taken) for asked, taken in zip(named, picked, strict=True) if taken]
    paid = sum(
        plain_points(game.terms, (taken,)) for asked, taken in pairs if not _is_lost(game, asked)
    )
    held = tuple(taken for _, taken in pairs)
    if paid <= left or any(price < 0 for price in _sure_prices(game)):
        for more in game.sure_sets(held, left=left - paid):
            yield plan_worth(game.terms.offers, (*held, *more))


def _sure_prices(game: PlainFallback) -> Iterator[int]:
    for offer in game.terms.offers.values():
        if offer.availability is None:
            yield from (plain_points(game.terms, (each,)) for each in single_purchases(offer))


def _is_lost(game: PlainFallback, asked: Purchase) -> bool:
    return game.terms.offers[asked.entry].loses_points and plain_points(game.terms, (asked,)) > 0


def _rolls(terms: Terms, named: Plan) -> Iterator[tuple[Rolls, Fraction]]:
    rolls: dict[str, Mapping[int, Fraction]] = {}
    for each in named:
        availability = terms.offers[each.entry].availability
        assert availability is not None
        rolls[availability.shared_roll or f"of {each.entry}"] = faces(availability)
    for shown in product(*(each.items() for each in rolls.values())):
        chance = Fraction(1)
        for _, share in shown:
            chance *= share
        yield {name: total for name, (total, _) in zip(rolls, shown, strict=True)}, chance


def _takes(offer: Offer, asked: Purchase, *, shown: Rolls) -> Iterator[Purchase]:
    availability = offer.availability
    assert availability is not None
    total = shown[availability.shared_roll or f"of {asked.entry}"]
    allowed = allows(availability, total, asked=asked.number)
    for taken in single_purchases(offer):
        if taken.choice == asked.choice and taken.number <= allowed:
            yield taken
