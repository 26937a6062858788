"""The order of milestones with the least weighted waiting: the sum of weight times finishing time.

A milestone is finished with the last of its stands. Stands of one kind that are worked through
together are a batch; a batch costs its set-up once, and is done as a whole. In some best order each
stretch of work from one milestone to the next holds one batch of a kind at most, so an order of the
milestones and the stretch in which each kind's work is done say everything. For a given order each
kind can be settled by itself: its later work may be done in an earlier batch, which saves a set-up
and delays what comes between (a short dynamic program).

Orders are sought by branch and bound. Lower bounds: the same with every set-up paid once, solved
over sets of finished milestones (Held and Karp, "A dynamic programming approach to sequencing
problems", 1962); of many milestones, with work that several share divided between them, the order
by weight over minutes (Smith, "Various optimizers for single-stage production", 1956). Of equal
orders the one nearest to the owner's is taken. Times are exact.

Some milestones are wanted by a time. Then an order is better whose weighted lateness is less, and
of orders equally late the one with less weighted waiting. The batches of an order are those that
wait least, wanted or not.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from fractions import Fraction
from functools import cached_property
from itertools import accumulate
from math import lcm

from paradestate.core.work.bound import MOST_BY_SETS, Item, Lateness, SetBound, shared_bound

MOST_TRIED = 4000
"""Whole orders that are tried before the search ends unproven."""

Order = tuple[int, ...]
Settled = Mapping[str, tuple[int, Mapping[int, int]]]
"""Kind to what its batches add to the waiting, and wanted stretch to the one it is done in."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Share:
    """All work of one kind that belongs to the same milestones."""

    kind: str
    of: frozenset[int]
    """Milestones, from 0 in the owner's order; at least one."""
    minutes: Fraction
    """Above nought."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Waiting:
    """What is to be put in order."""

    shares: tuple[Share, ...]
    weights: tuple[Fraction, ...]
    """Of each milestone, above nought."""
    set_up: Fraction = Fraction(0)
    """Minutes for each batch."""
    due: Mapping[int, Fraction] = field(default_factory=dict)
    """Milestone to the minutes of work by which it is wanted; most are wanted on no day."""


@dataclass(frozen=True, slots=True, kw_only=True)
class BestOrder:
    """An order of the milestones, and how much better one may be."""

    order: Order
    stretch: Mapping[tuple[str, int], int]
    """Kind and the stretch in which its work is wanted at the latest, to that in which it is done.

    Stretches are places in the order, from 0.
    """
    waiting: Fraction
    """Weight times minutes, over all milestones."""
    least: Fraction
    """No order that is no later comes to less; nought where a less late one isn't ruled out."""
    late: Fraction = Fraction(0)
    """Weight times minutes by which milestones are done after they are wanted, over all of them;
    as little as in any order whose batches wait as little as can be."""

    @property
    def is_proved(self) -> bool:
        """Whether nothing better exists."""
        return self.waiting == self.least


def best_order(problem: Waiting) -> BestOrder:
    """The best order; with very many milestones the best found."""
    scaled = _Scaled(problem)
    search = _Search(scaled)
    order, cost = search.best()
    unit = scaled.minute * scaled.weight
    late, waited = divmod(cost, scaled.lateness.unit)
    least_late, least = divmod(search.least, scaled.lateness.unit)
    return BestOrder(
        order=order,
        stretch=scaled.stretches(order),
        waiting=Fraction(waited, unit),
        least=Fraction(least if late == least_late else 0, unit),
        late=Fraction(late, unit),
    )


def waiting_of(problem: Waiting, order: Sequence[int]) -> Fraction:
    """The weighted waiting of an order, its batches as good as can be."""
    scaled = _Scaled(problem)
    return Fraction(scaled.waiting(tuple(order)), scaled.minute * scaled.weight)


class _Scaled:
    """A problem in whole numbers, and what an order costs."""

    def __init__(self, problem: Waiting) -> None:
        self.minute = lcm(
            problem.set_up.denominator,
            *(share.minutes.denominator for share in problem.shares),
            *(minutes.denominator for minutes in problem.due.values()),
        )
        self.weight = lcm(*(weight.denominator for weight in problem.weights))
        self.weights = [int(weight * self.weight) for weight in problem.weights]
        self.set_up = int(problem.set_up * self.minute)
        self.kinds: dict[str, list[tuple[frozenset[int], int]]] = {}
        for share in problem.shares:
            minutes = int(share.minutes * self.minute)
            self.kinds.setdefault(share.kind, []).append((share.of, minutes))
        whole = sum(minutes for each in self.kinds.values() for _, minutes in each)
        most = whole + self.set_up * sum(map(len, self.kinds.values()))
        self.lateness = Lateness(
            due={each: int(minutes * self.minute) for each, minutes in problem.due.items()},
            unit=1 + most * sum(self.weights),
        )

    def waiting(self, order: Order) -> int:
        """The weighted waiting of an order."""
        return _waiting(self._settled(order))

    def cost(self, order: Order) -> int:
        """Its weighted lateness, of which one outweighs all that can be waited, and its waiting."""
        settled = self._settled(order)
        return self.lateness.unit * self._late(order, settled) + _waiting(settled)

    def _late(self, order: Order, settled: Settled) -> int:
        due = self.lateness.due
        if not due:
            return 0
        spent = [0] * len(order)
        place = {milestone: number for number, milestone in enumerate(order)}
        for kind, (_, done) in settled.items():
            for wanted, minutes in _by_stretch(self.kinds[kind], place):
                spent[done[wanted]] += minutes
            for stretch in set(done.values()):
                spent[stretch] += self.set_up
        ends = accumulate(spent)
        return sum(
            self.weights[each] * max(0, end - due[each])
            for each, end in zip(order, ends, strict=True)
            if each in due
        )

    def stretches(self, order: Order) -> Mapping[tuple[str, int], int]:
        """In which stretch the work of each kind is done."""
        return {
            (kind, wanted): done
            for kind, (_, stretches) in self._settled(order).items()
            for wanted, done in stretches.items()
        }

    def _settled(self, order: Order) -> Settled:
        place = {milestone: number for number, milestone in enumerate(order)}
        later = [0] * (len(order) + 1)
        for number in reversed(range(len(order))):
            later[number] = later[number + 1] + self.weights[order[number]]
        return {
            kind: _batches(_by_stretch(shares, place), later=later, set_up=self.set_up)
            for kind, shares in self.kinds.items()
        }

    @cached_property
    def items(self) -> Sequence[Item]:
        """All work, and a set-up for each kind, with the milestones that wait for it."""
        work = [
            Item(minutes=minutes, of=sum(1 << each for each in of))
            for shares in self.kinds.values()
            for of, minutes in shares
        ]
        set_ups = [
            Item(minutes=self.set_up, of=sum(1 << each for each in frozenset().union(*every)))
            for every in ([of for of, _ in shares] for shares in self.kinds.values())
        ]
        return work + (set_ups if self.set_up else [])


def _waiting(settled: Settled) -> int:
    return sum(cost for cost, _ in settled.values())


def _by_stretch(
    shares: Sequence[tuple[frozenset[int], int]], place: Mapping[int, int]
) -> list[tuple[int, int]]:
    """The minutes of a kind that are wanted in each stretch, in their order."""
    wanted: dict[int, int] = {}
    for of, minutes in shares:
        first = min(place[each] for each in of)
        wanted[first] = wanted.get(first, 0) + minutes
    return sorted(wanted.items())


def _batches(
    wanted: Sequence[tuple[int, int]], *, later: Sequence[int], set_up: int
) -> tuple[int, Mapping[int, int]]:
    """What the batches of one kind add to the waiting, and in which stretch each is done.

    From the last stretch backwards: a batch that begins with the work wanted in one stretch takes
    on that of none or some of the following ones. Of equal ways the one with fewer batches.
    """
    costs = [0] * (len(wanted) + 1)
    ends = [0] * len(wanted)
    for first in reversed(range(len(wanted))):
        weight = later[wanted[first][0]]
        minutes, best = set_up, -1
        for last in range(first, len(wanted)):
            minutes += wanted[last][1]
            cost = minutes * weight + costs[last + 1]
            if best < 0 or cost <= best:
                best, ends[first] = cost, last + 1
        costs[first] = best
    done: dict[int, int] = {}
    first = 0
    while first < len(wanted):
        done |= dict.fromkeys((each for each, _ in wanted[first : ends[first]]), wanted[first][0])
        first = ends[first]
    return costs[0], done


class _Search:
    """Looks for the best order, and keeps the best so far; costs are lateness and waiting."""

    def __init__(self, scaled: _Scaled) -> None:
        self._scaled = scaled
        self._number = len(scaled.weights)
        self._tried = 0
        self._costs: dict[Order, int] = {}
        self.least = 0

    def best(self) -> tuple[Order, int]:
        """The best order with its cost; `least` is then no more than any order's."""
        items, weights = self._scaled.items, self._scaled.weights
        if self._number > MOST_BY_SETS:
            self.least, start = shared_bound(items, weights=weights)
            if self._cost(start) > self.least:
                start = self._improved(min(start, tuple(range(self._number)), key=self._key))
            return start, self._cost(start)
        sets = SetBound(items, weights=weights, lateness=self._scaled.lateness)
        best = self._improved(sets.order)
        self.least = sets.whole
        if best != sets.order or self._cost(best) > sets.whole:
            best, is_whole = self._branched(sets, best=best)
            self.least = self._cost(best) if is_whole else sets.whole
        return best, self._cost(best)

    def _cost(self, order: Order) -> int:
        if order not in self._costs:
            self._tried += 1
            self._costs[order] = self._scaled.cost(order)
        return self._costs[order]

    def _key(self, order: Order) -> tuple[int, Order]:
        """Less lateness and waiting first, then the owner's order."""
        return self._cost(order), order

    def _improved(self, order: Order) -> Order:
        """The order after changes of place, as long as one makes it better."""
        better = min(_near(order), key=self._key, default=order)
        while self._key(better) < self._key(order) and self._tried < MOST_TRIED:
            order = better
            better = min(_near(order), key=self._key, default=order)
        return min(order, better, key=self._key)

    def _branched(self, sets: SetBound, *, best: Order) -> tuple[Order, bool]:
        """The best of all orders, and whether all were looked at."""
        limit = self._tried + MOST_TRIED
        waiting: list[tuple[Order, int, int]] = [((), 0, 0)]
        while waiting:
            prefix, done, cost = waiting.pop()
            if (cost + sets.rest[done], prefix) > (self._cost(best), best[: len(prefix)]):
                continue
            if len(prefix) == self._number:
                best = min(best, prefix, key=self._key)
            if self._tried >= limit:
                return best, False
            # The last that is put down is looked at first, so the owner's order comes first.
            for each in reversed(range(self._number)):
                if not done >> each & 1:
                    more = done | 1 << each
                    reached = cost + sets.cost(each, ends=sets.minutes[more])
                    waiting.append(((*prefix, each), more, reached))
        return best, True


def _near(order: Order) -> Iterator[Order]:
    """The orders in which one milestone is elsewhere, or two have changed places."""
    for here in range(len(order)):
        rest = order[:here] + order[here + 1 :]
        for there in range(len(order)):
            if there != here:
                yield (*rest[:there], order[here], *rest[there:])
        for there in range(here + 2, len(order)):
            swapped = list(order)
            swapped[here], swapped[there] = swapped[there], swapped[here]
            yield tuple(swapped)
