"""A slip for each entry of the supporting troops, to be asked by, and filled in as it is rolled."""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from paradestate.core.imposition.shelf import imposed
from paradestate.core.outline import Rectangle, millimetres
from paradestate.core.paper.ground import Ground
from paradestate.core.paper.paper import Draft, ImposedPage, pages_of
from paradestate.core.sentence.price import prices_words
from paradestate.core.sentence.support import entry_clauses
from paradestate.core.sentence.wording import capital
from paradestate.core.support.entry import Entry
from paradestate.core.support.terms import why_absent

REQUEST = Rectangle(width=millimetres(96), depth=millimetres(86))
"""Six go on a page, of A4 as of Letter (common practice, no source)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class RequestSlip:
    """One entry as it is asked for."""

    name: str
    held_at: str
    terms: tuple[str, ...]
    """Prices, limit, availability and conditions, a sentence each."""
    planned: int
    """How many the plan asks for; nought where it doesn't."""
    is_rolled: bool
    by_hand: str


@dataclass(frozen=True, slots=True, kw_only=True)
class RequestSlips:
    """All slips on their pages."""

    pages: tuple[ImposedPage[RequestSlip], ...]


def request_slips(ground: Ground) -> Draft[RequestSlips]:
    """A slip for each entry that is to be had in the game, what the plan takes first."""
    planned: dict[str, int] = {}
    for purchase in ground.plan:
        planned[purchase.entry] = planned.get(purchase.entry, 0) + purchase.number
    entries = sorted(_to_be_had(ground), key=lambda entry: entry.name not in planned)
    slips = tuple(_slip(entry, planned=planned.get(entry.name, 0)) for entry in entries)
    pages = pages_of(imposed([REQUEST] * len(slips), ground.layout, may_turn=False), slips)
    return Draft(shown=RequestSlips(pages=pages) if pages else None)


def _to_be_had(ground: Ground) -> Iterator[Entry]:
    game = ground.force.games.get(ground.game)
    posture = game.posture if game is not None else ""
    for entry in ground.force.supporting_troops.values():
        if not why_absent(entry, ground.made, posture=posture):
            yield _at_grades(entry, ground)


def _at_grades(entry: Entry, ground: Ground) -> Entry:
    """An entry at its prices of the game, where grades were chosen."""
    offer = None if ground.terms is None else ground.terms.offers.get(entry.name)
    return entry if offer is None else replace(entry, cost=offer.cost, cost_by_grade={})


def _slip(entry: Entry, *, planned: int) -> RequestSlip:
    clauses = (prices_words(entry.cost), *entry_clauses(entry))
    return RequestSlip(
        name=capital(entry.name),
        held_at=entry.held_at,
        terms=tuple(f"{capital(clause)}." for clause in clauses if clause),
        planned=planned,
        is_rolled=entry.availability is not None,
        by_hand=entry.by_hand,
    )
