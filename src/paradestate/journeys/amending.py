"""Amendments that were typed beside a command: other prices, limits and worths."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from typing import TypeVar

from paradestate.core.choice import CHOSEN_HERE, Choice
from paradestate.core.finding import Finding, Level
from paradestate.core.sentence.chance import near_text
from paradestate.core.support.amendment import (
    Amendment,
    LimitAmendment,
    Misfit,
    PriceAmendment,
    WorthAmendment,
    misfits,
)
from paradestate.core.support.offer import NO_CHOICE, Offer
from paradestate.journeys.choosing import typed_finding
from paradestate.journeys.list_terms import Playable
from paradestate.text.number import GREATEST, read_decimal, read_whole
from paradestate.text.slip import Slip
from paradestate.text.typed import read_by_number

T = TypeVar("T")

ANY = "any"
"""Written for a limit that is none."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Amending:
    """What was typed."""

    prices: tuple[str, ...] = ()
    limits: tuple[str, ...] = ()
    worths: tuple[str, ...] = ()
    made: tuple[Amendment, ...] = ()
    """Changes that needn't be read any more; they come first."""

    @property
    def is_anything(self) -> bool:
        """Whether anything is to be changed."""
        return bool(self.prices or self.limits or self.worths or self.made)


@dataclass(frozen=True, slots=True, kw_only=True)
class ListAsked:
    """What is asked of a list: in which of its games, and with which changes."""

    choice: Choice
    """Which game, by which numbers and date."""
    grades: Mapping[str, str]
    """Scale to grade, for those that aren't as usual."""
    points: int | None = None
    """The points left; None: those that the dice may leave."""
    amending: Amending = Amending()


@dataclass(frozen=True, slots=True, kw_only=True)
class _Most:
    """A limit; None: any number."""

    most: int | None


def amendments_of(
    typed: Amending, *, entries: Sequence[str]
) -> tuple[tuple[Amendment, ...], tuple[Finding, ...]]:
    """The amendments, prices first, and a stop for each text that can't be read."""
    prices, no_prices = read_each(typed.prices, entries=entries, read=_price)
    limits, no_limits = read_each(typed.limits, entries=entries, read=_limit)
    worths, no_worths = read_each(typed.worths, entries=entries, read=_worth)
    found: tuple[Amendment, ...] = (
        *typed.made,
        *(PriceAmendment(entry=name, number=of, points=each) for name, of, each in prices),
        *(LimitAmendment(entry=name, most=each.most) for name, _, each in limits),
        *(WorthAmendment(entry=name, number=of, worth=each) for name, of, each in worths),
    )
    return found, (*no_prices, *no_limits, *no_worths)


@dataclass(frozen=True, slots=True, kw_only=True)
class EntryTyped:
    """What was typed into the boxes of one entry; a box left as it was is no change."""

    entry: str
    prices: Mapping[int, str]
    """Number to its price."""
    most: str
    """How many purchases a force may hold; empty: it wasn't typed."""
    worths: Mapping[int, str]
    """Number to its worth."""


def amendments_of_entry(
    typed: EntryTyped, *, offer: Offer
) -> tuple[tuple[Amendment, ...], tuple[Finding, ...]]:
    """What differs from an entry as it stands in a game, and a stop for each box with a slip.

    A number without a price has no box, so that what is typed for it is passed over.
    """
    found: list[Amendment] = []
    findings: list[Finding] = []
    for number, text in typed.prices.items():
        points = _box(text, of=f"Price of {number}", read=_price, findings=findings)
        if points is not None and offer.cost.get(number, points) != points:
            found.append(PriceAmendment(entry=offer.name, number=number, points=points))
    limit = _box(typed.most, of="At most", read=_limit, findings=findings)
    if limit is not None and limit.most != offer.most:
        found.append(LimitAmendment(entry=offer.name, most=limit.most))
    stand = offer.worths.get(NO_CHOICE, {})
    for number, text in typed.worths.items():
        worth = _box(text, of=f"Worth of {number}", read=_worth, findings=findings)
        is_as_it_was = text == worth_text(stand, number) or number not in offer.cost
        if worth is not None and not is_as_it_was and worth != stand.get(number):
            found.append(WorthAmendment(entry=offer.name, number=number, worth=worth))
    return tuple(found), tuple(findings)


def worth_text(table: Mapping[int, Fraction], number: int) -> str:
    """A worth as its box is filled in; empty where the files say none of just this number."""
    return near_text(table[number]) if number in table else ""


def _box(
    text: str, *, of: str, read: Callable[[str], T | Slip], findings: list[Finding]
) -> T | None:
    """What one box holds; None where it is empty, or has a slip, which is added to the findings."""
    if not text:
        return None
    value = read(text)
    if isinstance(value, Slip):
        findings.append(typed_finding(replace(value, message=f"{of}: {value.message}")))
        return None
    return value


def _price(text: str) -> int | Slip:
    return read_whole(text, least=-GREATEST)


def _limit(text: str) -> _Most | Slip:
    if text == ANY:
        return _Most(most=None)
    most = read_whole(text, least=0)
    return most if isinstance(most, Slip) else _Most(most=most)


def _worth(text: str) -> Fraction | Slip:
    return read_decimal(text, what="a worth")


def read_each(
    texts: Sequence[str], *, entries: Sequence[str], read: Callable[[str], T | Slip]
) -> tuple[list[tuple[str, int | None, T]], list[Finding]]:
    """Entry, number of it and value of each that was typed; a stop for each that can't be read."""
    found: list[tuple[str, int | None, T]] = []
    findings: list[Finding] = []
    for text in texts:
        each = read_by_number(text, entries=entries, read=read)
        if isinstance(each, Slip):
            findings.append(typed_finding(each))
        else:
            found.extend(each)
    return found, findings


def unfitting(
    amendments: Sequence[Amendment], games: Sequence[Playable]
) -> tuple[dict[str, str], tuple[Finding, ...]]:
    """Games to which the amendments don't fit, with why; and stops where they fit none."""
    reasons: dict[str, str] = {}
    first: list[Misfit] = []
    for game in games:
        found = list(misfits(game.terms, amendments))
        first = first or found
        if found:
            said = "; ".join(f"{each.amendment.entry}: {each.reason}" for each in found)
            reasons[game.terms.game.name] = said
    if len(reasons) < len(games):
        return reasons, ()
    return reasons, tuple(_stop(each) for each in first)


def _stop(misfit: Misfit) -> Finding:
    return Finding(
        level=Level.STOP,
        code="amendment-unfitting",
        message=f"'{misfit.amendment.entry}' can't be changed so: {misfit.reason}.",
        effect="Nothing is worked out.",
        hint="Name an entry that is on offer in the game, and a number that has a price.",
        place=CHOSEN_HERE,
    )
