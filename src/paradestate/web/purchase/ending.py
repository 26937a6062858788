"""How a search ended: with a proof of what is best or that nothing is there, or before that."""

from collections.abc import Sequence

from paradestate.core.finding import Finding, Level
from paradestate.journeys.order import OrderJourney
from paradestate.web.search import RunningSearch

PROVED = frozenset(
    (
        "nobody-sells",
        "most-bars-the-order",
        "least-order-bars-the-order",
        "one-parcel-bars-the-order",
        "no-order",
    )
)
"""Codes of the stops that prove that no order meets the want."""


def is_cut_short(ended: RunningSearch[OrderJourney] | None) -> bool:
    """Whether a search ended before it had proved its answer, by hand or by its clock."""
    if ended is None:
        return False
    journey = ended.answer()
    if ended.state.stopping:
        return True
    if journey.answer is None:
        return is_not_computed(journey.checked.findings)
    return journey.answer.out_of_time


def is_not_computed(found: Sequence[Finding]) -> bool:
    """Whether a stop says that there is no answer, and not that there is no order."""
    return bool({each.code for each in found if each.level is Level.STOP} - PROVED)
