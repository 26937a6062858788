"""The best play when the dice may refuse: what to ask for first, and what then.

terms, points -> prospect -> standings -> values of all, backward -> chart, first choices, tippings
Leasts of entries and groups don't bind here: they are for the force as a whole, not for its dice.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from fractions import Fraction
from math import comb

from paradestate.chance.fallback.backward import values_of
from paradestate.chance.fallback.chart import ChartMaker, Spot
from paradestate.chance.fallback.completion import Completions, completions_of
from paradestate.chance.fallback.decision import Decider, Decision
from paradestate.chance.fallback.declared import MOST_SETS
from paradestate.chance.fallback.declared_chart import declared_fallback, declared_levels
from paradestate.chance.fallback.exploring import MOST_STANDINGS, explored
from paradestate.chance.fallback.opinion import as_said
from paradestate.chance.fallback.play import START, Play
from paradestate.chance.fallback.prospect import (
    Held,
    Prospect,
    is_refund,
    needed_by,
    prospect_of,
)
from paradestate.chance.fallback.rolled import options_of
from paradestate.chance.fallback.rules import rules_of
from paradestate.chance.fallback.tipping import tippings_of
from paradestate.core.certainty import NotComputed
from paradestate.core.support.entry import Asking
from paradestate.core.support.policy import Fallback, FirstChoice, LevelChoice, Take
from paradestate.core.support.terms import Terms

NOTHING_HELD = Held()

BEGUN = NotComputed(
    reason="Everything is named before the first roll here, so nothing is asked for after it."
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Solved:
    """One play solved for every number of points up to the greatest."""

    play: Play
    completions: Completions
    maker: ChartMaker


def fallback(terms: Terms, *, points: int, held: Held = NOTHING_HELD) -> Fallback | NotComputed:
    """The best play with `points` left before anything is bought."""
    left = points - held.paid
    if left < 0:
        return _nothing(points)
    if terms.asking is Asking.ALL_DECLARED_FIRST:
        if held != NOTHING_HELD:
            return BEGUN
        prospect = prospect_of(terms, points=points, shared=points, held=held)
        return (
            _too_many_purchases(prospect)
            or declared_fallback(prospect, points=points)
            or _too_many_sets(prospect)
        )
    solved = _solved(terms, points=left, shared=points, held=held)
    if isinstance(solved, NotComputed):
        return solved
    spot = Spot(START, left)
    decisions = solved.maker.decisions(spot)
    return Fallback(
        points=left,
        worth=solved.maker.worth(decisions[0], at=spot.standing),
        chart=solved.maker.chart(spot),
        first_choices=tuple(_first_choices(solved, decisions, at=spot)),
        tippings=tippings_of(solved.play, solved.completions, points=left, decisions=decisions),
    )


def level_choices(
    terms: Terms, *, points: Iterable[int], held: Held = NOTHING_HELD
) -> tuple[LevelChoice, ...] | NotComputed:
    """The best play in short for each number of points left before anything is bought."""
    alike: dict[tuple[int | None, ...], list[int]] = {}
    for level in points:
        alike.setdefault(_shares(terms, level), []).append(level)
    found: dict[int, LevelChoice] = {}
    for levels in alike.values():
        known = [level for level in levels if level >= held.paid]
        found |= {
            level: LevelChoice(points=level, worth=Fraction(0), first=None) for level in levels
        }
        chosen = _levels(terms, known, held=held) if known else {}
        if isinstance(chosen, NotComputed):
            return chosen
        found |= dict(chosen)
    return tuple(found[level] for level in sorted(found))


def _levels(
    terms: Terms, levels: list[int], *, held: Held
) -> Mapping[int, LevelChoice] | NotComputed:
    """Levels with equal shares of groups, solved at once."""
    if terms.asking is Asking.ALL_DECLARED_FIRST:
        if held != NOTHING_HELD:
            return BEGUN
        prospect = prospect_of(terms, points=max(levels), shared=max(levels), held=held)
        return (
            _too_many_purchases(prospect)
            or declared_levels(prospect, levels=levels)
            or _too_many_sets(prospect)
        )
    solved = _solved(terms, points=max(levels) - held.paid, shared=max(levels), held=held)
    if isinstance(solved, NotComputed):
        return solved
    found: dict[int, LevelChoice] = {}
    for level in levels:
        spot = Spot(START, level - held.paid)
        best = solved.maker.decisions(spot)[0]
        found[level] = LevelChoice(
            points=level,
            worth=solved.maker.worth(best, at=spot.standing),
            first=best.asked.purchase if best.asked else None,
        )
    return found


def _shares(terms: Terms, points: int) -> tuple[int | None, ...]:
    """The points that shares of groups come to."""
    return tuple(limit.most_spent(points) for limit in terms.groups)


def _solved(terms: Terms, *, points: int, shared: int, held: Held) -> Solved | NotComputed:
    prospect = prospect_of(terms, points=points, shared=shared, held=held)
    told = _too_many_purchases(prospect) or _roll_told(prospect)
    if told is not None:
        return told
    rules = rules_of(prospect)
    play = explored(rules)
    if play is None:
        number = len(prospect.rolled)
        return NotComputed(
            reason=f"{number} entries that are rolled for may stand in more than"
            f" {MOST_STANDINGS} ways; that is more than is gone through."
        )
    completions = completions_of(rules)
    opinion = as_said(prospect.offers.values())
    values = values_of(play, completions, opinions=[opinion])
    place = {rolled.offer.name: rolled.offer for rolled in prospect.rolled}
    worth_held = sum(
        opinion.worth_taken(place[purchase.entry], purchase)
        for purchase in held.taken
        if purchase.entry in place
    )
    maker = ChartMaker(
        decider=Decider(values=values, completions=completions),
        unit=opinion.unit,
        worth_held=worth_held,
    )
    return Solved(play=play, completions=completions, maker=maker)


MOST_PURCHASES = 200
"""Purchases of one entry that pay for themselves; of more too many ends would be compared."""
MOST_HOLDINGS = 2000
"""Different holdings of one entry that may be bought before a roll."""


def _too_many_purchases(prospect: Prospect) -> NotComputed | None:
    """Why it isn't worked out, where one entry that isn't rolled for may be taken too often."""
    asked_for = {name for offer in prospect.offers.values() for name in needed_by(offer)}
    for offer in prospect.sure:
        options = options_of(offer)
        pays = is_refund(offer) or (options[0].price == 0 and offer.name in asked_for)
        early = prospect.early.get(offer.name, 0)
        if (pays and (offer.most or 0) > MOST_PURCHASES) or (
            early > MOST_HOLDINGS or comb(early + len(options), early) > MOST_HOLDINGS
        ):
            return NotComputed(
                reason=f"{offer.name} may be taken so often that too many ways to take it would"
                " have to be compared. A lower limit of it would do."
            )
    return None


def _too_many_sets(prospect: Prospect) -> NotComputed:
    number = len(prospect.rolled)
    return NotComputed(
        reason=f"Of {number} entries that are rolled for more than {MOST_SETS} sets may be"
        " named; that is more than are compared."
    )


def _roll_told(prospect: Prospect) -> NotComputed | None:
    """Why it can't be gone on: a roll was made that also decides an entry not asked for yet."""
    held = prospect.held
    gone = held.asked | {purchase.entry for purchase in held.taken}
    for roll in prospect.rolls:
        names = [prospect.rolled[member].offer.name for member in roll.members]
        told = [name for name in names if name in gone]
        left = [name for name in names if name not in gone]
        if told and left:
            return NotComputed(
                reason=f"{told[0]} and {left[0]} share a roll, and what it came to isn't known."
            )
    return None


def _first_choices(
    solved: Solved, decisions: tuple[Decision, ...], *, at: Spot
) -> Iterable[FirstChoice]:
    """Each first request once, with the best that may be bought before it."""
    seen = set()
    for decision in decisions:
        purchase = decision.asked.purchase if decision.asked else None
        if purchase not in seen:
            seen.add(purchase)
            yield FirstChoice(purchase=purchase, worth=solved.maker.worth(decision, at=at.standing))


def _nothing(points: int) -> Fallback:
    """With less than no points nothing can be bought or asked for."""
    return Fallback(
        points=points,
        worth=Fraction(0),
        chart=Take(purchases=(), points=points, worth=Fraction(0)),
        first_choices=(FirstChoice(purchase=None, worth=Fraction(0)),),
    )
