"""How many of a pack, and how great a value of goods, an order can use.

Let the best lot of a pack be the one that is cheapest a pack. Taking one such lot out of many packs
lowers the goods by its price. The order stays enough where as many are left as fill every want by
themselves, and is no dearer where the goods stay on the highest step. So in an order that isn't
padded there are either few enough of each pack, or goods less than one lot above the highest step.
"""

import math
import sys
from fractions import Fraction

from paradestate.core.order import OrderProblem
from paradestate.core.receipt import exchange_rate, lots_of
from paradestate.core.source import Pack, Source
from paradestate.solve.pack_program import repeats_from


def most_useful(problem: OrderProblem, source: Source, *, pack: Pack) -> int:
    """Any order with more of a pack than this is padded."""
    best = lots_of(pack)[0]
    goods = _highest_step(source) + best.price
    lifts = math.ceil(best.size * goods / best.price) - 1 if best.price else 0
    return _within_limit(pack, max(_most_needed(problem, pack), lifts))


def greatest_goods(problem: OrderProblem, source: Source, *, most_total: int | None = None) -> int:
    """Any order with goods of more value than this at a source is padded, or above `most_total`.

    `most_total` is in minor units of the force's currency.
    """
    packs = [pack for pack in source.packs.values() if pack.holds]
    dearest_lot = max((lots_of(pack)[0].price for pack in packs), default=0)
    needed = sum(
        _within_limit(pack, _most_needed(problem, pack)) * lots_of(pack)[-1].price for pack in packs
    )
    useful = max(_highest_step(source) + dearest_lot - 1, needed)
    return (
        useful if most_total is None else min(useful, _goods_for(problem, source, total=most_total))
    )


def _goods_for(problem: OrderProblem, source: Source, *, total: int) -> int:
    """No greater goods can be had for so much; both roundings are half up, so half a unit each."""
    kept = 1 - max(source.discount.values(), default=Fraction(0))
    if not kept:
        return sys.maxsize
    paid = (total + Fraction(1, 2)) / exchange_rate(source, problem.currency)
    return math.floor((paid + Fraction(1, 2)) / kept)


def _most_needed(problem: OrderProblem, pack: Pack) -> int:
    """With more than this a best lot can be taken out and the rest fills every want."""
    fills = max((_packs_for(problem, pack, kind=kind) for kind in pack.holds), default=0)
    return max(repeats_from(pack), fills) + lots_of(pack)[0].size - 1


def _packs_for(problem: OrderProblem, pack: Pack, *, kind: str) -> int:
    each = pack.holds[kind]
    return -(-problem.uses_of(kind) // each) if each else 0


def _within_limit(pack: Pack, number: int) -> int:
    return number if pack.most is None else min(number, pack.most)


def _highest_step(source: Source) -> int:
    return max((*source.carriage, *source.discount, source.least_order), default=0)
