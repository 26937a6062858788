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
        case Fork(purchase=purchase, before=before):
            request = f"sk for {purchase_words(purchase)}"
            bought = listed(map(purchase_words, before))
            return f"Buy {bought}, then a{request}" if bought else f"A{request}"
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
    numbers = list(dict.fromkeys(str(each.allowed) for each in outcomes if each.allowed))
    refused = any(not each.allowed for each in outcomes)
    if not numbers:
        allowed = "refused"
    elif numbers == [str(asked.number)]:
        allowed = "allowed"
    else:
        allowed = f"{listed(numbers, joint='or')} allowed"
    whole = f"{allowed} or refused" if refused and numbers else allowed
    also = [_also_words(each) for each in outcomes if each.also]
    return f"{whole} ({listed(dict.fromkeys(also), joint='or')})" if also else whole


def _also_words(outcome: Granted) -> str:
    """What the same roll allows of others."""
    others = (f"{number or 'no'} {entry}" for entry, number in outcome.also.items())
    return f"and with the same roll {listed(others)}"


def _taken(outcomes: Sequence[Granted], *, asked: Purchase) -> str:
    """What is taken of that; empty where nothing is allowed."""
    some = [each for each in outcomes if each.allowed and not each.is_open]
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
