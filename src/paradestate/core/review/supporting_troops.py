"""Doubts about supporting troops: prices and refusals."""

from collections.abc import Iterator
from itertools import pairwise

from paradestate.core.finding import Finding, Level
from paradestate.core.force import Force
from paradestate.core.place import Place, nearest_place
from paradestate.core.review.rule import Rule
from paradestate.core.support.entry import Entry

SECTION = "supporting troops"


def _place(force: Force, *path: str) -> Place:
    return nearest_place(force.places, path)


def odd_prices(force: Force) -> Iterator[Finding]:
    """A price that falls as the number rises, or that two smaller purchases undercut."""
    for entry in force.supporting_troops.values():
        message = _falls(entry) or _splitting(entry)
        if message is not None:
            yield Finding(
                level=Level.WARN,
                code="price-odd",
                message=f"{entry.name}: {message}",
                effect="Nobody would pay the higher price.",
                hint="Look at the prices again.",
                place=_place(force, SECTION, entry.name, "cost"),
            )


def _falls(entry: Entry) -> str | None:
    numbers = sorted(entry.cost)
    for fewer, more in pairwise(numbers):
        if entry.cost[more] < entry.cost[fewer]:
            return f"{more} cost {entry.cost[more]}, but {fewer} cost {entry.cost[fewer]}."
    return None


def _splitting(entry: Entry) -> str | None:
    """c(a + b) must not be above c(a) + c(b)."""
    for whole in sorted(entry.cost):
        for part in sorted(entry.cost):
            rest = whole - part
            if part < rest or rest not in entry.cost:
                continue
            if entry.cost[part] + entry.cost[rest] < entry.cost[whole]:
                both = entry.cost[part] + entry.cost[rest]
                return f"{whole} cost {entry.cost[whole]}, but {part} + {rest} cost {both}."
    return None


def unsaid_refusals(force: Force) -> Iterator[Finding]:
    """An entry that is rolled for, without a word on its points when it is refused."""
    for entry in force.supporting_troops.values():
        if entry.availability is not None and entry.when_refused is None:
            yield Finding(
                level=Level.WARN,
                code="refusal-unsaid",
                message=f"{entry.name}: points on refusal: kept or lost?",
                effect="It changes the best plan. Taken as kept.",
                hint="Add 'when refused: points kept' or 'points lost'.",
                place=_place(force, SECTION, entry.name, "availability"),
            )


RULES: tuple[Rule, ...] = (
    odd_prices,
    unsaid_refusals,
)
