"""Whether an entry's conditions hold beside so many purchases of others. Leasts play no part."""

from collections.abc import Callable

from paradestate.core.support.offer import Offer


def holds(offer: Offer, count: Callable[[str], int], *, times: int = 1) -> bool:
    """Whether `times` purchases of it may stand beside what `count` says of each entry."""
    return (
        all(count(name) >= number for name, number in offer.needs.items())
        and (
            not offer.needs_any_of
            or any(count(name) >= number for name, number in offer.needs_any_of.items())
        )
        and all(count(name) >= number * times for name, number in offer.needs_for_each.items())
        and not any(count(name) for name in offer.bars)
    )
