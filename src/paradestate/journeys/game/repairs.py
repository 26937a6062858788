"""After a game: what is broken goes back to the bench, with the day on which it is wanted again.

losses -> stands to be repaired -> the day and the stage -> an entry for each -> losses as they are
"""

import datetime
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from pathlib import Path

from paradestate.core.campaign.loss_finding import (
    no_day_for_repairs,
    nothing_to_go_back_to,
    nothing_to_repair,
)
from paradestate.core.finding import Finding, stops
from paradestate.core.force import Force
from paradestate.core.game_night import nights_within
from paradestate.core.journal_entry import EntryKind, JournalEntry
from paradestate.core.log_request import LogRequest
from paradestate.core.span import DateSpan
from paradestate.core.unfolding import spoken
from paradestate.core.work.habit import later
from paradestate.journeys.check import checked
from paradestate.journeys.game.losses_pen import LossesTold, Teller, line_id, losses_now
from paradestate.journeys.game.pen import write_requests
from paradestate.journeys.memory import NOTHING, Memory

LOOKED_AHEAD = 366
"""Days within which the next game night is looked for."""


@dataclass(frozen=True, slots=True, kw_only=True)
class RepairsAsked:
    """What is to be repaired, by when, and how far back it goes."""

    names: tuple[str, ...] = ()
    """Stands; none: all that the game left to be repaired."""
    wanted: datetime.date | None = None
    """None: the next game night."""
    to_stage: str = ""
    """Empty: the stage before the last."""
    note: str = ""
    """What is broken, where the board doesn't say."""


@dataclass(frozen=True, slots=True, kw_only=True)
class RepairsOffered:
    """What a form for repairs begins with."""

    wanted: datetime.date | None
    """The next game night; None where none is written down."""
    stages: Sequence[str]
    """To which a stand may go back, in their order; the last of them unless said otherwise."""


def repairs_offered(
    folder: Path, *, today: datetime.date, memory: Memory = NOTHING
) -> RepairsOffered:
    """The day and the stages for what is to be repaired. Raises FileError."""
    force = checked(folder, today=today, memory=memory).force
    return RepairsOffered(wanted=_next_night(force, today=today), stages=force.bench.stages[:-1])


def put_on_the_bench(teller: Teller, asked: RepairsAsked) -> LossesTold:
    """Writes down for each stand that it went back to be repaired.

    One that can't be written hinders no other. A form that names its stands is written once,
    however often it is sent. Raises StoreError, and FileError.
    """
    after = losses_now(teller)
    if after.record is None:
        return LossesTold(findings=(), after=after)
    force = checked(teller.folder, today=teller.today, memory=teller.memory).force
    form = teller.form_id()
    names = [name for name in asked.names if teller.there(line_id(form, "bench", name)) is None]
    if asked.names and not names:
        return LossesTold(findings=(), after=after, was_there=True)
    broken = {name: after.to_repair.get(name, "") for name in names} or after.to_repair
    stages = force.bench.stages
    day = asked.wanted or _next_night(force, today=teller.today)
    wrong = tuple(_wrong(broken, stages=stages, day=day))
    if wrong or day is None:
        return LossesTold(findings=wrong, after=after)
    requests = [
        LogRequest(
            id=line_id(form, "bench", name),
            kind=EntryKind.MOVED,
            written=teller.now.replace(microsecond=0),
            on=teller.today,
            stand=name,
            from_stage=stages[-1],
            to_stage=asked.to_stage or stages[-2],
            wanted=day,
            note=asked.note.strip() or what,
        )
        for name, what in broken.items()
    ]
    return _written(replace(teller, of=after.record.id), requests)


def _wrong(
    broken: Mapping[str, str], *, stages: Sequence[str], day: datetime.date | None
) -> Sequence[Finding]:
    if not broken:
        return (nothing_to_repair(),)
    if len(stages) == 1:
        return (nothing_to_go_back_to(),)
    return (no_day_for_repairs(),) if day is None else ()


def _next_night(force: Force, *, today: datetime.date) -> datetime.date | None:
    """The first game night after today."""
    nights = force.aim.game_nights if force.aim else ()
    span = DateSpan(first=later(today, 1), last=later(today, LOOKED_AHEAD))
    return next(iter(nights_within(nights, span=span)), None)


def _of_stand(found: Finding, request: LogRequest) -> Finding:
    """The stop by the stand that it is about, where it speaks of its figures."""
    if found.code != "more-than-held":
        return found
    return replace(
        found,
        message=f"By the journal {spoken(request.stand)} isn't {request.from_stage}.",
        hint="Log first that it was received, or that it reached that stage.",
    )


def _written(teller: Teller, requests: Sequence[LogRequest]) -> LossesTold:
    findings: list[Finding] = []
    entries: list[JournalEntry] = []
    for request in requests:
        done = write_requests(teller, [request])
        findings.extend(_of_stand(each, request) for each in stops(done.findings))
        entries.extend(done.entries)
    return LossesTold(
        findings=tuple(dict.fromkeys(findings)), after=losses_now(teller), entries=tuple(entries)
    )
