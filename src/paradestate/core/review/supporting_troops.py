"""Doubts about supporting troops: prices and refusals."""

from collections.abc import Iterator, Mapping
from itertools import pairwise

from paradestate.core.finding import Finding, Level
from paradestate.core.force import Force
from paradestate.core.place import KeyPath, Place, nearest_place
from paradestate.core.review.rule import Rule
from paradestate.core.support.entry import Entry

SECTION = "supporting troops"


def _place(force: Force, *path: str) -> Place:
    return nearest_place(force.places, path)


def odd_prices(force: Force) -> Iterator[Finding]:
    """A price that falls as the number rises, or that two smaller purchases undercut."""
    for entry in force.supporting_troops.values():
        for path, cost in _price_tables(entry):
            message = _falls(cost) or _splitting(cost, dearer=sum(entry.repeats_cost_more[:1]))
            if message is not None:
                yield Finding(
                    level=Level.WARN,
                    code="price-odd",
                    message=f"{entry.name}: {message}",
                    effect="Nobody would pay the higher price.",
                    hint="Look at the prices again.",
                    place=_place(force, SECTION, entry.name, *path),
                )


def _price_tables(entry: Entry) -> Iterator[tuple[KeyPath, Mapping[int, int]]]:
    """Every table of prices of an entry, and where it stands in it."""
    yield ("cost",), entry.cost
    for scale, by_grade in entry.cost_by_grade.items():
        for grade, cost in by_grade.items():
            yield ("cost by grade", scale, grade), cost
    for posture, here in entry.in_posture.items():
        if here.cost is not None:
            yield ("in posture", posture, "cost"), here.cost


def _falls(cost: Mapping[int, int]) -> str | None:
    for fewer, more in pairwise(sorted(cost)):
        if cost[more] < cost[fewer] > 0:
            return f"{more} cost {cost[more]}, but {fewer} cost {cost[fewer]}."
    return None


def _splitting(cost: Mapping[int, int], *, dearer: int) -> str | None:
    """c(a + b) must not be above c(a) + c(b), where a second purchase costs `dearer` more."""
    for whole in sorted(cost):
        for part in sorted(cost):
            rest = whole - part
            if part < rest or rest not in cost:
                continue
            both = cost[part] + cost[rest] + dearer
            if both < cost[whole]:
                return f"{whole} cost {cost[whole]}, but {part} + {rest} cost {both}."
    return None


def unsaid_refusals(force: Force) -> Iterator[Finding]:
    """An entry that is rolled for, without a word on its points when it is refused."""
    for entry in force.supporting_troops.values():
        here = [variation.availability for variation in entry.in_posture.values()]
        if entry.when_refused is None and any((entry.availability, *here)):
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
