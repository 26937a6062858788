"""The command `losses`."""

from collections.abc import Mapping
from pathlib import Path
from typing import TYPE_CHECKING
from uuid import uuid4

import click

from paradestate.cli.finding_report import print_findings
from paradestate.cli.option import finish, folder_argument, json_option, now, stop_for, today
from paradestate.cli.output import print_json

if TYPE_CHECKING:  # start-up time
    from paradestate.journeys.game.losses import AfterGame
    from paradestate.journeys.game.losses_pen import LossesTold, Teller

FATES = ("recovered", "lost", "replaced", "promoted")
ACTIONS = ("rolled", "out", *FATES, "strike", "repairs")
EPILOG = """\b
Examples:
  paradestate losses marenz
  paradestate losses marenz --next "whole-day attack"

\b
Real dice, and what needs none:
  paradestate losses marenz rolled "No 1 Company / 1 Platoon / 1 Section" 4 --witness Bert
  paradestate losses marenz replaced "No 1 Company / 1 Platoon / 2 Section"

\b
What nobody told at the table, and what was a slip:
  paradestate losses marenz out "No 1 Company / 1 Platoon / 1 Section" --how captured
  paradestate losses marenz strike 1f0c9b2e --because "read upside down"
What is broken goes back to the bench:
  paradestate losses marenz repairs --wanted 2026-12-10
  paradestate losses marenz repairs "1 Observer" --note "bayonet snapped"
"""


@click.command(epilog=EPILOG)
@folder_argument
@click.argument("what", required=False, type=click.Choice(ACTIONS))
@click.argument("name", default="")
@click.argument("faces", nargs=-1, type=int)
@click.option(
    "--wanted",
    default="",
    metavar="DATE",
    help="repairs: when they are wanted; the next game night when left out.",
)
@click.option(
    "--to",
    "to_stage",
    default="",
    metavar="STAGE",
    help="repairs: how far back; the stage before the last when left out.",
)
@click.option("--note", default="", metavar="TEXT", help="repairs: what is broken.")
@click.option("--by", "roller", default="", metavar="NAME", help="rolled: who rolled.")
@click.option("--witness", default="", metavar="NAME", help="rolled: who saw it.")
@click.option("--how", default="yes", metavar="WORD", help="out: your own word for it.")
@click.option("--because", default="", metavar="TEXT", help="strike: the reason.")
@click.option(
    "--next",
    "next_game",
    default="",
    metavar="NAME",
    help="The game that is played next; of the same kind when left out.",
)
@click.option("--of", default="", metavar="ID", help="Another game than the newest.")
@json_option
def command(
    folder: Path,
    *,
    what: str | None,
    name: str,
    faces: tuple[int, ...],
    next_game: str,
    of: str,
    as_json: bool,
    **said: str,
) -> None:
    """Say who was out of action in FOLDER's last game, and what the next one finds.

    How likely they come back is as the section `campaign` of the folder says. Real dice are
    written down with `rolled`, a stand and its faces; `out`, `recovered`, `lost`, `replaced` and
    `promoted` need none. What was a slip is struck out with its reason. `repairs` puts on
    the bench what the game left to be repaired, or the stand that is named.
    """
    if what != "repairs" and any(said[word] for word in ("wanted", "to_stage", "note")):
        raise click.UsageError("--wanted, --to and --note go with repairs.")
    if what is None:
        _show(folder, next_game=next_game, of=of, as_json=as_json)
        return
    is_whole = bool(name) or what == "repairs"
    if not is_whole or (what == "rolled") != bool(faces):
        raise click.UsageError(f"Say whom: {what} NAME{' FACES' if what == 'rolled' else ''}.")
    from paradestate.journeys.game.losses_pen import Teller
    from paradestate.journeys.memory import Memory

    teller = Teller(
        folder=folder,
        today=today(),
        now=now(),
        new_id=lambda: str(uuid4()),
        of=of,
        next_game=next_game,
        memory=Memory(),  # the files are read once, not at each line that is written
    )
    _answer(_told(teller, what, name=name, faces=faces, said=said), as_json=as_json)


def _told(
    teller: "Teller", what: str, *, name: str, faces: tuple[int, ...], said: Mapping[str, str]
) -> "LossesTold":
    from paradestate.journeys.game.losses_rolled import Seen, roll_recovery
    from paradestate.journeys.game.losses_struck import strike_loss
    from paradestate.journeys.game.losses_told import tell_fate, tell_out

    if what == "repairs":
        return _repairs(teller, name, said=said)
    if what == "rolled":
        seen = Seen(roller=said["roller"], witness=said["witness"])
        return roll_recovery(teller, name, numbers=faces, seen=seen)
    if what == "out":
        return tell_out(teller, [name], how=said["how"])
    if what == "strike":
        return strike_loss(teller, name, because=said["because"])
    return tell_fate(teller, [name], word=what)


def _show(folder: Path, *, next_game: str, of: str, as_json: bool) -> None:
    from paradestate.journeys.game.losses import losses

    after = losses(folder, today=today(), next_game=next_game, of=of)
    print_findings(after.findings, after.texts)
    _print(after, as_json=as_json)
    finish(stopped=after.record is None)


def _repairs(teller: "Teller", name: str, *, said: Mapping[str, str]) -> "LossesTold":
    from paradestate.journeys.choosing import day_of
    from paradestate.journeys.game.repairs import RepairsAsked, put_on_the_bench

    day, slips = day_of(said["wanted"])
    stop_for(slips)
    asked = RepairsAsked(
        names=(name,) if name else (), wanted=day, to_stage=said["to_stage"], note=said["note"]
    )
    return put_on_the_bench(teller, asked)


def _answer(done: "LossesTold", *, as_json: bool) -> None:
    print_findings((*done.findings, *done.after.findings), done.after.texts)
    if not as_json:
        from paradestate.cli.losses_report import print_repaired

        print_repaired(done.entries)
    if done.entries or done.is_done or as_json:
        _print(done.after, as_json=as_json)
    finish(stopped=not done.is_done)


def _print(after: "AfterGame", *, as_json: bool) -> None:
    if as_json:
        from paradestate.cli.losses_json import losses_json

        print_json(losses_json(after))
    elif after.record is not None:
        from paradestate.cli.losses_report import print_losses

        print_losses(after)
