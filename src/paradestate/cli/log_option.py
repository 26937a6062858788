"""The options that say what is to be written into the journal."""

from collections.abc import Callable
from typing import Any, TypeVar
from uuid import UUID, uuid4

import click

from paradestate.cli.option import now, today
from paradestate.core.finding import Finding
from paradestate.core.journal_entry import EntryKind
from paradestate.core.log_finding import unwritten
from paradestate.core.log_request import LogRequest
from paradestate.journeys.choosing import day_of, want_of

F = TypeVar("F", bound=Callable[..., Any])

OPTIONS = (
    click.option("--from", "from_stage", default="", metavar="STAGE", help="The stage they left."),
    click.option("--to", "to_stage", default="", metavar="STAGE", help="The stage they are at."),
    click.option("--minutes", type=click.IntRange(min=1), help="How long a session was."),
    click.option(
        "--stand",
        "stands",
        multiple=True,
        metavar="NAME",
        help="The stand that it is about; several of one pattern that are brought on alike.",
    ),
    click.option(
        "--source", default="", metavar="NAME", help="From whom it is ordered, came, or won't."
    ),
    click.option("--expected", default="", metavar="DATE", help="When what is ordered will come."),
    click.option(
        "--wanted",
        default="",
        metavar="DATE",
        help="When a stand that goes back to be repaired is wanted again.",
    ),
    click.option("--on", default="", metavar="DATE", help="The day, if it isn't today."),
    click.option("--note", default="", metavar="TEXT", help="What else is to be remembered."),
    click.option("--because", default="", metavar="TEXT", help="Why an entry is struck out."),
    click.option(
        "--entry",
        type=click.UUID,
        help="The entry's own UUID, so that what is sent twice is stored once.",
    ),
)


def log_options(command: F) -> F:
    """What happened, when, and to which stand."""
    for option in reversed(OPTIONS):
        command = option(command)
    return command


def request_of(
    kind: EntryKind,
    *,
    what: str,
    on: str,
    note: str,
    because: str,
    entry: UUID | None,
    minutes: int | None,
    from_stage: str,
    to_stage: str,
    stands: tuple[str, ...],
    source: str,
    expected: str,
    wanted: str,
) -> tuple[LogRequest, tuple[Finding, ...]]:
    """What is to be written, and a stop for each text with a slip.

    Raises UsageError where an option doesn't fit the kind.
    """
    strikes = kind is EntryKind.STRUCK_OUT
    if strikes and not (what and because):
        raise click.UsageError("Name the entry, and say why: struck-out ENTRY --because TEXT.")
    if because and not strikes:
        raise click.UsageError("--because goes with struck-out; use --note.")
    figures, findings = (None, ()) if strikes else want_of(what)
    day, more = day_of(on)
    due, no_due = day_of(expected)
    again, no_again = day_of(wanted)
    alike = stands if len(stands) > 1 else ()
    request = LogRequest(
        id=str(entry or uuid4()),
        kind=kind,
        written=now().replace(microsecond=0),
        on=day or today(),
        figures=figures or {},
        staged={},
        minutes=minutes,
        note=(because or note).strip(),
        struck_out=what if strikes else "",
        from_stage=from_stage,
        to_stage=to_stage,
        stand="" if alike else "".join(stands),
        stands=alike,
        source=source,
        expected=due,
        wanted=again,
    )
    return request, tuple(unwritten(found) for found in (*findings, *more, *no_due, *no_again))
