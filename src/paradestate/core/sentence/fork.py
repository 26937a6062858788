"""Sentences of a chart of decisions: what is asked for, what the dice allow, what is taken."""

from collections.abc import Sequence

from paradestate.core.game import Purchase
from paradestate.core.sentence.support import purchase_words
from paradestate.core.sentence.wording import listed, several
from paradestate.core.support.fork import Branch, End, Fork, Node, Omitted
from paradestate.core.support.policy import Granted


def step_words(node: Node) -> str:
    """What is done at a node: `Ask for 2 light tanks`, `Buy 2 machine guns`."""
    match node:
        case Fork(purchase=purchase):
            return f"Ask for {purchase_words(purchase)}"
        case End(purchases=purchases):
            return f"Buy {listed(map(purchase_words, purchases)) or 'nothing more'}"
        case Omitted():
            return "More requests follow"


def points_words(points: range) -> str:
    """The points left at a node: `18 points left`, `11 to 18 points left`."""
    most = points[-1]
    return (
        f"{points[0]} to {most} points left"
        if len(points) > 1
        else f"{several(most, 'point')} left"
    )


def branch_words(branch: Branch, *, asked: Purchase) -> str:
    """What the dice allow on a branch and what is then taken: `2 or 1 allowed: take 1`."""
    taken = _taken(branch.outcomes, asked=asked)
    allowed = _allowed(branch.outcomes, asked=asked)
    return f"{allowed}: {taken}" if taken else allowed


def _allowed(outcomes: Sequence[Granted], *, asked: Purchase) -> str:
    if len(outcomes) > 1 and sum(each.chance for each in outcomes) == 1:
        return "whatever is allowed"
    numbers = [str(each.allowed) for each in outcomes if each.allowed]
    refused = len(numbers) < len(outcomes)
    if not numbers:
        return "refused"
    if numbers == [str(asked.number)]:
        allowed = "allowed"
    else:
        allowed = f"{listed(numbers, joint='or')} allowed"
    return f"{allowed} or refused" if refused else allowed


def _taken(outcomes: Sequence[Granted], *, asked: Purchase) -> str:
    """What is taken of that; empty where nothing is allowed."""
    some = [each for each in outcomes if each.allowed]
    taken = {each.takes.number if each.takes else 0 for each in some}
    if not some:
        return ""
    if taken == {0}:
        return "take none"
    if len(taken) == 1:
        (number,) = taken
        if number == asked.number:
            return "take it" if number == 1 else "take all"
        return (
            f"take only {number}"
            if number < max(each.allowed for each in some)
            else f"take {number}"
        )
    if all(each.takes and each.takes.number == each.allowed for each in some):
        return "take all that come"
    return listed(
        f"of {each.allowed} take {each.takes.number if each.takes else 0}" for each in some
    )
