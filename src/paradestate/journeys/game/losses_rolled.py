"""Writing down what real dice showed for those who were out of action, a whole form at once.

losses so far -> each roll read and checked -> entries of the journal -> losses as they are now

Where one roll of a form can't be read, none of it is written.
"""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass

from paradestate.core.campaign.casualty import AFTER, PROMOTED, Fate, RollGroup
from paradestate.core.campaign.loss_finding import not_to_roll, rolled_already, rolled_otherwise
from paradestate.core.campaign.recovery import Recovery
from paradestate.core.finding import Finding
from paradestate.core.log_finding import log_stop
from paradestate.core.play.event import Rolled, Subject
from paradestate.core.play.faces import Shown, read_shown
from paradestate.core.play.game_record import GameRecord
from paradestate.core.play.game_record import Line as Written
from paradestate.core.sentence.play import shown_words
from paradestate.core.unfolding import spoken
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

YES = "yes"
PURPOSE = "recovery of "
"""What a roll is for begins so."""
MOST_DIGITS = 6


@dataclass(frozen=True, slots=True, kw_only=True)
class TypedRoll:
    """What was typed for a stand or platoon that waits for its roll."""

    name: str
    numbers: tuple[int, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Seen:
    """Who rolled, and who saw it."""

    roller: str = ""
    witness: str = ""


NOBODY = Seen()


def faces_typed(text: str, *, of: str) -> tuple[int, ...] | Finding:
    """The numbers of a field: `4`, or `6 2` of two dice."""
    words = text.replace(",", " ").split()
    if all(each.isascii() and each.isdigit() and len(each) <= MOST_DIGITS for each in words):
        return tuple(map(int, words))
    return log_stop(
        code="roll-impossible",
        message=f"{of}: '{text.strip()[:40]}' isn't what dice show.",
        hint="Type what each die shows, such as 6 2; or the total with what is added.",
    )


def roll_recovery(
    teller: Teller, name: str, *, numbers: Sequence[int], seen: Seen = NOBODY
) -> LossesTold:
    """Writes down what real dice showed for one stand or platoon that waits for its roll.

    Raises StoreError, and FileError.
    """
    return roll_recoveries(teller, [TypedRoll(name=name, numbers=tuple(numbers))], seen=seen)


def roll_recoveries(
    teller: Teller, typed: Iterable[TypedRoll], *, seen: Seen = NOBODY
) -> LossesTold:
    """Writes down what real dice showed for several of them. Raises StoreError, and FileError.

    A form that was sent before adds nothing; where it broke off, it adds what is lacking.
    """
    after = losses_now(teller)
    record = after.record
    if record is None:
        return LossesTold(findings=(), after=after)
    weighing = _Weighing(
        after=after, record=record, form=teller.form_id(), written=lines_by_id(after), seen=seen
    )
    new: list[NewLine] = []
    wrong: list[Finding] = []
    for each in typed:
        made = _lines(weighing, each)
        if isinstance(made, Finding):
            wrong.append(made)
        else:
            new.extend(made)
    if wrong:
        return LossesTold(findings=tuple(wrong), after=after)
    return written(teller, record, new=new)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Weighing:
    """What the rolls of one form are held against."""

    after: AfterGame
    record: GameRecord
    form: str
    written: Mapping[str, Written]
    seen: Seen


def _lines(weighing: _Weighing, typed: TypedRoll) -> Sequence[NewLine] | Finding:
    """What is to be written of one roll, or why it can't be."""
    id_ = line_id(weighing.form, "rolled", typed.name)
    group = next((each for each in weighing.after.groups if each.name == typed.name), None)
    there = weighing.written.get(id_) or _rolled_before(weighing, group)
    if there is not None and isinstance(there.event, Rolled):
        rolled = there.event
        is_same = typed.numbers in (rolled.faces, (rolled.total,))
        if not is_same or not there.holds:
            said = shown_words(rolled)
            return rolled_otherwise(spoken(typed.name), shown=said, is_struck=not there.holds)
        return () if group is None else tuple(_following(weighing, group, total=rolled.total))
    if group is None:
        return _no_roll(weighing.after, typed.name)
    recovery = _recovery(weighing, group)
    shown = read_shown(recovery.roll, typed.numbers)
    if not isinstance(shown, Shown):
        return shown
    event = Rolled(
        purpose=f"{PURPOSE}{group.name}",
        dice=str(recovery.roll),
        faces=shown.faces,
        total=shown.total,
        roller=weighing.seen.roller.strip(),
        witness=weighing.seen.witness.strip(),
    )
    return (
        NewLine(id=id_, event=event, record=_record(weighing, group)),
        *_following(weighing, group, total=shown.total),
    )


def _rolled_before(weighing: _Weighing, group: RollGroup | None) -> Written | None:
    """A roll of this game that stands, for somebody who still waits for what follows from it.

    So it is where the writing broke off between them, and where one more of a platoon that shares
    its roll is told out afterwards.
    """
    if group is None:
        return None
    held = (
        line
        for line in reversed(_record(weighing, group).lines)
        if line.holds
        and isinstance(line.event, Rolled)
        and line.event.purpose == f"{PURPOSE}{group.name}"
    )
    return next(held, None)


def _record(weighing: _Weighing, group: RollGroup) -> GameRecord:
    """The game that its roll belongs to."""
    return weighing.after.record_for(group.stands[0], record=weighing.record)


def _recovery(weighing: _Weighing, group: RollGroup) -> Recovery:
    return weighing.after.campaign.recovery[group.pattern]


def _following(weighing: _Weighing, group: RollGroup, *, total: int) -> Iterator[NewLine]:
    """What follows from a roll for each of its stands."""
    recovery = _recovery(weighing, group)
    fate = Fate.RECOVERED if recovery.on.holds(total) else Fate.LOST
    gains = recovery.promoted_on is not None and recovery.promoted_on.holds(total)
    for stand in group.stands:
        subjects = [(Subject(AFTER, stand), str(fate))]
        if gains and fate is Fate.RECOVERED:
            subjects.append((Subject(PROMOTED, stand), YES))
        record = _record(weighing, group)
        for subject, value in subjects:
            yield NewLine(
                id=line_id(weighing.form, *subject),
                event=telling(record, subject, value=value),
                record=record,
            )


def _no_roll(after: AfterGame, name: str) -> Finding:
    """Why nothing can be rolled for a name: it was already, or it never waited."""
    told = [each for each in after.missing if each.stand.name == name and each.is_told]
    return rolled_already(told[-1]) if told else not_to_roll(name, waiting=waiting_names(after))


def waiting_names(after: AfterGame) -> list[str]:
    """Names of the rolls that are still to be made."""
    return [each.name for each in after.groups]
