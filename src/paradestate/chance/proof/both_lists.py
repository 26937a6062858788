"""How many forces are legal by two lists at once, each by its own prices and rules.

Entry after entry is decided for both lists together. What has to be remembered is what the ties of
both remember; what is counted are the points by the one list, packed as in `packing`, and beside
them by how much the points of the other differ. Where prices are the same there is one such
difference, nought; where few are changed there are few.
"""

from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import accumulate
from math import prod
from typing import NamedTuple

from paradestate.chance.force.packing import BITS_IN_BYTE
from paradestate.chance.force.sequence import in_sequence
from paradestate.chance.force.tie import GroupPoints, Move, Tie, alone, ties_of
from paradestate.core.certainty import NotComputed
from paradestate.core.support.offer import Offer
from paradestate.core.support.terms import Terms

MOST_CASES = 200_000
"""Cases to be told apart, each with its own difference of points; of more it would take minutes."""
MOST_WAYS = 20_000
"""Ways to take one entry; of more it isn't looked into."""

TOO_MANY = NotComputed(
    reason="the two lists differ in so much that too many cases would have to be told apart"
)


class JointTaking(NamedTuple):
    """So many purchases of one entry, with their points by either list."""

    purchases: int
    old: int
    new: int


JointTakings = Mapping[JointTaking, int]
"""Each taking with the number of multisets that come to it."""

Counts = dict[int, int]
"""By how much the points of the new list are greater, to the packed counts by those of the old."""

State = tuple[int, ...]
"""What each tie remembers."""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Sided:
    """A tie, and of which list it is."""

    tie: Tie
    is_new: bool

    def after(self, value: int, *, entry: str, taking: JointTaking) -> int | None:
        """The number after one more entry is decided; None: the rule is broken."""
        points = taking.new if self.is_new else taking.old
        return self.tie.after(value, entry=entry, move=Move(taking.purchases, 0, points))


def legal_in_both(
    old: Terms, new: Terms, *, points: Sequence[int]
) -> tuple[int, ...] | NotComputed:
    """For each number of points left, rising, how many forces both lists hold legal."""
    takings: dict[str, JointTakings] = {}
    budget = max(0, points[-1]) + _refunds(old) + _refunds(new)
    for name in dict.fromkeys((*old.offers, *new.offers)):
        found = joint_takings(old, new, name=name, budget=budget)
        if found is None:
            return NotComputed(
                reason=f"there are more than {MOST_WAYS:,} ways to take '{name}' alone"
            )
        takings[name] = found
    ties = [
        *(_Sided(tie=tie, is_new=False) for tie in _ties(old, takings, is_new=False)),
        *(_Sided(tie=tie, is_new=True) for tie in _ties(new, takings, is_new=True)),
    ]
    if not all(each.tie.entries or each.tie.holds(0) for each in ties):
        return (0,) * len(points)
    walk = _Walk(takings, ties=ties, greatest=max(0, points[-1]))
    ends = walk.ends()
    if ends is None:
        return TOO_MANY
    return tuple(walk.legal(ends, points=number) for number in points)


def _refunds(terms: Terms) -> int:
    """The most points that purchases may bring together."""
    return sum(
        max(0, -offer.cheapest) * offer.most
        for offer in terms.offers.values()
        if offer.most is not None
    )


def joint_takings(old: Terms, new: Terms, *, name: str, budget: int) -> JointTakings | None:
    """Every taking of an entry that both lists may allow; None where there are too many.

    An entry that one list lacks can't be held by both.
    """
    one, other = old.offers.get(name), new.offers.get(name)
    if one is None or other is None:
        least = max(offer.least for offer in (one, other) if offer is not None)
        return {} if least else {JointTaking(0, 0, 0): 1}
    tables: list[dict[tuple[int, int], int]] = [{(0, 0): 1}]
    most = min(_most(each, budget=budget) for each in (one, other))
    for old_price, new_price in _prices(one, other):
        for times in range(most):
            if times + 1 == len(tables):
                tables.append({})
            for (spent, by_new), ways in tables[times].items():
                after = (spent + old_price, by_new + new_price)
                tables[times + 1][after] = tables[times + 1].get(after, 0) + ways
        if sum(map(len, tables)) > MOST_WAYS:
            return None
    allowed = (alone(old, one), alone(new, other))
    return {
        JointTaking(times, spent + one.surcharge(times), by_new + other.surcharge(times)): ways
        for times, table in enumerate(tables)
        if times >= max(one.least, other.least) and all(possible(times) for possible in allowed)
        for (spent, by_new), ways in table.items()
    }


def _most(offer: Offer, *, budget: int) -> int:
    """How often an entry can be bought at all; one without a limit costs something every time."""
    paid = budget // offer.cheapest if offer.cheapest > 0 else None
    every = [each for each in (offer.most, paid) if each is not None]
    return min(every)


def _prices(one: Offer, other: Offer) -> Iterator[tuple[int, int]]:
    """The prices by either list of every purchase that both have."""
    for number in one.cost:
        for choice in one.choices:
            if number in other.cost and choice in other.choices:
                price = one.price(number, choice=choice)
                yield price, other.price(number, choice=choice)


def _ties(terms: Terms, takings: Mapping[str, JointTakings], *, is_new: bool) -> Iterator[Tie]:
    """The ties of one list, for what both may take of its entries."""
    points = {
        name: [0, *(each.new if is_new else each.old for each in takings[name])]
        for name in terms.offers
    }
    return ties_of(
        terms,
        lowest={name: min(each) for name, each in points.items()},
        highest={name: max(each) for name, each in points.items()},
        most={
            name: max((each.purchases for each in takings[name]), default=0)
            for name in terms.offers
        },
    )


class _Walk:
    """Decides entry after entry for both lists."""

    def __init__(
        self, takings: Mapping[str, JointTakings], *, ties: Sequence[_Sided], greatest: int
    ) -> None:
        self._takings = takings
        self._ties = ties
        self._lowest = {
            name: min((t.old for t in each), default=0) for name, each in takings.items()
        }
        self._nought = sum(self._lowest.values())
        self._slots = greatest - self._nought + 1
        ways = prod(sum(each.values()) for each in takings.values())
        self._width = ways.bit_length() // BITS_IN_BYTE + 1
        self._mask = (1 << self._width * BITS_IN_BYTE * max(0, self._slots)) - 1
        self._order, self._judged = in_sequence(
            tuple(takings), ties=[each.tie for each in ties], rolled=frozenset()
        )
        place = {name: number for number, name in enumerate(self._order)}
        self._last = [max((place[name] for name in each.tie.entries), default=-1) for each in ties]

    def ends(self) -> "_Ends | None":
        """The counts before and after all shares are known; None where the cases are too many."""
        start = {(0,) * len(self._ties): {0: 1}}
        early = self._decided(start, self._order[: self._judged])
        late = self._decided(start, self._order[self._judged :])
        return None if early is None or late is None else _Ends(early=early, late=late, sums={})

    def _decided(
        self, states: dict[State, Counts], names: Sequence[str]
    ) -> dict[State, Counts] | None:
        for name in names:
            states = self._after(states, name)
            if sum(map(len, states.values())) > MOST_CASES:
                return None
        return states

    def _after(self, states: dict[State, Counts], name: str) -> dict[State, Counts]:
        place = self._order.index(name)
        touching = [at for at, each in enumerate(self._ties) if name in each.tie.entries]
        closing = {at for at in touching if self._last[at] == place and not self._is_share(at)}
        found: dict[State, Counts] = {}
        for state, counts in states.items():
            for move, steps in self._moves(name, touching).items():
                after = self._moved(state, move, name=name, touching=touching, closing=closing)
                if after is not None:
                    self._add(found.setdefault(after, {}), counts, steps=steps)
        return found

    def _is_share(self, at: int) -> bool:
        return isinstance(self._ties[at].tie, GroupPoints)

    def _moves(
        self, name: str, touching: Sequence[int]
    ) -> Mapping[JointTaking, Sequence[tuple[JointTaking, int]]]:
        """The takings that no tie tells apart, together."""
        asks = {self._ties[at].is_new for at in touching if self._is_share(at)}
        moves: dict[JointTaking, list[tuple[JointTaking, int]]] = {}
        for taking, ways in self._takings[name].items():
            old = taking.old if False in asks else 0
            new = taking.new if True in asks else 0
            known = JointTaking(taking.purchases, old, new)
            step = JointTaking(
                taking.purchases, taking.old - self._lowest[name], taking.new - taking.old
            )
            moves.setdefault(known, []).append((step, ways))
        return moves

    def _moved(
        self,
        state: State,
        move: JointTaking,
        *,
        name: str,
        touching: Sequence[int],
        closing: Collection[int],
    ) -> State | None:
        values = list(state)
        for at in touching:
            after = self._ties[at].after(values[at], entry=name, taking=move)
            if after is None or (at in closing and not self._ties[at].tie.holds(after)):
                return None
            values[at] = 0 if at in closing else after
        return tuple(values)

    def _add(
        self, found: Counts, counts: Counts, *, steps: Sequence[tuple[JointTaking, int]]
    ) -> None:
        bits = self._width * BITS_IN_BYTE
        for (_, slots, difference), ways in steps:
            for before, packed in counts.items():
                moved = ((packed << slots * bits) & self._mask) * ways
                found[before + difference] = found.get(before + difference, 0) + moved

    def legal(self, ends: "_Ends", *, points: int) -> int:
        """How many forces both hold legal with so many points left, nought or more."""
        allowed = tuple(state for state in ends.early if self._has_shares(state, points=points))
        if allowed not in ends.sums:
            ends.sums[allowed] = self._sums(ends, allowed)
        total = 0
        for difference, upto in ends.sums[allowed].items():
            slot = min(points, points - difference) - self._nought
            total += upto[slot] if slot >= 0 else 0
        return total

    def _has_shares(self, state: State, *, points: int) -> bool:
        return all(
            value in each.tie.span(points=points)
            for value, each in zip(state, self._ties, strict=True)
            if isinstance(each.tie, GroupPoints)
        )

    def _sums(self, ends: "_Ends", allowed: Sequence[State]) -> Mapping[int, Sequence[int]]:
        """Difference of points to how many forces cost at most so much by the old list."""
        early = _added(ends.early[state] for state in allowed)
        late = _added(ends.late.values())
        found: Counts = {}
        for one, packed in early.items():
            for other, more in late.items():
                found[one + other] = found.get(one + other, 0) + packed * more
        return {each: list(accumulate(self._unpacked(packed))) for each, packed in found.items()}

    def _unpacked(self, packed: int) -> Sequence[int]:
        width = self._width
        written = (packed & self._mask).to_bytes(self._slots * width, "little")
        return [
            int.from_bytes(written[place : place + width], "little")
            for place in range(0, self._slots * width, width)
        ]


def _added(every: Iterable[Counts]) -> Counts:
    """All counts together."""
    found: Counts = {}
    for counts in every:
        for difference, packed in counts.items():
            found[difference] = found.get(difference, 0) + packed
    return found


@dataclass(frozen=True, slots=True, kw_only=True)
class _Ends:
    """The counts at the end of either half of the entries."""

    early: Mapping[State, Counts]
    """Up to where all shares of the points are known; what is remembered are those."""
    late: Mapping[State, Counts]
    """Of the rest; nothing is remembered."""
    sums: dict[tuple[State, ...], Mapping[int, Sequence[int]]]
    """What was added up before, by the states whose shares hold."""
