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
from paradestate.journeys.rewriting import Rewriting, put_back, said_anew
from paradestate.text.editing import Edit, Put, TakeOut
from paradestate.text.money import in_minor
from paradestate.text.slip import Slip

SECTION = "aim"


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
    meant = replace(read.force, aim=after)
    made = said_anew(
        folder,
        today=today,
        at=at,
        file=file,
        edits=_edits(read.force, after),
        is_meant=lambda force: replace(force, aim=force.aim or Aim()) == meant,
    )
    return _answer(made, before=read.force)


def put_aim_back(
    folder: Path, *, today: datetime.date, at: datetime.datetime, former: str
) -> AimingAnswer:
    """Puts the version of the file back that was kept last, if it has that name.

    Raises ChangedSinceError where another was kept last, or where the two differ in more than the
    aim, and FileError where the disk refuses.
    """
    read = checked(folder, today=today)
    beside = replace(read.force, aim=None)
    made = put_back(
        folder,
        today=today,
        at=at,
        former=former,
        is_meant=lambda force: replace(force, aim=None) == beside,
    )
    return _answer(made, before=read.force)


def _answer(made: Rewriting, *, before: Force) -> AimingAnswer:
    if made.written is None:
        return AimingAnswer(checked=made.trial, aimed=None)
    aimed = Aimed(
        file=made.written.file,
        former=made.written.former,
        before=before.aim or Aim(),
        after=made.trial.force.aim or Aim(),
        comments_gone=made.written.comments_gone,
    )
    return AimingAnswer(checked=made.trial, aimed=aimed)


def file_of(force: Force) -> Path | None:
    """The file that says the aim; where none does the one that says what is raised."""
    place = force.places.get((SECTION,)) or force.places.get(("raise",))
    return None if place is None else Path(place.file)


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
