"""Rows that keep padded orders out of a program.

An order is padded where it stays enough and no dearer without some one of its packs. What is
demanded here is what every other order has, so that none of those is lost; whether an order that
is found is padded after all is for the plain check to say.
"""

from collections.abc import Iterator, Sequence
from itertools import pairwise

from paradestate.core.receipt import cost_of, lots_of
from paradestate.solve.order_program import OrderProgram
from paradestate.solve.pack_program import MOST_LISTED, PackTerms, repeats_from
from paradestate.solve.till_program import TierTerms


def keep_out_padding(order: OrderProgram) -> None:
    """Demands that every pack bought is needed for a figure or keeps the goods on their step."""
    for name, terms in order.packs.items():
        drop = _greatest_drop(terms)
        if drop is None:
            continue
        tiers = order.tills[name[0]].tiers
        reasons = [*_figures_needed(order, terms), *_step_kept(order, tiers, drop=drop)]
        order.program.row({**terms.number, **dict.fromkeys(reasons, -terms.most)}, most=0)


def _greatest_drop(terms: PackTerms) -> int | None:
    """The most that goods fall with one pack less; None where one pack less can be dearer."""
    pack = terms.pack
    span = repeats_from(pack) + lots_of(pack)[0].size
    if span > MOST_LISTED:
        return None
    costs = [cost_of(pack, number=number) for number in range(min(terms.most, span) + 1)]
    drops = [more - fewer for fewer, more in pairwise(costs)]
    return None if min(drops, default=0) < 0 else max(drops, default=0)


def _figures_needed(order: OrderProgram, terms: PackTerms) -> Iterator[int]:
    """For each wanted kind in a pack a variable that is 1 only if one pack less lacks some."""
    for kind, hold in terms.pack.holds.items():
        wanted = order.problem.want.get(kind, 0)
        if hold and wanted:
            needed = order.program.variable(most=1)
            enough_without = wanted + hold
            spare = max(0, order.program.greatest(order.held[kind]) - enough_without + 1)
            order.program.row({**order.held[kind], needed: spare}, most=enough_without - 1 + spare)
            yield needed


def _step_kept(order: OrderProgram, tiers: Sequence[TierTerms], *, drop: int) -> Iterator[int]:
    """For each tier a variable that is 1 only if one pack less lets the goods fall below it."""
    for each in tiers:
        if each.tier.least:
            kept = order.program.variable(most=1)
            order.program.row({kept: 1, each.chosen: -1}, most=0)
            stays = each.tier.least + drop
            spare = max(0, each.tier.most - stays + 1)
            order.program.row({each.goods: 1, kept: spare}, most=stays - 1 + spare)
            yield kept
