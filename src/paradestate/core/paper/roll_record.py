"""The roll record: every die as it fell, and who saw it; a mistake is struck out and stays."""

from collections.abc import Iterator
from dataclasses import dataclass

from paradestate.core.dice import NOUGHT
from paradestate.core.game import Allowance, Purchase
from paradestate.core.paper.ground import Ground
from paradestate.core.paper.paper import Draft
from paradestate.core.sentence.dice import dice_words
from paradestate.core.sentence.support import allowance_words, availability_words, purchase_words
from paradestate.core.sentence.wording import capital
from paradestate.core.support.entry import Availability

OPEN_ROWS = 26
"""Rows that a page of Letter holds."""


@dataclass(frozen=True, slots=True, kw_only=True)
class RollRow:
    """A roll that is known to come, on paper and on the page."""

    what: str
    dice: str
    reading: str
    """What a total means."""


@dataclass(frozen=True, slots=True, kw_only=True)
class RollRecord:
    """Rolls that are known to come, and room for others."""

    rows: tuple[RollRow, ...]
    open: int


def roll_record(ground: Ground) -> Draft[RollRecord]:
    """The form, with the rolls for the allowance and for what the plan asks for on it."""
    rows = tuple(_rows(ground))
    return Draft(shown=RollRecord(rows=rows, open=max(OPEN_ROWS - 2 * len(rows), OPEN_ROWS // 2)))


def _rows(ground: Ground) -> Iterator[RollRow]:
    game = ground.force.games.get(ground.game)
    if game is not None and game.allowance != NOUGHT:
        yield allowance_row(game.allowance)
    for purchase in ground.plan:
        entry = ground.force.supporting_troops.get(purchase.entry)
        if entry is None or entry.availability is None:
            continue
        yield availability_row(purchase, entry.availability)


def allowance_row(allowance: Allowance) -> RollRow:
    """The roll for the points."""
    words = allowance_words(allowance).removeprefix("with ")
    return RollRow(what="Allowance", dice="", reading=capital(words))


def availability_row(purchase: Purchase, availability: Availability) -> RollRow:
    """The roll for something that is asked for."""
    return RollRow(
        what=purchase_words(purchase),
        dice=dice_words(availability.roll),
        reading=capital(availability_words(availability).partition(": ")[2]),
    )
