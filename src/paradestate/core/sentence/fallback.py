"""A fall-back in words: the chart as lines that fit half a page, and what would change it."""

from collections.abc import Iterator
from fractions import Fraction

from paradestate.core.sentence.chance import chance_words, near_text
from paradestate.core.sentence.fork import branch_words, points_words, step_words, worth_words
from paradestate.core.sentence.support import number_words, purchase_words, purchases_words
from paradestate.core.sentence.wording import decimal, listed
from paradestate.core.support.fork import Branch, Fork, Node, forks, without_rare
from paradestate.core.support.policy import Fallback, FirstChoice, Tipping

MOST_LINES = 30
"""Lines of a chart that fit half a page."""
RARE = tuple(Fraction(each, 200) for each in (0, 1, 2, 4, 7, 10, 17, 25, 40, 66, 100, 150, 200))
"""Requests that are come to more rarely are left out; the first that makes the chart fit."""
STEP = "  "


def chart_lines(fallback: Fallback, *, most: int = MOST_LINES) -> tuple[str, ...]:
    """The chart as lines, each step further in; what is rare is left out until it fits."""
    whole = forks(fallback.chart)
    found: tuple[str, ...] = ()
    for least in RARE:
        found = tuple(_lines(without_rare(whole, least=least)))
        if len(found) <= most:
            return found
    return found[:1]


def _lines(node: Node) -> Iterator[str]:
    mean = " on average" if isinstance(node, Fork) else ""
    yield f"{step_words(node)}: {worth_words(node)}{mean}."
    yield from _branches(node, depth=1)


def _branches(node: Node, *, depth: int) -> Iterator[str]:
    if not isinstance(node, Fork):
        return
    for branch in node.branches:
        words = branch_words(branch, asked=node.purchase)
        likely = f"{words} ({chance_words(branch.chance)})" if branch.chance < 1 else words
        then = step_words(branch.then)
        left = f"; {points_words(branch.then.points)}" if isinstance(branch.then, Fork) else ""
        worth = f"{worth_words(branch.then)}{_not_all(branch)}"
        yield f"{STEP * depth}{likely}{left}: {then[:1].lower()}{then[1:]}, {worth}"
        yield from _branches(branch.then, depth=depth + 1)


def _not_all(branch: Branch) -> str:
    """What all that is allowed would come to, where less is better."""
    return "".join(
        f" ({near_text(each.worth)} together; taking all {each.allowed} only "
        f"{near_text(each.if_all)})"
        for each in branch.outcomes
        if each.if_all is not None and each.if_all < each.worth
    )


def declared_words(fallback: Fallback) -> str:
    """What is named before the first roll: `Name at once 2 x light tanks and 1 x gun; ...`."""
    if not fallback.declared:
        return "Name nothing that needs a roll."
    named = purchases_words(fallback.declared)
    return f"Name at once {named}; then all is rolled, and then you take what is best."


def choice_words(choice: FirstChoice) -> str:
    """A first choice: `ask for 2 x light tanks`, `ask for nothing`."""
    return f"ask for {purchase_words(choice.purchase)}" if choice.purchase else "ask for nothing"


def tied_words(fallback: Fallback) -> str:
    """Other first choices that are as good; empty where there are none."""
    first, *others = fallback.first_choices
    entry = first.purchase.entry if first.purchase else ""
    tied = {
        each.purchase.entry if each.purchase else "nothing"
        for each in others
        if each.worth == first.worth and (each.purchase is None or each.purchase.entry != entry)
    }
    return f"As good first: {listed(sorted(tied), joint='or')}." if tied else ""


def tipping_words(tipping: Tipping) -> str:
    """How far a worth may go: `2 x light tanks, worth 10: the first choice stays down to 8`."""
    bought = number_words(tipping.number, tipping.entry, choice=tipping.choice)
    what = f"{bought}, worth {decimal(tipping.worth)}"
    ends = []
    if tipping.down_to is not None:
        ends.append(f"down to {decimal(tipping.down_to)}")
    if tipping.up_to is not None:
        ends.append(f"up to {decimal(tipping.up_to)}")
    return f"{what}: {listed(ends) or 'whatever it is worth'}"
