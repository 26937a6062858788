"""What is raised, changed in the folder itself: a choice written down, or the former version back.

folder -> checked -> choice -> edits of its section -> counted as if written -> written whole
"""

import datetime
from collections.abc import Iterator
from dataclasses import dataclass, replace
from pathlib import Path

from paradestate.core.change import Change, changes
from paradestate.core.choice import Choice, chosen
from paradestate.core.establishment import Establishment, establishment
from paradestate.core.finding import stops
from paradestate.core.force import Force, Raise
from paradestate.journeys.check import Checked, checked
from paradestate.journeys.rewriting import UNCHANGED
from paradestate.text.codec import Plain
from paradestate.text.editing import Edit, Put, TakeOut, edited
from paradestate.text.error import EditError
from paradestate.text.former import Former, former_versions
from paradestate.text.spelling import tidy
from paradestate.text.whole_file import read_whole, write_changed

SECTION = "raise"
WORDS = ("formation", "date", "theatre", "numbers", "names", "wished", "by hand")
"""The words of the section, in the order in which they are told."""


class NothingKeptError(Exception):
    """No former version is kept that could be put back; says of what."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Decision:
    """One thing that the owner has decided anew."""

    what: tuple[str, ...]
    """Words of the section: `date`, or `numbers` and the part."""
    before: str
    """Empty: nothing was decided."""
    after: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Raised:
    """What was written, and what it changes."""

    file: Path
    former: Path
    """Where the version before is kept."""
    put_back: Former | None
    """The former version that was put back, where that was asked for."""
    decisions: tuple[Decision, ...]
    beside: bool
    """Whether the force differs in more than its decisions."""
    before: Establishment | None
    """None where it couldn't be counted."""
    after: Establishment
    changes: tuple[Change, ...]
    comments_gone: tuple[str, ...]
    """Comments that stood inside what was replaced."""


@dataclass(frozen=True, slots=True, kw_only=True)
class RaisingAnswer:
    """What was written; None where nothing was: `file` holds that already, or stops prevent it."""

    checked: Checked
    file: Path | None
    raised: Raised | None


def raise_anew(
    folder: Path, *, today: datetime.date, at: datetime.datetime, choice: Choice
) -> RaisingAnswer:
    """Writes the choice into the folder. Raises FileError and EditError, with nothing written."""
    choice = replace(choice, theatre=None if choice.theatre is None else tidy(choice.theatre))
    read = checked(folder, today=today)
    file = _file_of(read.force)
    if file is None or read.force.raise_ is None:
        return RaisingAnswer(checked=read, file=None, raised=None)
    picked, findings = chosen(read.force, choice)
    if findings:
        return RaisingAnswer(checked=read.with_findings(*findings), file=file, raised=None)
    seen = read_whole(file)
    try:
        new = edited(seen, tuple(_edits(read.force.raise_, choice, picked=picked)), file=str(file))
    except EditError:
        if not read.is_stopped:
            raise
        return RaisingAnswer(checked=read, file=file, raised=None)
    if new.data == seen:
        return RaisingAnswer(checked=read, file=file, raised=None)
    trial, made = _tried(folder, file=file, data=new.data, today=today)
    if made is None:
        return RaisingAnswer(checked=trial, file=file, raised=None)
    if trial.force != picked:
        raise EditError(f"{file}: it would say something else than was chosen. {UNCHANGED}")
    former = write_changed(file, new.data, seen=seen, at=at)
    raised = _told(read, trial.force, made=made, file=file, former=former)
    return RaisingAnswer(
        checked=trial, file=file, raised=replace(raised, comments_gone=new.comments_gone)
    )


def put_former_back(folder: Path, *, today: datetime.date, at: datetime.datetime) -> RaisingAnswer:
    """Puts the former version of the file that says what is raised back, and keeps the present one.

    Raises NothingKeptError, and FileError where the disk refuses.
    """
    read = checked(folder, today=today)
    file = _file_of(read.force) or _kept_last(folder)
    kept = former_versions(file) if file else ()
    if file is None or not kept:
        raise NothingKeptError(str(file or folder))
    former, seen = kept[0], read_whole(file)
    data = read_whole(former.path)
    trial, made = _tried(folder, file=file, data=data, today=today)
    if made is None:
        return RaisingAnswer(checked=trial, file=file, raised=None)
    replaced = write_changed(file, data, seen=seen, at=at)
    raised = _told(read, trial.force, made=made, file=file, former=replaced)
    return RaisingAnswer(checked=trial, file=file, raised=replace(raised, put_back=former))


def _file_of(force: Force) -> Path | None:
    """The file that says what is raised."""
    place = force.places.get((SECTION,))
    return None if place is None else Path(place.file)


def _kept_last(folder: Path) -> Path | None:
    """The file of which a version was kept last, where no file says what is raised."""
    kept = [
        (former_versions(file)[0].at, file)
        for file in sorted(folder.glob("*.yaml"))
        if former_versions(file)
    ]
    return max(kept)[1] if kept else None


def _tried(
    folder: Path, *, file: Path, data: bytes, today: datetime.date
) -> tuple[Checked, Establishment | None]:
    """The folder as if the file held that, and its establishment; None where a stop prevents it."""
    read = checked(folder, today=today, instead={str(file): data})
    if read.is_stopped:
        return read, None
    made, findings = establishment(read.force)
    trial = read.with_findings(*findings)
    return trial, None if stops(findings) else made


def _edits(before: Raise, choice: Choice, *, picked: Force) -> Iterator[Edit]:
    """The least edits of the section that make `before` what was picked."""
    raised = picked.raise_
    assert raised is not None  # noqa: S101 - it was there before the choice
    if choice.date is not None:
        yield Put(path=(SECTION, "date"), value=str(choice.date))
    if choice.theatre:
        yield Put(path=(SECTION, "theatre"), value=choice.theatre)
    elif choice.theatre is not None and before.theatre:
        yield TakeOut(path=(SECTION, "theatre"))
    if any(before.numbers.get(name) != number for name, number in choice.numbers.items()):
        numbers = {name: str(number) for name, number in raised.numbers.items()}
        yield Put(path=(SECTION, "numbers"), value=dict(numbers))
    if choice.wished is not None and choice.wished != before.wished:
        wished = choice.wished
        value: Plain = [*wished] if isinstance(wished, tuple) else str(wished)
        yield Put(path=(SECTION, "wished"), value=value)


def _told(read: Checked, after: Force, *, made: Establishment, file: Path, former: Path) -> Raised:
    before = read.force
    was = None if read.is_stopped else establishment(before)[0]
    return Raised(
        file=file,
        former=former,
        put_back=None,
        decisions=tuple(_decisions(before.raise_, after.raise_)),
        beside=replace(before, raise_=None) != replace(after, raise_=None),
        before=was,
        after=made,
        changes=() if was is None else changes(after, was, after=made),
        comments_gone=(),
    )


def _decisions(before: Raise | None, after: Raise | None) -> Iterator[Decision]:
    """What the two decide differently, in the order of the section."""
    old, new = _decided(before), _decided(after)
    both = sorted(dict.fromkeys((*old, *new)), key=lambda what: WORDS.index(what[0]))
    for what in both:
        if old.get(what, "") != new.get(what, ""):
            yield Decision(what=what, before=old.get(what, ""), after=new.get(what, ""))


def _decided(raised: Raise | None) -> dict[tuple[str, ...], str]:
    if raised is None:
        return {}
    wished = raised.wished
    found: dict[tuple[str, ...], str] = {
        ("formation",): raised.formation,
        ("date",): str(raised.date or ""),
        ("theatre",): raised.theatre,
        **{("numbers", name): str(number) for name, number in raised.numbers.items()},
        **{
            ("names", name): names if isinstance(names, str) else ", ".join(names)
            for name, names in raised.names.items()
        },
        ("wished",): ", ".join(wished) if isinstance(wished, tuple) else str(wished),
        ("by hand",): raised.by_hand,
    }
    return {what: text for what, text in found.items() if text}
