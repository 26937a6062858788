"""A game as it was written down: each line in the order of the journal, struck out or not."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import date, datetime
from typing import NamedTuple

from paradestate.core.dice import Dice
from paradestate.core.journal import strikes
from paradestate.core.journal_entry import EntryKind, JournalEntry
from paradestate.core.play.board import Standing, Telling, board
from paradestate.core.play.event import (
    Committed,
    Ended,
    Event,
    Noted,
    Opened,
    Revealed,
    Rolled,
    Spoken,
    Subject,
    Told,
)
from paradestate.core.play.machine_roll import MachineRoll, differences


@dataclass(frozen=True, slots=True, kw_only=True)
class Line:
    """One thing that was written down of a game."""

    id: str
    """UUID of its entry."""
    on: date
    """The day of the evening, by whoever wrote it."""
    written: datetime
    event: Event
    device: str = ""
    counter: int = 0
    struck_because: str | None = None
    """Why it was struck out; None: it holds."""

    @property
    def holds(self) -> bool:
        """Whether it isn't struck out."""
        return self.struck_because is None


@dataclass(frozen=True, slots=True, kw_only=True)
class GameRecord:
    """All lines of one game."""

    id: str
    """UUID of the game."""
    opening: Line
    lines: tuple[Line, ...]
    """In the order of the journal, the opening among them."""

    @property
    def terms(self) -> Opened:
        """The terms that both sides have agreed to."""
        assert isinstance(self.opening.event, Opened)  # noqa: S101 - what makes it a game
        return self.opening.event

    @property
    def ended(self) -> Ended | None:
        """How it ended; None while it goes on."""
        ends = [each.event for each in self.lines if each.holds and isinstance(each.event, Ended)]
        return ends[-1] if ends else None

    @property
    def board(self) -> Mapping[Subject, Standing]:
        """How things stand, by all that was told."""
        return board(
            Telling(id=each.id, told=each.event, device=each.device, is_struck=not each.holds)
            for each in self.lines
            if isinstance(each.event, Told)
        )

    @property
    def notes(self) -> tuple[Noted, ...]:
        """What was noted of it and holds, in the order of the journal."""
        return tuple(
            each.event for each in self.lines if each.holds and isinstance(each.event, Noted)
        )

    def next_counter(self, device: str) -> int:
        """The number of a device's next event."""
        return 1 + max((each.counter for each in self.lines if each.device == device), default=0)


def game_records(entries: Sequence[JournalEntry], *, force: str) -> tuple[GameRecord, ...]:
    """Every game of a force whose opening isn't struck out, in the order in which they opened."""
    struck = strikes(entries)
    by_game: dict[str, list[Line]] = {}
    for entry in entries:
        if entry.played is None or entry.force != force:
            continue
        because = struck[entry.id].note if entry.id in struck else None
        line = Line(
            id=entry.id,
            on=entry.on,
            written=entry.written,
            event=entry.played.event,
            device=entry.played.device,
            counter=entry.played.counter,
            struck_because=because,
        )
        by_game.setdefault(entry.played.game, []).append(line)
    return tuple(_opened(by_game))


def _opened(by_game: Mapping[str, Sequence[Line]]) -> Iterator[GameRecord]:
    for game, lines in by_game.items():
        openings = (each for each in lines if each.holds and isinstance(each.event, Opened))
        opening = next(openings, None)
        if opening is not None:
            yield GameRecord(id=game, opening=opening, lines=tuple(lines))


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


class HeldRoll(NamedTuple):
    """A roll with its line."""

    line: Line
    rolled: Rolled


def rolls(record: GameRecord) -> tuple[HeldRoll, ...]:
    """All rolls of a game, those that were struck out among them."""
    return tuple(
        HeldRoll(each, each.event) for each in record.lines if isinstance(each.event, Rolled)
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class Binding:
    """One roll of the machine, as far as it has come."""

    line: Line
    committed: Committed
    word: str | None = None
    """None: not said yet."""
    rolled: Line | None = None
    secret: str | None = None
    """None: not told yet."""
    is_in_order: bool = True
    """Whether each step was written after the one before."""

    @property
    def is_waiting(self) -> bool:
        """Whether it holds and its secret isn't told yet."""
        return self.line.holds and self.secret is None

    @property
    def is_to_be_rolled(self) -> bool:
        """Whether it holds and its roll isn't made yet."""
        return self.is_waiting and self.rolled is None

    @property
    def is_to_be_told(self) -> bool:
        """Whether its roll is made and its secret isn't told yet."""
        return self.is_waiting and self.rolled is not None


def bindings(record: GameRecord) -> tuple[Binding, ...]:
    """All rolls of the machine in a game, in the order in which it bound itself."""
    bound = (each for each in record.lines if isinstance(each.event, Committed))
    return tuple(_binding(record, each) for each in bound)


def _binding(record: GameRecord, line: Line) -> Binding:
    assert isinstance(line.event, Committed)  # noqa: S101 - whoever calls has looked
    word, rolled, secret = None, None, None
    after: list[int] = []
    for place, each in enumerate(record.lines):
        match each.event:
            case Spoken(commitment=line.id) if each.holds and word is None:
                word = each.event.word
            case Rolled(commitment=line.id) if rolled is None:
                rolled = each
            case Revealed(commitment=line.id) if each.holds and secret is None:
                secret = each.event.secret
            case _:
                continue
        after.append(place)
    steps = [Spoken, Rolled, Revealed]
    sorts = [steps.index(type(record.lines[place].event)) for place in after]
    begun = next(place for place, each in enumerate(record.lines) if each is line)
    return Binding(
        line=line,
        committed=line.event,
        word=word,
        rolled=rolled,
        secret=secret,
        is_in_order=sorts == sorted(sorts) and all(place > begun for place in after),
    )


def disagreements(binding: Binding, *, dice: Dice) -> Iterator[str]:
    """What of a roll whose secret is told isn't as it should be, in words; nothing where all is.

    `dice` are those that it was bound to.
    """
    rolled = binding.rolled.event if binding.rolled is not None else None
    if binding.word is None or binding.secret is None or not isinstance(rolled, Rolled):
        return
    bound = binding.committed
    if not binding.is_in_order:
        yield "it wasn't bound, spoken, rolled and told in this order"
    if (rolled.purpose, rolled.dice, rolled.number, rolled.choice) != (
        bound.purpose,
        bound.dice,
        bound.number,
        bound.choice,
    ):
        yield f"it was bound for {bound.purpose} and rolled for {rolled.purpose}"
    yield from differences(
        MachineRoll(
            digest=bound.digest,
            word=binding.word,
            secret=binding.secret,
            dice=dice,
            faces=rolled.faces,
        )
    )
