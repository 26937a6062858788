"""The list of supporting troops, printed clean: prices, limits and availability in words.

A list that its owner says is private says so itself, on every page.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from paradestate.core.force import Force
from paradestate.core.paper.ground import Ground
from paradestate.core.paper.paper import Draft
from paradestate.core.sentence.price import more_price_clauses, prices_words
from paradestate.core.sentence.support import (
    availability_words,
    entry_clauses,
    formation_cost_sentence,
    grade_sentence,
    group_limit_sentence,
    limit_words,
    reserves_sentence,
)
from paradestate.core.sentence.wording import capital
from paradestate.core.sharing import sharing_doubt
from paradestate.core.support.entry import Asking, Entry

PRIVATE = (
    "Private: typed in from a printed book, for its owner's own use. "
    "Not to be shared, copied or published."
)


@dataclass(frozen=True, slots=True, kw_only=True)
class ListEntry:
    """One sort of supporting troops."""

    name: str
    price: tuple[str, ...]
    limit: str
    availability: str
    """How it is rolled for; empty where it always comes."""
    rest: tuple[str, ...]
    """What it puts down, needs, bars, and where."""
    by_hand: str


@dataclass(frozen=True, slots=True, kw_only=True)
class ListPart:
    """Entries that are held at one level."""

    title: str
    entries: tuple[ListEntry, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class TroopsList:
    """The whole list."""

    parts: tuple[ListPart, ...]
    rules: tuple[str, ...]
    """What holds for the list as a whole."""
    private: str
    """Empty where it may be shared."""


def troops_list(ground: Ground) -> Draft[TroopsList]:
    """The list of the force; none where it has no supporting troops."""
    force = ground.force
    entries = tuple(force.supporting_troops.values())
    if not entries:
        return Draft(shown=None)
    levels = dict.fromkeys(entry.held_at for entry in entries)
    doubt = sharing_doubt(force)
    return Draft(
        shown=TroopsList(
            parts=tuple(
                ListPart(
                    title=f"Held at {level}" if level else "",
                    entries=tuple(_entry(each) for each in entries if each.held_at == level),
                )
                for level in levels
            ),
            rules=tuple(_rules(force)),
            private=PRIVATE if force.private else "",
        ),
        findings=(doubt,) if doubt is not None else (),
    )


def _entry(entry: Entry) -> ListEntry:
    prices = (prices_words(entry.cost), *more_price_clauses(entry))
    limit = limit_words(entry.limit)
    rolled = "" if entry.availability is None else availability_words(entry.availability)
    said = {*prices, limit, rolled}
    rest = tuple(
        capital(clause) for clause in entry_clauses(entry) if clause not in said and clause
    )
    return ListEntry(
        name=capital(entry.name),
        price=tuple(capital(each) for each in prices),
        limit=capital(limit),
        availability=capital(rolled),
        rest=rest,
        by_hand=entry.by_hand,
    )


def _rules(force: Force) -> Iterator[str]:
    if force.formation_cost:
        yield formation_cost_sentence(force.formation_cost)
    for grade in force.grades.values():
        yield grade_sentence(grade)
    if force.asking is Asking.ALL_DECLARED_FIRST:
        yield "Those who need a roll are all declared before the first roll."
    for limit in force.limits:
        yield group_limit_sentence(limit)
    if force.reserves is not None:
        yield reserves_sentence(force.reserves)
