"""What `bench` writes where it is asked to: dates into the journal, and a calendar."""

import datetime
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from typing import Any, TypeVar
from uuid import uuid4

import click

from paradestate.cli.finding_report import print_findings
from paradestate.cli.option import now
from paradestate.cli.output import command_line
from paradestate.core.sentence.journal import SHORT
from paradestate.core.sentence.wording import several
from paradestate.journeys.bench.bench import BenchAnswer, Kept, Outcome, keep_dates
from paradestate.journeys.bench.calendar_file import CalendarWritten, refuse_other, write_calendar
from paradestate.journeys.bench.forecast import Keeping
from paradestate.journeys.spreadsheet import CannotWriteError

F = TypeVar("F", bound=Callable[..., Any])

OPTIONS = (
    click.option("--by-kind", is_flag=True, help="Show the same work kind by kind instead."),
    click.option("--supplies", is_flag=True, help="Show what the work uses up instead."),
    click.option("--cards", is_flag=True, help="Show a job card for each batch instead."),
    click.option(
        "--up-to", default="", metavar="MILESTONE", help="Supplies or cards as far as this alone."
    ),
    click.option(
        "--keep",
        is_flag=True,
        help="Write the dates into the journal, once a day, to see later how they came out.",
    ),
    click.option(
        "--calendar",
        type=click.Path(path_type=Path),
        metavar="FILE.ics",
        help="Write milestones and game nights as a calendar.",
    ),
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Shown:
    """What the command shows instead of the ladder."""

    by_kind: bool
    supplies: bool
    cards: bool
    up_to: str

    @property
    def is_paper(self) -> bool:
        """Whether it is a paper for the bench."""
        return self.supplies or self.cards

    def refuse_together(self, *, writes: bool) -> None:
        """Ends the command where two options don't go together."""
        if self.by_kind + self.supplies + self.cards > 1:
            raise click.UsageError(
                "--by-kind, --supplies and --cards each show something else: choose one of them."
            )
        if self.up_to and not self.is_paper:
            raise click.UsageError("--up-to is for --supplies and --cards.")
        if writes and self.is_paper:
            raise click.UsageError("--keep and --calendar are for the ladder with its dates.")


@dataclass(frozen=True, slots=True, kw_only=True)
class Written:
    """What was written, for people and for programs."""

    lines: tuple[str, ...]
    document: dict[str, object]
    is_refused: bool
    """Whether the journal took nothing though it was asked to."""


def bench_options(command: F) -> F:
    """What is shown, and what is written."""
    for option in reversed(OPTIONS):
        command = option(command)
    return command


def refuse_calendar(file: Path | None) -> None:
    """Ends the command before any work where a calendar can't be written into a file."""
    if file is not None:
        try:
            refuse_other(file)
        except CannotWriteError as error:
            raise click.UsageError(str(error)) from None


def written(
    folder: Path,
    answer: BenchAnswer,
    *,
    today: datetime.date,
    keep: bool,
    calendar: Path | None,
) -> Written:
    """Writes what was asked for. Raises UsageError where a calendar can't be written."""
    lines: list[str] = []
    document: dict[str, object] = {"calendar": None, "kept": None}
    if calendar is not None and answer.order is not None:
        try:
            made = write_calendar(
                calendar,
                answer.order.dates,
                force=answer.checked.force.title,
                made=now(),
                repairs=answer.order.ladder.repairs,
            )
        except CannotWriteError as error:
            raise click.UsageError(str(error)) from None
        lines.extend(_calendar_words(made, calendar))
        document["calendar"] = None if made is None else str(made.file)
    kept = None
    if keep:
        written_at = now().replace(microsecond=0)
        kept = keep_dates(
            folder,
            answer,
            keeping=Keeping(today=today, written=written_at, id=str(uuid4())),
        )
        new = [each for each in kept.logged.findings if each not in answer.checked.findings]
        print_findings(new, kept.logged.texts)
        lines.extend(_kept_words(kept, folder=folder))
        entry = kept.logged.entry
        document["kept"] = {
            "outcome": kept.outcome.value,
            "entry": None if entry is None else entry.id,
        }
    refused = kept is not None and kept.outcome is Outcome.REFUSED
    return Written(lines=tuple(lines), document=document, is_refused=refused)


def _calendar_words(made: CalendarWritten | None, file: Path) -> list[str]:
    if made is None:
        return [f"{file} isn't written: there is neither a date nor a game night to mark."]
    days = several(made.days, "day")
    if not made.is_new:
        return [f"{file} says so already ({days}); nothing is written."]
    if made.former is None:
        return [f"Written: {file} ({days})."]
    return [f"Written: {file} ({days}); the one before is kept as {made.former}."]


def _kept_words(kept: Kept, *, folder: Path) -> list[str]:
    entry = kept.logged.entry
    if kept.outcome is Outcome.KEPT_ALREADY:
        return ["Dates of today are kept already; nothing is added."]
    if kept.outcome is Outcome.NO_DATES:
        return ["There are no dates to keep; nothing is written."]
    if entry is None:
        return ["The dates are not kept."]
    back = command_line("log", str(folder), "struck-out", entry.id[:SHORT], "--because", "slip")
    number = several(len(entry.forecasts), "milestone")
    return [
        f"Kept: the dates of {number}, in the journal (entry {entry.id[:SHORT]}).",
        f"To take it back: {back}",
    ]
