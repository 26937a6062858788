"""In which order entries are decided, so that as little as possible has to be remembered.

Entries that no tie joins need no memory of one another, so each knot of joined entries is decided
by itself: first those with shares of the points, then those that the dice decide, then the rest.
Within a knot the next entry is always the one that leaves the least to remember (a greedy search
for a small vertex separation; see Bodlaender, "A partial k-arboretum of graphs with bounded
treewidth", 1998, section 5). The order changes no answer.
"""

from collections.abc import Mapping, Sequence

from paradestate.chance.tie import GroupPoints, NotTogether, Tie


def in_sequence(
    names: Sequence[str], *, ties: Sequence[Tie], rolled: frozenset[str]
) -> tuple[tuple[str, ...], int]:
    """The entries in the order of deciding, and how many come before all shares are known."""
    shared = {name for tie in ties if isinstance(tie, GroupPoints) for name in tie.entries}
    knots = _knots(names, ties=ties)
    with_shares = [knot for knot in knots if shared.intersection(knot)]
    others = [knot for knot in knots if not shared.intersection(knot)]
    others.sort(key=lambda knot: not rolled.intersection(knot))
    order = [
        name
        for knot in (*with_shares, *others)
        for name in _within(knot, ties=[tie for tie in ties if tie.entries & set(knot)])
    ]
    return tuple(order), sum(map(len, with_shares))


def _knots(names: Sequence[str], *, ties: Sequence[Tie]) -> list[list[str]]:
    """The entries parted so that no tie joins two parts, each in file order."""
    knot_of = {name: {name} for name in names}
    for tie in ties:
        joined = set().union(*(knot_of[name] for name in tie.entries))
        for name in joined:
            knot_of[name] = joined
    found: dict[int, list[str]] = {}
    for name in names:
        found.setdefault(id(knot_of[name]), []).append(name)
    return list(found.values())


def _within(knot: Sequence[str], *, ties: Sequence[Tie]) -> list[str]:
    """The order within a knot."""
    ties_at = {name: [tie for tie in ties if name in tie.entries] for name in knot}
    order: list[str] = []
    left = dict.fromkeys(knot)
    while left:
        best = min(left, key=lambda name: _memory(name, left=left, order=order, ties_at=ties_at))
        order.append(best)
        del left[best]
    return order


def _memory(
    name: str,
    *,
    left: Mapping[str, None],
    order: Sequence[str],
    ties_at: Mapping[str, Sequence[Tie]],
) -> int:
    """What would have to be remembered once this entry is decided, in bits, about."""
    undecided = left.keys() - {name}
    bits = 0
    open_ties: dict[int, Tie] = {}
    for decided in (*order, name):
        still_open = [tie for tie in ties_at[decided] if tie.entries & undecided]
        bits += any(isinstance(tie, NotTogether) for tie in still_open)
        open_ties |= {id(tie): tie for tie in still_open if not isinstance(tie, NotTogether)}
    return bits + sum(tie.greatest.bit_length() for tie in open_ties.values())
