"""Papers to size: what is printed, cut out, stuck on and handed over.

folder -> game -> drafted -> set -> looked over
"""

import datetime
import hashlib
from collections.abc import Iterator
from dataclasses import dataclass, replace
from pathlib import Path

from paradestate.core.choice import Choice, unknown_choice
from paradestate.core.finding import Finding, stops
from paradestate.core.imposition.imposition_finding import (
    loaded_findings,
    scale_findings,
    type_findings,
)
from paradestate.core.imposition.print_scale import TRUE
from paradestate.core.imposition.type_size import length_of_points
from paradestate.core.paper.ground import Ground
from paradestate.core.paper.paper import Heading, Paper, frames_of
from paradestate.core.paper.paper_finding import letter_findings, too_long
from paradestate.core.sentence.cross_check import Tick
from paradestate.journeys.check import Checked
from paradestate.journeys.marking import marking_of
from paradestate.journeys.memory import NOTHING, Memory
from paradestate.journeys.paper.every_paper import EVERY_PAPER
from paradestate.journeys.paper.game_meant import game_meant
from paradestate.journeys.paper.paper_kind import Asked, Desk, PaperKind
from paradestate.sheet.paper.letters import printable, unprintable
from paradestate.sheet.paper.typesetting import Printed, printed, told_text


@dataclass(frozen=True, slots=True, kw_only=True)
class Sheet:
    """One paper, set and not yet written."""

    name: str
    title: str
    printed: Printed

    @property
    def file_name(self) -> str:
        """The name of its file."""
        return f"{self.name.replace(' ', '-')}.pdf"

    @property
    def sha256(self) -> str:
        """The digest of its bytes."""
        return hashlib.sha256(self.printed.pdf).hexdigest()


@dataclass(frozen=True, slots=True, kw_only=True)
class Sheets:
    """The papers that were asked for, or none where a stop prevents them."""

    checked: Checked
    sheets: tuple[Sheet, ...] | None
    ticks: tuple[Tick, ...] = ()
    """Cross-checks: two ways to one number."""


def sheets(
    folder: Path,
    *,
    today: datetime.date,
    choice: Choice,
    asked: Asked,
    memory: Memory = NOTHING,
) -> Sheets:
    """The papers of the force of a folder.

    Raises FileError and TypesettingError, and StoreError where a game was written down.
    """
    mind = Memory() if memory is NOTHING else memory  # several papers rest on one answer
    meant = game_meant(folder, today=today, choice=choice, asked=asked, memory=mind)
    doubts = (
        *_unknown(asked.only),
        *scale_findings(asked.layout.scale, is_made_good=asked.is_corrected),
    )
    read = meant.checked.with_findings(*doubts)
    if meant.count is None or stops(doubts):
        return Sheets(checked=read, sheets=None)
    counted, choice = meant.count, meant.choice
    ground = Ground(
        force=counted.force,
        made=counted.made,
        marks=marking_of(counted, memory=mind),
        date=today,
        layout=asked.layout if asked.is_corrected else replace(asked.layout, scale=TRUE),
        game=choice.game or "",
        plan=meant.plan,
        dummies=asked.dummies,
        strength=counted.strength,
        reserve=meant.reserve,
        revealed=asked.revealed,
        terms=meant.terms,
        arranged=meant.arranged,
    )
    desk = Desk(
        ground=ground,
        folder=folder,
        today=today,
        choice=choice,
        memory=mind,
        asked=asked,
        points=meant.points,
    )
    return _all(desk, read=read)


def _all(desk: Desk, *, read: Checked) -> Sheets:
    asked = desk.asked
    made: list[Sheet] = []
    doubts: list[Finding] = []
    ticks: list[Tick] = []
    for kind in EVERY_PAPER:
        if not _is_wanted(kind, desk):
            continue
        draft = kind.drafted(desk)
        doubts.extend(draft.findings)
        if draft.shown is None or stops(draft.findings):
            continue
        paper = _paper(kind, draft.shown, ground=desk.ground)
        set_ = _set(paper, asked=asked, memory=desk.memory)
        if set_ is None:
            doubts.append(too_long(kind.title, name=kind.name))
            continue
        sheet = Sheet(name=kind.name, title=kind.title, printed=set_)
        made.append(sheet)
        ticks.extend(draft.ticks)
        distance = max(asked.distance, kind.read_from)
        doubts.extend(_doubts(sheet, paper, asked=replace(asked, distance=distance)))
    return Sheets(checked=read.with_findings(*doubts), sheets=tuple(made), ticks=tuple(ticks))


def _is_wanted(kind: PaperKind, desk: Desk) -> bool:
    if desk.asked.only:
        return kind.name in desk.asked.only
    return not kind.is_of_a_game or bool(desk.ground.game or desk.ground.plan)


def _unknown(only: tuple[str, ...]) -> Iterator[Finding]:
    names = [kind.name for kind in EVERY_PAPER]
    for name in only:
        if name not in names:
            yield unknown_choice(name, names, what="paper")


def _paper(kind: PaperKind, shown: object, *, ground: Ground) -> Paper[object]:
    force = ground.force.title if kind.names_force else ""
    heading = Heading(title=kind.title, force=force, date=ground.date)
    return Paper(name=kind.name, heading=heading, layout=ground.layout, shown=shown)


def _set(paper: Paper[object], *, asked: Asked, memory: Memory) -> Printed | None:
    """The paper set, or as it was set when it said the same; None where it says too much."""
    told = told_text(paper)
    if asked.most_letters is not None and len(told) > asked.most_letters:
        return None
    digest = hashlib.sha256(told.encode()).digest()
    return memory.kept(
        ("paper set", paper.name, digest, asked.with_pictures),
        lambda: printed(paper, with_pictures=asked.with_pictures),
    )


def _doubts(sheet: Sheet, paper: Paper[object], *, asked: Asked) -> Iterator[Finding]:
    """What can only be said once a paper is set."""
    texts = unprintable((paper.heading, paper.shown))
    yield from letter_findings(texts, printable=printable())
    for used in sheet.printed.least_type:
        size = length_of_points(used.points)
        yield from type_findings(used.what, size, distance=asked.distance)
    if asked.loaded is not None:
        frames = frames_of(paper.shown)
        yield from loaded_findings(sheet.title, frames, layout=paper.layout, loaded=asked.loaded)
