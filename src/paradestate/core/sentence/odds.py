"""Sentences about the odds of a plan: its chances, the points left, the order to ask."""

from collections.abc import Iterator
from fractions import Fraction
from math import ceil, floor

from paradestate.core.certainty import NotComputed
from paradestate.core.game import Purchase
from paradestate.core.sentence.chance import near_text
from paradestate.core.sentence.support import purchases_words
from paradestate.core.sentence.wording import listed, several
from paradestate.core.support.chances import Chances
from paradestate.core.support.entry import Asking
from paradestate.core.support.turnout import PlanOdds

HALF = Fraction(1, 2)
TENTHS = (10, 50, 90)
"""The shares, in hundredths, of which the points are said."""


def hundredths_text(chance: Fraction) -> str:
    """A chance in hundredths to one decimal, `48.1`; `0` and `100` only where it is that."""
    tenths = floor(chance * 1000 + HALF)
    if not 0 < tenths < 1000 and 0 < chance < 1:  # noqa: PLR2004 - tenths of a hundredth
        return "<0.1" if tenths == 0 else ">99.9"
    whole, rest = divmod(tenths, 10)
    return f"{whole}.{rest}" if rest or 0 < chance < 1 else str(whole)


def plan_words(plan: tuple[Purchase, ...]) -> str:
    """All purchases of a plan: `2 light tanks and 1 tank squadron commander`."""
    return purchases_words(plan) or "nothing"


def percentiles(points: Chances) -> dict[int, int]:
    """Hundredths of all rolls to the points that they don't exceed."""
    return {share: points.quantile(Fraction(share, 100)) for share in TENTHS}


def points_sentence(points: Chances) -> str:
    """What the roll leaves to spend, in the mean and at the ends."""
    least, most = min(points.counts), max(points.counts)
    if least == most:
        return f"{several(least, 'point')} {'is' if least == 1 else 'are'} left to spend."
    low, middle, high = percentiles(points).values()
    return (
        f"{least} to {most} points are left to spend, {near_text(points.mean)} in the mean. "
        f"At least one roll of ten leaves {low} or fewer, five {middle} or fewer, "
        f"nine {high} or fewer."
    )


def asking_sentences(odds: PlanOdds, *, asking: Asking) -> Iterator[str]:
    """In which order to ask, what is lost in the mean, and how sure that is."""
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
        yield f"In the mean {_points(odds.mean_lost)} are lost; no other order loses fewer."


def _points(number: Fraction) -> str:
    near = near_text(number)
    return f"{near} points" if number == Fraction(near) else f"about {near} points"


def bands_of(points: Chances, *, most: int) -> list[tuple[int, int]]:
    """The points in at most so many bands of equal width, least and greatest of each."""
    first, last = min(points.counts), max(points.counts)
    width = ceil(Fraction(last - first + 1, most))
    return [(low, min(low + width - 1, last)) for low in range(first, last + 1, width)]
