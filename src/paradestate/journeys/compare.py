"""Two versions of a list compared: what differs, and what becomes of the legal forces.

folders -> terms of their games -> differences in words -> game after game: forces of both -> answer
folder -> terms of its games -> amendments -> game after game: as it is and as amended -> answer
"""

import datetime
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

from paradestate.chance.proof.what_if import compared, list_forces, only_price, what_if
from paradestate.core.certainty import NotComputed
from paradestate.core.list_change import ListChange, list_changes
from paradestate.core.support.amendment import Amendment
from paradestate.core.support.comparison import ListComparison, ListForces
from paradestate.journeys.amending import ListAsked, amendments_of, unfitting
from paradestate.journeys.check import Checked
from paradestate.journeys.list_terms import ListTerms, Playable, list_terms
from paradestate.journeys.memory import NOTHING, Memory


@dataclass(frozen=True, slots=True, kw_only=True)
class GameComparison:
    """What becomes of the legal forces of one game."""

    game: str
    amendments: tuple[Amendment, ...]
    """What alone is changed, where that is known."""
    comparison: ListComparison | NotComputed


@dataclass(frozen=True, slots=True, kw_only=True)
class Compared:
    """Two versions of a list."""

    changes: tuple[ListChange, ...]
    """In the words of the files; none of what was only amended for this sum."""
    games: tuple[GameComparison, ...]
    """The games of both."""
    left_out: Mapping[str, str]
    """Games that weren't compared, and why."""


@dataclass(frozen=True, slots=True, kw_only=True)
class CompareAnswer:
    """The comparison; or None with the stops that prevent it."""

    checked: tuple[Checked, ...]
    """Of each folder that was read, in order."""
    found: Compared | None = None


def comparison_of(
    old: Path,
    new: Path | None,
    *,
    today: datetime.date,
    asked: ListAsked,
    memory: Memory = NOTHING,
) -> CompareAnswer:
    """Two folders compared; or, without a second, one folder with itself as amended."""
    first = _terms(old, today=today, asked=asked, memory=memory)
    if new is None:
        return _with_itself(first, asked=asked, folder=old, memory=memory)
    second = _terms(new, today=today, asked=asked, memory=memory)
    checked = (first.checked, second.checked)
    if not first.games or not second.games:
        return CompareAnswer(checked=checked)
    earlier = {each.terms.game.name: each for each in first.games}
    later = {each.terms.game.name: each for each in second.games}
    both = [name for name in earlier if name in later]
    return CompareAnswer(
        checked=checked,
        found=Compared(
            changes=list_changes(first.checked.force, second.checked.force),
            games=tuple(_two(earlier[name], later[name]) for name in both),
            left_out={
                name: "only one version has it"
                for name in dict.fromkeys((*earlier, *later))
                if name not in both
            },
        ),
    )


def _terms(folder: Path, *, today: datetime.date, asked: ListAsked, memory: Memory) -> ListTerms:
    return list_terms(
        folder,
        today=today,
        choice=asked.choice,
        grades=asked.grades,
        points=asked.points,
        memory=memory,
    )


def _two(old: Playable, new: Playable) -> GameComparison:
    """One game by two versions, at all points that the dice of either may leave."""
    points = sorted({*old.points, *new.points})
    was = list_forces(old.terms, points=points, at=old.at, allowance=old.allowance)
    now = list_forces(new.terms, points=points, at=old.at, allowance=new.allowance)
    found: ListComparison | NotComputed
    if isinstance(was, NotComputed):
        found = was
    else:
        found = now if isinstance(now, NotComputed) else compared(was, now)
    only = only_price(old.terms, new.terms)
    return GameComparison(
        game=old.terms.game.name,
        amendments=() if only is None else (only,),
        comparison=found,
    )


def _with_itself(
    answer: ListTerms, *, asked: ListAsked, folder: Path, memory: Memory
) -> CompareAnswer:
    if not answer.games:
        return CompareAnswer(checked=(answer.checked,))
    entries = tuple(answer.checked.force.supporting_troops)
    amendments, findings = amendments_of(asked.amending, entries=entries)
    left_out: Mapping[str, str] = {}
    if not findings:
        left_out, findings = unfitting(amendments, answer.games)
    if findings:
        return CompareAnswer(checked=(answer.checked.with_findings(*findings),))
    games = [each for each in answer.games if each.terms.game.name not in left_out]
    return CompareAnswer(
        checked=(answer.checked,),
        found=Compared(
            changes=(),
            games=tuple(
                _amended(
                    each.terms.game.name,
                    amendments=amendments,
                    was=as_it_is(each, folder=folder, asked=asked, memory=memory),
                )
                for each in games
            ),
            left_out=left_out,
        ),
    )


def as_it_is(
    game: Playable, *, folder: Path, asked: ListAsked, memory: Memory
) -> ListForces | NotComputed:
    """The legal forces of a game as the files have it."""
    name = game.terms.game.name
    return memory.kept(
        ("list as it is", folder, name, repr(asked.choice), repr(dict(asked.grades)), asked.points),
        lambda: list_forces(game.terms, points=game.points, at=game.at, allowance=game.allowance),
        rests_on=(game.made,),
    )


def _amended(
    game: str, *, amendments: tuple[Amendment, ...], was: ListForces | NotComputed
) -> GameComparison:
    return GameComparison(
        game=game,
        amendments=amendments,
        comparison=was if isinstance(was, NotComputed) else what_if(was, amendments),
    )
