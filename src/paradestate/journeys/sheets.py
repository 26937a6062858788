"""Papers to size: what is printed, cut out, stuck on and handed over.

folder -> counted -> drafted -> set -> written whole
"""

import datetime
import hashlib
from collections.abc import Iterator
from dataclasses import dataclass, replace
from pathlib import Path

from paradestate.core.choice import Choice, unknown_choice
from paradestate.core.finding import Finding, stops
from paradestate.core.force import Force
from paradestate.core.game import Purchase
from paradestate.core.imposition.imposition_finding import scale_findings
from paradestate.core.imposition.print_scale import TRUE
from paradestate.core.paper.ground import Ground
from paradestate.core.paper.paper import Heading, Paper
from paradestate.journeys.check import Checked
from paradestate.journeys.choosing import typed_finding
from paradestate.journeys.count import Count, count
from paradestate.journeys.every_paper import EVERY_PAPER
from paradestate.journeys.memory import NOTHING, Memory
from paradestate.journeys.paper_kind import Asked, Desk, PaperKind
from paradestate.journeys.spreadsheet import CannotWriteError
from paradestate.sheet.paper.typesetting import Printed, is_ours, printed
from paradestate.text.error import FileChangedError, FileError
from paradestate.text.slip import Slip
from paradestate.text.typed import read_purchases
from paradestate.text.whole_file import read_whole, write_changed, write_new


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


@dataclass(frozen=True, slots=True, kw_only=True)
class Written:
    """A paper in its file."""

    sheet: Sheet
    path: Path
    former: Path | None
    """Where the one is kept that it replaces."""


def sheets(
    folder: Path,
    *,
    today: datetime.date,
    choice: Choice,
    asked: Asked,
    memory: Memory = NOTHING,
) -> Sheets:
    """The papers of the force of a folder. Raises FileError and TypesettingError."""
    answer = count(folder, today=today, choice=choice, memory=memory)
    if answer.count is None:
        return Sheets(checked=answer.checked, sheets=None)
    plan, findings = _plan(answer.count.force, asked.plan, game=choice.game or "")
    doubts = (*findings, *_unknown(asked.only), *_layout_findings(asked))
    if stops(doubts):
        return Sheets(checked=answer.checked.with_findings(*doubts), sheets=None)
    ground = _ground(answer.count, asked, today=today, game=choice.game or "", plan=plan)
    desk = Desk(ground=ground, folder=folder, today=today, choice=choice, memory=memory)
    made: list[Sheet] = []
    for kind in EVERY_PAPER:
        if not asked.only or kind.name in asked.only:
            sheet, more = _sheet(kind, desk)
            doubts = (*doubts, *more)
            made.extend(sheet)
    return Sheets(checked=answer.checked.with_findings(*doubts), sheets=tuple(made))


def _ground(
    counted: Count, asked: Asked, *, today: datetime.date, game: str, plan: tuple[Purchase, ...]
) -> Ground:
    layout = asked.layout if asked.is_corrected else replace(asked.layout, scale=TRUE)
    return Ground(
        force=counted.force,
        made=counted.made,
        strength=counted.strength,
        date=today,
        layout=layout,
        game=game,
        plan=plan,
    )


def _plan(
    force: Force, text: str, *, game: str
) -> tuple[tuple[Purchase, ...], tuple[Finding, ...]]:
    """The plan that was typed, or else the game's own."""
    if not text:
        return (force.games[game].plan if game else ()), ()
    read = read_purchases(text, entries=force.supporting_troops)
    return ((), (typed_finding(read),)) if isinstance(read, Slip) else (read, ())


def _unknown(only: tuple[str, ...]) -> Iterator[Finding]:
    names = [kind.name for kind in EVERY_PAPER]
    for name in only:
        if name not in names:
            yield unknown_choice(name, names, what="paper")


def _layout_findings(asked: Asked) -> Iterator[Finding]:
    yield from scale_findings(asked.layout.scale, is_made_good=asked.is_corrected)


def _sheet(kind: PaperKind, desk: Desk) -> tuple[tuple[Sheet, ...], tuple[Finding, ...]]:
    """A paper, or none where there is nothing to print on it or a stop prevents it."""
    draft = kind.drafted(desk)
    if draft.shown is None or stops(draft.findings):
        return (), draft.findings
    ground = desk.ground
    paper: Paper[object] = Paper(
        name=kind.name,
        heading=Heading(
            title=kind.title,
            force=ground.force.title if kind.names_force else "",
            date=ground.date,
        ),
        layout=ground.layout,
        shown=draft.shown,
    )
    sheet = Sheet(name=kind.name, title=kind.title, printed=printed(paper))
    return (sheet,), draft.findings


def write_sheets(
    made: tuple[Sheet, ...], *, out: Path, at: datetime.datetime
) -> tuple[Written, ...]:
    """Writes the papers into a folder, which is made where it isn't there.

    A paper that was made here before is replaced and kept; no other file is touched. Raises
    CannotWriteError before anything is written, and FileError where the disk refuses.
    """
    paths = [(sheet, out / sheet.file_name) for sheet in made]
    for _, path in paths:
        if path.exists() and not is_ours(read_whole(path)):
            raise CannotWriteError(
                f"{path} is there already and isn't a paper of `sheets`; nothing is overwritten. "
                "Choose another folder."
            )
    try:
        out.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise FileError(f"{out}: {error.strerror}. Nothing was written.") from error
    return tuple(_written(sheet, path, at=at) for sheet, path in paths)


def _written(sheet: Sheet, path: Path, *, at: datetime.datetime) -> Written:
    data = sheet.printed.pdf
    former = None
    try:
        if not path.exists():
            write_new(path, data)
        elif (seen := read_whole(path)) != data:
            former = write_changed(path, data, seen=seen, at=at)
    except FileChangedError:
        raise CannotWriteError(
            f"{path} was written by another program meanwhile; nothing is overwritten."
        ) from None
    return Written(sheet=sheet, path=path, former=former)
