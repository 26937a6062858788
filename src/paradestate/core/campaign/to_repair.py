"""Which stands a game left to be repaired, and which of them went back to the bench since."""

from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass

from paradestate.core.journal_entry import JournalEntry
from paradestate.core.play.arrangement import TO_REPAIR
from paradestate.core.play.game_record import GameRecord


@dataclass(frozen=True, slots=True, kw_only=True)
class Repairs:
    """What a game left to be repaired."""

    waiting: Mapping[str, str]
    """Stand that nobody has put on the bench yet to what is broken on it."""
    went_back: Mapping[str, JournalEntry]
    """Stand to the entry by which it went back since it was told, the last of them."""


def to_repair(
    record: GameRecord, entries: Sequence[JournalEntry], *, struck_out: Collection[str]
) -> Repairs:
    """Stand to what is broken on it, as the board has it, and whether it went back since.

    `entries` are all of the journal, oldest first, of which those `struck_out` don't count.
    """
    places = {entry.id: place for place, entry in enumerate(entries)}
    last = _last_back(entries, force=_force(record, entries), struck_out=struck_out)
    waiting: dict[str, str] = {}
    went_back: dict[str, JournalEntry] = {}
    for subject, standing in record.board.items():
        told = [each for each in standing.tellings if each.told.value]
        if subject.aspect != TO_REPAIR or not told:
            continue
        back = last.get(subject.name)
        since = -1 if back is None else places[back.id]
        new = sorted((each for each in told if places[each.id] > since), key=lambda e: places[e.id])
        if new:  # what two tell differently may both be broken
            waiting[subject.name] = "; ".join(dict.fromkeys(each.told.value for each in new))
        else:
            went_back[subject.name] = last[subject.name]
    return Repairs(waiting=waiting, went_back=went_back)


def _force(record: GameRecord, entries: Sequence[JournalEntry]) -> str:
    return next(entry.force for entry in entries if entry.id == record.opening.id)


def _last_back(
    entries: Sequence[JournalEntry], *, force: str, struck_out: Collection[str]
) -> Mapping[str, JournalEntry]:
    """Stand to the last entry by which it went back to be repaired."""
    return {
        name: entry
        for entry in entries
        if entry.wanted is not None and entry.force == force and entry.id not in struck_out
        for name in entry.stands or (entry.stand,)
    }
