"""What is to be said about the rules that a plan breaks: numbers, names and the ways out."""

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass, field
from difflib import get_close_matches

from paradestate.core.choice import CHOSEN_HERE
from paradestate.core.finding import Finding, Level
from paradestate.core.game import Purchase
from paradestate.core.number import percent_text
from paradestate.core.place import KeyPath, Place, Places, nearest_place
from paradestate.core.sentence.support import limit_words, purchase_words, typed_words
from paradestate.core.sentence.wording import capital, how_often, listed, runs, several
from paradestate.core.support.breach import Bill, Breach
from paradestate.core.support.terms import Terms
from paradestate.core.support.way_out import Change, WayOut, WaysOut

MOST_SHOWN = 4
"""Ways out that one message lists."""
MOST_NAMED = 10
"""Changes that are named where many are made together."""
UNTRIED = "There may be other ways out: not every change was tried."

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
    hint = hint_of(ways.of[breach], all_tried=breach not in ways.partly, rule=breach.code)
    return Finding(
        level=Level.STOP,
        code="limit-lowered" if lowered else breach.code,
        message=lowered or _message(bill, breach, known=known),
        effect="The plan isn't legal.",
        hint=_with_nearest(near, hint) + _again(bill.terms, breach),
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
            numbers = listed(runs(terms.offers[about[0]].cost), joint="or")
            return f"{about[0]} can be had {numbers} at a time; {about[1]} isn't on the list."
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
    are_most = known.are_most and bill.terms.least_points < bill.terms.most_points
    if bill.points < 0:
        short = several(-bill.points, "point")
        most = " even after the best roll" if are_most else ""
        return f"The force itself costs {short} too many{most}: nothing can be taken."
    over = bill.spent - bill.points
    most = ", the most that the dice can leave" if are_most else ""
    return f"Spent {bill.spent} of {several(bill.points, 'point')}{most}: over by {over}."


def _limit(terms: Terms, breach: Breach) -> str:
    entry = breach.about[0]
    taken = f"{entry}: taken {how_often(breach.has)}" if breach.has else f"{entry}: not taken"
    if breach.code == "below-least":
        return f"{taken}; it must be taken at least {how_often(breach.bound)}."
    limit = terms.offers[entry].limit
    if limit is None:
        return f"{taken}; the limit is {breach.bound}."
    if not limit.of:
        return f"{taken}; the limit is {limit_words(limit)}."
    there = several(terms.number_of.get(limit.of, 0), limit.of)
    return f"{taken}; the limit is {limit_words(limit)}, so {breach.bound} with {there}."


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


def _with_nearest(near: str, hint: str) -> str:
    return f"{near}If not: {hint[:1].lower()}{hint[1:]}" if near else hint


def _again(terms: Terms, breach: Breach) -> str:
    """How more is taken than one purchase may hold, where the limit leaves room for another."""
    if breach.code != "number-not-priced":
        return ""
    offer = terms.offers[breach.about[0]]
    is_more = int(breach.about[1]) > max(offer.cost) and offer.most != 1
    return " To take more, write the entry again: each time is a purchase." if is_more else ""


def hint_of(ways: tuple[WayOut, ...], *, all_tried: bool = True, rule: str = "") -> str:
    """The ways out in one sentence, those that cost or give up least first.

    And whether there may be others, because too many changes were left untried.
    """
    if not ways and not all_tried:
        return "No way out was found, but not every change was tried."
    found = _ways_words(ways, rule=rule)
    return found if all_tried else f"{found} {UNTRIED}"


def _ways_words(ways: tuple[WayOut, ...], *, rule: str) -> str:
    if not ways:
        return "No way out was found: not by one change, by two, or by dropping more."
    if len(ways[0].changes) > 1:
        together = " together" if len(set(ways[0].changes)) > 1 else ""
        return f"{capital(way_words(ways[0]))}{together} would do it."
    is_typed = rule in {"choice-missing", "choice-unknown"}
    shown = list(_one_after_another(ways[:MOST_SHOWN], is_typed=is_typed))
    if len(ways) > MOST_SHOWN:
        shown.append(f"one of {len(ways) - MOST_SHOWN} other changes")
    return f"{capital(listed(shown, joint='or'))} would do it."


def _one_after_another(ways: tuple[WayOut, ...], *, is_typed: bool) -> Iterator[str]:
    """Single changes in words; what is done is said once where the next is of the same sort."""
    before = ""
    for way in ways:
        done, what = _parts(way.changes[0], is_typed=is_typed)
        words = f"{what}{_moved(way)}"
        yield words if done == before else f"{done} {words}"
        before = done


def way_words(way: WayOut) -> str:
    """One way out in words: `dropping light tanks (9)`; in brackets the points it moves."""
    return listed(_set_words(way.changes)) + _moved(way)


def _moved(way: WayOut) -> str:
    """The points that a way out moves: ` (9)`, ` (9 more)`; empty where it moves none."""
    is_addition = all(change.goes is None for change in way.changes)
    if way.points > 0 and not is_addition:
        return f" ({way.points} more)"
    return f" ({abs(way.points)})" if way.points else ""


def _set_words(changes: tuple[Change, ...]) -> Iterator[str]:
    """What is done together, the same changes counted, the first few named."""
    sorts: dict[str, list[str]] = {}
    different = Counter(changes)
    for change, number in tuple(different.items())[:MOST_NAMED]:
        done, what = _parts(change)
        sorts.setdefault(done, []).append(what if number == 1 else f"{how_often(number)} {what}")
    rest = sum(tuple(different.values())[MOST_NAMED:])
    if rest:
        sorts[tuple(sorts)[-1]].append(f"{rest} more")
    for done, named in sorts.items():
        yield f"{done} {listed(named)}"


def change_words(change: Change) -> str:
    """One change of a plan in words, such as `taking 1 x light tanks instead of 2`."""
    return " ".join(_parts(change)).strip()


def _parts(change: Change, *, is_typed: bool = False) -> tuple[str, str]:
    """What is done, and with what; `is_typed`: what is taken is said as it is typed in a plan."""
    goes, comes = change.goes, change.comes
    if comes is None:
        return ("dropping", purchase_words(goes)) if goes else ("", "")
    if goes is None:
        return "adding", purchase_words(comes)
    if is_typed:
        return "writing", typed_words(comes)
    if goes.number != comes.number:
        return "taking", f"{purchase_words(comes)} instead of {goes.number}"
    instead = f" instead of {goes.choice}" if goes.choice else ""
    return "taking", f"{purchase_words(comes)}{instead}"
