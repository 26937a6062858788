"""Job cards, colour cards and the requisition as they stand on the page."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import groupby

from paradestate.core.outline import outline_text
from paradestate.core.sentence.job_card import (
    coat_words,
    colour_title,
    job_sentences,
    job_title,
    part_words,
    time_words,
)
from paradestate.core.sentence.requisition import (
    area_sentence,
    bottle_sentence,
    exact_sentence,
    guess_sentences,
    paint_name,
    sheet_words,
    volume_words,
)
from paradestate.core.sentence.wording import capital, hours_words, listed
from paradestate.core.supplies import Supplies
from paradestate.core.unfolding import SEPARATOR
from paradestate.core.work.job_card import CardStand, ColourCard, JobCard
from paradestate.core.work.requisition import Requisition
from paradestate.journeys.papers import Papers
from paradestate.sheet.figure_outline import figure_outline
from paradestate.sheet.svg import Drawing

MOST_STANDS = 1000
"""Stands whose cards are shown on one page; of more the first batches are."""
MOST_BOXES = 6
"""Ticks of one colour; more coats have no more boxes."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Row:
    """A stand with its boxes."""

    title: str
    is_done: tuple[bool, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class RowGroup:
    """The stands of one company."""

    title: str
    """Empty where the rows say it themselves."""
    rows: tuple[Row, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class JobView:
    """A job card."""

    number: int
    title: str
    time: str
    after: str
    """When it is done, in hours of work from now; empty where that is at once."""
    stages: tuple[tuple[str, str], ...]
    """Each with the time that it takes, empty for none."""
    groups: tuple[RowGroup, ...]
    parts: tuple[str, ...]
    sentences: tuple[str, ...]
    is_milestone: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class CoatView:
    """A colour of a part, with a box for each coat."""

    part: str
    """Empty where the line above says it."""
    words: str
    boxes: int


@dataclass(frozen=True, slots=True, kw_only=True)
class ColourView:
    """A colour card."""

    title: str
    on: str
    outline: Drawing
    coats: tuple[CoatView, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class CardsView:
    """All cards."""

    jobs: tuple[JobView, ...]
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
        jobs=tuple(_job(card) for card in shown),
        left_out=len(cards.jobs) - len(shown),
        colours=tuple(_colours(card) for card in cards.colours),
    )


def _job(card: JobCard) -> JobView:
    spent = card.rung.by_stage
    return JobView(
        number=card.rung.number,
        title=job_title(card),
        time=time_words(card),
        after=hours_words(card.rung.ends) if card.rung.ends else "",
        stages=tuple(
            (stage, hours_words(spent[stage]) if spent[stage] else "") for stage in card.stages
        ),
        groups=tuple(_groups(card.stands)),
        parts=tuple(part_words(each) for each in card.parts),
        sentences=tuple(job_sentences(card)),
        is_milestone=bool(card.rung.completes),
    )


def _groups(stands: Sequence[CardStand]) -> Iterator[RowGroup]:
    """Stands of one company under its name; one alone says it itself."""
    for company, together in groupby(stands, key=lambda stand: stand.name.partition(SEPARATOR)[0]):
        alike = list(together)
        is_headed = len(alike) > 1
        rows = tuple(
            Row(title=_title(each.name, without=company if is_headed else ""), is_done=each.is_done)
            for each in alike
        )
        yield RowGroup(title=company if is_headed else "", rows=rows)


def _title(name: str, *, without: str) -> str:
    below = name.removeprefix(f"{without}{SEPARATOR}") if without else name
    return below.replace(SEPARATOR, ", ")


def _colours(card: ColourCard) -> ColourView:
    return ColourView(
        title=capital(colour_title(card)),
        on=listed(card.patterns),
        outline=figure_outline(card.sort, kind=card.kind),
        coats=tuple(
            CoatView(
                part="" if place else capital(part.name),
                words=coat_words(coat),
                boxes=min(coat.coats, MOST_BOXES),
            )
            for part in card.parts
            for place, coat in enumerate(part.coats)
        ),
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
