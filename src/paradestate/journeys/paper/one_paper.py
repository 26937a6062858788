"""One paper at a time, with what is doubtful in it alone, and what of it may be handed over."""

import datetime
from dataclasses import InitVar, dataclass, field, replace
from pathlib import Path

from paradestate.core.choice import Choice
from paradestate.core.finding import Finding
from paradestate.core.sentence.cross_check import Tick
from paradestate.journeys.check import checked
from paradestate.journeys.memory import NOTHING, Memory
from paradestate.journeys.paper.paper_kind import Asked, PaperKind
from paradestate.journeys.paper.sheets import Sheet, sheets
from paradestate.sheet.paper.error import TypesettingError


@dataclass(frozen=True, slots=True, kw_only=True)
class OnePaper:
    """A paper as it was set, or why it wasn't."""

    kind: PaperKind
    sheet: Sheet | None
    """None where there is nothing to print, or something prevents it."""
    findings: tuple[Finding, ...] = ()
    """About this paper; what the files say wrong is told with them."""
    ticks: tuple[Tick, ...] = ()
    failure: str = ""
    """Why it couldn't be set."""


def one_paper(
    kind: PaperKind,
    folder: Path,
    *,
    today: datetime.date,
    choice: Choice,
    asked: Asked,
    memory: Memory = NOTHING,
) -> OnePaper:
    """One paper of the force of a folder. Raises FileError."""
    read = checked(folder, today=today, memory=memory)
    try:
        answer = sheets(
            folder,
            today=today,
            choice=choice,
            asked=replace(asked, only=(kind.name,)),
            memory=memory,
        )
    except TypesettingError as error:
        return OnePaper(kind=kind, sheet=None, failure=str(error))
    of_files = set(read.findings)
    return OnePaper(
        kind=kind,
        sheet=next(iter(answer.sheets or ()), None),
        findings=tuple(each for each in answer.checked.findings if each not in of_files),
        ticks=answer.ticks,
    )


class PrivateError(ValueError):
    """A private paper was about to be handed over."""


@dataclass(frozen=True, slots=True, kw_only=True)
class HandedOver:
    """A paper for others' eyes: all there is of it, and nothing of the force that it is of.

    Raises PrivateError of a paper that is private.
    """

    of: InitVar[OnePaper]
    title: str = field(init=False)
    file_name: str = field(init=False)
    digest: str = field(init=False)
    pdf: bytes = field(init=False)
    pictures: tuple[bytes, ...] = field(init=False)

    def __post_init__(self, of: OnePaper) -> None:
        """Takes what is printed."""
        if of.sheet is None or not of.kind.may_be_handed_over:
            raise PrivateError("This paper isn't to be handed over.")
        taken = {
            "title": of.kind.title,
            "file_name": of.sheet.file_name,
            "digest": of.sheet.sha256,
            "pdf": of.sheet.printed.pdf,
            "pictures": of.sheet.printed.pictures,
        }
        for name, value in taken.items():
            object.__setattr__(self, name, value)
