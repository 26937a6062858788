"""The command `log`."""

import datetime
from collections.abc import Sequence
from pathlib import Path
from typing import Any

import click

from paradestate.cli.finding_report import print_findings
from paradestate.cli.log_option import log_options, request_of
from paradestate.cli.option import finish, folder_argument, json_option, today
from paradestate.cli.output import print_json
from paradestate.core.finding import Finding
from paradestate.core.journal_entry import EntryKind
from paradestate.core.log_request import LogRequest
from paradestate.journeys.choosing import day_of

ELSEWHERE = frozenset({EntryKind.FORECAST, EntryKind.PLAYED})
"""Kinds that another command writes."""

LOGGED = tuple(kind.value for kind in EntryKind if kind not in ELSEWHERE)
"""What a person writes down; a forecast is kept where it is made."""

EPILOG = """\b
Examples:
  paradestate log marenz counted "rifleman=24, officer=3" --to painted
  paradestate log marenz ordered "North/N1=1, North/N2=2" --expected 2026-03-20
  paradestate log marenz received "rifleman=32, officer=4" --source North
  paradestate log marenz cancelled --source North --note refunded
  paradestate log marenz moved "rifleman=6" --to painted
  paradestate log marenz session "rifleman=6" --to painted --minutes 90
  paradestate log marenz moved --stand "No 1 Company / 1 Platoon / 1 Section" --to based
  paradestate log marenz moved --stand "1 Observer" --from based --to painted --wanted 2026-12-10
  paradestate log marenz lent "truck=2" --note "until the show"
  paradestate log marenz struck-out 1f0c9b2e --because "counted the wrong box"
  paradestate log marenz
"""


@click.command(epilog=EPILOG)
@folder_argument
@click.argument("kind", required=False, type=click.Choice(LOGGED))
@click.argument("what", default="")
@log_options
@click.option(
    "--last", type=click.IntRange(min=1), default=20, show_default=True, help="Entries to list."
)
@json_option
def command(
    folder: Path,
    *,
    kind: str | None,
    last: int,
    as_json: bool,
    **said: Any,  # noqa: ANN401 - each goes on by name to where it has its type
) -> None:
    """Write down what happened to the figures of the force in FOLDER.

    WHAT is a list such as "rifleman=6, officer=1"; to strike an entry out it is the beginning of
    its UUID. The entry is printed once it is safe on disk. Nothing is ever altered or removed: a
    slip is struck out. Without a kind the newest entries are listed, with --on those of that day.
    """
    if kind is None:
        day, slips = day_of(str(said.pop("on")))
        if any(said.values()):
            raise click.UsageError(f"Say what happened, one of: {', '.join(LOGGED)}.")
        _refuse(slips)
        _list(folder, last=last, on=day, as_json=as_json)
    else:
        request, slips = request_of(EntryKind(kind), **said)
        _refuse(slips)
        _write(folder, request=request, as_json=as_json)


def _refuse(slips: Sequence[Finding]) -> None:
    if slips:
        print_findings(slips, {})
        finish(stopped=True)


def _write(folder: Path, *, request: LogRequest, as_json: bool) -> None:
    from paradestate.cli.log_report import log_json, print_logged
    from paradestate.journeys.log import log

    answer = log(folder, today=today(), request=request)
    print_findings(answer.findings, answer.texts)
    if answer.entry is not None and as_json:
        print_json(log_json(answer.entry, answer))
    elif answer.entry is not None:
        print_logged(answer.entry, answer, folder=folder)
    finish(stopped=answer.entry is None)


def _list(folder: Path, *, last: int, on: datetime.date | None, as_json: bool) -> None:
    from paradestate.cli.log_report import history_json, print_history
    from paradestate.journeys.history import history

    answer = history(folder, today=today(), last=last, on=on)
    print_findings(answer.findings, answer.texts)
    if as_json:
        print_json(history_json(answer))
    else:
        print_history(answer, folder=folder)
