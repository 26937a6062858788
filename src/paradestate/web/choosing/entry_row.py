"""The rows of what may be asked for: each entry with its limits in words, and what one can do."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from paradestate.core.force import Force
from paradestate.core.game import Purchase
from paradestate.core.sentence.chance import chance_words
from paradestate.core.sentence.price import choice_words, more_price_clauses, prices_words
from paradestate.core.sentence.support import (
    availability_words,
    improvement_words,
    limit_words,
    needs_words,
    purchase_words,
)
from paradestate.core.sentence.wording import capital, counted, listed, plural, several, spelled
from paradestate.core.support.chances import Chances
from paradestate.core.support.entry import Entry, Position, Variation
from paradestate.core.support.offer import Offer
from paradestate.core.support.plan_change import Plan, asked_too, with_less, with_more
from paradestate.core.support.readiness import Readiness
from paradestate.core.support.terms import Terms
from paradestate.web.choosing.question import Question

NOBODY = "the force itself"
"""Who lends an entry of which the files don't say it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Change:
    """A link that makes the plan another one."""

    words: str
    query: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Taken:
    """A purchase of the plan, with what can be done to it."""

    words: str
    points: int
    less: Change
    more: Change | None
    """None where no greater number is sold."""


@dataclass(frozen=True, slots=True, kw_only=True)
class EntryRow:
    """One entry as it is shown."""

    number: int
    """Counts from 1 in file order."""
    name: str
    title: str
    prices: str
    brings: str
    """What it puts down, and what comes free; empty for nothing."""
    limit: str
    conditions: str
    """What it needs, and what it can't be taken with; empty where nothing."""
    roll: str
    """What it comes on; empty where it always comes."""
    odds: str
    """How likely it comes, by number; empty where it always does."""
    hand: str
    """How much of it is owned, once the must layer is served."""
    by_hand: str
    taken: tuple[Taken, ...]
    asks: tuple[Change, ...]
    """How one more purchase of it is put on the plan; one for each choice."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Known:
    """What is known of the entries of a game, whatever the plan."""

    odds: Mapping[str, Chances]
    """Entry to how many of it the dice allow; those that always come are left out."""
    ready: Mapping[str, tuple[Readiness, ...]]
    """Entry to how far the stands of its greatest number are."""


def entry_rows(
    force: Force, terms: Terms, *, known: Known, plan: Plan, asked: Question
) -> Mapping[str, tuple[EntryRow, ...]]:
    """The rows of every entry on offer, by who lends it, in file order."""
    lent: dict[str, list[EntryRow]] = {}
    for number, offer in enumerate(terms.offers.values(), start=1):
        entry = force.supporting_troops[offer.name]
        row = EntryRow(
            number=number,
            name=offer.name,
            title=capital(offer.name),
            prices=_prices(entry, offer),
            brings=_brings(entry),
            limit=_limit(entry, offer, posture=terms.game.posture),
            conditions="; ".join(_conditions(offer)),
            roll="" if offer.availability is None else availability_words(offer.availability),
            odds=odds_words(offer, known.odds[offer.name]) if offer.name in known.odds else "",
            hand=hand_words(known.ready[offer.name]),
            by_hand=entry.by_hand,
            taken=tuple(_taken(plan, offer=offer, asked=asked)),
            asks=tuple(_asks(plan, offer=offer, asked=asked)),
        )
        lent.setdefault(entry.held_at or NOBODY, []).append(row)
    return {holder: tuple(rows) for holder, rows in lent.items()}


def odds_words(offer: Offer, allowed: Chances) -> str:
    """How likely each number comes; numbers that are as likely are said once."""
    said: dict[Fraction, int] = {}
    for number in sorted(offer.cost):
        said.setdefault(allowed.at_least(number), number)
    most = max(offer.cost)
    if len(said) == 1:
        return f"comes {chance_words(next(iter(said)))}"
    words = [
        f"{spelled(number)}{'' if number == most else ' or more'} {chance_words(chance)}"
        for chance, number in said.items()
    ]
    return "; ".join(words)


def hand_words(ready: Sequence[Readiness]) -> str:
    """How much is owned of the stands of an entry: `2 of 3 in hand, one of them finished`.

    Empty where it wants no figures.
    """
    return "; ".join(_hand_words(each, is_alone=len(ready) == 1) for each in ready)


def _hand_words(ready: Readiness, *, is_alone: bool) -> str:
    name = "" if is_alone else f"{ready.pattern}: "
    there = ready.finished + ready.unfinished
    if not there:
        return f"{name}none in hand"
    done = "all finished" if not ready.unfinished else f"{spelled(ready.finished)} of them finished"
    return f"{name}{there} of {ready.wanted} in hand, {done}"


def _prices(entry: Entry, offer: Offer) -> str:
    """The prices of this game; grades have had their say in them already."""
    said = [prices_words(offer.cost), *more_price_clauses(replace(entry, cost_by_grade={}))]
    if any(offer.choices.values()):
        said.append(f"choose {choice_words(entry)}")
    return "; ".join(said)


def _brings(entry: Entry) -> str:
    said = []
    if entry.each:
        said.append(f"each puts down {counted(entry.each)}")
    if entry.grants:
        said.append(f"{counted(entry.grants)} free")
    if entry.replaces is not None:
        change = entry.replaces
        said.append(f"{plural(change.with_)} for {several(change.number, change.of)}")
    if entry.improves is not None:
        said.append(improvement_words(entry.improves))
    if entry.place is not Position.ON_TABLE:
        said.append("off the table" if entry.place is Position.OFF_TABLE else "on or off the table")
    return "; ".join(said)


def _limit(entry: Entry, offer: Offer, *, posture: str) -> str:
    limit = entry.in_posture.get(posture, Variation()).limit or entry.limit
    words = limit_words(limit)
    return f"{words}: {spelled(offer.most)}" if limit.of and offer.most is not None else words


def _conditions(offer: Offer) -> Iterator[str]:
    if offer.needs:
        yield f"needs {listed(needs_words(offer.needs))}"
    if offer.needs_any_of:
        yield f"needs {listed(needs_words(offer.needs_any_of), joint='or')}"
    if offer.needs_for_each:
        yield f"each needs {listed(needs_words(offer.needs_for_each))}"
    if offer.bars:
        yield f"not with {listed(sorted(offer.bars), joint='or')}"
    if offer.group:
        yield f"of the group {offer.group}"


def _taken(plan: Plan, *, offer: Offer, asked: Question) -> Iterator[Taken]:
    for place, purchase in enumerate(plan):
        if purchase.entry != offer.name or purchase.number not in offer.cost:
            continue
        if purchase.choice not in offer.choices:
            continue
        more = with_more(plan, place, offer=offer)
        words = purchase_words(purchase)
        yield Taken(
            words=words,
            points=offer.price(purchase.number, choice=purchase.choice),
            less=_change("Less", with_less(plan, place, offer=offer), asked=asked),
            more=None if more is None else _change("More", more, asked=asked),
        )


def _asks(plan: Plan, *, offer: Offer, asked: Question) -> Iterator[Change]:
    for choice in offer.choices:
        after = asked_too(plan, offer, choice=choice)
        if after is not None:
            number = after[-1].number
            points = several(offer.price(number, choice=choice), "point")
            taking = f"{choice}: " if choice else ""
            yield _change(f"{taking}{spelled(number)} for {points}", after, asked=asked)


def _change(words: str, plan: Sequence[Purchase], *, asked: Question) -> Change:
    return Change(words=words, query=asked.with_plan(tuple(plan)))
