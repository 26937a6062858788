"""After a game: what is broken goes back to the bench, with the day on which it is wanted again.

losses -> stands to be repaired -> the day and the stage -> an entry for each -> losses as they are
"""

import datetime
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

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
from paradestate.core.work.habit import later
from paradestate.journeys.check import checked
from paradestate.journeys.losses import AfterGame
from paradestate.journeys.losses_pen import LossesTold, Teller, losses_now
from paradestate.journeys.pen import write_requests

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


def put_on_the_bench(teller: Teller, asked: RepairsAsked) -> LossesTold:
    """Writes down for each stand that it went back to be repaired.

    One that can't be written hinders no other. Raises StoreError, and FileError.
    """
    after = losses_now(teller)
    if after.record is None:
        return LossesTold(findings=(), after=after)
    force = checked(teller.folder, today=teller.today, memory=teller.memory).force
    broken = {name: after.to_repair.get(name, "") for name in asked.names} or after.to_repair
    stages = force.bench.stages
    day = asked.wanted or _next_night(force, today=teller.today)
    wrong = tuple(_wrong(broken, stages=stages, day=day))
    if wrong or day is None:
        return LossesTold(findings=wrong, after=after)
    requests = [
        LogRequest(
            id=teller.new_id(),
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
    return _written(teller, after, requests=requests)


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


def _written(teller: Teller, after: AfterGame, *, requests: Sequence[LogRequest]) -> LossesTold:
    findings: list[Finding] = []
    entries: list[JournalEntry] = []
    for request in requests:
        done = write_requests(teller, [request])
        findings.extend(stops(done.findings))
        entries.extend(done.entries)
    assert after.record is not None  # noqa: S101 - the caller has looked
    now = losses_now(replace(teller, of=after.record.id))
    return LossesTold(findings=tuple(dict.fromkeys(findings)), after=now, entries=tuple(entries))
