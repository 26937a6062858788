"""Dates of the work at the bench printed for people."""

from collections.abc import Iterator

from rich.console import Console

from paradestate.cli.output import print_hanging, print_whole_words, titled_table
from paradestate.core.sentence.forecast import (
    arrival_sentences,
    before_words,
    calibration_sentence,
    date_words,
    deadline_sentence,
    learned_sentences,
    rests_sentence,
    sure_sentence,
    thin_sentence,
    without_date_sentence,
    without_minutes_sentences,
)
from paradestate.core.sentence.wording import day_words, hours_words, several
from paradestate.core.work.forecast_value import Forecast
from paradestate.journeys.bench.bench import OrderOfWork
from paradestate.journeys.bench.forecast import Dates

MOST_NIGHTS = 6
"""Game nights that are shown one by one."""


def print_dates(out: Console, order: OrderOfWork) -> None:
    """Three dates for each milestone, what they rest on, game nights, and how others came out."""
    found = order.dates.forecast
    if found is not None and any(not each.is_reached for each in found.goals):
        _print_table(out, found)
    for sentence in filter(None, _sentences(order)):
        print_hanging(out, sentence)
    if order.dates.nights:
        out.print()
        _print_nights(out, order.dates)


def _print_table(out: Console, found: Forecast) -> None:
    table = titled_table("Dates by which that is done, in this order of work")
    table.add_column("playable")
    for heading in ("hours", "half chance", "four in five", "nineteen in twenty"):
        table.add_column(heading, justify="right")
    for each in found.goals:
        days = (date_words(each, at) for at in each.dates)
        table.add_row(each.goal.name, hours_words(each.goal.minutes), *days)
    print_whole_words(out, table)


def _print_nights(out: Console, dates: Dates) -> None:
    """The next game nights, each with how likely every milestone is ready by then."""
    goals = () if dates.forecast is None else dates.forecast.goals
    ready = ", with the chance to be ready on the evening before" if goals else ""
    table = titled_table(f"Game nights{ready}")
    table.add_column("night", justify="right")
    for each in goals:
        table.add_column(each.goal.name, justify="right")
    for night in dates.nights[:MOST_NIGHTS]:
        chances = (before_words(each, night) for each in goals)
        table.add_row(day_words(night), *chances)
    print_whole_words(out, table)
    more = len(dates.nights) - MOST_NIGHTS
    if more > 0:
        out.print(f"{several(more, 'more night')} within a year.")


def _sentences(order: OrderOfWork) -> Iterator[str]:
    found = order.dates.forecast
    if found is None:
        yield "No dates: nothing says how much is done in a week."
    elif any(not each.is_reached for each in found.goals):
        if found.has_work:
            yield rests_sentence(found.evidence)
            yield thin_sentence(found.evidence)
            yield sure_sentence(found)
        if order.deadline is not None:
            yield deadline_sentence(found, order.deadline)
        yield without_date_sentence(found)
        goals = [each.goal for each in found.goals]
        yield from without_minutes_sentences(order.ladder, goals)
        yield from arrival_sentences(order.ladder, parcels=found.goals[-1].goal.waiting)
    yield from learned_sentences(order.worked.learned, stages=order.force.bench.stages)
    yield calibration_sentence(order.calibration)
