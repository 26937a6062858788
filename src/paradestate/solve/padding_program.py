"""Rows that keep padded orders out of a program.

An order is padded where it stays enough and no dearer without some one of its packs or multi-buys.
What is demanded here is what every other order has, so that none of those is lost; whether an
order that is found is padded after all is for the plain check to say.
"""

from collections.abc import Iterator, Sequence

from paradestate.core.money import half_up
from paradestate.core.receipt import cost_of, lots_of
from paradestate.solve.order_program import OrderProgram
from paradestate.solve.pack_program import MOST_LISTED, PackTerms, repeats_from
from paradestate.solve.till_program import Tier, TierTerms


def keep_out_padding(order: OrderProgram) -> None:
    """Demands that packs bought are needed for a figure or keep the goods on their step."""
    for name, terms in order.packs.items():
        tiers = order.tills[name[0]].tiers
        for size in sorted({1, *terms.pack.multibuy}):
            drop = _greatest_drop(terms, size=size)
            if drop is None:
                continue
            reasons = [
                *_figures_needed(order, terms, size=size),
                *_step_kept(order, tiers, drop=drop),
            ]
            unless = dict.fromkeys(reasons, -terms.most)
            order.program.row({**terms.number, **unless}, most=size - 1)


def _greatest_drop(terms: PackTerms, *, size: int) -> int | None:
    """The most that goods fall with so many packs less; None where that can make them dearer."""
    pack = terms.pack
    span = repeats_from(pack) + lots_of(pack)[0].size + size
    if span > MOST_LISTED:
        return None
    costs = [cost_of(pack, number=number) for number in range(min(terms.most, span) + 1)]
    drops = [more - fewer for fewer, more in zip(costs, costs[size:], strict=False)]
    return None if min(drops, default=0) < 0 else max(drops, default=0)


def _figures_needed(order: OrderProgram, terms: PackTerms, *, size: int) -> Iterator[int]:
    """For each kind of use in a pack a variable that is 1 only if so many packs less lack some."""
    for kind, hold in terms.pack.holds.items():
        uses = order.problem.uses_of(kind)
        if hold and uses:
            needed = order.program.variable(most=1)
            enough_without = uses + hold * size
            spare = max(0, order.program.greatest(order.held[kind]) - enough_without + 1)
            order.program.row({**order.held[kind], needed: spare}, most=enough_without - 1 + spare)
            yield needed


def _step_kept(order: OrderProgram, tiers: Sequence[TierTerms], *, drop: int) -> Iterator[int]:
    """For each tier a variable that is 1 only if such a drop in goods can make the order dearer."""
    for number, each in enumerate(tiers):
        if _can_be_dearer([terms.tier for terms in tiers[: number + 1]], drop=drop):
            kept = order.program.variable(most=1)
            order.program.row({kept: 1, each.chosen: -1}, most=0)
            stays = each.tier.least + drop
            spare = max(0, each.tier.most - stays + 1)
            order.program.row({each.goods: each.unit, kept: spare}, most=stays - 1 + spare)
            yield kept


def _can_be_dearer(tiers: Sequence[Tier], *, drop: int) -> bool:
    """Whether goods a little below the last of these tiers aren't sent, or may cost more."""
    *below, tier = tiers
    reached = tier.least - drop
    if max(reached, 0) < tiers[0].least:
        return True
    return any(
        _charge(lower, lower.most) > _charge(tier, tier.least)
        for lower in below
        if lower.most >= reached
    )


def _charge(tier: Tier, goods: int) -> int:
    return goods - half_up(goods * tier.discount) + tier.carriage
