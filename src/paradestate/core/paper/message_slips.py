"""Message slips: orders to be written at the table, one addressed to each company, others open."""

from dataclasses import dataclass
from math import ceil

from paradestate.core.imposition.shelf import imposed
from paradestate.core.mark.code import Mark
from paradestate.core.outline import Rectangle, millimetres
from paradestate.core.paper.ground import Ground
from paradestate.core.paper.paper import Draft, ImposedPage, pages_of
from paradestate.core.unfolding import spoken

SLIP = Rectangle(width=millimetres(96), depth=millimetres(64))
"""Eight go on a page, of A4 as of Letter (common practice, no source)."""

A_PAGE = 8


@dataclass(frozen=True, slots=True, kw_only=True)
class MessageSlip:
    """A slip for one message."""

    to: str
    """The company; empty where it is written by hand."""
    mark: Mark | None


@dataclass(frozen=True, slots=True, kw_only=True)
class MessageSlips:
    """Slips on their pages, each page full."""

    pages: tuple[ImposedPage[MessageSlip], ...]


OPEN = MessageSlip(to="", mark=None)


def message_slips(ground: Ground) -> Draft[MessageSlips]:
    """A slip for each company, and as many open ones as fill the page, eight at the least."""
    companies = [
        MessageSlip(to=spoken(unit.name), mark=mark)
        for unit, mark in ground.marks.marks.items()
        if unit.company is not None and unit.bars == 0 and unit.name
    ]
    number = ceil((len(companies) + A_PAGE // 2) / A_PAGE) * A_PAGE
    slips = (*companies, *[OPEN] * (number - len(companies)))
    imposition = imposed([SLIP] * number, ground.layout, may_turn=False)
    pages = pages_of(imposition, slips)
    return Draft(shown=MessageSlips(pages=pages) if pages else None)
