"""Writing down what no dice decide: who was out, and who recovered, is lost, replaced, promoted.

losses so far -> what is said -> checked -> entries of the journal -> losses as they are now
"""

from collections.abc import Callable, Sequence
from functools import partial
from typing import TypeAlias

from paradestate.core.campaign.casualty import AFTER, OUT, PROMOTED, Casualty, Fate
from paradestate.core.campaign.loss_finding import cant_become, rolled_already
from paradestate.core.finding import Finding
from paradestate.core.play.event import Subject, Told
from paradestate.core.play.game_record import GameRecord
from paradestate.journeys.game.losses import AfterGame
from paradestate.journeys.game.losses_pen import (
    LossesTold,
    NewLine,
    Teller,
    line_id,
    lines_by_id,
    losses_now,
    telling,
    written,
)
from paradestate.journeys.game.losses_rolled import YES

WORDS = (Fate.RECOVERED, Fate.LOST, Fate.REPLACED, PROMOTED)
"""What may be told without dice."""
LONGEST_WORD = 60
"""Letters of the owner's word for how a stand was put out of action."""


Barrier: TypeAlias = Callable[[AfterGame, str], Finding | None]
"""Why something can't be told of a stand; None where it can."""


def tell_fate(teller: Teller, names: Sequence[str], *, word: str) -> LossesTold:
    """Writes down that stands recovered, are lost, replaced or promoted, without dice.

    Where it can't be of one of them, nothing is written. Raises StoreError, and FileError.
    """
    aspect, value = (PROMOTED, YES) if word == PROMOTED else (AFTER, word)
    subjects = [Subject(aspect, name) for name in dict.fromkeys(names)]
    return _tell(teller, subjects, value=value, barrier=partial(why_not, word=word))


def tell_out(teller: Teller, names: Sequence[str], *, how: str = YES) -> LossesTold:
    """Writes down that stands were put out of action in the game, which nobody told at the table.

    `how` is the owner's word for it, such as `captured`. Raises StoreError, and FileError.
    """
    how = " ".join(how.split()) or YES
    subjects = [Subject(OUT, name) for name in dict.fromkeys(names)]
    return _tell(teller, subjects, value=how, barrier=partial(_why_not_out, how=how))


def _tell(
    teller: Teller, subjects: Sequence[Subject], *, value: str, barrier: Barrier
) -> LossesTold:
    after = losses_now(teller)
    if after.record is None:
        return LossesTold(findings=(), after=after)
    form, known = teller.form_id(), lines_by_id(after)
    new: list[NewLine] = []
    wrong: list[Finding] = []
    for subject in subjects:
        id_ = line_id(form, *subject, value)
        if id_ in known:
            continue
        found = barrier(after, subject.name)
        if found is not None:
            wrong.append(found)
        record = _record(after, subject, meant=after.record)
        new.append(NewLine(id=id_, event=telling(record, subject, value=value), record=record))
    if wrong:
        return LossesTold(findings=tuple(wrong), after=after)
    return written(teller, after.record, new=new)


def _record(after: AfterGame, subject: Subject, *, meant: GameRecord) -> GameRecord:
    """The game that a line belongs to: who was out was so in the one that is meant."""
    return meant if subject.aspect == OUT else after.record_for(subject.name, record=meant)


def why_not(after: AfterGame, name: str, *, word: str) -> Finding | None:
    """Why a stand can't be told so; None where it can."""
    casualty = _last_of(after.missing, name)
    if name not in after.stands:
        return cant_become(
            name, word, because="no stand of the force is called so", known=after.stands
        )
    if word == PROMOTED:
        return None
    if casualty is None or not (casualty.out or casualty.is_told):
        return cant_become(name, word, because="it wasn't out of action")
    if word == Fate.REPLACED:
        return _why_not_replaced(after, casualty)
    return rolled_already(casualty) if casualty.is_told else None


def words_for(after: AfterGame, name: str) -> tuple[str, ...]:
    """What may be told of a stand without dice, and would change anything."""
    casualty = _last_of(after.missing, name)
    idle = set()
    if casualty is not None:
        idle = {str(casualty.fate), *((PROMOTED,) if casualty.is_promoted else ())}
    fates = [word for word in WORDS if word not in idle and why_not(after, name, word=word) is None]
    return (*fates, *_ways_out(after, name))


def _ways_out(after: AfterGame, name: str) -> tuple[str, ...]:
    """Words of which a stand that was out is lost without a roll, and that may still be told."""
    own = _last_of(after.casualties, name)
    if own is None or not own.out:
        return ()
    return tuple(
        word
        for word in after.campaign.never_back
        if word != own.out and _why_not_out(after, name, how=word) is None
    )


def _why_not_replaced(after: AfterGame, casualty: Casualty) -> Finding | None:
    name = casualty.stand.name
    if casualty.fate is not Fate.LOST:
        return cant_become(name, Fate.REPLACED, because=f"it isn't lost, but {casualty.fate}")
    pool = {each.pattern: each.pool for each in after.strengths}
    if after.campaign.replacements and not pool.get(casualty.stand.pattern):
        return cant_become(name, Fate.REPLACED, because="no replacement of its kind is left")
    return None


def _why_not_out(after: AfterGame, name: str, *, how: str) -> Finding | None:
    said = f"out ({how[:LONGEST_WORD]})"
    if len(how) > LONGEST_WORD:
        return cant_become(name, said, because=f"a word has at most {LONGEST_WORD} letters")
    fielded = [each.name for each in after.fielded]
    if name not in fielded:
        because = "no stand of that game is called so"
        return cant_become(name, said, because=because, known=fielded)
    own = _last_of(after.casualties, name)
    if own is not None and own.is_told:
        return rolled_already(own)
    gone = [each for each in after.missing if each.stand.name == name and each is not own]
    if gone and gone[-1].fate is Fate.LOST:
        return cant_become(name, said, because="it was lost in a game before")
    return None


def _last_of(found: Sequence[Casualty], name: str) -> Casualty | None:
    """What was left of a stand last; None where nothing was."""
    return next((each for each in reversed(found) if each.stand.name == name), None)


def is_about_losses(told: Told) -> bool:
    """Whether something that is told belongs to the losses of a game."""
    return told.subject.aspect in {OUT, AFTER, PROMOTED}
