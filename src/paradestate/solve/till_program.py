"""One source's till in a whole-number program: tiers of carriage and discount, and exchange."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import gcd

from paradestate.core.money import Currency, Minor, half_up
from paradestate.core.receipt import exchange_rate, lots_of, step_reached
from paradestate.core.source import Source
from paradestate.solve.error import TooGreatError
from paradestate.solve.pack_program import PackTerms
from paradestate.solve.program import Program

MOST_UNITS = 10**7
"""Goods up to so many units of a source's prices: in trials with thousands of small orders every
proof held up to here, and with goods a hundred times as great some did not."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Tier:
    """Goods values from `least` to `most` at which carriage and discount stay the same."""

    least: int
    most: int
    carriage: int
    discount: Fraction


@dataclass(frozen=True, slots=True, kw_only=True)
class TierTerms:
    """A tier, the variable that chooses it, and that of the goods in it, else nought.

    The goods count in units that divide every price: small numbers keep the solver honest.
    """

    tier: Tier
    chosen: int
    goods: int
    unit: int


@dataclass(frozen=True, slots=True, kw_only=True)
class TillTerms:
    """What a source charges in the force's currency as a sum of variables, and its tiers."""

    charged: Mapping[int, int]
    tiers: tuple[TierTerms, ...]


def add_till(
    program: Program,
    source: Source,
    *,
    packs: Sequence[PackTerms],
    greatest: int,
    currency: Currency,
) -> TillTerms:
    """Adds what a source charges for its packs: one tier, or nothing where nothing is bought.

    Goods have no more value than `greatest`.
    """
    goods = {variable: price for each in packs for variable, price in each.goods.items()}
    unit = gcd(*goods.values()) or 1
    if greatest > MOST_UNITS * unit:
        raise TooGreatError(f"goods of {greatest:,} at {source.name} are too great for the solver")
    chosen = tuple(
        _add_tier(program, tier, unit=unit) for tier in tiers(source, greatest=greatest, unit=unit)
    )
    program.row({each.chosen: 1 for each in chosen}, most=1)
    minus = {variable: -price for variable, price in goods.items()}
    program.row({**{each.goods: unit for each in chosen}, **minus}, least=0, most=0)
    _charge_free_packs(program, packs, chosen=chosen)
    charged = dict(goods)
    for each in chosen:
        charged[each.chosen] = each.tier.carriage
        charged |= _add_discount(program, each)
    dearest = greatest + max(source.carriage.values(), default=0)
    rate = exchange_rate(source, currency)
    return TillTerms(charged=_exchanged(program, charged, rate=rate, most=dearest), tiers=chosen)


def tiers(source: Source, *, greatest: int, unit: int) -> Iterator[Tier]:
    """The tiers of a source from its least order up to `greatest` goods, in whole units."""
    least = int(source.least_order)
    edges = {least, *map(int, source.carriage), *map(int, source.discount)}
    starts = sorted(edge for edge in edges if least <= edge <= greatest)
    for start, end in zip(starts, [*starts[1:], greatest + 1], strict=False):
        first, last = -(-start // unit) * unit, (end - 1) // unit * unit
        if first <= last:
            yield Tier(
                least=first,
                most=last,
                carriage=int(step_reached(source.carriage, start, default=Minor(0))),
                discount=step_reached(source.discount, start, default=Fraction(0)),
            )


def _add_tier(program: Program, tier: Tier, *, unit: int) -> TierTerms:
    """The goods lie in a tier that is chosen, and are nought in any other."""
    chosen = program.variable(most=1)
    goods = program.variable(most=tier.most // unit, whole=False)
    program.row({goods: unit, chosen: -tier.least}, least=0)
    program.row({goods: unit, chosen: -tier.most}, most=0)
    return TierTerms(tier=tier, chosen=chosen, goods=goods, unit=unit)


def _charge_free_packs(
    program: Program, packs: Sequence[PackTerms], *, chosen: Sequence[TierTerms]
) -> None:
    """Packs that cost nothing are bought too: carriage and least order hold for them."""
    for each in packs:
        if lots_of(each.pack)[0].price == 0:
            some_tier = {tier.chosen: -each.most for tier in chosen}
            program.row({**each.number, **some_tier}, most=0)


def _add_discount(program: Program, terms: TierTerms) -> Mapping[int, int]:
    """The discount of a tier as a whole number, half up: D <= G r + 1/2."""
    rate = terms.tier.discount
    if not rate:
        return {}
    discount = program.variable(most=half_up(terms.tier.most * rate))
    upper, lower = rate.numerator, rate.denominator
    worth = {terms.goods: -2 * upper * terms.unit, terms.chosen: -lower}
    program.row({discount: 2 * lower, **worth}, most=0)
    return {discount: -1}


def _exchanged(
    program: Program, charged: Mapping[int, int], *, rate: Fraction, most: int
) -> Mapping[int, int]:
    """A total in the force's currency, half up: E > T r - 1/2, E whole."""
    upper, lower = rate.numerator, rate.denominator
    if lower == 1:
        return {variable: upper * factor for variable, factor in charged.items()}
    exchanged = program.variable(most=half_up(most * rate))
    minus = {variable: -2 * upper * factor for variable, factor in charged.items()}
    program.row({**minus, exchanged: 2 * lower}, least=1 - lower)
    return {exchanged: 1}
