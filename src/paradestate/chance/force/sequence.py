"""In which order entries are decided, so that as little as possible has to be remembered.

Entries that no tie joins need no memory of one another, so each knot of joined entries is decided
by itself: first those with shares of the points, then those that the dice decide, then the rest.
Within a knot the next entry is always the one that leaves the least to remember (a greedy search
for a small vertex separation; see Bodlaender, "A partial k-arboretum of graphs with bounded
treewidth", 1998, section 5). The order changes no answer.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from paradestate.chance.force.tie import GroupPoints, NotTogether, Tie


def in_sequence(
    names: Sequence[str], *, ties: Sequence[Tie], rolled: frozenset[str]
) -> tuple[tuple[str, ...], int]:
    """The entries in the order of deciding, and how many come before all shares are known."""
    joins = [(tie, tie.entries) for tie in ties]
    shared = {name for tie, entries in joins if isinstance(tie, GroupPoints) for name in entries}
    knots = _knots(names, joins=[entries for _, entries in joins])
    with_shares = [knot for knot in knots if shared.intersection(knot)]
    others = [knot for knot in knots if not shared.intersection(knot)]
    others.sort(key=lambda knot: not rolled.intersection(knot))
    threads = _threads(names, joins=joins)
    order = [name for knot in (*with_shares, *others) for name in _Unpicking(knot, threads).order()]
    return tuple(order), sum(map(len, with_shares))


def _knots(names: Sequence[str], *, joins: Sequence[frozenset[str]]) -> list[list[str]]:
    """The entries parted so that no tie joins two parts, each in file order."""
    knot_of = {name: {name} for name in names}
    for entries in joins:
        joined = set().union(*(knot_of[name] for name in entries))
        for name in joined:
            knot_of[name] = joined
    found: dict[int, list[str]] = {}
    for name in names:
        found.setdefault(id(knot_of[name]), []).append(name)
    return list(found.values())


@dataclass(frozen=True, slots=True, kw_only=True)
class _Thread:
    """What has to be remembered from the first of some entries that is decided to the last."""

    entries: frozenset[str]
    bits: int
    begins: str = ""
    """The entry with which alone it begins; empty: with whichever comes first."""


def _threads(
    names: Sequence[str], *, joins: Sequence[tuple[Tie, frozenset[str]]]
) -> Mapping[str, Sequence[_Thread]]:
    """Entry to its threads: one for each greater tie, and one for all its pairs together.

    What pairs have to remember is how often the entry was bought that was decided first; all pairs
    of that entry remember the same.
    """
    partners: dict[str, set[str]] = {}
    threads: dict[str, list[_Thread]] = {name: [] for name in names}
    for tie, entries in joins:
        if isinstance(tie, NotTogether):
            for name in entries:
                partners.setdefault(name, set()).update(entries)
        else:
            thread = _Thread(entries=entries, bits=tie.greatest.bit_length())
            for name in entries:
                threads[name].append(thread)
    for first, others in partners.items():
        thread = _Thread(entries=frozenset(others), bits=1, begins=first)
        for name in others:
            threads[name].append(thread)
    return threads


class _Unpicking:
    """Decides the entries of a knot, always the one that leaves the least to remember."""

    def __init__(self, knot: Sequence[str], threads: Mapping[str, Sequence[_Thread]]) -> None:
        self._knot = knot
        self._threads = threads
        self._left = dict.fromkeys(knot)

    def order(self) -> Iterator[str]:
        """The entries in that order, of equals the first in the file."""
        while self._left:
            best = (
                min(self._left, key=self._more) if len(self._left) > 1 else next(iter(self._left))
            )
            del self._left[best]
            yield best

    def _more(self, name: str) -> int:
        """By how many bits the memory grows when an entry is decided."""
        bits = 0
        for thread in self._threads[name]:
            undecided = thread.entries & self._left.keys()
            begins = thread.begins == name or (not thread.begins and undecided == thread.entries)
            is_open = thread.begins not in self._left if thread.begins else not begins
            if begins and len(undecided) > 1:
                bits += thread.bits
            elif is_open and len(undecided) == 1:
                bits -= thread.bits
        return bits
