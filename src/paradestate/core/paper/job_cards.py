"""Job cards, to lie beside the work: the stands of a batch with a box for each stage."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import groupby

from paradestate.core.paper.paper import Draft
from paradestate.core.sentence.job_card import job_sentences, job_title, part_words, time_words
from paradestate.core.sentence.wording import hours_words
from paradestate.core.unfolding import SEPARATOR, name_within, spoken
from paradestate.core.work.job_card import CardStand, JobCard


@dataclass(frozen=True, slots=True, kw_only=True)
class StandRow:
    """A stand with its boxes."""

    title: str
    is_done: tuple[bool, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class StandGroup:
    """The stands of one company."""

    title: str
    """Empty where the rows say it themselves."""
    rows: tuple[StandRow, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class JobSlip:
    """A job card in words."""

    number: int
    title: str
    time: str
    after: str
    """When it is done, in hours of work from now; empty where that is at once."""
    stages: tuple[tuple[str, str], ...]
    """Each with the time that it takes, empty for none."""
    groups: tuple[StandGroup, ...]
    parts: tuple[str, ...]
    sentences: tuple[str, ...]
    is_milestone: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class JobCards:
    """All cards, in the order of work."""

    cards: tuple[JobSlip, ...]


def job_cards_paper(cards: Sequence[JobCard]) -> Draft[JobCards]:
    """A card for each batch; none where nothing is left to do."""
    slips = tuple(job_slip(card) for card in cards)
    return Draft(shown=JobCards(cards=slips) if slips else None)


def job_slip(card: JobCard) -> JobSlip:
    """A card in words, as the page and the paper show it."""
    spent = card.rung.by_stage
    return JobSlip(
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


def _groups(stands: Sequence[CardStand]) -> Iterator[StandGroup]:
    """Stands of one company under its name; one alone says it itself."""
    for company, together in groupby(stands, key=lambda stand: stand.name.partition(SEPARATOR)[0]):
        alike = list(together)
        is_headed = len(alike) > 1
        rows = tuple(
            StandRow(
                title=spoken(name_within(each.name, company if is_headed else "")),
                is_done=each.is_done,
            )
            for each in alike
        )
        yield StandGroup(title=company if is_headed else "", rows=rows)
