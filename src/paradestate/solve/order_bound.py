"""How many of a pack, and how great a value of goods, an order can use."""

import math

from paradestate.core.order import OrderProblem
from paradestate.core.receipt import lots_of
from paradestate.core.source import Pack, Source
from paradestate.solve.pack_program import repeats_from


def most_useful(problem: OrderProblem, source: Source, *, pack: Pack) -> int:
    """Any order with more of a pack than this is padded.

    Let `best` be the lot of the pack that is cheapest a pack. Taking one such lot out of many packs
    lowers the goods by its price. The order stays enough where as many are left as fill every want
    by themselves, and is no dearer where the goods stay on the highest step. So an order that isn't
    padded has too few packs for that, or its goods are less than one lot above the highest step.
    """
    best = lots_of(pack)[0]
    top = _highest_step(source)
    fills = max((_packs_for(problem, pack, kind=kind) for kind in pack.holds), default=0)
    lifts = math.ceil(best.size * (top + best.price) / best.price) - 1 if best.price else 0
    most = max(repeats_from(pack) + best.size - 1, fills + best.size - 1, lifts)
    return most if pack.most is None else min(most, pack.most)


def _packs_for(problem: OrderProblem, pack: Pack, *, kind: str) -> int:
    each = pack.holds[kind]
    return -(-problem.want.get(kind, 0) // each) if each else 0


def _highest_step(source: Source) -> int:
    return max((*source.carriage, *source.discount, source.least_order), default=0)
