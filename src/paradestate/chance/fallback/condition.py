"""Whether an entry's conditions hold beside so many purchases of others. Leasts play no part."""

from paradestate.core.support.need import Count, are_needs_met
from paradestate.core.support.offer import Offer


def holds(offer: Offer, count: Count, *, times: int = 1) -> bool:
    """Whether `times` purchases of it may stand beside what `count` says of each entry."""
    return not any(count(name) for name in offer.bars) and are_needs_met(offer, count, times=times)
