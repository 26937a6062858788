"""A chart of decisions in its shortest form: outcomes that go on alike share one branch.

Steps are alike where they ask for and buy the same and are worth the same, whatever points are
left: what only the points tell apart needs no second branch.
"""

from collections.abc import Sequence
from dataclasses import dataclass, field, replace
from fractions import Fraction
from typing import TypeAlias

from paradestate.core.game import Purchase
from paradestate.core.support.policy import Ask, Granted, Step, Take


@dataclass(frozen=True, slots=True, kw_only=True)
class End:
    """What is bought at the end without asking."""

    purchases: tuple[Purchase, ...]
    points: range
    """Points left before they are paid, from the least to the most."""
    worth: Fraction


@dataclass(frozen=True, slots=True, kw_only=True)
class Omitted:
    """A part of the chart that was too unlikely to be shown."""

    worth: Fraction
    """Mean worth of what is still to come on it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Branch:
    """Outcomes of a request that go on alike."""

    outcomes: tuple[Granted, ...]
    """Greatest first."""
    chance: Fraction
    """Of all of them together, once it is asked."""
    then: "Node"


@dataclass(frozen=True, slots=True, kw_only=True)
class Fork:
    """A request, with a branch for each way on."""

    purchase: Purchase
    points: range
    """Points left before it is asked, from the least to the most."""
    worth: Fraction
    """Mean worth of all that is still to come."""
    branches: tuple[Branch, ...]
    """None where the chart goes no further."""
    before: tuple[Purchase, ...] = ()
    """What is bought without a roll before it is asked."""


Node: TypeAlias = Fork | End | Omitted


def forks(chart: Step) -> Fork | End:
    """The chart with outcomes that go on alike taken together."""
    return _node((chart,), likenesses=_Likenesses())


def without_rare(node: Node, *, least: Fraction, chance: Fraction = Fraction(1)) -> Node:
    """The same chart, where requests that are come to with less than this chance are left out."""
    if not isinstance(node, Fork):
        return node
    if chance < least:
        return Omitted(worth=node.worth)
    branches = tuple(
        Branch(
            outcomes=branch.outcomes,
            chance=branch.chance,
            then=without_rare(branch.then, least=least, chance=chance * branch.chance),
        )
        for branch in node.branches
    )
    return replace(node, branches=branches)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Likenesses:
    """A number for each step, the same for those that are alike."""

    numbers: dict[object, int] = field(default_factory=dict)
    known: dict[int, tuple[Step, int]] = field(default_factory=dict)
    """By identity; the step is kept so that no other takes its identity."""

    def number(self, step: Step) -> int:
        """The number of what it does, whatever points are left."""
        if id(step) not in self.known:
            likeness = self._likeness(step)
            number = self.numbers.setdefault(likeness, len(self.numbers))
            self.known[id(step)] = (step, number)
        return self.known[id(step)][1]

    def _likeness(self, step: Step) -> object:
        if isinstance(step, Take):
            return (step.purchases, step.worth)
        ways = tuple(
            (
                each.allowed,
                tuple(each.also.items()),
                each.chance,
                each.takes,
                self.number(each.then),
            )
            for each in step.outcomes
        )
        return (step.before, step.purchase, step.worth, ways)


def _node(steps: Sequence[Step], *, likenesses: _Likenesses) -> Fork | End:
    """The node of steps that are alike."""
    points = range(min(each.points for each in steps), max(each.points for each in steps) + 1)
    first = steps[0]
    if isinstance(first, Take):
        return End(purchases=first.purchases, points=points, worth=first.worth)
    alike: dict[int, list[int]] = {}
    for place, outcome in enumerate(first.outcomes):
        alike.setdefault(likenesses.number(outcome.then), []).append(place)
    branches = tuple(
        Branch(
            outcomes=tuple(first.outcomes[place] for place in places),
            chance=sum((first.outcomes[place].chance for place in places), Fraction(0)),
            then=_node(_thens(steps, places=places), likenesses=likenesses),
        )
        for places in alike.values()
    )
    return Fork(
        purchase=first.purchase,
        points=points,
        worth=first.worth,
        branches=branches,
        before=first.before,
    )


def _thens(steps: Sequence[Step], *, places: Sequence[int]) -> list[Step]:
    """What follows these outcomes in each of the steps; they are alike, so all have them."""
    asked = (step for step in steps if isinstance(step, Ask))
    return [step.outcomes[place].then for step in asked for place in places]
