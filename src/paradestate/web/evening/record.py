"""The roll record of a game and all its lines, each as it is shown."""

import datetime
from collections.abc import Iterator
from dataclasses import dataclass

from paradestate.core.game import Purchase
from paradestate.core.play.account import ALLOWANCE, Account
from paradestate.core.play.event import Committed, Rolled
from paradestate.core.play.game_record import Binding, GameRecord, Line, rolls
from paradestate.core.sentence.journal import SHORT
from paradestate.core.sentence.play import binding_words, clock_words, event_words, who_words
from paradestate.core.sentence.support import purchase_words
from paradestate.core.sentence.wording import capital, several
from paradestate.journeys.game.played_game import PlayedGame

MOST_LINES = 300
"""Lines that are shown; the journal has all."""
SECOND = "the first roll counts"


@dataclass(frozen=True, slots=True, kw_only=True)
class RollLine:
    """One roll: when, what the dice showed, what for, what came of it, who saw it."""

    time: str
    faces: tuple[int, ...]
    """Empty where only the total was said."""
    total: int
    what: str
    came: str
    who: str
    struck_because: str | None


@dataclass(frozen=True, slots=True, kw_only=True)
class RecordLine:
    """One line of the whole record."""

    id: str
    short: str
    time: str
    words: str
    who: str
    struck_because: str | None
    note: str


@dataclass(frozen=True, slots=True, kw_only=True)
class MachineRoll:
    """A roll of the machine with all that was told of it."""

    words: str
    digest: str
    word: str
    secret: str
    """Empty until it is told."""


def roll_lines(
    record: GameRecord, account: Account | None, *, zone: datetime.tzinfo | None
) -> tuple[RollLine, ...]:
    """Every roll in its order, those that were struck out among them."""
    return tuple(
        RollLine(
            time=clock_words(each.line.written, zone=zone),
            faces=each.rolled.faces,
            total=each.rolled.total,
            what=_what(each.rolled),
            came="" if account is None else _came(each.line, each.rolled, account=account),
            who=_who(each.line, each.rolled),
            struck_because=each.line.struck_because,
        )
        for each in rolls(record)
    )


def _what(roll: Rolled | Committed) -> str:
    if not roll.number:
        return capital(roll.purpose)
    asked = Purchase(entry=roll.purpose, number=roll.number, choice=roll.choice)
    return purchase_words(asked)


def _who(line: Line, rolled: Rolled) -> str:
    return "by the machine" if rolled.commitment else who_words(line)


def _came(line: Line, rolled: Rolled, *, account: Account) -> str:
    """What came of a roll that counts."""
    if not line.holds:
        return ""
    if line.id in account.second:
        return SECOND
    if rolled.purpose == ALLOWANCE and account.allowance is not None:
        return f"{several(account.allowance, 'point')} to spend"
    request = next((each for each in account.requests if each.roll == line.id), None)
    if request is None:
        return ""
    if not request.allowed:
        return "refused"
    taken = "" if request.taken is None else f", {request.taken or 'none'} taken"
    return f"{request.allowed} allowed{taken}"


def record_lines(
    record: GameRecord, account: Account | None, *, zone: datetime.tzinfo | None
) -> tuple[RecordLine, ...]:
    """The newest lines of a game, in their order."""
    second = frozenset[str]() if account is None else account.second
    return tuple(
        RecordLine(
            id=each.id,
            short=each.id[:SHORT],
            time=clock_words(each.written, zone=zone),
            words=capital(event_words(each.event)),
            who=who_words(each),
            struck_because=each.struck_because,
            note=SECOND if each.holds and each.id in second else "",
        )
        for each in record.lines[-MOST_LINES:]
    )


def machine_rolls(game: PlayedGame) -> Iterator[MachineRoll]:
    """Every roll of the machine in a game; a secret only where the journal tells it."""
    for each in game.bindings:
        bound = each.committed
        yield MachineRoll(
            words=f"{_what(bound)} ({bound.dice}): {_how_far(each, game)}.",
            digest=bound.digest,
            word=each.word or "",
            secret=each.secret or "",
        )


def _how_far(binding: Binding, game: PlayedGame) -> str:
    if not binding.line.holds:
        return f"struck out, {binding.line.struck_because}"
    return binding_words(binding, wrong=game.differences.get(binding.line.id))
