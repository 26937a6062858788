"""What is to be said about the rules that a plan breaks: numbers, names and the ways out."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from difflib import get_close_matches

from paradestate.core.choice import CHOSEN_HERE
from paradestate.core.finding import Finding, Level
from paradestate.core.game import Purchase
from paradestate.core.number import percent_text
from paradestate.core.place import KeyPath, Place, Places, nearest_place
from paradestate.core.sentence.support import limit_words, purchase_words
from paradestate.core.sentence.wording import capital, how_often, listed, several
from paradestate.core.support.breach import Bill, Breach
from paradestate.core.support.terms import Terms
from paradestate.core.support.way_out import Change, WayOut, WaysOut

MOST_SHOWN = 4
"""Ways out that one message lists."""

SECTION = "supporting troops"

RULE_WORDS = {
    "number-not-priced": "cost",
    "choice-unknown": "choice",
    "choice-missing": "choice",
    "over-limit": "limit",
    "below-least": "limit",
    "need-missing": "needs",
    "need-any-missing": "needs any of",
    "need-for-each-missing": "needs for each",
    "barred-pair": "bars",
}
"""Code to the word of an entry that makes the rule."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Known:
    """What is known of a plan beside the terms of its game."""

    are_most: bool = False
    """Whether the points are the most that the dice can leave, because no roll was said."""
    places: Places = field(default_factory=dict)
    at: KeyPath = ()
    """Where the plan stands in the files; empty where it was typed beside the command."""
    written: Terms | None = None
    """The terms of the folder as it is written, where other numbers were chosen for this sum."""

    def place_of(self, plan: tuple[Purchase, ...], entry: str = "") -> Place:
        """The first purchase of an entry in the plan, or the plan."""
        if not self.at:
            return CHOSEN_HERE
        numbers = [str(n) for n, each in enumerate(plan, start=1) if each.entry == entry]
        return nearest_place(self.places, (*self.at, *numbers[:1]))

    def rule_place(self, *path: str) -> tuple[Place, ...]:
        """Where a rule is written, if that is known."""
        return (nearest_place(self.places, path),) if self.places else ()


def breach_finding(bill: Bill, breach: Breach, *, ways: WaysOut, known: Known) -> Finding:
    """A broken rule as a stop, with the ways out of it."""
    entry = breach.about[0] if breach.about else ""
    lowered = _lowered(bill, breach, written=known.written)
    near = _nearest(bill.terms, entry) if breach.code == "unknown-name" else ""
    return Finding(
        level=Level.STOP,
        code="limit-lowered" if lowered else breach.code,
        message=lowered or _message(bill, breach, known=known),
        effect="The plan isn't legal.",
        hint=near + hint_of(ways.of[breach], all_tried=ways.all_tried),
        place=known.place_of(bill.plan, entry),
        related=_related(breach, known=known),
    )


def _related(breach: Breach, *, known: Known) -> tuple[Place, ...]:
    if breach.code in {"over-points", "unknown-name"}:
        return ()
    if "group" in breach.code:
        return known.rule_place("limits", breach.about[1])
    word = RULE_WORDS.get(breach.code)
    return known.rule_place(SECTION, breach.about[0], *([word] if word else []))


def _lowered(bill: Bill, breach: Breach, *, written: Terms | None) -> str:
    """What is said where the limit as written holds, and another number lowered it."""
    offer = written.offers.get(breach.about[0]) if written and breach.about else None
    if written is None or offer is None or breach.code != "over-limit" or offer.limit is None:
        return ""
    of = offer.limit.of
    number = bill.terms.number_of.get(of, 0)
    if not of or number >= written.number_of.get(of, 0):
        return ""
    if offer.most is not None and offer.most < breach.has:
        return ""
    return (
        f"Cutting to {several(number, of)} lowers the limit of {breach.about[0]} to "
        f"{breach.bound}; it is taken {how_often(breach.has)}."
    )


def _message(bill: Bill, breach: Breach, *, known: Known) -> str:
    """The broken rule in words."""
    terms, about = bill.terms, breach.about
    match breach.code:
        case "not-in-force":
            return f"{about[0]}: {terms.absent[about[0]]}."
        case "unknown-name":
            return f"No entry of the supporting troops is called '{about[0]}'."
        case "number-not-priced":
            numbers = " or ".join(str(number) for number in sorted(terms.offers[about[0]].cost))
            return f"{about[0]} come in {numbers}; {about[1]} isn't on the list."
        case "choice-unknown":
            return f"{about[0]}: '{about[2]}' isn't one of its choices."
        case "choice-missing":
            return f"{about[0]}: {_choices(terms, about[0])}? The plan doesn't say."
        case "over-points":
            return _over_points(bill, known=known)
        case "over-limit" | "below-least":
            return _limit(terms, breach)
        case "barred-pair":
            return _barred(about)
        case "need-missing" | "need-any-missing" | "need-for-each-missing":
            return _need(bill, breach)
        case _:
            return _group(bill, breach)


def _choices(terms: Terms, entry: str) -> str:
    return listed((each for each in terms.offers[entry].choices if each), joint="or")


def _over_points(bill: Bill, *, known: Known) -> str:
    if bill.points < 0:
        short = several(-bill.points, "point")
        most = " even after the best roll" if known.are_most else ""
        return f"The force itself costs {short} too many{most}: nothing can be taken."
    over = bill.spent - bill.points
    most = ", the most that the dice can leave" if known.are_most else ""
    return f"Spent {bill.spent} of {several(bill.points, 'point')}{most}: over by {over}."


def _limit(terms: Terms, breach: Breach) -> str:
    entry = breach.about[0]
    taken = f"{entry} is taken {how_often(breach.has)}"
    if breach.code == "below-least":
        return f"{taken}; at least {how_often(breach.bound)} it must be."
    limit = terms.offers[entry].limit
    if limit is None:
        return f"{taken}; the limit is {breach.bound}."
    if not limit.of:
        return f"{taken}; the limit is {limit_words(limit)}."
    there = several(terms.number_of.get(limit.of, 0), limit.of)
    return f"{taken}; the limit is {limit_words(limit)}: {there}, so {breach.bound}."


def _barred(about: tuple[str, ...]) -> str:
    if about[0] == about[1]:
        return f"{about[0]} bars itself: it can never be taken."
    return f"{about[0]} and {about[1]} can't both be taken."


def _need(bill: Bill, breach: Breach) -> str:
    entry, *others = breach.about
    offer, terms = bill.terms.offers[entry], bill.terms
    if breach.code == "need-any-missing":
        wanted = (_wanted(other, offer.needs_any_of[other]) for other in others)
        return f"{entry} needs {listed(wanted, joint='or')}, and has none of them."
    (other,) = others
    if other not in terms.offers:
        reason = terms.absent.get(other, "nothing of that name is on the list")
        return f"{entry} needs {other}, which can't be had: {reason}."
    if breach.code == "need-missing":
        return f"{entry} needs {_wanted(other, breach.bound)}, {_taken(breach.has)}."
    each = _wanted(other, offer.needs_for_each[other])
    return (
        f"{entry}, taken {how_often(bill.taken[entry])}, needs {each} for each, "
        f"{breach.bound} in all, {_taken(breach.has)}."
    )


def _wanted(other: str, number: int) -> str:
    return other if number == 1 else f"{other} {how_often(number)}"


def _taken(number: int) -> str:
    has = "none" if number == 0 else f"it {how_often(number)}"
    return f"and the plan has {has}"


def _group(bill: Bill, breach: Breach) -> str:
    group, place = breach.about
    limit = bill.terms.groups[int(place) - 1]
    bought = f"Of the group {group} {several(breach.has, 'purchase')}"
    spent = f"The group {group} takes {several(breach.has, 'point')}"
    match breach.code:
        case "over-group":
            return f"{bought}; at most {breach.bound} may be taken."
        case "below-group":
            return f"{bought}; at least {breach.bound} must be taken."
        case "over-group-points":
            share = percent_text(limit.most_points or limit.least_points)
            return f"{spent}; at most {share} of {bill.points} is allowed, so {breach.bound}."
        case _:
            share = percent_text(limit.least_points)
            return f"{spent}; at least {share} of {bill.points} is asked for, so {breach.bound}."


def _nearest(terms: Terms, name: str) -> str:
    near = get_close_matches(name, (*terms.offers, *terms.absent), n=1)
    return f"Did you mean '{near[0]}'? " if near else ""


def hint_of(ways: tuple[WayOut, ...], *, all_tried: bool = True) -> str:
    """The ways out in one sentence, those that cost or give up least first.

    And whether there may be others, because too many changes were left untried.
    """
    found = _ways_words(ways) if ways or all_tried else "No way out was found."
    return found if all_tried else f"{found} Of a plan so long not every way out was tried."


def _ways_words(ways: tuple[WayOut, ...]) -> str:
    if not ways:
        return "No way out was found: not by one change, by two, or by dropping more."
    if len(ways[0].changes) > 1:
        return f"{capital(way_words(ways[0]))} together would do it."
    shown = [way_words(way) for way in ways[:MOST_SHOWN]]
    if len(ways) > MOST_SHOWN:
        shown.append(f"one of {len(ways) - MOST_SHOWN} other changes")
    return f"{capital(listed(shown, joint='or'))} would do it."


def way_words(way: WayOut) -> str:
    """One way out in words: `dropping light tanks (9)`; in brackets the points it moves."""
    together = listed(_set_words(way.changes))
    is_addition = all(change.goes is None for change in way.changes)
    if way.points == 0:
        return together
    if way.points > 0 and not is_addition:
        return f"{together} ({way.points} more)"
    return f"{together} ({abs(way.points)})"


def _set_words(changes: tuple[Change, ...]) -> list[str]:
    """Each change in words, the same ones counted."""
    counted: Mapping[Change, int] = {each: changes.count(each) for each in changes}
    return [
        change_words(change) + ("" if number == 1 else f" {how_often(number)}")
        for change, number in counted.items()
    ]


def change_words(change: Change) -> str:
    """One change of a plan in words, such as `going from 2 to 1 of light tanks`."""
    goes, comes = change.goes, change.comes
    if goes is None:
        return "" if comes is None else f"adding {purchase_words(comes)}"
    if comes is None:
        return f"dropping {purchase_words(goes)}"
    if goes.number != comes.number:
        return f"going from {goes.number} to {comes.number} of {comes.entry}"
    return f"taking {purchase_words(comes)}" + (f" instead of {goes.choice}" if goes.choice else "")
