"""Job cards and colour cards, printed for people."""

from collections.abc import Iterator

from rich.console import Console
from rich.text import Text

from paradestate.cli.bench_supplies import print_cautions
from paradestate.cli.output import console, print_hanging, titled_table
from paradestate.core.sentence.job_card import (
    coat_words,
    colour_title,
    job_sentences,
    job_title,
    part_words,
    time_words,
)
from paradestate.core.sentence.wording import capital, listed
from paradestate.core.work.job_card import ColourCard, JobCard
from paradestate.journeys.paper.papers import Papers

EMPTY, DONE = "[ ]", "[x]"
MOST_BOXES = 6
"""Ticks of one colour; more coats have no more boxes."""


def print_cards(cards: Papers, *, title: str) -> None:
    """A card for each batch, one for each kind of figure, and the cautions once."""
    out = console()
    out.print(Text(title, style="bold"))
    if not cards.jobs:
        out.print("Nothing is left to do at the bench.")
        return
    for card in cards.jobs:
        out.print()
        _print_job(out, card)
    for colour in cards.colours:
        out.print()
        out.print(Text(f"Colours of {colour_title(colour)}", style="bold"))
        out.print(f"On: {listed(colour.patterns)}.")
        for line in _colours(colour):
            print_hanging(out, line)
    print_cautions()


def _print_job(out: Console, card: JobCard) -> None:
    table = titled_table(f"Batch {card.rung.number}: {job_title(card)}, {time_words(card)}")
    table.add_column("stand")
    for stage in card.stages:
        table.add_column(stage, justify="right")
    for stand in card.stands:
        table.add_row(stand.name, *(DONE if done else EMPTY for done in stand.is_done))
    out.print(table)
    for each in card.parts:
        print_hanging(out, part_words(each))
    for sentence in job_sentences(card):
        print_hanging(out, sentence)


def _colours(card: ColourCard) -> Iterator[str]:
    for part in card.parts:
        for coat in part.coats:
            boxes = " ".join([EMPTY] * min(coat.coats, MOST_BOXES))
            yield f"{boxes} {capital(part.name)}: {coat_words(coat)}"
