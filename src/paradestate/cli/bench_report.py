"""The order of work printed for people: a ladder, the milestones, and what holds them up."""

import datetime
from collections.abc import Iterator
from fractions import Fraction

from rich.console import Console
from rich.text import Text

from paradestate.cli.forecast_report import print_dates
from paradestate.cli.output import (
    LEAST_ROOM,
    console,
    print_hanging,
    print_whole_words,
    titled_table,
)
from paradestate.core.sentence.forecast import by_words, without_minutes_words
from paradestate.core.sentence.wording import hours_words, rail_words, several
from paradestate.core.sentence.work import (
    batch_details,
    batch_words,
    certainty_words,
    colour_sentences,
    critical_sentence,
    gain_sentence,
    lacking_sentence,
    now_sentence,
    on_order_sentence,
    reached_week_words,
    reached_words,
)
from paradestate.core.work.ladder import Ladder, Reached, lacking_of
from paradestate.journeys.bench.bench import OrderOfWork

HOURS = 8
"""Width of the hours beside the rail, in characters."""
DETAIL = "   "


def print_bench(order: OrderOfWork, *, title: str, is_by_kind: bool, today: datetime.date) -> None:
    """The ladder, each milestone beside the same work kind by kind, and how sure it is."""
    out = console()
    out.print(Text(title, style="bold"))
    shown = order.by_kind if is_by_kind else order.ladder
    for each in shown.reached:
        if each.rung is None:
            out.print(now_sentence(each))
    for sentence in order.repair_sentences(today):
        print_hanging(out, sentence)
    if not shown.rungs:
        out.print("Nothing is left to do at the bench.")
        print_dates(out, order)
        return
    work = f"{hours_words(shown.minutes)} in {several(len(shown.rungs), 'batch')}"
    out.print(f"Kind by kind: {work}." if is_by_kind else f"{_next(shown)} In all: {work}.")
    out.print()
    for hours, rail, words in _ladder(shown, order):
        _print_rung(out, words, rail=f"{hours:>{HOURS}} {rail}")
    out.print()
    _print_milestones(out, order)
    out.print()
    for sentence in _sentences(order, shown):
        print_hanging(out, sentence)
    out.print()
    print_dates(out, order)


def _next(shown: Ladder) -> str:
    """Which force can be played next, and after how much work; there is always one to come."""
    following = shown.following
    assert following is not None  # noqa: S101 - every rung belongs to a milestone
    if not following.ends:
        name = following.milestone.name
        return f"Next to be played: {name}. It {without_minutes_words(following)}."
    return f"Next to be played: {following.milestone.name}, after {hours_words(following.ends)}."


def _ladder(shown: Ladder, order: OrderOfWork) -> Iterator[tuple[str, str, str]]:
    """Hours, rail and words of each line: a rung a batch, a thick one a milestone.

    The dates are those of the order that is the soonest.
    """
    reached = shown.reached_of
    by = {name: by_words(found) for name, found in order.forecast_of.items()}
    has_dates = shown is order.ladder and order.week_alone is None
    for rung in shown.rungs:
        yield rail_words(rung.ends), "├─", f"{rung.number}. {batch_words(rung)}"
        for detail in batch_details(rung):
            yield "", "│ ", f"{DETAIL}{detail}"
        for name in rung.completes:
            words = reached_words(
                reached[name],
                week=order.week_alone,
                by=by.get(name, "") if has_dates else "",
            )
            yield rail_words(rung.ends), "┝━━━━", words


def _print_rung(out: Console, words: str, *, rail: str) -> None:
    """A line that goes on below itself, beside the rail."""
    room = max(out.width - len(rail) - 1, LEAST_ROOM)
    first, *more = Text(words).wrap(out, room)
    out.print(f"{rail} {first.plain.rstrip()}", soft_wrap=True)
    rest = Text(" ".join(each.plain.strip() for each in more))
    for each in rest.wrap(out, room - len(DETAIL)) if more else ():
        out.print(f"{'':>{HOURS}} │  {DETAIL}{each.plain.rstrip()}", soft_wrap=True)


def _print_milestones(out: Console, order: OrderOfWork) -> None:
    """A row for each; weeks are counted where nothing but the owner's own is known."""
    week = order.week_alone
    weeks = () if week is None else ("week",)
    table = titled_table("Milestones, beside the same work kind by kind")
    table.add_column("playable")
    for heading in ("stands", "hours", *weeks, "by kind", *weeks, "lacking"):
        table.add_column(heading, justify="right")
    beside = order.by_kind.reached_of
    for each in order.ladder.reached:
        other = beside[each.milestone.name]
        table.add_row(
            each.milestone.name,
            str(len(each.to_finish)),
            *_when(each, week=week),
            *_when(other, week=week),
            str(sum(each.lacking.values())),
        )
    print_whole_words(out, table)
    said = "" if week is None else f" A week has {hours_words(week)}, days away or not."
    out.print(f"Stands still to be finished; figures that aren't owned yet.{said}")


def _when(each: Reached, *, week: Fraction | None) -> Iterator[str]:
    yield hours_words(each.ends)
    if week is not None:
        yield reached_week_words(each, week=week).removeprefix("week ") or "-"


def _sentences(order: OrderOfWork, shown: Ladder) -> Iterator[str]:
    first = order.ladder.following
    if first is not None:
        yield gain_sentence(first, by_kind=order.by_kind.reached_of[first.milestone.name])
    if shown.critical is not None:
        yield critical_sentence(shown.critical)
    yield from colour_sentences(shown)
    lacking = lacking_of(work for rung in shown.rungs for work in rung.works)
    if lacking:
        yield lacking_sentence(lacking)
    if order.orders:
        yield on_order_sentence(order.orders)
    if shown is order.ladder:
        yield certainty_words(shown)
