"""Dates of the work at the bench printed for people."""

from collections.abc import Iterator

from rich.console import Console

from paradestate.cli.output import print_hanging, titled_table
from paradestate.core.sentence.forecast import (
    calibration_sentence,
    date_words,
    learned_sentences,
    night_sentences,
    rests_sentence,
    sure_sentence,
    unarrived_sentence,
    without_date_sentence,
)
from paradestate.core.sentence.wording import hours_words
from paradestate.core.work.forecast_value import Forecast
from paradestate.core.work.ladder import lacking_of
from paradestate.journeys.bench import OrderOfWork


def print_dates(out: Console, order: OrderOfWork) -> None:
    """Three dates for each milestone, what they rest on, game nights, and how others came out."""
    found = order.dates.forecast
    if found is not None:
        _print_table(out, found)
    for sentence in _sentences(order):
        print_hanging(out, sentence)


def _print_table(out: Console, found: Forecast) -> None:
    table = titled_table("Dates by which that is done, in this order of work")
    table.add_column("playable")
    for heading in ("hours", "half chance", "four in five", "nineteen in twenty"):
        table.add_column(heading, justify="right")
    for each in found.goals:
        days = (date_words(each, at) for at in each.dates)
        table.add_row(each.goal.name, hours_words(each.goal.minutes), *days)
    out.print(table)


def _sentences(order: OrderOfWork) -> Iterator[str]:
    found = order.dates.forecast
    if found is None:
        yield "No dates: nothing says how much is done in a week."
    elif any(not each.is_reached for each in found.goals):
        yield rests_sentence(found.evidence)
        yield sure_sentence(found)
        missing = without_date_sentence(found)
        if missing:
            yield missing
        lacking = lacking_of(work for rung in order.ladder.rungs for work in rung.works)
        if lacking:
            yield unarrived_sentence(lacking)
    yield from night_sentences(order.dates.nights, found)
    yield from learned_sentences(order.worked.learned)
    came_out = calibration_sentence(order.calibration)
    if came_out:
        yield came_out
