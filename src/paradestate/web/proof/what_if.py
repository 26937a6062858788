"""The slip of one entry: its prices, limit and worths to be changed, and what that comes to."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from fractions import Fraction

from paradestate.core.certainty import NotComputed
from paradestate.core.finding import Finding
from paradestate.core.sentence.chance import near_text
from paradestate.core.sentence.comparison import amendment_words
from paradestate.core.sentence.wording import capital, listed, spelled
from paradestate.core.support.amendment import (
    Amendment,
    LimitAmendment,
    PriceAmendment,
    number_of,
)
from paradestate.core.support.offer import NO_CHOICE, Offer, listed_worth
from paradestate.core.support.sweep import SweepRow, Swept
from paradestate.journeys.amending import ANY, worth_text
from paradestate.journeys.sweep import Sweep
from paradestate.sheet.long_number import number_words
from paradestate.web.proof.answer import Answered
from paradestate.web.proof.change_view import ChangeView, change_view
from paradestate.web.proof.question import ENTRY, MOST, PRICE, WORTH, Question

NONE = "-"


@dataclass(frozen=True, slots=True, kw_only=True)
class Box:
    """A box of the slip, as it is filled in."""

    name: str
    text: str
    stands: str
    """What the files say; empty where they say nothing."""
    meant: str = ""
    """What is meant where nothing is said: a worth is that of the next smaller number."""

    @property
    def is_changed(self) -> bool:
        """Whether it says something else than the files."""
        return self.text != self.stands


@dataclass(frozen=True, slots=True, kw_only=True)
class NumberBoxes:
    """A number with a price, and its boxes."""

    number: int
    words: str
    price: Box
    worth: Box


@dataclass(frozen=True, slots=True, kw_only=True)
class ValueRow:
    """One value that was tried."""

    value: str
    query: str
    """The question with this value in its box."""
    is_now: bool
    """Whether the files say so."""
    is_asked: bool
    """Whether it is the one that is looked at above."""
    cells: tuple[str, ...]
    """Empty where it wasn't computed."""
    reason: str


@dataclass(frozen=True, slots=True, kw_only=True)
class ValuesView:
    """Some values of one thing, each with what it comes to."""

    title: str
    others: str
    """What else is changed meanwhile; empty where nothing is."""
    headings: tuple[str, ...]
    rows: tuple[ValueRow, ...]
    left_out: int
    """Values that weren't begun for want of time."""


@dataclass(frozen=True, slots=True, kw_only=True)
class WhatIfView:
    """The slip and its answer."""

    title: str
    numbers: tuple[NumberBoxes, ...]
    most: Box
    hidden: Mapping[str, str]
    """Fields that go with the form as they are."""
    is_changed: bool
    as_it_is: str
    """The same question with nothing changed."""
    change: ChangeView | None
    values: ValuesView | None
    findings: tuple[Finding, ...]


def what_if_view(found: Answered, offer: Offer, *, asked: Question) -> WhatIfView:
    """The slip of an entry that is on offer."""
    stand = offer.worths.get(NO_CHOICE, {})
    changed = found.changed
    games = () if changed is None or changed.found is None else changed.found.games
    stops = () if changed is None or changed.found is not None else changed.checked[0].findings
    row = found.row.found if found.row else None
    return WhatIfView(
        title=capital(offer.name),
        numbers=tuple(
            NumberBoxes(
                number=number,
                words=spelled(number),
                price=_box(f"{PRICE}{number}", f"{offer.cost[number]}", asked=asked),
                worth=replace(
                    _box(f"{WORTH}{number}", worth_text(stand, number), asked=asked),
                    meant=near_text(listed_worth(stand, number)) if stand else "none",
                ),
            )
            for number in sorted(offer.cost)
        ),
        most=_box(MOST, ANY if offer.most is None else f"{offer.most}", asked=asked),
        hidden={**asked.terms, ENTRY: offer.name},
        is_changed=bool(found.amendments or found.slips),
        as_it_is=asked.about(offer.name),
        change=change_view(games[0]) if games else None,
        values=_values(row, offer=offer, found=found, asked=asked) if row else None,
        findings=(*found.slips, *stops),
    )


def _box(name: str, stands: str, *, asked: Question) -> Box:
    return Box(name=name, text=asked.typed.get(name, stands), stands=stands)


def _values(
    row: Sweep,
    *,
    offer: Offer,
    found: Answered,
    asked: Question,
) -> ValuesView | None:
    if not row.rows:
        return None
    first = row.rows[0].question.amendments[0]
    rest = row.rows[0].question.amendments[1:]
    terms = row.games[0].forces.terms
    is_valued = any(isinstance(each.row, SweepRow) and each.row.best for each in row.rows)
    chosen = found.amendments[0] if found.amendments else None
    return ValuesView(
        title=_title(first, offer),
        others=listed(amendment_words(terms, each) for each in rest),
        headings=(
            "Legal",
            "Lost",
            "Gained",
            *(("Best", "On average", "Among the best") if is_valued else ()),
        ),
        rows=tuple(
            _row(each, offer=offer, asked=asked, chosen=chosen, is_valued=is_valued)
            for each in row.rows
        ),
        left_out=row.questions - len(row.rows),
    )


def _row(
    swept: Swept, *, offer: Offer, asked: Question, chosen: Amendment | None, is_valued: bool
) -> ValueRow:
    first = swept.question.amendments[0]
    name, value = _typed(first, offer)
    found = swept.row
    is_now = _stands(first, offer)
    return ValueRow(
        value=value,
        query=asked.with_fields({ENTRY: offer.name, name: "" if is_now else value}),
        is_now=is_now,
        is_asked=first == chosen if chosen else is_now,
        cells=() if isinstance(found, NotComputed) else tuple(_cells(found, is_valued=is_valued)),
        reason=found.reason if isinstance(found, NotComputed) else "",
    )


def _cells(row: SweepRow, *, is_valued: bool) -> Iterator[str]:
    yield number_words(row.new)
    for number in (row.lost, row.gained):
        yield NONE if number is None else number_words(number)
    if is_valued:
        yield NONE if row.best is None else near_text(row.best.worth)
        yield NONE if row.mean_best is None else near_text(row.mean_best)
        yield f"{row.held[0][1]} of {row.listed}"


def _title(amendment: Amendment, offer: Offer) -> str:
    match amendment:
        case LimitAmendment():
            return "Other limits"
        case PriceAmendment():
            return f"Other prices of {spelled(number_of(offer, amendment))}"
        case _:
            return f"Other worths of {spelled(number_of(offer, amendment))}"


def _typed(amendment: Amendment, offer: Offer) -> tuple[str, str]:
    """The box of a change, and what it holds."""
    match amendment:
        case LimitAmendment(most=most):
            return MOST, ANY if most is None else f"{most}"
        case PriceAmendment(points=points):
            return f"{PRICE}{number_of(offer, amendment)}", f"{points}"
        case _:
            return f"{WORTH}{number_of(offer, amendment)}", near_text(amendment.worth)


def _stands(amendment: Amendment, offer: Offer) -> bool:
    """Whether the files say so."""
    match amendment:
        case LimitAmendment(most=most):
            return most == offer.most
        case PriceAmendment(points=points):
            return points == offer.cost[number_of(offer, amendment)]
        case _:
            worth: Fraction = listed_worth(
                offer.worths.get(NO_CHOICE, {}), number_of(offer, amendment)
            )
            return amendment.worth == worth
