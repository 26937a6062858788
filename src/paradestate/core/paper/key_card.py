"""Key cards: which mark is whose, each the size of a playing card.

The first ones say which colour is which company; then each company has its own, with the mark of
every unit beside its name.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from paradestate.core.imposition.shelf import imposed
from paradestate.core.mark.code import Mark
from paradestate.core.mark.marking import Company
from paradestate.core.mark.reading import PLAIN
from paradestate.core.mark.unit import Unit
from paradestate.core.outline import Rectangle, inches
from paradestate.core.paper.ground import Ground
from paradestate.core.paper.paper import Draft, ImposedPage, pages_of
from paradestate.core.sentence.mark import mark_words, unit_words
from paradestate.core.unfolding import SEPARATOR, spoken

CARD = Rectangle(width=inches("5/2"), depth=inches("7/2"))
"""A playing card of 2.5 by 3.5 inches (common practice, no source)."""

MOST_LINES = 4
"""On one card, so that a mark is as large as on the troops' own plates."""


@dataclass(frozen=True, slots=True, kw_only=True)
class KeyLine:
    """A mark, or a colour alone, and whose it is."""

    mark: Mark | None
    colour: str
    """Six hexadecimal digits of a colour that stands alone; empty beside a mark."""
    name: str
    seen: str
    """What is seen, in words."""


@dataclass(frozen=True, slots=True, kw_only=True)
class KeyCard:
    """One card."""

    title: str
    part: str
    """Such as `1 of 2` where one card doesn't hold all; else empty."""
    lines: tuple[KeyLine, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class KeyCards:
    """All cards on their pages."""

    pages: tuple[ImposedPage[KeyCard], ...]


def key_cards(ground: Ground) -> Draft[KeyCards]:
    """The cards: colours first, then company by company, troops of no company last."""
    cards = tuple(_cards(ground))
    imposition = imposed([CARD] * len(cards), ground.layout, may_turn=False)
    pages = pages_of(imposition, cards)
    return Draft(shown=KeyCards(pages=pages) if pages else None)


def _cards(ground: Ground) -> Iterator[KeyCard]:
    marks = ground.marks
    coloured = [each for each in marks.companies if each.colour]
    yield from _dealt("Companies by colour", [_of_colour(each) for each in coloured])
    for place, company in enumerate(marks.companies):
        title = spoken(company.name)
        yield from _dealt(title, list(_of_company(ground, company, place=place)))
    yield from _dealt("Troops of no company", list(_of_none(ground)))


def _of_colour(company: Company) -> KeyLine:
    name = spoken(company.name)
    return KeyLine(mark=None, colour=company.value, name=name, seen=company.colour)


def _of_company(ground: Ground, company: Company, *, place: int) -> Iterator[KeyLine]:
    for unit, mark in ground.marks.marks.items():
        if unit.company == place and mark is not None:
            yield _line(mark, _within(unit, company))


def _within(unit: Unit, company: Company) -> str:
    below = unit.name.removeprefix(company.name).removeprefix(SEPARATOR)
    return spoken(below) or "own troops"


def _of_none(ground: Ground) -> Iterator[KeyLine]:
    for unit, mark in ground.marks.marks.items():
        if unit.company is None and mark is not None:
            yield _line(mark, unit_words(unit, whole=ground.made.formation))


def _line(mark: Mark, name: str) -> KeyLine:
    seen = mark_words(mark).removeprefix(f"{mark.colour or PLAIN}, ")
    return KeyLine(mark=mark, colour="", name=name, seen=seen)


def _dealt(title: str, lines: Sequence[KeyLine]) -> Iterator[KeyCard]:
    """The lines on as many cards as they take."""
    number = -(-len(lines) // MOST_LINES)
    for card in range(number):
        yield KeyCard(
            title=title,
            part=f"{card + 1} of {number}" if number > 1 else "",
            lines=tuple(lines[card * MOST_LINES : (card + 1) * MOST_LINES]),
        )
