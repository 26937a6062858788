"""Which stands a game left to be repaired, and which of them nobody has put on the bench yet."""

from collections.abc import Collection, Mapping, Sequence

from paradestate.core.journal_entry import JournalEntry
from paradestate.core.play.arrangement import TO_REPAIR
from paradestate.core.play.game_record import GameRecord


def to_repair(
    record: GameRecord, entries: Sequence[JournalEntry], *, struck_out: Collection[str]
) -> Mapping[str, str]:
    """Stand to what is broken on it, as the board has it; without those that went back since.

    `entries` are all of the journal, oldest first, of which those `struck_out` don't count.
    """
    places = {entry.id: place for place, entry in enumerate(entries)}
    went_back = _went_back(entries, force=_force(record, entries), struck_out=struck_out)
    found = {}
    for subject, standing in record.board.items():
        told = [each for each in standing.tellings if each.told.value]
        if subject.aspect != TO_REPAIR or not told:
            continue
        newest = max(told, key=lambda each: places[each.id])
        if places[newest.id] > went_back.get(subject.name, -1):
            found[subject.name] = newest.told.value
    return found


def _force(record: GameRecord, entries: Sequence[JournalEntry]) -> str:
    return next(entry.force for entry in entries if entry.id == record.opening.id)


def _went_back(
    entries: Sequence[JournalEntry], *, force: str, struck_out: Collection[str]
) -> Mapping[str, int]:
    """Stand to the place of the last entry by which it went back to be repaired."""
    return {
        name: place
        for place, entry in enumerate(entries)
        if entry.wanted is not None and entry.force == force and entry.id not in struck_out
        for name in entry.stands or (entry.stand,)
    }
