"""Which stand lies where in the trays, and what has no place.

folder -> count -> plan of a game -> content -> laid out, or as it was kept -> findings

The arrangement that is made by hand is kept in the folder, under `packed`: it is what the owner
decided, like the colours of his companies, and not something that happened, which the journal has.
"""

import datetime
from collections.abc import Sequence
from dataclasses import dataclass, field, replace
from difflib import get_close_matches
from pathlib import Path

from paradestate.core.choice import CHOSEN_HERE, Choice
from paradestate.core.finding import Finding, Level
from paradestate.core.force import Force
from paradestate.core.game import Purchase
from paradestate.core.tray.content import MOST_THINGS, Content, cases, content
from paradestate.core.tray.finding import (
    ground_findings,
    misfit_findings,
    no_trays,
    relaid_findings,
    too_many_things,
)
from paradestate.core.tray.ground import Ground
from paradestate.core.tray.laid import LaidTray, laid
from paradestate.core.tray.moving import Barred, Move, Trays, moved, names_in
from paradestate.core.tray.packed import Packed, packed_of, plan_by_hand, relaid
from paradestate.core.tray.plan import TrayPlan, Want, laid_out
from paradestate.journeys.check import Checked, checked
from paradestate.journeys.choosing import plan_of
from paradestate.journeys.count import Count, count
from paradestate.journeys.memory import NOTHING, Memory
from paradestate.journeys.rewriting import Rewriting, put_back, said_anew
from paradestate.text.codec import Plain
from paradestate.text.editing import Edit, Put, TakeOut
from paradestate.text.length import tray_place_text

SECTION = "packed"


@dataclass(frozen=True, slots=True, kw_only=True)
class AskedToPack:
    """What is asked; what is left out is as usual."""

    choice: Choice = field(default_factory=Choice)
    plan: str = ""
    """Supporting troops as they are typed; those of the game where one is chosen."""
    only_finished: bool = False
    anew: bool = False
    """Whether an arrangement that is kept is passed over."""


@dataclass(frozen=True, slots=True, kw_only=True)
class TraysAnswer:
    """The plan, or None with the stops that prevent it."""

    checked: Checked
    count: Count | None = None
    ground: Ground | None = None
    plan: TrayPlan | None = None

    @property
    def trays(self) -> Trays:
        """Every tray by its name, those that hold nothing too."""
        if self.ground is None or self.plan is None:
            return {}
        filled = {tray.case.name: tray for tray in self.plan.trays}
        return {case.name: filled.get(case.name, laid(case, ())) for case in self.ground.cases}

    @property
    def is_barred(self) -> bool:
        """Whether a stand is too high for every tray, so that there is no whole answer."""
        misfits = self.plan.misfits if self.plan is not None else ()
        return any(misfit.want is Want.TOO_HIGH for misfit in misfits)

    @property
    def is_whole(self) -> bool:
        """Whether the trays hold just what is to be packed: each stand once, and no other."""
        if self.ground is None or self.plan is None:
            return False
        held = sorted(each.thing.name for tray in self.plan.trays for each in tray.lying)
        return held == sorted(thing.name for thing in self.ground.things)


def trays(
    folder: Path,
    *,
    today: datetime.date,
    asked: AskedToPack,
    memory: Memory = NOTHING,
) -> TraysAnswer:
    """Lays every stand of a force into its trays. Raises FileError."""
    answer = count(folder, today=today, choice=asked.choice, memory=memory)
    counted = answer.count
    if counted is None:
        return TraysAnswer(checked=answer.checked)
    return memory.kept(
        ("trays", folder, repr(asked)),
        lambda: _laid(answer.checked, counted, asked=asked),
        rests_on=(answer,),
    )


def _laid(read: Checked, counted: Count, *, asked: AskedToPack) -> TraysAnswer:
    force = counted.force
    plan, slips = _plan(force, asked)
    if slips:
        return TraysAnswer(checked=read.with_findings(*slips))
    held = content(
        force,
        counted.made,
        strength=counted.strength,
        plan=plan,
        only_finished=asked.only_finished,
    )
    stop = _stop(force, held)
    if stop is not None:
        return TraysAnswer(checked=read.with_findings(stop))
    ground = Ground(cases=cases(force.trays), things=held.things)
    made, findings = _arranged(force, ground, asked=asked)
    known = ground_findings(force, cases=ground.cases, things=ground.things, sizeless=held.sizeless)
    return TraysAnswer(
        checked=read.with_findings(*findings, *known, *misfit_findings(force, made)),
        count=counted,
        ground=ground,
        plan=made,
    )


def _plan(force: Force, asked: AskedToPack) -> tuple[tuple[Purchase, ...], tuple[Finding, ...]]:
    """What was typed; else the plan of the chosen game, where one is chosen."""
    plan, slips = plan_of(asked.plan, entries=force.supporting_troops)
    unknown = [each.entry for each in plan if each.entry not in force.supporting_troops]
    if unknown:
        return (), tuple(_unknown_entry(force, name) for name in dict.fromkeys(unknown))
    if slips or asked.plan.strip() or asked.choice.game is None:
        return plan, slips
    return force.games[asked.choice.game].plan, ()


def _unknown_entry(force: Force, name: str) -> Finding:
    near = get_close_matches(name, force.supporting_troops, n=1)
    return Finding(
        level=Level.STOP,
        code="unknown-choice",
        message=f"No entry of the supporting troops is called '{name}'.",
        effect="Nothing is laid anywhere.",
        hint=f"Did you mean '{near[0]}'?" if near else "Look at 'supporting troops'.",
        place=CHOSEN_HERE,
    )


def _stop(force: Force, held: Content) -> Finding | None:
    if not force.trays:
        return no_trays(force)
    number = len(held.things)
    return too_many_things(force, number) if number > MOST_THINGS else None


def _arranged(
    force: Force, ground: Ground, *, asked: AskedToPack
) -> tuple[TrayPlan, tuple[Finding, ...]]:
    if asked.anew or not force.packed:
        return laid_out(ground.cases, ground.things), ()
    again = relaid(ground, force.packed)
    return plan_by_hand(ground, again.trays), tuple(relaid_findings(force, again))


def with_moves(
    answer: TraysAnswer, moves: Sequence[Move]
) -> tuple[TraysAnswer, Barred | None, tuple[Move, ...]]:
    """The plan after moves up to the first that a rule forbids, what forbids it, and those made.

    A move of a stand that lies in no tray isn't made.
    """
    ground, now = answer.ground, answer.trays
    if ground is None:
        return answer, None, ()
    made: list[Move] = []
    barred: Barred | None = None
    for move in moves:
        if not all(_is_laid(now, name) for name in names_in(move)):
            break
        after = moved(ground, now, move=move)
        if isinstance(after, Barred):
            barred = after
            break
        now = after
        made.append(move)
    if not made:
        return answer, barred, ()
    return replace(answer, plan=plan_by_hand(ground, now)), barred, tuple(made)


def _is_laid(now: Trays, name: str) -> bool:
    return any(each.thing.name == name for tray in now.values() for each in tray.lying)


@dataclass(frozen=True, slots=True, kw_only=True)
class Kept:
    """What was written; no file where nothing was: it says that already, or stops prevent it."""

    checked: Checked
    file: Path | None = None
    former: Path | None = None
    """Where the version before is kept."""


def keep(
    folder: Path, *, today: datetime.date, at: datetime.datetime, laid_trays: Sequence[LaidTray]
) -> Kept:
    """Writes an arrangement into the folder; an empty one is taken out.

    Raises FileError and EditError, with nothing written.
    """
    read = checked(folder, today=today)
    after = packed_of({tray.case.name: tray for tray in laid_trays})
    file = file_of(read.force)
    if read.is_stopped or file is None or read.force.packed == after:
        return Kept(checked=read)
    meant = replace(read.force, packed=after)
    made = said_anew(
        folder,
        today=today,
        at=at,
        file=file,
        edits=(_edit(after),),
        is_meant=lambda force: force == meant,
    )
    return _kept(made)


def put_packed_back(
    folder: Path, *, today: datetime.date, at: datetime.datetime, former: str
) -> Kept:
    """Puts the version of the file back that was kept last, if it has that name.

    Raises ChangedSinceError where another was kept last, or where the two differ in more than what
    is packed, and FileError where the disk refuses.
    """
    beside = replace(checked(folder, today=today).force, packed={})
    made = put_back(
        folder,
        today=today,
        at=at,
        former=former,
        is_meant=lambda force: replace(force, packed={}) == beside,
    )
    return _kept(made)


def _kept(made: Rewriting) -> Kept:
    if made.written is None:
        return Kept(checked=made.trial)
    return Kept(checked=made.trial, file=made.written.file, former=made.written.former)


def file_of(force: Force) -> Path | None:
    """The file that says what is packed; where none does the one that has the trays."""
    place = force.places.get((SECTION,)) or force.places.get(("trays",))
    return None if place is None else Path(place.file)


def _edit(after: Packed) -> Edit:
    if not after:
        return TakeOut(path=(SECTION,))
    value: dict[str, Plain] = {
        name: {stand: tray_place_text(place) for stand, place in places.items()}
        for name, places in after.items()
    }
    return Put(path=(SECTION,), value=value)
