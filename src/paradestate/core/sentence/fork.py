"""Sentences of a chart of decisions: what is asked for, what the dice allow, what is taken."""

from collections.abc import Sequence
from fractions import Fraction

from paradestate.core.game import Purchase
from paradestate.core.sentence.chance import near_text
from paradestate.core.sentence.support import number_words, purchase_words, purchases_words
from paradestate.core.sentence.wording import listed, several
from paradestate.core.support.fork import Branch, End, Fork, Node, Omitted
from paradestate.core.support.policy import Granted


def step_words(node: Node) -> str:
    """What is done at a node: `Ask for 2 x light tanks`, `Buy 2 x gun`."""
    match node:
        case Fork(purchase=purchase, before=before):
            request = f"sk for {purchase_words(purchase)}"
            bought = purchases_words(before)
            return f"Buy {bought}, then a{request}" if bought else f"A{request}"
        case End(purchases=purchases):
            return f"Buy {purchases_words(purchases) or 'nothing more'}"
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


def worth_words(node: Node) -> str:
    """The worth of what is bought, or of all that is still to come: `worth 8`, `8.83 to come`."""
    near = near_text(node.worth)
    return f"worth {near}" if isinstance(node, End) else f"{near} to come"


def taken_words(outcome: Granted, *, number: str) -> str:
    """What is taken with its worth: `take 1, worth 4`; `number` says how many."""
    return f"take {number}{_worth_clause([outcome]) if outcome.takes else ''}"


def _worth_clause(outcomes: Sequence[Granted]) -> str:
    """The worth of what is taken: `, worth 4`, `, worth 4.67 on average`."""
    worths = [each.worth - each.then.worth for each in outcomes]
    if len(set(worths)) == 1:
        return f", worth {near_text(worths[0])}"
    chance = sum((each.chance for each in outcomes), Fraction(0))
    parts = (each.chance * worth for each, worth in zip(outcomes, worths, strict=True))
    whole = sum(parts, Fraction(0))
    return f", worth {near_text(whole / chance)} on average"


def branch_words(branch: Branch, *, asked: Purchase) -> str:
    """What the dice allow on a branch and what is then taken: `allowed: take only 1, worth 4`."""
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
    others = (
        number_words(number, entry) if number else f"no {entry}"
        for entry, number in outcome.also.items()
    )
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
        return f"take {_how_many(number, some=some, asked=asked)}{_worth_clause(some)}"
    if all(each.takes and each.takes.number == each.allowed for each in some):
        return f"take all that come{_worth_clause(outcomes)}"
    return listed(
        f"of {each.allowed} take {each.takes.number if each.takes else 0}" for each in some
    )


def _how_many(number: int, *, some: Sequence[Granted], asked: Purchase) -> str:
    if number == asked.number:
        return "it" if number == 1 else "all"
    is_less = number < max(each.allowed for each in some)
    return f"only {number}" if is_less else str(number)
