"""What is doubtful about how a game was opened, and about the clocks by which it was written.

No clock decides anything: lines count whatever they are dated, and in whatever order they came.
"""

from collections.abc import Iterable, Iterator
from datetime import datetime, timedelta, tzinfo

from paradestate.core.choice import CHOSEN_HERE
from paradestate.core.finding import Finding, Level
from paradestate.core.play.event import Opened
from paradestate.core.play.game_record import GameRecord, Line
from paradestate.core.sentence.journal import SHORT
from paradestate.core.sentence.play import clock_words, event_words
from paradestate.core.sentence.wording import capital, clipped, listed, on_one_line, several

SKEW = timedelta(minutes=3)
"""Clocks are taken to agree where they differ by less."""

LONGEST = 60
"""Letters of a device or of terms that are shown."""

MOST_NAMED = 5
"""Openings and devices that are named."""


def opening_findings(
    record: GameRecord, games: Iterable[GameRecord], *, zone: tzinfo | None = None
) -> Iterator[Finding]:
    """Whether a game was opened more than once, or another that is open may be the same."""
    openings = [each for each in record.lines if each.holds and isinstance(each.event, Opened)]
    if len(openings) > 1:
        yield _opened_twice(openings, zone=zone)
    if record.ended is None:
        alike = [
            each for each in games if each.ended is None and may_be_one(each.terms, record.terms)
        ]
        if len(alike) > 1:
            yield _open_at_once(record, alike, zone=zone)


def may_be_one(one: Opened, other: Opened) -> bool:
    """Whether two games are of one kind, and nobody says that the opponent is another."""
    opponents = {one.opponent, other.opponent} - {""}
    return one.game == other.game and len(opponents) < 2  # noqa: PLR2004 - two sides


def _opened_twice(openings: list[Line], *, zone: tzinfo | None) -> Finding:
    first, *more = openings
    said = [f"{_shown(event_words(each.event))} ({_whose(each, zone=zone)})" for each in openings]
    return Finding(
        level=Level.WARN,
        code="opened-twice",
        message=f"This game was opened {several(len(openings), 'time')}: {_named(said)}.",
        effect=f"The terms of {first.id[:SHORT]} count: it came first.",
        hint="Agree which is right, and strike the others out: play FOLDER strike "
        f"{more[0].id[:SHORT]} --because TEXT.",
        place=CHOSEN_HERE,
    )


def _open_at_once(record: GameRecord, alike: list[GameRecord], *, zone: tzinfo | None) -> Finding:
    said = [_whose(each.opening, zone=zone, id_=each.id) for each in alike]
    other = next(each for each in alike if each.id != record.id)
    return Finding(
        level=Level.WARN,
        code="open-at-once",
        message=f"{capital(_shown(record.terms.game))} is open {several(len(alike), 'time')} at "
        f"once: {_named(said)}.",
        effect=f"This is {record.id[:SHORT]}; what is told in one of them isn't in the other.",
        hint="If they are one game, go on with one on every phone (Log, Another game), tell there "
        f"what is lacking, and end the other: play FOLDER end --of {other.id[:SHORT]}.",
        place=CHOSEN_HERE,
    )


def clock_findings(
    record: GameRecord, *, now: datetime, zone: tzinfo | None = None
) -> Iterator[Finding]:
    """A warning for each device that dated lines later than it is now."""
    ahead: dict[str, list[Line]] = {}
    for line in record.lines:
        if line.written - SKEW > now:
            ahead.setdefault(line.device, []).append(line)
    for device, lines in list(ahead.items())[:MOST_NAMED]:
        last = max(lines, key=lambda line: line.written)
        yield Finding(
            level=Level.WARN,
            code="clock-ahead",
            message=f"{several(len(lines), 'line')} of {_shown(device) or 'this computer'} "
            f"{'is' if len(lines) == 1 else 'are'} dated ahead, up to "
            f"{clock_words(last.written, zone=zone, is_dated=True)} ({last.id[:SHORT]}).",
            effect="They count like all others, since no clock is asked; only the times that are "
            "shown are wrong.",
            hint="Set the clock of that device right, or that of this computer.",
            place=CHOSEN_HERE,
        )


def _whose(line: Line, *, zone: tzinfo | None, id_: str = "") -> str:
    """By which device, and when by its clock."""
    at = clock_words(line.written, zone=zone, is_dated=True)
    return (
        f"{_shown(line.device) or 'this computer'}, {at} by its clock, {(id_ or line.id)[:SHORT]}"
    )


def _named(said: list[str]) -> str:
    more = len(said) - MOST_NAMED
    return listed([*said[:MOST_NAMED], *([f"{more} more"] if more > 0 else [])])


def _shown(text: str) -> str:
    return clipped(on_one_line(text), most=LONGEST)
