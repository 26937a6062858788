"""Colour cards: how each kind of figure is painted, with a box for each coat and a place to dab."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from paradestate.core.figure import Sort
from paradestate.core.paper.paper import Draft
from paradestate.core.sentence.job_card import coat_words, colour_title
from paradestate.core.sentence.wording import capital, listed
from paradestate.core.work.job_card import ColourCard

MOST_BOXES = 6
"""Ticks of one colour; more coats have no more boxes."""


@dataclass(frozen=True, slots=True, kw_only=True)
class CoatLine:
    """A colour of a part, with a box for each coat."""

    part: str
    """Empty where the line above says it."""
    words: str
    boxes: int


@dataclass(frozen=True, slots=True, kw_only=True)
class ColourSlip:
    """A colour card in words."""

    title: str
    on: str
    outline: tuple[str, ...]
    """Paths of a figure of that sort, to try the paint on."""
    coats: tuple[CoatLine, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class ColourCards:
    """All cards."""

    cards: tuple[ColourSlip, ...]
    size: tuple[int, int]
    """Width and height that the paths lie in."""


def colour_cards_paper(
    cards: Sequence[ColourCard],
    *,
    outlines: Mapping[Sort, tuple[str, ...]],
    size: tuple[int, int],
) -> Draft[ColourCards]:
    """A card for each kind that has colours; none where none has."""
    slips = tuple(_slip(card, outline=outlines[card.sort]) for card in cards)
    return Draft(shown=ColourCards(cards=slips, size=size) if slips else None)


def _slip(card: ColourCard, *, outline: tuple[str, ...]) -> ColourSlip:
    return ColourSlip(
        title=capital(colour_title(card)),
        on=listed(card.patterns),
        outline=outline,
        coats=tuple(coat_lines(card)),
    )


def coat_lines(card: ColourCard) -> Iterator[CoatLine]:
    """The coats of a card, the part named at its first."""
    for part in card.parts:
        for place, coat in enumerate(part.coats):
            yield CoatLine(
                part="" if place else capital(part.name),
                words=coat_words(coat),
                boxes=min(coat.coats, MOST_BOXES),
            )
