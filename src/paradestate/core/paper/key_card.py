"""Key cards: which mark is whose, each the size of a playing card.

The first ones say which colour is which company; then each company has its own, with the mark of
every unit beside its name. A company without a colour is named there as one that its name alone
tells apart. Where no mark differs from another there is no card, and it is said why.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from paradestate.core.finding import Finding, Level
from paradestate.core.imposition.shelf import imposed
from paradestate.core.mark.code import Mark
from paradestate.core.mark.marking import Company
from paradestate.core.mark.reading import PLAIN
from paradestate.core.mark.unit import Unit
from paradestate.core.outline import Rectangle, inches
from paradestate.core.paper.ground import Ground
from paradestate.core.paper.paper import Draft, ImposedPage, pages_of
from paradestate.core.place import nearest_place
from paradestate.core.sentence.mark import mark_words, unit_words
from paradestate.core.unfolding import SEPARATOR, spoken

CARD = Rectangle(width=inches("5/2"), depth=inches("7/2"))
"""A playing card of 2.5 by 3.5 inches (common practice, no source)."""

MOST_LINES = 4
"""On one card, so that a mark is as large as on the troops' own plates."""


@dataclass(frozen=True, slots=True, kw_only=True)
class KeyLine:
    """A mark, or a colour alone, and whose it is; neither of a company that has none."""

    mark: Mark | None
    colour: str
    """Six hexadecimal digits of a colour that stands alone; empty beside a mark, and without."""
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
    if not _tells(ground):
        return Draft(shown=None, findings=tuple(_why_none(ground)))
    cards = tuple(_cards(ground))
    imposition = imposed([CARD] * len(cards), ground.layout, may_turn=False)
    return Draft(shown=KeyCards(pages=pages_of(imposition, cards)))


def _tells(ground: Ground) -> bool:
    """Whether a colour or a number of bars tells any unit from another."""
    has_colour = any(each.colour for each in ground.marks.companies)
    return has_colour or len(ground.marks.by_mark) > 1


def _why_none(ground: Ground) -> Iterator[Finding]:
    """Why there is no card; nothing is said of a force that has no stands."""
    if not ground.marks.stands:
        return
    if ground.marks.companies:
        message = "No company has a colour, and nothing else tells a mark from another."
        effect = "There is no key card: the name on its label tells each stand."
        hint = "Name colours for the companies under 'marks'."
    else:
        message = "All stands are of one unit, whose plate is plain."
        effect = "There is no key card: it would have nothing to tell apart."
        hint = "Where parts of it are to be told apart, name their formation under 'marks'."
    places = ground.force.places
    path = ("marks",) if ("marks",) in places else ("raise",)
    yield Finding(
        level=Level.REMARK,
        code="no-key-card",
        message=message,
        effect=effect,
        hint=hint,
        place=nearest_place(places, path),
    )


def _cards(ground: Ground) -> Iterator[KeyCard]:
    marks = ground.marks
    has_colour = any(each.colour for each in marks.companies)
    title = "Companies by colour" if has_colour else "Companies by name"
    yield from _dealt(title, [_of_colour(each) for each in marks.companies])
    for place, company in enumerate(marks.companies):
        title = spoken(company.name)
        yield from _dealt(title, list(_of_company(ground, company, place=place)))
    yield from _dealt("Troops of no company", list(_of_none(ground)))


def _of_colour(company: Company) -> KeyLine:
    name = spoken(company.name)
    seen = company.colour or "no colour: by its name"
    return KeyLine(mark=None, colour=company.value, name=name, seen=seen)


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
