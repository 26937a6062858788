"""How many purchases of an entry a force may hold."""

from collections.abc import Mapping

from paradestate.core.support.entry import Limit, Rounding


def purchases_allowed(limit: Limit, *, number_of: Mapping[str, int]) -> int | None:
    """The most purchases that a limit allows, or None where any number is allowed.

    `number_of` gives how many of each formation stand in the must layer.
    """
    if limit.most is None:
        return None
    if not limit.of:
        return limit.most + limit.plus
    instances = number_of.get(limit.of, 0)
    if limit.round is Rounding.UP:
        instances += limit.for_every - 1
    return limit.most * (instances // limit.for_every) + limit.plus
