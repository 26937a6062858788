"""What was written down about losses and repairs, and how a slip of it is struck out.

A roll is struck out with what followed from it, for one without the other would say nothing.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from paradestate.core.campaign.loss_finding import reason_missing
from paradestate.core.journal_entry import EntryKind
from paradestate.core.log_request import LogRequest
from paradestate.core.play.event import Rolled, Told
from paradestate.core.play.game_record import GameRecord, Line
from paradestate.core.play.play_finding import not_of_this_game
from paradestate.core.unfolding import SEPARATOR
from paradestate.journeys.game.losses import AfterGame
from paradestate.journeys.game.losses_pen import LossesTold, Teller, line_id, losses_now
from paradestate.journeys.game.losses_rolled import PURPOSE
from paradestate.journeys.game.losses_told import is_about_losses
from paradestate.journeys.game.pen import write_requests


@dataclass(frozen=True, slots=True, kw_only=True)
class LossLine:
    """One thing that was written about losses, with what followed from it."""

    line: Line
    following: tuple[Line, ...] = ()
    """Of a roll: what it came to for each of its stands."""


def loss_lines(after: AfterGame) -> tuple[LossLine, ...]:
    """All of the game, in the order of the journal, those struck out among them."""
    if after.record is None:
        return ()
    patterns = {each.name: each.pattern for each in after.fielded}
    return tuple(_loss_lines(after.record, patterns))


def _loss_lines(record: GameRecord, patterns: Mapping[str, str]) -> Iterator[LossLine]:
    roll: Line | None = None
    following: list[Line] = []
    for line in record.lines:
        if roll is not None and _follows(line, following, roll=roll, patterns=patterns):
            following.append(line)
            continue
        if roll is not None:
            yield LossLine(line=roll, following=tuple(following))
        roll, following = None, []
        match line.event:
            case Rolled(purpose=purpose) if purpose.startswith(PURPOSE):
                roll = line
            case Told() if is_about_losses(line.event):
                yield LossLine(line=line)
            case _:
                pass
    if roll is not None:
        yield LossLine(line=roll, following=tuple(following))


def _follows(
    line: Line, following: Sequence[Line], *, roll: Line, patterns: Mapping[str, str]
) -> bool:
    """Whether a line was written together with a roll, for one of its stands."""
    if not isinstance(line.event, Told) or not isinstance(roll.event, Rolled):
        return False
    of_one_hand = (line.device, line.counter) == (roll.device, roll.counter + len(following) + 1)
    is_new = line.event.subject not in {
        each.event.subject for each in following if isinstance(each.event, Told)
    }
    return (
        of_one_hand
        and is_new
        and line.written == roll.written
        and is_about_losses(line.event)
        and line.event.subject.name in _rolled_for(roll.event, patterns)
    )


def _rolled_for(rolled: Rolled, patterns: Mapping[str, str]) -> frozenset[str]:
    """The stands that a roll decided about: one, or all of a pattern in the body that it names."""
    name = rolled.purpose.removeprefix(PURPOSE)
    if name in patterns:
        return frozenset({name})
    alike = [each for each, pattern in patterns.items() if name.endswith(f", {pattern}")]
    body = name.rpartition(", ")[0] + SEPARATOR
    # The raised formation has no name, so that none of its stands bears it.
    return frozenset([each for each in alike if each.startswith(body)] or alike)


def strike_loss(teller: Teller, beginning: str, *, because: str) -> LossesTold:
    """Strikes a line out, and of a roll what followed from it. Raises StoreError, and FileError."""
    after = losses_now(teller)
    if after.record is None:
        return LossesTold(findings=(), after=after)
    start = beginning.strip().lower()
    every = [each for each in _together(after) if each[0].startswith(start)]
    form = teller.form_id()
    # What went to the bench isn't known any more once it is struck out.
    if start and not every and teller.there(line_id(form, "struck", start)) is not None:
        return LossesTold(findings=(), after=after, was_there=True)
    if len(every) != 1 or not start:
        return LossesTold(findings=(not_of_this_game(beginning),), after=after)
    if not because.strip():
        return LossesTold(findings=(reason_missing(),), after=after)
    struck = {line.id for line in after.record.lines if not line.holds}
    ids = [id_ for id_ in every[0] if id_ not in struck]
    done = write_requests(
        teller,
        [
            LogRequest(
                id=line_id(form, "struck", id_),
                kind=EntryKind.STRUCK_OUT,
                written=teller.now.replace(microsecond=0),
                on=teller.today,
                note=because.strip(),
                struck_out=id_,
            )
            for id_ in ids
        ],
    )
    return LossesTold(
        findings=done.findings,
        after=losses_now(teller),
        entries=done.entries,
        was_there=not ids,
    )


def _together(after: AfterGame) -> Iterator[tuple[str, ...]]:
    """Ids of each thing that may be struck out, with those that go with it."""
    for each in loss_lines(after):
        yield tuple(line.id for line in (each.line, *each.following))
    for id_ in dict.fromkeys(entry.id for entry in after.went_back.values()):
        yield (id_,)
