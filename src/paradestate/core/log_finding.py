"""What is to be said when something is logged: why it can't be written, and what is doubtful."""

import datetime
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace

from paradestate.core.choice import CHOSEN_HERE
from paradestate.core.finding import Finding, Level
from paradestate.core.journal import Shortfall, more_words
from paradestate.core.journal_entry import EntryKind, JournalEntry
from paradestate.core.log_request import LogRequest
from paradestate.core.sentence.journal import SHORT, entry_words
from paradestate.core.sentence.wording import (
    capital,
    counted,
    day_words,
    listed,
    on_one_line,
    several,
)

NOTHING_WRITTEN = "Nothing is written into the journal."

DONE: Mapping[EntryKind, str] = {
    EntryKind.LENT: "lent",
    EntryKind.LOST: "lost",
    EntryKind.SOLD: "sold",
    EntryKind.RETURNED: "returned",
}
"""What was done with figures that leave."""


def log_stop(*, code: str, message: str, hint: str) -> Finding:
    """A stop for which nothing is written into the journal."""
    return Finding(
        level=Level.STOP,
        code=code,
        message=message,
        effect=NOTHING_WRITTEN,
        hint=hint,
        place=CHOSEN_HERE,
    )


def unwritten(found: Finding) -> Finding:
    """A stop of another sum, saying what it means here."""
    return replace(found, effect=NOTHING_WRITTEN)


def option_without_meaning(option: str, *, kind: EntryKind) -> Finding:
    """The stop for an option that a kind of entry has no use for."""
    lists = {
        "figures": "A list of figures",
        "staged": "A list of figures by stage",
        "stands": "More than one --stand",
    }
    word = lists.get(option, f"--{option}")
    return log_stop(
        code="log-option",
        message=f"{word} says nothing beside '{kind}'.",
        hint="Leave it out, or say it with --note.",
    )


def incomplete(message: str, *, hint: str) -> Finding:
    """The stop for an entry that doesn't say enough."""
    return log_stop(code="log-incomplete", message=message, hint=hint)


def stand_and_figures() -> Finding:
    """The stop for a stand named together with figures."""
    return log_stop(
        code="log-option",
        message="A stand and figures are named together.",
        hint="Name the stand alone: its figures go with it; or write two entries.",
    )


def several_sources(names: Sequence[str]) -> Finding:
    """The stop for what was ordered from several at once."""
    return log_stop(
        code="log-option",
        message=f"That was ordered from {listed(names)}: each sends a parcel of its own.",
        hint="Write an entry for each of them.",
    )


def expected_before(day: datetime.date, *, on: datetime.date) -> Finding:
    """The stop for a parcel that is to come before it was ordered."""
    return log_stop(
        code="expected-before-ordered",
        message=f"{day_words(day)} is before it was ordered, {day_words(on)}.",
        hint="Give the day on which it is to come with --expected.",
    )


def wanted_before(day: datetime.date, *, on: datetime.date) -> Finding:
    """The stop for a repair that is wanted before the stand went back."""
    return log_stop(
        code="wanted-before-repair",
        message=f"{day_words(day)} is before it went back, {day_words(on)}.",
        hint="Give the day on which it is wanted again with --wanted.",
    )


def still_on_order(figures: Mapping[str, int], *, sources: Sequence[str]) -> Finding:
    """The remark where figures came that may be those that are on order."""
    return Finding(
        level=Level.REMARK,
        code="still-on-order",
        message=f"On order from {listed(sources)}: {counted(figures)}.",
        effect="What came without a source is taken off no order.",
        hint="If it came from one of them, strike this out and log it again with --source.",
        place=CHOSEN_HERE,
    )


def not_on_order(source: str, *, sources: Sequence[str]) -> Finding:
    """The stop for what won't come from a source of which nothing is awaited."""
    whose = f" from {source}" if source else ""
    known = f"What is on order is from {listed(sources)}." if sources else ""
    return log_stop(
        code="not-on-order",
        message=f"Nothing is on order{whose} on that day.",
        hint=f"{known} What is cancelled must have been logged 'ordered' before.".strip(),
    )


def more_than_on_order(kind: str, number: int, *, there: Mapping[str, int]) -> Finding:
    """The stop for more that won't come than is awaited."""
    return log_stop(
        code="not-on-order",
        message=f"{capital(several(number, kind))} cancelled, {there.get(kind, 0)} on order "
        f"({counted(there)} in all).",
        hint="Say another number; or none, for all that is still on order from there.",
    )


def not_alone() -> Finding:
    """The stop for several stands named together with figures, or with one stand."""
    return log_stop(
        code="log-option",
        message="Several stands are named together with something else.",
        hint="Name the stands alone: their figures go with them; or write two entries.",
    )


def not_alike(said: LogRequest) -> Finding:
    """The stop for stands of several patterns that are named together."""
    return log_stop(
        code="log-option",
        message=f"{listed(said.stands)} are not all of one pattern.",
        hint="Write an entry for each pattern.",
    )


def named_twice(said: LogRequest) -> Finding:
    """The stop for a stand that is named twice in one entry."""
    twice = next(name for name in said.stands if said.stands.count(name) > 1)
    return log_stop(
        code="log-option", message=f"{twice} is named twice.", hint="Name each stand once."
    )


def stages_twice() -> Finding:
    """The stop for a count by stages that also names one stage for all."""
    return log_stop(
        code="log-option",
        message="Figures are counted by stage, and again at one stage for all.",
        hint="Name every number with its own stage, or write two entries.",
    )


def not_yet(day: datetime.date) -> Finding:
    """The stop for a day to come."""
    return log_stop(
        code="not-yet",
        message=f"{day_words(day)} hasn't happened yet.",
        hint="Give the day on which it was with --on.",
    )


def long_ago(said: LogRequest) -> Finding:
    """The warning for a day whose year may be mistyped."""
    return Finding(
        level=Level.WARN,
        code="long-ago",
        message=f"{day_words(said.on)} is more than ten years ago. Is the year right?",
        effect="It is written as it was said; dates of the bench rest on the last ten years alone.",
        hint=f'If it was a slip: log FOLDER struck-out {said.id[:SHORT]} --because "slip", and '
        "log it again with its day.",
        place=CHOSEN_HERE,
    )


def clock_behind(today: datetime.date, *, last_day: datetime.date) -> Finding:
    """The warning where the journal is ahead of the clock."""
    return Finding(
        level=Level.WARN,
        code="clock-behind",
        message=f"Today is {day_words(today)} by this computer, and the journal is at "
        f"{day_words(last_day)} already.",
        effect="The entry counts on the day that it has, before what was written for later days.",
        hint="Set the clock right, or give the day with --on; strike out what has a wrong day.",
        place=CHOSEN_HERE,
    )


def more_stands_than_named(pattern: str, number: int, *, named: int) -> Finding:
    """The warning where more stands are made whole than the force has."""
    return Finding(
        level=Level.WARN,
        code="more-stands-than-named",
        message=f"That makes {several(number, pattern)} whole, and the force has {named}.",
        effect="The figures of the others serve nothing.",
        hint="If it was a slip, strike it out; if the force is to grow, change it first.",
        place=CHOSEN_HERE,
    )


def day_too_long(minutes: int, *, on: datetime.date) -> Finding:
    """The stop for sessions of more than a day in a day."""
    return log_stop(
        code="day-too-long",
        message=f"{duration_words(minutes)} on {day_words(on)}?",
        hint="Give the minutes of this session alone, or its own day with --on.",
    )


def duration_words(minutes: int) -> str:
    """`31 hours`, `1 h 30 min`, `20 minutes`."""
    hours, rest = divmod(minutes, 60)
    if not hours:
        return several(minutes, "minute")
    return f"{hours} h {rest} min" if rest else several(hours, "hour")


def stage_backward(said: LogRequest) -> Finding:
    """The warning for work that goes back."""
    what = said.stand or counted(said.figures)
    one = said.stand or sum(said.figures.values()) == 1
    moves = "moves" if one else "move"
    return Finding(
        level=Level.WARN,
        code="stage-backward",
        message=f"{what} {moves} from {said.from_stage} back to {said.to_stage}. "
        "Repainting, or a slip?",
        effect="It is written as it was said.",
        hint=f'If it was a slip: log FOLDER struck-out {said.id[:SHORT]} --because "slip".',
        place=CHOSEN_HERE,
    )


def stand_there_already(
    said: LogRequest, *, there: Mapping[str, int], of_it: Mapping[str, int]
) -> Finding:
    """The stop for a stand that has figures at the stage already to which all are to be brought."""
    left = {kind: each - there.get(kind, 0) for kind, each in of_it.items()}
    left = {kind: each for kind, each in left.items() if each > 0}
    if left:
        done = counted({kind: each for kind, each in there.items() if each})
        message = f"Of {said.stand} {done} are '{said.to_stage}' already, or further."
        rest = ",".join(f"{kind}={each}" for kind, each in left.items())
        hint = f'Name what is left of it beside the stand: "{rest}".'
    else:
        message = f"{said.stand} is '{said.to_stage}' already, or further."
        hint = (
            "Name the stand that was meant; log more work on this one as minutes alone; if it "
            "isn't there, strike out the entry that says so."
        )
    return log_stop(code="stand-there-already", message=message, hint=hint)


def stage_unsaid(
    name: str,
    *,
    number: int,
    there: Mapping[str, int],
    stages: Sequence[str],
    option: str,
) -> Finding:
    """The stop where it isn't clear at which stage they are."""
    held = listed(f"{each} {stage}" for stage, each in there.items())
    known = f"{several(sum(there.values()), name)} held: {held}" if there else "none is held yet"
    return log_stop(
        code="stage-unsaid",
        message=f"{several(number, name)}: at which stage? ({capital(known)}.)",
        hint=f"Say it with {option}, one of: {', '.join(there or stages)}.",
    )


def more_than_held(
    said: LogRequest, name: str, *, number: int, there: Mapping[str, int]
) -> Finding:
    """The stop where more is to go than there is."""
    total = sum(there.values())
    here = "lent" if said.kind is EntryKind.RETURNED else "held"
    if said.kind in DONE:
        what = f"{DONE[said.kind]} {number} of {several(total, name)} {here}"
    else:
        what = f"{said.to_stage} {number} of {several(total, name)} held"
    piles = listed(f"{each} {stage}" for stage, each in there.items())
    if total >= number:
        what = (
            f"{what}, of which none is {said.from_stage} but {piles}"
            if (said.from_stage not in there)
            else f"{what}, of which {piles}"
        )
    return log_stop(
        code="more-than-held",
        message=f"{capital(what)}. Count again?",
        hint="Say another number, or with --from where they are; or log first what was received.",
    )


def takes_too_much(short: Shortfall) -> Finding:
    """The stop where a later entry, or this one, would take more than there is."""
    entry = short.entry
    return log_stop(
        code="more-than-held",
        message=f"Then '{entry.kind}' of {day_words(entry.on)} ({entry.id[:SHORT]}) would take "
        f"{more_words(short)} from '{short.stage}' than there are.",
        hint="Strike that entry out first, or give another number, stage or day.",
    )


def unclear_entry(beginning: str, *, fitting: Sequence[str]) -> Finding:
    """The stop where the beginning of an id fits no entry, or several."""
    if fitting:
        message = f"Several entries begin with '{beginning}': {', '.join(fitting)}."
        hint = "Give more of its beginning."
    else:
        message = f"No entry begins with '{beginning}'."
        hint = "`log FOLDER` without more lists the entries with their beginnings."
    return log_stop(code="unknown-entry", message=message, hint=hint)


def stages_differ(forces: Iterable[str]) -> Finding:
    """The stop where the forces of a collection have different stages."""
    return log_stop(
        code="stages-differ",
        message="The forces of this collection work in different stages.",
        hint=f"Log in the folder of one of them: {', '.join(forces)}.",
    )


def sources_differ(source: str, *, pack: str, forces: Sequence[str]) -> Finding:
    """The warning where a pack isn't the same in the price lists of several forces."""
    return Finding(
        level=Level.WARN,
        code="sources-differ",
        message=f"{listed(forces)} don't say the same of {pack} from {source}: what is in "
        "it, or how long it takes.",
        effect=f"It is taken as {forces[-1]} says.",
        hint="Make the price lists agree; or strike this out, and log it in the folder of the "
        "force for which it was ordered.",
        place=CHOSEN_HERE,
    )


def other_entry(stored: JournalEntry, *, sent: LogRequest) -> Finding:
    """The stop where an id is that of another entry already, with what both of them say."""
    there = f"{entry_words(stored)}, {day_words(stored.on)}"
    return log_stop(
        code="entry-id-taken",
        message=f"Entry {stored.id} is there already and says '{there}'; what is sent says "
        f"'{said_words(sent)}'.",
        hint="Keep the one that is right: strike out the other, or give this one an id of its own.",
    )


def said_words(said: LogRequest) -> str:
    """What is to be logged, as it was said."""
    staged = [
        f"{several(number, kind)} {stage}"
        for kind, stages in said.staged.items()
        for stage, number in stages.items()
    ]
    parts = [
        said.kind,
        f"of {several(said.minutes, 'minute')}" if said.minutes else "",
        listed(staged)
        or counted(said.figures)
        or said.stand
        or listed(said.stands)
        or said.struck_out[:SHORT],
        f"from {said.from_stage}" if said.from_stage else "",
        f"to {said.to_stage}" if said.to_stage else "",
        f"from {said.source}" if said.source else "",
        f"expected {day_words(said.expected)}" if said.expected else "",
    ]
    note = f": {on_one_line(said.note)}" if said.note else ""
    return f"{' '.join(part for part in parts if part)}{note}, {day_words(said.on)}"


def struck_already(id: str) -> Finding:  # noqa: A002 - as above
    """The stop where an entry no longer counts already."""
    return log_stop(
        code="struck-out-already",
        message=f"The entry {id[:SHORT]} is struck out already.",
        hint="To have it count again, strike out the entry that struck it out.",
    )


def not_text() -> Finding:
    """The stop for words that no file can hold."""
    return log_stop(
        code="note-not-text",
        message="What was typed holds characters that aren't text.",
        hint="Type it again in UTF-8.",
    )
