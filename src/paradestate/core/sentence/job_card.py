"""Job cards and colour cards in words."""

from collections.abc import Iterator

from paradestate.core.bench import Coat
from paradestate.core.number import percent_text
from paradestate.core.sentence.repair import wanted_words
from paradestate.core.sentence.wording import capital, counted, hours_words, listed, several
from paradestate.core.work.job_card import CardPart, ColourCard, JobCard


def job_title(card: JobCard) -> str:
    """What a card is for: `12 rifle sections`."""
    return several(len(card.rung.works), card.rung.pattern)


def time_words(card: JobCard) -> str:
    """How long it takes: `3 h of work, 20 min to set up`."""
    rung = card.rung
    work = f"{hours_words(rung.minutes)} of work" if rung.minutes else "no minutes"
    return f"{work}, {hours_words(rung.set_up)} to set up" if rung.set_up else work


def job_sentences(card: JobCard) -> Iterator[str]:
    """What else is worth knowing beside the work."""
    rung = card.rung
    for words in wanted_words(rung):
        yield f"{capital(words)}."
    if card.dry:
        dry = listed(f"{stage} {hours_words(minutes)}" for stage, minutes in card.dry.items())
        yield f"To dry: {dry}."
    if rung.takes_turns_with is not None:
        yield f"While it dries, work on batch {rung.takes_turns_with}; and the other way round."
    if rung.lacking:
        yield f"Not owned yet: {counted(rung.lacking)}."
    for name in rung.completes:
        yield f"With it the {name} can be played."


def coat_words(coat: Coat) -> str:
    """A colour with its coats: `sand, 2 coats on 40%`."""
    on = "" if coat.share == 1 else f" on {percent_text(coat.share)}"
    return f"{coat.colour}, {several(coat.coats, 'coat')}{on}"


def part_words(each: CardPart) -> str:
    """A part on a job card: `Tunic: sand, 2 coats on 40%`; with the kinds where not all wear it."""
    coats = "; ".join(coat_words(coat) for coat in each.part.coats)
    of = "" if each.is_for_all else f" ({listed(each.kinds)})"
    return f"{capital(each.part.name)}: {coats}{of}."


def colour_title(card: ColourCard) -> str:
    """What a colour card is for: `24 riflemen`."""
    return several(card.number, card.kind)
