"""What the force is raised by, changed in the folder itself: the deadline and the money a month.

folder -> checked -> edits of its section -> read as if written -> written whole

The version before is kept, and can be put back for as long as nothing else was written since.
"""

import datetime
from collections.abc import Iterator
from dataclasses import dataclass, replace
from fractions import Fraction
from pathlib import Path

from paradestate.core.finding import Finding
from paradestate.core.force import Aim, Force
from paradestate.core.money import Currency, decimal_places
from paradestate.core.outline import decimal_text
from paradestate.core.source import force_currency
from paradestate.core.span import DateSpan
from paradestate.journeys.check import Checked, checked
from paradestate.journeys.choosing import typed_finding
from paradestate.text.editing import Edit, Put, TakeOut, edited
from paradestate.text.error import EditError
from paradestate.text.former import Former, former_versions
from paradestate.text.money import in_minor
from paradestate.text.slip import Slip
from paradestate.text.whole_file import read_whole, write_changed

SECTION = "aim"
UNCHANGED = "Nothing was written: change it in an editor."


class ChangedSinceError(Exception):
    """The version that is to be put back isn't the one from before the last change."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Aimed:
    """What was written."""

    file: Path
    former: Path
    """Where the version before is kept."""
    before: Aim
    after: Aim
    comments_gone: tuple[str, ...]
    """Comments that stood inside what was replaced."""


@dataclass(frozen=True, slots=True, kw_only=True)
class AimingAnswer:
    """What was written; None where nothing was: it says that already, or stops prevent it."""

    checked: Checked
    aimed: Aimed | None


def aim_anew(
    folder: Path,
    *,
    today: datetime.date,
    at: datetime.datetime,
    deadline: DateSpan | None,
    a_month: Fraction | None,
) -> AimingAnswer:
    """Writes the deadline and the money a month; None takes what is written out.

    Money is in units of the force's currency. Raises FileError and EditError, with nothing written.
    """
    read = checked(folder, today=today)
    if read.is_stopped:
        return AimingAnswer(checked=read, aimed=None)
    slips = tuple(_slips(read.force, a_month))
    if slips:
        return AimingAnswer(checked=read.with_findings(*slips), aimed=None)
    before = read.force.aim or Aim()
    after = replace(before, deadline=deadline, a_month=a_month)
    file = file_of(read.force)
    if after == before or file is None:
        return AimingAnswer(checked=read, aimed=None)
    seen = read_whole(file)
    new = edited(seen, tuple(_edits(read.force, after)), file=str(file))
    trial = checked(folder, today=today, instead={str(file): new.data})
    if trial.is_stopped:
        return AimingAnswer(checked=trial, aimed=None)
    if replace(trial.force, aim=trial.force.aim or Aim()) != replace(read.force, aim=after):
        raise EditError(f"{file}: it would say something else than was chosen. {UNCHANGED}")
    former = write_changed(file, new.data, seen=seen, at=at)
    aimed = Aimed(
        file=file, former=former, before=before, after=after, comments_gone=new.comments_gone
    )
    return AimingAnswer(checked=trial, aimed=aimed)


def put_aim_back(
    folder: Path, *, today: datetime.date, at: datetime.datetime, former: str
) -> AimingAnswer:
    """Puts the version of the file back that was kept last, if it has that name.

    Raises ChangedSinceError where another was kept last, or where the two differ in more than the
    aim, and FileError where the disk refuses.
    """
    read = checked(folder, today=today)
    file, kept = last_kept(folder, former)
    seen, data = read_whole(file), read_whole(kept.path)
    trial = checked(folder, today=today, instead={str(file): data})
    if trial.is_stopped:
        return AimingAnswer(checked=trial, aimed=None)
    if replace(trial.force, aim=None) != replace(read.force, aim=None):
        raise ChangedSinceError(former)
    replaced = write_changed(file, data, seen=seen, at=at)
    aimed = Aimed(
        file=file,
        former=replaced,
        before=read.force.aim or Aim(),
        after=trial.force.aim or Aim(),
        comments_gone=(),
    )
    return AimingAnswer(checked=trial, aimed=aimed)


def file_of(force: Force) -> Path | None:
    """The file that says the aim; where none does the one that says what is raised."""
    place = force.places.get((SECTION,)) or force.places.get(("raise",))
    return None if place is None else Path(place.file)


def last_kept(folder: Path, name: str) -> tuple[Path, Former]:
    """The file of a folder of which the version of that name was kept last, and that version.

    Raises ChangedSinceError where there is none.
    """
    for file in sorted(folder.glob("*.yaml")):
        kept = former_versions(file)
        if kept and kept[0].path.name == name:
            return file, kept[0]
    raise ChangedSinceError(name)


def _slips(force: Force, a_month: Fraction | None) -> Iterator[Finding]:
    """A stop for money that isn't whole in the smallest coin, or is nothing at all."""
    if a_month is None:
        return
    currency = force_currency(force.sources) or Currency("GBP")
    minor = in_minor(a_month, places=decimal_places(currency))
    if isinstance(minor, Slip):
        yield typed_finding(minor)
    elif minor <= 0:
        slip = Slip(
            code="not-above-nought",
            message=f"{decimal_text(a_month)} a month puts nothing aside.",
            hint="Give an amount above nought, or leave the field empty.",
        )
        yield typed_finding(slip)


def _edits(force: Force, after: Aim) -> Iterator[Edit]:
    """The least edits that make the section say that, without one that is empty."""
    before = force.aim or Aim()
    if after == Aim():
        yield TakeOut(path=(SECTION,))
        return
    values = {
        "deadline": (before.deadline, after.deadline and str(after.deadline)),
        "a month": (before.a_month, after.a_month and decimal_text(after.a_month)),
    }
    for word, (was, value) in values.items():
        if value:
            yield Put(path=(SECTION, word), value=value)
        elif was is not None:
            yield TakeOut(path=(SECTION, word))
