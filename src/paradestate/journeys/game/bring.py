"""Brings home what carry files gave back, each entry once.

files -> entries and codes -> strikes last -> the journal -> what didn't arrive, and why
"""

import datetime
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path

from paradestate.core.finding import Finding, Level, in_reading_order, stops
from paradestate.core.journal_entry import EntryKind
from paradestate.core.place import Place
from paradestate.journeys.check import checked
from paradestate.journeys.game.table_entries import Answered, Receipt, take_entries
from paradestate.journeys.memory import NOTHING, Memory
from paradestate.text.given_back import (
    AskedForce,
    GivenBack,
    GivenEntry,
    lacking_codes,
    read_given_back,
)


@dataclass(frozen=True, slots=True, kw_only=True)
class GivenFile:
    """A file that a phone gave back, or what was pasted."""

    name: str
    data: bytes


@dataclass(frozen=True, slots=True, kw_only=True)
class Brought:
    """What arrived; `taken` is None where nothing can be written, as the stops say."""

    findings: tuple[Finding, ...]
    texts: Mapping[str, str]
    taken: int | None = None
    """Entries that are new."""
    there: int = 0
    """Entries that had come before."""

    @property
    def is_whole(self) -> bool:
        """Whether all that was given back is in the journal now."""
        doubts = [each for each in self.findings if each.level is not Level.REMARK]
        return self.taken is not None and not doubts


def bring(
    folder: Path, *, today: datetime.date, files: Sequence[GivenFile], memory: Memory = NOTHING
) -> Brought:
    """Writes what is new into the journal. Raises StoreError, and FileError.

    What came is safe on the disk when this returns, whatever else is missing.
    """
    known = checked(folder, today=today, memory=memory)
    if stops(known.findings):
        return Brought(findings=known.findings, texts=known.texts)
    force = AskedForce(name=folder.resolve().name, title=known.force.title)
    read = [read_given_back(each.data, file=each.name, force=force) for each in files]
    texts = {each.name: one.text for each, one in zip(files, read, strict=True)}
    entries = sorted(_entries(read), key=_is_strike)
    taken = take_entries(folder, today=today, sent=[each.said for each in entries], memory=memory)
    if taken.answers is None:
        return Brought(findings=taken.findings, texts=known.texts)
    pairs = list(zip(entries, taken.answers, strict=True))
    findings = (
        *(found for each in read for found in each.findings),
        *lacking_codes(code for each in read for code in each.codes),
        *_not_taken(pairs),
    )
    new = {each.id for _, each in pairs if each.receipt is Receipt.TAKEN}
    old = {each.id for _, each in pairs if each.receipt is Receipt.THERE}
    return Brought(
        findings=in_reading_order(findings),
        texts=texts,
        taken=len(new),
        there=len(old - new),
    )


def _entries(read: Sequence[GivenBack]) -> Iterator[GivenEntry]:
    for each in read:
        yield from each.entries


def _is_strike(entry: GivenEntry) -> bool:
    """Whether it strikes another one out, which then has to be there first."""
    says = entry.said.get("says")
    return isinstance(says, dict) and says.get("kind") == EntryKind.STRUCK_OUT.value


def _not_taken(pairs: Sequence[tuple[GivenEntry, Answered]]) -> Iterator[Finding]:
    for entry, answer in pairs:
        if answer.receipt is Receipt.REFUSED:
            yield _refused(answer.why, place=entry.place)
        elif answer.receipt is Receipt.WAITS:
            yield _waits(place=entry.place)


def _refused(why: str, *, place: Place) -> Finding:
    return Finding(
        level=Level.WARN,
        code="given-back-refused",
        message=f"An entry isn't taken. {why}",
        effect="It isn't in the journal; all else that came is.",
        hint="It stays on the phone and in this file. If it holds, write it down by hand.",
        place=place,
    )


def _waits(*, place: Place) -> Finding:
    return Finding(
        level=Level.WARN,
        code="given-back-waits",
        message="An entry strikes out another one that hasn't come.",
        effect="It isn't in the journal yet.",
        hint="Bring what is missing, and this once more: nothing comes in twice.",
        place=place,
    )
