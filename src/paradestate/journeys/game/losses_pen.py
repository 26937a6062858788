"""Who writes down what came of those who were out of action, and the ids of what a form says.

Each line has an id made from that of its form, so that a form that is sent twice is written once.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from uuid import UUID, uuid5

from paradestate.core.finding import Finding, stops
from paradestate.core.journal_entry import JournalEntry
from paradestate.core.play.board import NOTHING_TOLD
from paradestate.core.play.event import Event, Subject, Told
from paradestate.core.play.game_record import GameRecord
from paradestate.core.play.game_record import Line as Written
from paradestate.journeys.game.losses import AfterGame, losses
from paradestate.journeys.game.pen import Line, Pen, next_lines, write_lines


@dataclass(frozen=True, slots=True, kw_only=True)
class Teller(Pen):
    """A pen for losses: where no game is named, the newest is meant whether it is over or not."""

    next_game: str = ""
    form: str = ""
    """UUID of the form that is written down; empty: what is said is said for the first time."""

    def form_id(self) -> str:
        """That of the form, or a new one."""
        return self.form or self.new_id()


@dataclass(frozen=True, slots=True, kw_only=True)
class LossesTold:
    """What was written, or nothing with the stops in the way; and the losses as they are then."""

    findings: tuple[Finding, ...]
    after: AfterGame
    entries: tuple[JournalEntry, ...] = ()
    was_there: bool = False
    """Whether all of it had been written before; then nothing was added."""

    @property
    def is_done(self) -> bool:
        """Whether it stands in the journal."""
        return not stops(self.findings) and (bool(self.entries) or self.was_there)


@dataclass(frozen=True, slots=True, kw_only=True)
class NewLine:
    """An event that is to be written, with the id that its form gives it."""

    id: str
    event: Event
    record: GameRecord
    """The game that it belongs to."""


def line_id(form: str, *words: str) -> str:
    """The id of one line of a form (RFC 9562, version 5, in the name space of the form's id)."""
    return str(uuid5(UUID(form), "\n".join(words)))


def lines_by_id(after: AfterGame) -> Mapping[str, Written]:
    """Every line of every game."""
    return {line.id: line for record in after.games for line in record.lines}


def telling(record: GameRecord, subject: Subject, *, value: str) -> Told:
    """What is told, in place of all that was told of the same before."""
    over = record.board.get(subject, NOTHING_TOLD).over
    return Told(subject=subject, value=str(value), over=over)


def losses_now(teller: Teller) -> AfterGame:
    """The losses as they are. Raises StoreError, and FileError."""
    return losses(
        teller.folder,
        today=teller.today,
        next_game=teller.next_game,
        of=teller.of,
        memory=teller.memory,
    )


def written(teller: Teller, record: GameRecord, *, new: Sequence[NewLine]) -> LossesTold:
    """Writes one line after the other until one can't be, and says what the losses are then."""
    done = write_lines(teller, _lines(teller, new))
    after = losses_now(replace(teller, of=record.id))
    return LossesTold(
        findings=stops(done.findings), after=after, entries=done.entries, was_there=not new
    )


def _lines(teller: Teller, new: Sequence[NewLine]) -> Iterator[Line]:
    """The lines with their ids, those of each game numbered on."""
    for record in {each.record.id: each.record for each in new}.values():
        own = [each for each in new if each.record is record]
        lines = next_lines(teller, record, events=[each.event for each in own])
        for line, each in zip(lines, own, strict=True):
            yield replace(line, id=each.id)
