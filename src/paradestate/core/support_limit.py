"""How many purchases of an entry a force may hold."""

from collections.abc import Mapping

from paradestate.core.support import Entry, Rounding


def purchases_allowed(entry: Entry, *, number_of: Mapping[str, int]) -> int | None:
    """The limit of an entry, or None where any number is allowed.

    `number_of` gives how many of each formation stand in the must layer.
    """
    limit = entry.limit
    if limit.most is None:
        return None
    if not limit.of:
        return limit.most
    instances = number_of.get(limit.of, 0)
    if limit.round is Rounding.UP:
        instances += limit.for_every - 1
    return limit.most * (instances // limit.for_every)
