"""Many changes of one list or of several, each with what it does to the legal forces.

folders -> terms of their games -> forces as they are -> every combination of changes -> workers
-> rows in the order of the questions
"""

import datetime
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from math import prod
from pathlib import Path

from paradestate.chance.proof.sweeping import Sweeper
from paradestate.core.certainty import NotComputed
from paradestate.core.choice import CHOSEN_HERE
from paradestate.core.finding import Finding, Level
from paradestate.core.support.amendment import Amendment
from paradestate.core.support.comparison import ListForces
from paradestate.core.support.sweep import SweepQuestion, Swept
from paradestate.journeys.amending import ListAsked, unfitting
from paradestate.journeys.check import Checked
from paradestate.journeys.compare import as_it_is
from paradestate.journeys.list_terms import Playable, list_terms
from paradestate.journeys.memory import NOTHING, Memory
from paradestate.journeys.varying import varied_of
from paradestate.workers.crew import answers
from paradestate.workers.opening import crew

MOST_QUESTIONS = 100_000
"""A sweep of more questions isn't begun: its rows would fill the memory."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Labour:
    """Who answers, and who is told."""

    workers: int | None = None
    """Processes here; None: one for each processor; nought: this very one, without another."""
    address: str | None = None
    """Of the cluster that answers instead."""
    stop: Callable[[], bool] = lambda: False
    told: Callable[[int, int], None] = lambda _done, _all: None
    """Hears how many questions of how many are answered."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SweptGame:
    """One game of one list as it is."""

    folder: Path
    title: str
    forces: ListForces


@dataclass(frozen=True, slots=True, kw_only=True)
class Sweep:
    """What was found."""

    games: tuple[SweptGame, ...]
    left_out: tuple[tuple[Path, str, str], ...]
    """Folder, game, and why it isn't swept."""
    rows: tuple[Swept, ...]
    """Those that were answered, in the order of the questions: game after game, the changes that
    were typed last varied first."""
    questions: int
    """How many were to be answered."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SweepAnswer:
    """The sweep; or None with the stops that prevent it."""

    checked: tuple[Checked, ...]
    """Of each folder, in order."""
    found: Sweep | None = None


def sweep(
    folders: Sequence[Path],
    *,
    today: datetime.date,
    asked: ListAsked,
    labour: Labour,
    memory: Memory = NOTHING,
) -> SweepAnswer:
    """Every combination of the changes, each a number or a range, in every game of every folder.

    Raises:
        WorkersError: The cluster can't be reached, or workers died again and again.
    """
    lists = [
        list_terms(
            folder,
            today=today,
            choice=asked.choice,
            grades=asked.grades,
            points=asked.points,
            memory=memory,
        )
        for folder in folders
    ]
    checked = tuple(each.checked for each in lists)
    if not all(each.games for each in lists):
        return SweepAnswer(checked=checked)
    entries = {name for each in lists for name in each.checked.force.supporting_troops}
    varied, findings = varied_of(asked.amending, entries=sorted(entries))
    findings = findings or _fits_nowhere(varied, [game for each in lists for game in each.games])
    games, left_out = [], []
    for folder, each in zip(folders, lists, strict=True):
        for game in each.games:
            forces = as_it_is(game, folder=folder, asked=asked, memory=memory)
            if isinstance(forces, NotComputed):
                left_out.append((folder, game.terms.game.name, forces.reason))
            else:
                title = each.checked.force.title
                games.append(SweptGame(folder=folder, title=title, forces=forces))
    number = len(games) * prod(map(len, varied))
    if number > MOST_QUESTIONS:
        findings = (*findings, _too_many(number))
    if findings:
        return SweepAnswer(checked=(checked[0].with_findings(*findings), *checked[1:]))
    rows = _answered(games, varied, number=number, labour=labour)
    return SweepAnswer(
        checked=checked,
        found=Sweep(
            games=tuple(games), left_out=tuple(left_out), rows=tuple(rows), questions=number
        ),
    )


def _answered(
    games: Sequence[SweptGame],
    varied: Sequence[Sequence[Amendment]],
    *,
    number: int,
    labour: Labour,
) -> list[Swept]:
    if not number:
        return []

    def question(place: int) -> SweepQuestion:
        game, rest = divmod(place, number // len(games))
        chosen: list[Amendment] = []
        for values in reversed(varied):
            rest, value = divmod(rest, len(values))
            chosen.insert(0, values[value])
        return SweepQuestion(game=game, amendments=tuple(chosen))

    workers = crew(
        Sweeper(games=tuple(each.forces for each in games)),
        number=labour.workers,
        address=labour.address,
    )
    found: dict[int, Swept] = {}
    for place, row in answers(workers, map(question, range(number)), is_over=labour.stop):
        found[place] = Swept(question=question(place), row=row)
        labour.told(len(found), number)
    return [found[place] for place in sorted(found)]


def _fits_nowhere(
    varied: Sequence[Sequence[Amendment]], games: Sequence[Playable]
) -> tuple[Finding, ...]:
    """A stop for each thing of which no value fits any game; what fits some is said in the rows."""
    found: list[Finding] = []
    for values in varied:
        if all(unfitting((value,), games)[1] for value in values):
            found.extend(unfitting(values[:1], games)[1])
    return tuple(found)


def _too_many(number: int) -> Finding:
    return Finding(
        level=Level.STOP,
        code="sweep-too-large",
        message=f"These changes have {number:,} combinations; at most {MOST_QUESTIONS:,} are "
        "swept.",
        effect="Nothing is worked out.",
        hint="Vary fewer things at once, or choose one game with --game.",
        place=CHOSEN_HERE,
    )
