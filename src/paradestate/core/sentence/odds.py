"""Sentences about the odds of a plan: its chances, the points left, the order to ask."""

from collections.abc import Iterator
from fractions import Fraction
from math import ceil

from paradestate.core.certainty import NotComputed
from paradestate.core.game import Purchase
from paradestate.core.sentence.chance import hundredths_words, near_text
from paradestate.core.sentence.support import purchases_words
from paradestate.core.sentence.wording import capital, listed, several
from paradestate.core.support.chances import Chances
from paradestate.core.support.entry import Asking
from paradestate.core.support.turnout import PlanOdds

TENTHS = (10, 50, 90)
"""The shares, in hundredths, of which the points are said."""


def hundredths_text(chance: Fraction) -> str:
    """A chance in hundredths for a table, `48`, as sentences say it; `0` only where it is none."""
    words = hundredths_words(chance).removesuffix(" in 100")
    return words.replace("less than ", "<").replace("more than ", ">")


def plan_words(plan: tuple[Purchase, ...]) -> str:
    """All purchases of a plan: `2 light tanks and 1 tank squadron commander`."""
    return purchases_words(plan) or "nothing"


def percentiles(points: Chances) -> dict[int, int]:
    """Hundredths of all rolls to the points that they don't exceed."""
    return {share: points.quantile(Fraction(share, 100)) for share in TENTHS}


def points_sentence(points: Chances) -> str:
    """What the roll leaves to spend, on average and at the least."""
    least, most = min(points.counts), max(points.counts)
    if least == most:
        return f"{several(least, 'point')} {'is' if least == 1 else 'are'} left to spend."
    steps = [each for each in _counted_on(points) if each > least] or [most]
    first, *others = ((hundredths_words(points.at_least(each)), each) for each in steps)
    rolls = [f"{first[0]} rolls leave {first[1]} or more"]
    rolls += (f"{share.removesuffix(' in 100')} leave {each} or more" for share, each in others)
    mean = near_text(points.mean)
    return (
        f"{least} to {most} points are left to spend, {mean} on average. {capital(listed(rolls))}."
    )


def _counted_on(points: Chances) -> tuple[int, ...]:
    """The most points that nine, five and one of ten rolls leave at the least."""
    shares = (Fraction(share, 100) for share in reversed(TENTHS))
    found = (max(each for each in points.counts if points.at_least(each) >= s) for s in shares)
    return tuple(dict.fromkeys(found))


def asking_sentences(odds: PlanOdds, *, asking: Asking) -> Iterator[str]:
    """In which order to ask, what is lost on average, and how sure that is."""
    if not odds.rolls:
        yield "Nothing of it is rolled for."
        return
    if asking is Asking.ALL_DECLARED_FIRST:
        yield "All is declared first, so the order of asking makes no difference."
    elif len(odds.asking_order) > 1:
        yield f"Best asked in this order: {listed(odds.asking_order, joint='and then')}."
    if isinstance(odds.order_certainty, NotComputed):
        yield f"Not computed whether another order loses less: {odds.order_certainty.reason}."
    elif odds.mean_lost:
        yield f"On average {_points(odds.mean_lost)} are lost; no other order loses fewer."


def _points(number: Fraction) -> str:
    near = near_text(number)
    return f"{near} points" if number == Fraction(near) else f"about {near} points"


def bands_of(points: Chances, *, most: int) -> list[tuple[int, int]]:
    """The points in at most so many bands of equal width, least and greatest of each."""
    first, last = min(points.counts), max(points.counts)
    width = ceil(Fraction(last - first + 1, most))
    return [(low, min(low + width - 1, last)) for low in range(first, last + 1, width)]
