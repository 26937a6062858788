"""Entries that phones wrote at the table, and what they lack of the others'.

Each entry bears the UUID that its phone gave it, so that it is taken once however often it comes.
batch -> each read and weighed -> those that are new, in one transaction -> an answer to each
"""

import datetime
import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from enum import StrEnum
from pathlib import Path
from typing import Any

from paradestate.core.finding import Finding
from paradestate.core.journal import struck_out
from paradestate.core.journal_entry import EntryKind, JournalEntry
from paradestate.core.journal_text import (
    UnknownEntryError,
    as_text,
    entry_record,
    entry_text,
    read_entry,
)
from paradestate.core.play.event import Ended, Noted, Opened, Played, Told
from paradestate.core.play.game_record import of_game
from paradestate.journeys.holdings import HeldCollection, holdings, start_of
from paradestate.journeys.journal import JournalReading, every_entry, read_journal, write
from paradestate.journeys.memory import NOTHING, Memory
from paradestate.store.journal import UUID, Journal
from paradestate.store.opening import opened

MOST_AT_ONCE = 500
"""Entries of one batch."""
LONGEST = 8_000
"""Bytes of the text of one entry."""
NULL = "\\u0000"
"""As JSON writes it; some databases take none."""
GREATEST = 10**9
"""Number of an entry, of a turn or of a part: from it the next one is reckoned."""
MOST_GAMES = 20
"""Games that are named, the latest first."""


class Receipt(StrEnum):
    """What became of an entry that was sent."""

    TAKEN = "taken"
    THERE = "there"
    """It had come before; nothing was added."""
    WAITS = "waits"
    """It strikes out an entry that hasn't come yet: to be sent again."""
    REFUSED = "refused"


@dataclass(frozen=True, slots=True, kw_only=True)
class Answered:
    """The answer to one entry."""

    id: str
    receipt: Receipt
    why: str = ""
    """Why it was refused, or waits."""


@dataclass(frozen=True, slots=True, kw_only=True)
class TakenEntries:
    """An answer to each entry in the order of the batch, or the stops that prevent any."""

    findings: tuple[Finding, ...]
    answers: tuple[Answered, ...] | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class KnownGame:
    """A game of which the journal knows."""

    game: str
    """Its UUID."""
    name: str
    """Of the kind of game; empty where its terms haven't come yet."""
    on: datetime.date
    is_ended: bool
    by: str = ""
    """The device that opened it; two games of one name are told apart by it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Lacking:
    """What a phone lacks of a game, or of all that are open; or the stops that prevent it."""

    findings: tuple[Finding, ...]
    """Warnings too: of lines of the journal that aren't as they were written."""
    games: tuple[KnownGame, ...] = ()
    entries: tuple[JournalEntry, ...] = ()
    cursor: str = ""
    """To be said at the next time; a journal that was put back from an archive begins anew."""


def take_entries(
    folder: Path,
    *,
    today: datetime.date,
    sent: Sequence[object],
    memory: Memory = NOTHING,
) -> TakenEntries:
    """Writes what is new of a batch into the journal. Raises StoreError, and FileError.

    All of what is taken is on the disk when this returns; where it raises nothing is.
    """
    known = holdings(folder, today=today, memory=memory)
    if known.state is None:
        return TakenEntries(findings=known.findings)
    force = known.collection.force_of(folder) or ""
    read = [_read(each, force=force) for each in sent]
    with opened(known.collection.address, writing=True) as journal:
        reading = _reading(journal, known, memory=memory)
        answers = tuple(
            each if isinstance(each, Answered) else _taken(journal, reading, entry=each)
            for each in read
        )
    return TakenEntries(findings=(), answers=answers)


def lacking(
    folder: Path,
    *,
    today: datetime.date,
    game: str | None,
    after: str,
    memory: Memory = NOTHING,
) -> Lacking:
    """What was written of a game since a phone last asked; None: of each that is open, in turn.

    Raises StoreError, and FileError.
    """
    known = holdings(folder, today=today, memory=memory)
    if known.state is None:
        return Lacking(findings=known.findings)
    force = known.collection.force_of(folder) or ""
    with opened(known.collection.address, writing=False) as journal:
        reading = _reading(journal, known, memory=memory)
        entries = every_entry(journal, reading)
        seen, head = _seen(journal, after), journal.head()
    new = {each.id for each in entries[seen:]}
    mine = [each for each in entries if each.force == force]
    games = tuple(_games(mine))[-MOST_GAMES:]
    asked = [each.game for each in games if not each.is_ended] if game is None else [game]
    written = (each for name in asked for each in of_game(mine, game=name))
    return Lacking(
        findings=reading.findings if reading.is_altered else (),
        games=games,
        entries=tuple(each for each in written if each.id in new),
        cursor=f"{head.number}:{head.digest}",
    )


def sent_record(entry: JournalEntry) -> dict[str, Any]:
    """An entry as phones send it and get it: its id, and what it says."""
    return {"id": entry.id, "says": entry_record(replace(entry, force=""))}


def known_record(known: KnownGame) -> dict[str, Any]:
    """A game as phones get it."""
    return {
        "game": known.game,
        "name": known.name,
        "on": known.on.isoformat(),
        "ended": known.is_ended,
        "by": known.by,
    }


def _reading(journal: Journal, known: HeldCollection, *, memory: Memory) -> JournalReading:
    file = str(known.collection.address)
    return read_journal(journal, start=start_of(known.forces), file=file, memory=memory)


def _seen(journal: Journal, after: str) -> int:
    """Lines that a phone has had; none where this journal isn't the one it had them of."""
    number, _, digest = after.partition(":")
    if not re.fullmatch(r"[1-9][0-9]{0,8}", number):
        return 0
    link = next(journal.links(after=int(number) - 1), None)
    return int(number) if link is not None and link.digest == digest else 0


def _games(entries: Sequence[JournalEntry]) -> Iterator[KnownGame]:
    """The games of which anything is known, the earliest first."""
    found: dict[str, KnownGame] = {}
    void = struck_out(entries)
    for entry in entries:
        if entry.played is None or entry.id in void:
            continue
        event, game = entry.played.event, entry.played.game
        known = found.get(game, KnownGame(game=game, name="", on=entry.on, is_ended=False))
        if isinstance(event, Opened):
            known = replace(known, name=event.game, on=entry.on, by=entry.played.device)
        found[game] = replace(known, is_ended=known.is_ended or isinstance(event, Ended))
    yield from found.values()


def _read(sent: object, *, force: str) -> JournalEntry | Answered:
    """The entry that was sent, or why it is none that a phone may write."""
    if not isinstance(sent, dict) or not isinstance(sent.get("says"), dict):
        return Answered(id="", receipt=Receipt.REFUSED, why="This is no entry.")
    id_ = sent.get("id")
    if not isinstance(id_, str) or not UUID.fullmatch(id_):
        return Answered(id="", receipt=Receipt.REFUSED, why="An entry bears a UUID.")
    try:
        text = as_text(sent["says"])
        size = len(text.encode())  # refuses what isn't Unicode
        entry = replace(read_entry(text, id=id_), force=force)
        written = entry.written.astimezone(datetime.UTC).replace(microsecond=0)
        entry = replace(entry, written=written)
        read_entry(entry_text(entry), id=id_)  # what can't be read again would stop the journal
    except (UnknownEntryError, OverflowError, UnicodeError) as error:
        why = f"What it says isn't understood: {error}."[:MOST_WHY]
        return Answered(id=id_, receipt=Receipt.REFUSED, why=why)
    if size > LONGEST or NULL in text or not _may_be_written(entry):
        return Answered(id=id_, receipt=Receipt.REFUSED, why=NOT_FOR_PHONES)
    return entry


def _may_be_written(entry: JournalEntry) -> bool:
    """Whether it tells of a game or strikes something out, and does nothing else at all."""
    alone = JournalEntry(
        id=entry.id,
        kind=entry.kind,
        written=entry.written,
        on=entry.on,
        force=entry.force,
        played=entry.played,
        note=entry.note,
        struck_out=entry.struck_out,
    )
    match entry.kind:
        case EntryKind.PLAYED:
            is_one = entry.played is not None and _is_of_the_table(entry.played)
            return is_one and not entry.struck_out and entry == alone
        case EntryKind.STRUCK_OUT:
            return bool(entry.struck_out) and entry.played is None and entry == alone
        case _:
            return False


def _is_of_the_table(played: Played) -> bool:
    """Whether it is one of a game's events that a phone may tell, with numbers that can go on."""
    event, numbers = played.event, [played.counter]
    if isinstance(event, Told):
        numbers.append(event.turn or 0)
    if isinstance(event, Opened):
        numbers.extend(event.numbers.values())
    return (
        isinstance(event, FROM_THE_TABLE)
        and UUID.fullmatch(played.game) is not None
        and max(numbers) <= GREATEST
    )


def _taken(journal: Journal, reading: JournalReading, *, entry: JournalEntry) -> Answered:
    """Writes an entry that is new; none of a game changes what is held."""
    there = journal.link(entry.id)
    if there is not None:
        is_same = read_entry(there.text, id=there.id) == entry
        why = "" if is_same else "Another entry bears the same UUID."
        receipt = Receipt.THERE if is_same else Receipt.REFUSED
        return Answered(id=entry.id, receipt=receipt, why=why)
    if entry.kind is EntryKind.STRUCK_OUT:
        struck = journal.link(entry.struck_out)
        if struck is None:
            return Answered(id=entry.id, receipt=Receipt.WAITS, why=NOT_YET)
        one = read_entry(struck.text, id=struck.id)
        if one.kind is not EntryKind.PLAYED or one.force != entry.force:
            return Answered(id=entry.id, receipt=Receipt.REFUSED, why=OTHERS)
    write(journal, reading, entry=entry, state=reading.state)
    return Answered(id=entry.id, receipt=Receipt.TAKEN)


FROM_THE_TABLE = (Opened, Told, Noted, Ended)
"""What a phone may tell; rolls and what was asked for are the record's own."""

MOST_WHY = 200

NOT_FOR_PHONES = "From the table come the terms of a game, how things stand, notes, and its end."
NOT_YET = "The entry that it strikes out hasn't come yet."
OTHERS = "From the table only what was written down of this force's games is struck out."
