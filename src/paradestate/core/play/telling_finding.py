"""What was told in a game and doesn't fit the force or what was taken: kept, and named.

Phones tell without asking anybody, so it is held on reading against what may be told.
"""

from collections.abc import Iterator
from itertools import islice

from paradestate.core.choice import CHOSEN_HERE
from paradestate.core.finding import Finding, Level, stops
from paradestate.core.play.arrangement import Proposed, proposed_findings
from paradestate.core.play.board import Telling
from paradestate.core.play.game_record import GameRecord
from paradestate.core.sentence.journal import SHORT
from paradestate.core.sentence.play import told_words
from paradestate.core.sentence.wording import clipped, on_one_line
from paradestate.core.support.room import Fielded

AFTERWARDS = frozenset({"after the game", "promoted"})
"""Aspects that are told of losses, and held against the losses."""

MOST_NAMED = 20
"""Things that are named one by one."""

LONGEST = 200
"""Letters of why something doesn't fit."""

SHOWN = "It is kept and shown as it was told"
EFFECTS = {
    "unknown-choice": f"{SHOWN}; nothing is worked out from it.",
    "not-a-whole-number": f"{SHOWN}; as a number it counts as nought.",
    "missions-too-many": f"{SHOWN}; how many missions are left can't be relied on.",
}
ELSE = f"{SHOWN}; nothing is moved because of it."


def telling_findings(record: GameRecord, fielded: Fielded) -> Iterator[Finding]:
    """A warning for each thing that stands on the board and couldn't be told with `play mark`."""
    unfit = _unfit(record, fielded)
    for telling, why in islice(unfit, MOST_NAMED):
        yield _warning(telling, why)
    if next(unfit, None) is not None:
        yield Finding(
            level=Level.WARN,
            code="told-unfit",
            message=f"More than {MOST_NAMED} things that were told don't fit.",
            effect=f"{SHOWN}; the others are named once some of these are put right.",
            hint="Put those right that are named, or strike them out.",
            place=CHOSEN_HERE,
        )


def _unfit(record: GameRecord, fielded: Fielded) -> Iterator[tuple[Telling, Finding]]:
    """What stands and doesn't fit, with the stop that it would have met."""
    board = record.board
    values = {subject: standing.values[0] for subject, standing in board.items()}
    for subject, standing in board.items():
        told = () if subject.aspect in AFTERWARDS else standing.tellings
        for each in told:
            if each.told.value:
                proposed = Proposed(subject=subject, value=each.told.value, values=values)
                yield from ((each, why) for why in stops(proposed_findings(proposed, fielded)))


def _warning(telling: Telling, why: Finding) -> Finding:
    by = f" by {_shown(telling.device)}" if telling.device else ""
    return Finding(
        level=Level.WARN,
        code="told-unfit",
        message=f"Told{by} ({telling.id[:SHORT]}): {_shown(told_words(telling.told))}. "
        f"{_shown(why.message)}",
        effect=EFFECTS.get(why.code, ELSE),
        hint=f"{why.hint} Tell it anew; or strike it out with a reason: play FOLDER strike "
        f"{telling.id[:SHORT]} --because TEXT.",
        place=CHOSEN_HERE,
    )


def _shown(text: str) -> str:
    """What phones told, on one line and not too long."""
    return clipped(on_one_line(text), most=LONGEST)
