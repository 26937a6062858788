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


def no_prices(force: Force) -> Iterator[Finding]:
    """A table of prices that holds none."""
    for entry in force.supporting_troops.values():
        if has_empty_table(entry):
            yield Finding(
                level=Level.STOP,
                code="cost-empty",
                message=f"{entry.name}: a table of prices is empty, so it can't be bought.",
                effect="The entry can't be chosen as it stands.",
                hint="Write the points by number taken, such as {1: 3, 2: 5}.",
                place=_place(force, SECTION, entry.name, "cost"),
            )


def has_empty_table(entry: Entry) -> bool:
    """Whether some table of its prices is empty."""
    by_grade = (table for grades in entry.cost_by_grade.values() for table in grades.values())
    in_posture = (here.cost for here in entry.in_posture.values() if here.cost is not None)
    return not all((entry.cost, *by_grade, *in_posture))


def usual_grades(force: Force) -> Iterator[Finding]:
    """A usual grade that its scale doesn't have."""
    for scale in force.grades.values():
        if scale.usual not in scale.points:
            known = ", ".join(f"'{grade}'" for grade in scale.points) or "none"
            yield Finding(
                level=Level.STOP,
                code="usual-grade-unknown",
                message=f"{scale.name}: the usual grade '{scale.usual}' has no points.",
                effect="It can't be said what is left to spend.",
                hint=f"Name one of its grades ({known}), or give '{scale.usual}' its points.",
                place=_place(force, "grades", scale.name, "usual"),
            )


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
    no_prices,
    usual_grades,
    odd_prices,
    unsaid_refusals,
)
