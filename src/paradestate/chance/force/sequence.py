"""In which order entries are decided, so that as little as possible has to be remembered.

Entries that no tie joins need no memory of one another, so each knot of joined entries is decided
by itself: first those with shares of the points, then those that the dice decide, then those about
which many questions are asked, then the rest.
Within a knot the next entry is always the one that leaves the least to remember (a greedy search
for a small vertex separation; see Bodlaender, "A partial k-arboretum of graphs with bounded
treewidth", 1998, section 5); a knot that would have much to remember is begun again from other
entries. The order changes no answer.
"""

from collections.abc import Iterable, Mapping, Sequence
from typing import NamedTuple, TypeAlias

from paradestate.chance.force.tie import GroupPoints, NotTogether, Tie

STARTS = 4
"""A knot is begun from so many entries at most."""
FEW_CASES = 4
"""A knot of no more cases to remember for each entry isn't begun again."""

Entries: TypeAlias = int
"""A set of entries: a bit for each, in file order."""


def in_sequence(
    names: Sequence[str],
    *,
    ties: Sequence[Tie],
    rolled: frozenset[str],
    asked: frozenset[str] = frozenset(),
) -> tuple[tuple[str, ...], int]:
    """The entries in the order of deciding, and how many come before all shares are known."""
    bit_of = {name: 1 << place for place, name in enumerate(names)}
    joins = [(tie, _all(bit_of[name] for name in tie.entries)) for tie in ties]
    shared = _all(entries for tie, entries in joins if isinstance(tie, GroupPoints))
    by_dice = _all(bit_of[name] for name in rolled)
    by_question = _all(bit_of[name] for name in asked)
    knots = _knots(len(names), joins=[entries for _, entries in joins])
    with_shares = [knot for knot in knots if knot & shared]
    others = [knot for knot in knots if not knot & shared]
    others.sort(key=lambda knot: (not knot & by_dice, not knot & by_question))
    threads = _threads(joins)
    order = [bit for knot in (*with_shares, *others) for bit in _order(knot, threads)]
    return tuple(names[bit.bit_length() - 1] for bit in order), sum(
        knot.bit_count() for knot in with_shares
    )


def _all(several: Iterable[Entries]) -> Entries:
    """All entries of several sets."""
    found = 0
    for entries in several:
        found |= entries
    return found


def _single(entries: Entries) -> list[Entries]:
    """Each entry of a set by itself, in file order."""
    found = []
    while entries:
        found.append(entries & -entries)
        entries &= entries - 1
    return found


def _knots(number: int, *, joins: Sequence[Entries]) -> list[Entries]:
    """The entries parted so that no tie joins two parts."""
    knots: list[Entries] = []
    for entries in (*joins, *(1 << place for place in range(number))):
        joined = entries
        for knot in knots:
            if knot & entries:
                joined |= knot
        knots = [knot for knot in knots if not knot & entries]
        if joined:
            knots.append(joined)
    return sorted(knots, key=lambda knot: knot & -knot)


class _Thread(NamedTuple):
    """What has to be remembered from the first of some entries that is decided to the last."""

    entries: Entries
    bits: int
    begins: Entries = 0
    """The entry with which alone it begins; nought: with whichever comes first."""


def _threads(joins: Sequence[tuple[Tie, Entries]]) -> Mapping[Entries, Sequence[_Thread]]:
    """Entry to its threads: one for each greater tie, and one for all its pairs together.

    What pairs have to remember is how often the entry was bought that was decided first; all pairs
    of that entry remember the same.
    """
    partners: dict[Entries, Entries] = {}
    every = []
    for tie, entries in joins:
        if isinstance(tie, NotTogether):
            for bit in _single(entries):
                partners[bit] = partners.get(bit, 0) | entries
        else:
            every.append(_Thread(entries, tie.greatest.bit_length()))
    every.extend(_Thread(others, 1, first) for first, others in partners.items())
    threads: dict[Entries, list[_Thread]] = {}
    for thread in every:
        for bit in _single(thread.entries):
            threads.setdefault(bit, []).append(thread)
    return threads


def _order(knot: Entries, threads: Mapping[Entries, Sequence[_Thread]]) -> Sequence[Entries]:
    """The entries of a knot, in an order of which little has to be remembered."""
    bits = _single(knot)
    if len(bits) == 1:
        return bits
    unpicking = _Unpicking(bits, threads)
    best = unpicking.order(min(bits, key=lambda bit: unpicking.growth(bit, left=knot)))
    for start in bits[:STARTS]:
        if best[0] <= FEW_CASES * len(bits):
            break
        best = min(best, unpicking.order(start))
    return best[1]


class _Unpicking:
    """Decides the entries of a knot, always the one that leaves the least to remember."""

    def __init__(
        self, bits: Sequence[Entries], threads: Mapping[Entries, Sequence[_Thread]]
    ) -> None:
        self._bits = bits
        self._threads = threads
        self._near = {
            bit: [other for other in _single(_all(t.entries for t in threads[bit])) if other != bit]
            for bit in bits
        }

    def order(self, start: Entries) -> tuple[int, Sequence[Entries]]:
        """The entries from `start` on, and the number of cases to be remembered on the way."""
        left, best, memory, cases = _all(self._bits), start, 0, 0
        waiting = {bit: self.growth(bit, left=left) for bit in self._bits}
        found = []
        while True:
            found.append(best)
            memory += waiting.pop(best)[0]
            cases += 1 << memory
            left ^= best
            if not left:
                return cases, found
            for bit in self._near[best]:
                if bit & left:
                    waiting[bit] = self.growth(bit, left=left)
            best = min(waiting, key=waiting.__getitem__)

    def growth(self, bit: Entries, *, left: Entries) -> tuple[int, int, int]:
        """By how many bits the memory grows when an entry is decided; what to prefer of equals.

        Rather an entry that is much asked about already, and that few others are waiting for.
        """
        more, known, others = 0, 0, 0
        for entries, bits, begins in self._threads[bit]:
            undecided = entries & left
            others |= undecided
            is_open = not begins & left if begins else undecided != entries
            if is_open:
                known -= bits
                if undecided == bit:
                    more -= bits
            elif begins in (bit, 0) and undecided != bit:
                more += bits
        return more, known, others.bit_count()
