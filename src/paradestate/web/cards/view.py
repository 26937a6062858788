"""Job cards, colour cards and the requisition as they stand on the page."""

from dataclasses import dataclass

from paradestate.core.outline import outline_text
from paradestate.core.paper.colour_cards import CoatLine, coat_lines
from paradestate.core.paper.job_cards import JobSlip, job_slip
from paradestate.core.sentence.job_card import colour_title
from paradestate.core.sentence.requisition import (
    area_sentence,
    bottle_sentence,
    exact_sentence,
    guess_sentences,
    paint_name,
    sheet_words,
    volume_words,
)
from paradestate.core.sentence.wording import capital, listed
from paradestate.core.supplies import Supplies
from paradestate.core.work.job_card import ColourCard, JobCard
from paradestate.core.work.requisition import Requisition
from paradestate.journeys.paper.papers import Papers
from paradestate.sheet.figure_outline import figure_outline
from paradestate.sheet.svg import Drawing

MOST_STANDS = 1000
"""Stands whose cards are shown on one page; of more the first batches are."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ColourView:
    """A colour card."""

    title: str
    on: str
    outline: Drawing
    coats: tuple[CoatLine, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class CardsView:
    """All cards."""

    jobs: tuple[JobSlip, ...]
    left_out: int
    """Batches for whose cards there is no room on the page."""
    colours: tuple[ColourView, ...]


def cards_view(cards: Papers) -> CardsView:
    """The cards, as many of the first as there is room for."""
    shown: list[JobCard] = []
    stands = 0
    for card in cards.jobs:
        stands += len(card.stands)
        if shown and stands > MOST_STANDS:
            break
        shown.append(card)
    return CardsView(
        jobs=tuple(job_slip(card) for card in shown),
        left_out=len(cards.jobs) - len(shown),
        colours=tuple(_colours(card) for card in cards.colours),
    )


def _colours(card: ColourCard) -> ColourView:
    return ColourView(
        title=capital(colour_title(card)),
        on=listed(card.patterns),
        outline=figure_outline(card.sort, kind=card.kind),
        coats=tuple(coat_lines(card)),
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class SuppliesView:
    """The requisition: rows of text, and what is to be said of them."""

    paints: tuple[tuple[str, str, str, str, str, str], ...]
    """Paint, figures, used up, with spare, bottles, how sure."""
    bases: tuple[tuple[str, str, str, str], ...]
    """Base, needed, with spare, from one sheet."""
    of_paints: tuple[str, ...]
    of_bases: tuple[str, ...]


def supplies_view(made: Requisition, supplies: Supplies) -> SuppliesView:
    """What the batches use up."""
    basing = made.basing
    paints = tuple(
        (
            capital(paint_name(each)),
            str(each.figures),
            volume_words(each.used),
            volume_words(each.with_spare),
            str(each.bottles),
            "guess" if each.is_guess else "measured",
        )
        for each in made.paint.paints
    )
    bases = tuple(
        (
            outline_text(base.outline),
            str(base.number),
            str(base.with_spare),
            str(base.from_sheet) if base.from_sheet else "none",
        )
        for base in basing.bases
    )
    of_bases: tuple[str, ...] = ()
    if bases:
        area = area_sentence(basing, supplies)
        of_bases = (area, *sheet_words(basing, supplies), exact_sentence(basing))
    return SuppliesView(
        paints=paints,
        bases=bases,
        of_paints=(
            *((bottle_sentence(supplies),) if paints else ()),
            *guess_sentences(made, supplies),
        ),
        of_bases=of_bases,
    )
