"""The plan of a game, written into the folder itself.

folder -> checked -> edit of the game -> read as if written -> written whole

The version before is kept among the former versions of the file.
"""

import datetime
from dataclasses import dataclass, replace
from pathlib import Path

from paradestate.core.force import Force
from paradestate.core.game import Purchase
from paradestate.journeys.check import Checked, checked
from paradestate.journeys.rewriting import said_anew
from paradestate.text.editing import Edit, Put, TakeOut
from paradestate.text.format.game import purchase_text

GAMES, PLAN = "games", "plan"


@dataclass(frozen=True, slots=True, kw_only=True)
class PlanWritten:
    """What was written; no file where nothing was: it says that already, or stops prevent it."""

    checked: Checked
    file: Path | None = None
    former: Path | None = None
    """Where the version before is kept."""


def write_plan(
    folder: Path,
    *,
    today: datetime.date,
    at: datetime.datetime,
    game: str,
    plan: tuple[Purchase, ...],
) -> PlanWritten:
    """Writes the plan of a game; an empty one is taken out. Raises FileError and EditError.

    Whether it is legal is no matter here: the folder says what is meant, not what is allowed.
    """
    read = checked(folder, today=today)
    if read.is_stopped or game not in read.force.games or read.force.games[game].plan == plan:
        return PlanWritten(checked=read)
    file = _file_of(read.force, game)
    path = (GAMES, game, PLAN)
    edit: Edit = (
        Put(path=path, value=[purchase_text(each) for each in plan]) if plan else TakeOut(path=path)
    )
    meant = _with_plan(read.force, game=game, plan=plan)
    made = said_anew(
        folder,
        today=today,
        at=at,
        file=file,
        edits=(edit,),
        is_meant=lambda force: force == meant,
    )
    if made.written is None:
        return PlanWritten(checked=made.trial)
    return PlanWritten(checked=made.trial, file=file, former=made.written.former)


def _file_of(force: Force, game: str) -> Path:
    """Games stand in YAML alone, never in a spreadsheet."""
    return Path(force.places[GAMES, game].file)


def _with_plan(force: Force, *, game: str, plan: tuple[Purchase, ...]) -> Force:
    games = {**force.games, game: replace(force.games[game], plan=plan)}
    return replace(force, games=games)
