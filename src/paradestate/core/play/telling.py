"""What the journal tells of a game, as the board takes it."""

from collections.abc import Iterator, Sequence

from paradestate.core.journal import struck_out
from paradestate.core.journal_entry import EntryKind, JournalEntry
from paradestate.core.play.board import Telling
from paradestate.core.play.event import Told


def tellings(entries: Sequence[JournalEntry], *, game: str) -> Iterator[Telling]:
    """Everything that was told of how things stand in the game of this UUID.

    What was struck out is told too, as such: it has been seen by whoever replaced it.
    """
    void = struck_out(entries)
    for entry in of_game(entries, game=game):
        if entry.played is not None and isinstance(entry.played.event, Told):
            yield Telling(
                id=entry.id,
                told=entry.played.event,
                device=entry.played.device,
                is_struck=entry.id in void,
            )


def of_game(entries: Sequence[JournalEntry], *, game: str) -> tuple[JournalEntry, ...]:
    """What was written down of one game, with what strikes any of it out, in their order."""
    mine: set[str] = set()
    kept = []
    for entry in entries:
        is_strike = entry.kind is EntryKind.STRUCK_OUT and entry.struck_out in mine
        if is_strike or (entry.played is not None and entry.played.game == game):
            mine.add(entry.id)
            kept.append(entry)
    return tuple(kept)
