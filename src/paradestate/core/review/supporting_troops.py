"""Doubts about supporting troops: prices and refusals."""

from collections.abc import Iterator, Mapping

from paradestate.core.finding import Finding, Level
from paradestate.core.force import Force
from paradestate.core.place import KeyPath, Place, nearest_place
from paradestate.core.review.rule import Rule
from paradestate.core.support.entry import Entry
from paradestate.core.support.mission import RollOn
from paradestate.core.support.offer import NO_CHOICE, Offer
from paradestate.core.support.price_table import doubt_effect, doubt_words, price_doubts

SECTION = "supporting troops"


def _place(force: Force, *path: str) -> Place:
    return nearest_place(force.places, path)


def odd_prices(force: Force) -> Iterator[Finding]:
    """A price that falls as the number rises, or that smaller purchases undercut."""
    for entry in force.supporting_troops.values():
        for path, cost in _price_tables(entry):
            for doubt in price_doubts(_as_priced(entry, cost)):
                yield Finding(
                    level=Level.WARN,
                    code="price-odd",
                    message=f"{entry.name}: {doubt_words(doubt)}.",
                    effect=doubt_effect(doubt),
                    hint="Look at the prices again.",
                    place=_place(force, SECTION, entry.name, *path),
                )


def _as_priced(entry: Entry, cost: Mapping[int, int]) -> Offer:
    """The entry with one of its tables; a limit by the organisation may allow any number."""
    limits = [entry.limit, *(here.limit for here in entry.in_posture.values() if here.limit)]
    fixed = [limit.most + limit.plus for limit in limits if limit.most is not None and not limit.of]
    return Offer(
        name=entry.name,
        cost=cost,
        choices={choice: entry.choice_costs.get(choice, 0) for choice in entry.choice}
        or {NO_CHOICE: 0},
        repeats_cost_more=entry.repeats_cost_more,
        most=max(fixed) if len(fixed) == len(limits) else None,
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


def missions(force: Force) -> Iterator[Finding]:
    """Missions of which nothing is rolled, and totals that the dice can't give."""
    for entry in force.supporting_troops.values():
        if entry.missions is None:
            continue
        rolled = {"arrives": entry.missions.arrives, "falls silent": entry.missions.falls_silent}
        if not any(rolled.values()):
            yield Finding(
                level=Level.STOP,
                code="missions-unsaid",
                message=f"{entry.name}: nothing is rolled for its missions.",
                effect="It can't be said how many missions are fired.",
                hint="Say how, such as {arrives: {roll: 1d6, on: 3 or more}}, or take it out.",
                place=_place(force, SECTION, entry.name, "missions"),
            )
        for word, roll_on in rolled.items():
            if roll_on is not None:
                path = (entry.name, "missions", word, "on")
                yield from _impossible(force, roll_on, path=path)


def _impossible(force: Force, rolled: RollOn, *, path: KeyPath) -> Iterator[Finding]:
    totals = rolled.roll.totals()
    ends = (rolled.on.least, rolled.on.most)
    outside = [end for end in ends if end is not None and end not in totals]
    if outside:
        yield Finding(
            level=Level.STOP,
            code="roll-impossible",
            message=f"{path[0]}, {path[2]}: {outside[-1]} on {rolled.roll}: "
            f"it gives {totals[0]} to {totals[-1]}.",
            effect="It can't be said how many missions are fired.",
            hint="Look at the dice and the totals again.",
            place=_place(force, SECTION, *path),
        )


RULES: tuple[Rule, ...] = (
    odd_prices,
    unsaid_refusals,
    missions,
)
