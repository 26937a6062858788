"""Reserve: what of the force and of a plan is kept back, and whether it may be.

What the rule of the files is about, a formation, has a most; for the rest there is none, but nobody
keeps back what isn't there. Points, limits and odds are the same wherever something stands.
"""

from collections.abc import Container, Iterator, Mapping
from dataclasses import dataclass, field, replace
from math import floor

from paradestate.core.choice import CHOSEN_HERE, unknown_choice
from paradestate.core.establishment import Establishment
from paradestate.core.finding import Finding, Level
from paradestate.core.force import Force
from paradestate.core.game import Purchase
from paradestate.core.place import nearest_place
from paradestate.core.sentence.support import purchase_words
from paradestate.core.sentence.wording import plural, several
from paradestate.core.support.entry import Entry, Position

Plan = tuple[Purchase, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Reserve:
    """What is kept back."""

    formations: Mapping[str, int] = field(default_factory=dict)
    """Formation to how many of it."""
    purchases: Plan = ()
    """Of the plan; a part of a purchase is one of a lower number."""


def reserve_of(
    named: Mapping[str, int], *, purchases: Plan, plan: Plan, formations: Container[str]
) -> Reserve:
    """The reserve: a name without a formation that is one of the plan's entries means purchases.

    Of an entry that is taken several times those that come first in the plan are meant.
    """
    entries = {each.entry for each in plan}
    meant = {name for name in named if name in entries and name not in formations}
    more = (each for name in meant for each in _first_of(plan, name, number=named[name]))
    return Reserve(
        formations={name: number for name, number in named.items() if name not in meant},
        purchases=(*purchases, *more),
    )


def _first_of(plan: Plan, entry: str, *, number: int) -> Iterator[Purchase]:
    """So many of an entry, from the first purchase on; what there isn't goes with the last."""
    own = [each for each in plan if each.entry == entry]
    for place, purchase in enumerate(own):
        is_last = place == len(own) - 1
        taken = number if is_last else min(number, purchase.number)
        if taken:
            yield Purchase(entry=entry, number=taken, choice=purchase.choice)
        number -= taken


def can_be_kept_back(entry: Entry) -> bool:
    """Whether it puts stands on the table, which are somewhere else while they are kept back."""
    brings = entry.each or entry.grants or entry.replaces or entry.attach
    return bool(brings) and entry.place is not Position.OFF_TABLE


def may_be_kept_back(force: Force, made: Establishment, *, plan: Plan) -> Mapping[str, int]:
    """Formation, and entry of a plan, to how many of it may be kept back at the most.

    Where a rule says what reserves are taken from it is that formation alone.
    """
    rule = force.reserves
    there = {name: number for name, number in made.number_of.items() if name != made.formation}
    if rule is not None:
        there = {rule.of: floor(rule.most * there.get(rule.of, 0))}
    for each in plan:
        if can_be_kept_back(force.supporting_troops[each.entry]):
            there[each.entry] = there.get(each.entry, 0) + each.number
    return {name: number for name, number in there.items() if number}


def in_front(plan: Plan, kept_back: Plan) -> Plan:
    """The purchases of a plan, or what of them isn't kept back."""
    return tuple(
        replace(each, number=each.number - back)
        for each, back in _in_both(plan, kept_back)
        if back < each.number
    )


def still_kept_back(kept_back: Plan, plan: Plan) -> Plan:
    """What of a reserve a plan still has."""
    return tuple(
        replace(each, number=number) for each, number in _in_both(kept_back, plan) if number
    )


def _in_both(plan: Plan, other: Plan) -> Iterator[tuple[Purchase, int]]:
    """Each purchase of a plan with how many of it another plan has too, the first ones first."""
    left = _totals(other)
    for each in plan:
        kind = (each.entry, each.choice)
        number = min(left.get(kind, 0), each.number)
        left[kind] = left.get(kind, 0) - number
        yield each, number


def _totals(plan: Plan) -> dict[tuple[str, str], int]:
    totals: dict[tuple[str, str], int] = {}
    for each in plan:
        kind = (each.entry, each.choice)
        totals[kind] = totals.get(kind, 0) + each.number
    return totals


def reserve_findings(
    reserve: Reserve, *, force: Force, made: Establishment, plan: Plan
) -> Iterator[Finding]:
    """More kept back than may be or than there is, and what nothing is said of."""
    for formation, number in reserve.formations.items():
        yield from _of_formation(formation, number, force=force, made=made)
    there = _totals(plan)
    for (entry, choice), number in _totals(reserve.purchases).items():
        taken = there.get((entry, choice), 0)
        if number > taken:
            yield _not_taken(Purchase(entry=entry, number=number, choice=choice), taken=taken)
    if still_kept_back(reserve.purchases, plan):
        yield Finding(
            level=Level.REMARK,
            code="reserve-unsaid",
            message="Nothing says how much of the supporting troops may be kept back.",
            effect="They are taken as kept back; their points, limits and odds stay as they are, "
            "and they count against no share.",
            hint="Agree it with your opponent.",
            place=CHOSEN_HERE,
        )


def _not_taken(wanted: Purchase, *, taken: int) -> Finding:
    has = "none" if taken == 0 else f"{taken}"
    keep = "it" if taken == 0 else f"more than {taken}"
    return Finding(
        level=Level.STOP,
        code="reserve-too-large",
        message=f"{purchase_words(wanted)} named as reserve; the plan takes {has}.",
        effect="The plan isn't legal with this reserve.",
        hint=f"Take it too, or don't keep {keep} back.",
        place=CHOSEN_HERE,
    )


def _of_formation(
    formation: str, number: int, *, force: Force, made: Establishment
) -> Iterator[Finding]:
    """A part of the force against the share that may be kept back."""
    if formation not in force.formations:
        yield unknown_choice(formation, force.formations, what="formation")
        return
    rule = force.reserves
    there = made.number_of.get(formation, 0)
    is_ruled = rule is not None and rule.of == formation
    most = floor(rule.most * there) if rule is not None and is_ruled else there
    if number > most:
        share = f"; {most} of {there} is the most" if is_ruled else f"; there are {there}"
        yield Finding(
            level=Level.STOP,
            code="reserve-too-large",
            message=f"{several(number, formation)} named as reserve{share}.",
            effect="The plan isn't legal with this reserve.",
            hint=f"Keep back at most {several(most, formation)}.",
            place=CHOSEN_HERE,
            related=(nearest_place(force.places, ("reserves",)),) if force.places else (),
        )
    elif not is_ruled:
        yield Finding(
            level=Level.REMARK,
            code="reserve-unsaid",
            message=f"Nothing says how many {plural(formation)} may be kept back.",
            effect="The reserve is taken as it is.",
            hint="Add 'reserves' to the folder, or agree it with your opponent.",
            place=CHOSEN_HERE,
        )
