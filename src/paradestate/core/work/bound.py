"""Lower bounds on the weighted waiting of milestones that share work, and orders to begin with.

Work is whatever several milestones wait for alike: it takes its minutes once, whenever the first of
them needs it. Minutes and weights are whole numbers here. Imports nothing of the project.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from fractions import Fraction

MOST_BY_SETS = 12
"""Milestones of which every set is gone through."""

Order = tuple[int, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Item:
    """A piece of work."""

    minutes: int
    of: int
    """The milestones that wait for it: bit 0 for the first, and so on."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Lateness:
    """How much dearer a minute too late is than one of waiting: than all that can be waited."""

    due: Mapping[int, int] = field(default_factory=dict)
    """Milestone to the minutes by which it is wanted."""
    unit: int = 1

    def of(self, each: int, *, ends: int) -> int:
        """What it costs beside the waiting that a milestone is finished then."""
        return self.unit * max(0, ends - self.due.get(each, ends))


class SetBound:
    """The least waiting from every set of finished milestones on, if work is cut up at will."""

    def __init__(
        self, items: Sequence[Item], *, weights: Sequence[int], lateness: Lateness | None = None
    ) -> None:
        self.weights = tuple(weights)
        self._lateness = lateness or Lateness()
        self.minutes = _minutes_of_sets(items, number=len(weights))
        """Set of milestones to what must be done to finish them all."""
        self.rest = self._rests()
        """Set of finished milestones to the least waiting of all others."""

    @property
    def whole(self) -> int:
        """The least waiting of all milestones."""
        return self.rest[0]

    @property
    def order(self) -> Order:
        """The first of the orders that come to that."""
        done = 0
        order: list[int] = []
        while len(order) < len(self.weights):
            following = next(
                each
                for each in range(len(self.weights))
                if not done >> each & 1 and self._after(done, each) == self.rest[done]
            )
            order.append(following)
            done |= 1 << following
        return tuple(order)

    def _after(self, done: int, each: int) -> int:
        more = done | 1 << each
        return self.cost(each, ends=self.minutes[more]) + self.rest[more]

    def cost(self, each: int, *, ends: int) -> int:
        """What a milestone that is finished then costs by itself."""
        return self.weights[each] * (ends + self._lateness.of(each, ends=ends))

    def _rests(self) -> Sequence[int]:
        every = len(self.weights)
        self.rest = rest = [0] * (1 << every)
        for done in reversed(range((1 << every) - 1)):
            rest[done] = min(
                self._after(done, each) for each in range(every) if not done >> each & 1
            )
        return rest


def _minutes_of_sets(items: Sequence[Item], *, number: int) -> Sequence[int]:
    """Minutes of all items that any milestone of a set waits for: all less those of the others."""
    inside = [0] * (1 << number)
    for item in items:
        inside[item.of] += item.minutes
    for bit in (1 << each for each in range(number)):
        for members in range(1 << number):
            if members & bit:
                inside[members] += inside[members ^ bit]
    every = (1 << number) - 1
    return [inside[every] - inside[every ^ members] for members in range(1 << number)]


def shared_bound(items: Sequence[Item], *, weights: Sequence[int]) -> tuple[int, Order]:
    """A bound for any number of milestones, rounded up, and the order that goes with it.

    What several wait for is divided between them; then each is a job by itself, and no order has
    less waiting than that by weight over minutes. Nor does any milestone wait less than for its
    own work.
    """
    own = [0] * len(weights)
    parts = [Fraction(0)] * len(weights)
    for item in items:
        members = [each for each in range(len(weights)) if item.of >> each & 1]
        for each in members:
            own[each] += item.minutes
            parts[each] += Fraction(item.minutes, len(members))
    order = sorted(range(len(weights)), key=lambda each: (parts[each] / weights[each], each))
    clock, divided = Fraction(0), Fraction(0)
    for each in order:
        clock += parts[each]
        divided += clock * weights[each]
    alone = sum(weight * minutes for weight, minutes in zip(weights, own, strict=True))
    return max(-(-divided.numerator // divided.denominator), alone), tuple(order)
