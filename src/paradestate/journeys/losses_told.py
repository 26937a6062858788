"""Writing down what came of those who were out of action: the dice, or the bare fact.

losses so far -> what is said -> checked -> entries of the journal -> losses as they are now
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from paradestate.core.campaign.casualty import (
    AFTER,
    PROMOTED,
    Casualty,
    Fate,
    RollGroup,
)
from paradestate.core.campaign.loss_finding import cant_become, not_to_roll, rolled_already
from paradestate.core.finding import Finding, stops
from paradestate.core.journal_entry import JournalEntry
from paradestate.core.play.board import NOTHING_TOLD, Standing
from paradestate.core.play.event import Event, Rolled, Subject, Told
from paradestate.core.play.faces import Shown, read_shown
from paradestate.core.play.game_record import GameRecord
from paradestate.journeys.losses import AfterGame, losses
from paradestate.journeys.pen import Pen, next_lines, write_lines

YES = "yes"
PURPOSE = "recovery"


@dataclass(frozen=True, slots=True, kw_only=True)
class Teller(Pen):
    """A pen for losses: where no game is named, the newest is meant whether it is over or not."""

    next_game: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class LossesTold:
    """What was written, or nothing with the stops in the way; and the losses as they are then."""

    findings: tuple[Finding, ...]
    after: AfterGame
    entries: tuple[JournalEntry, ...] = ()


def roll_recovery(
    teller: Teller, name: str, *, numbers: Sequence[int], roller: str = "", witness: str = ""
) -> LossesTold:
    """Writes down what real dice showed for a stand or platoon that waits for its roll.

    Raises StoreError, and FileError.
    """
    after = _now(teller)
    if after.record is None:
        return LossesTold(findings=(), after=after)
    group = next((each for each in after.groups if each.name == name), None)
    if group is None:
        return LossesTold(findings=(_no_roll(after, name),), after=after)
    recovery = after.campaign.recovery[group.pattern]
    shown = read_shown(recovery.roll, numbers)
    if not isinstance(shown, Shown):
        return LossesTold(findings=(shown,), after=after)
    rolled = Rolled(
        purpose=f"{PURPOSE} of {group.name}",
        dice=str(recovery.roll),
        faces=shown.faces,
        total=shown.total,
        roller=roller.strip(),
        witness=witness.strip(),
    )
    fate = Fate.RECOVERED if recovery.on.holds(shown.total) else Fate.LOST
    gains = recovery.promoted_on is not None and recovery.promoted_on.holds(shown.total)
    told = _tellings(after.record.board, group, fate=fate, is_promoted=gains)
    return _written(teller, after.record, events=(rolled, *told))


def tell_fate(teller: Teller, name: str, *, word: str) -> LossesTold:
    """Writes down that a stand recovered, is lost, was replaced or is promoted, without dice.

    Raises StoreError, and FileError.
    """
    after = _now(teller)
    if after.record is None:
        return LossesTold(findings=(), after=after)
    casualty = next((each for each in reversed(after.missing) if each.stand.name == name), None)
    wrong = _why_not(after, casualty, name=name, word=word)
    if wrong is not None:
        return LossesTold(findings=(wrong,), after=after)
    aspect, value = (PROMOTED, YES) if word == PROMOTED else (AFTER, word)
    event = _telling(after.record.board, Subject(aspect, name), value=value)
    return _written(teller, after.record, events=(event,))


def _why_not(
    after: AfterGame, casualty: Casualty | None, *, name: str, word: str
) -> Finding | None:
    if name not in after.stands:
        return cant_become(name, word, because="no stand of the force is called so")
    if word == PROMOTED:
        return None
    if casualty is None or not (casualty.out or casualty.is_told):
        return cant_become(name, word, because="it wasn't out of action")
    if word == Fate.REPLACED:
        return _why_not_replaced(after, casualty)
    return rolled_already(casualty) if casualty.is_told else None


def _why_not_replaced(after: AfterGame, casualty: Casualty) -> Finding | None:
    name = casualty.stand.name
    if casualty.fate is not Fate.LOST:
        return cant_become(name, Fate.REPLACED, because=f"it isn't lost, but {casualty.fate}")
    pool = {each.pattern: each.pool for each in after.strengths}
    if after.campaign.replacements and not pool.get(casualty.stand.pattern):
        return cant_become(name, Fate.REPLACED, because="no replacement of its kind is left")
    return None


def _no_roll(after: AfterGame, name: str) -> Finding:
    """Why nothing can be rolled for a name: it was already, or it never waited."""
    told = [each for each in after.missing if each.stand.name == name and each.is_told]
    return rolled_already(told[-1]) if told else not_to_roll(name, waiting=waiting_names(after))


def waiting_names(after: AfterGame) -> list[str]:
    """Names of the rolls that are still to be made."""
    return [each.name for each in after.groups]


def _tellings(
    board: Mapping[Subject, Standing], group: RollGroup, *, fate: Fate, is_promoted: bool
) -> Iterator[Told]:
    for stand in group.stands:
        yield _telling(board, Subject(AFTER, stand), value=fate)
        if is_promoted and fate is Fate.RECOVERED:
            yield _telling(board, Subject(PROMOTED, stand), value=YES)


def _telling(board: Mapping[Subject, Standing], subject: Subject, *, value: str) -> Told:
    """What is told, in place of all that was told of the same before."""
    return Told(subject=subject, value=str(value), over=board.get(subject, NOTHING_TOLD).over)


def _now(teller: Teller) -> AfterGame:
    return losses(
        teller.folder,
        today=teller.today,
        next_game=teller.next_game,
        of=teller.of,
        memory=teller.memory,
    )


def _written(teller: Teller, record: GameRecord, *, events: Sequence[Event]) -> LossesTold:
    """Writes one event after the other until one can't be, and says what the losses are then."""
    done = write_lines(teller, next_lines(teller, record, events=events))
    after = _now(replace(teller, of=record.id))
    return LossesTold(findings=stops(done.findings), after=after, entries=done.entries)
