"""The bench: what to do next, when a force can be played, and an evening written down."""

import datetime
from collections.abc import Sequence
from dataclasses import dataclass
from urllib.parse import urlencode

from starlette.responses import Response

from paradestate.core.bench import USUAL_STAGES
from paradestate.core.choice import Choice
from paradestate.core.finding import Finding, Level
from paradestate.core.journal_entry import BRINGS_ON, EntryKind, JournalEntry
from paradestate.core.log_finding import incomplete, unwritten
from paradestate.core.log_request import LogRequest
from paradestate.core.sentence.journal import entry_words
from paradestate.core.sentence.wording import day_words, several
from paradestate.core.work.batch_step import BatchStep
from paradestate.journeys.bench.bench import BenchAnswer, Outcome, keep_dates, order_of_work
from paradestate.journeys.bench.forecast import Keeping, calendar
from paradestate.journeys.choosing import number_of
from paradestate.journeys.history import LOOKED_AT, History, history
from paradestate.journeys.log import log
from paradestate.sheet.texture import patterns
from paradestate.web.bench.batch_row import FIRST, FROM, OF, STANDS, TO, step_said
from paradestate.web.bench.orders import orders_view
from paradestate.web.bench.view import BenchView, bench_view
from paradestate.web.bench.when import MOST_BESIDE
from paradestate.web.log_form import Head, head_said, new_id, striking_out
from paradestate.web.page_kind import Page
from paradestate.web.visit import Visit

UNPROCESSABLE, CHANGED = 422, 409
CALENDAR = "calendar.ics"
MINUTES = "minutes"
SAID = (FIRST, FROM, TO, OF, STANDS, MINUTES)
"""The fields of the form that writes a step down."""
WRITTEN_HERE = BRINGS_ON | {EntryKind.FORECAST}
"""What the bench writes, and takes back."""
A_DAY = datetime.timedelta(days=1)
"""How long after it was written."""
MOST_ROWS = 200
"""Batches that are listed one by one."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Told:
    """What is to be said of what was sent."""

    findings: tuple[Finding, ...] = ()
    changed: str = ""
    status: int = 200


def show(visit: Visit) -> Response:
    """The order of work as it is now."""
    return _page(visit, told=Told())


def session(visit: Visit) -> Response:
    """Writes down what was brought on, as a session where its minutes are said.

    The same form sent again, as by a second tap, is answered as the first time.
    """
    head = head_said(visit)
    said = tuple(visit.form.text(name) for name in SAID)
    with visit.site.writing:
        if visit.memory.last((SAID, head.id), tuple) == said:
            return _seen_written(visit, head.id)
        answer = _brought_on(visit, head)
        if answer.status_code < UNPROCESSABLE:
            visit.memory.keep((SAID, head.id), said)
    return answer


def _brought_on(visit: Visit, head: Head) -> Response:
    answer = _answer(visit)
    step = None if answer.order is None else step_said(answer.order, visit.form)
    if step is None:
        changed = "This batch isn't any more what it was when the sheet was made: look again."
        return _page(visit, told=Told(changed=changed, status=CHANGED))
    number, slips = number_of(visit.form.text(STANDS), of="Stands")
    minutes, more = number_of(visit.form.text(MINUTES), of="Minutes")
    found = (*head.findings, *map(unwritten, (*slips, *more)), *_too_many(step, number))
    if found or number is None:
        return _page(visit, told=Told(findings=found, status=UNPROCESSABLE))
    request = LogRequest(
        id=head.id,
        kind=EntryKind.SESSION if minutes else EntryKind.MOVED,
        written=head.written,
        on=head.on,
        stands=step.stands(number),
        figures={} if step.is_whole else step.figures(number),
        from_stage=step.from_stage,
        to_stage=step.to_stage,
        minutes=minutes or None,
    )
    return _logged(visit, request)


def _too_many(step: BatchStep, number: int | None) -> tuple[Finding, ...]:
    if number is None or not 1 <= number <= step.number:
        said = several(step.number, step.pattern)
        return (incomplete(f"There are {said} to bring on.", hint="Choose how many of them."),)
    return ()


def keep(visit: Visit) -> Response:
    """Writes today's dates down, so that it can be seen later how they came out."""
    head = head_said(visit)
    keeping = Keeping(today=visit.today, written=head.written, id=head.id)
    kept = keep_dates(visit.folder, _answer(visit), keeping=keeping, memory=visit.memory)
    if kept.outcome is Outcome.REFUSED:
        return _page(visit, told=Told(findings=kept.logged.findings, status=UNPROCESSABLE))
    return visit.back_to("bench")


def calendar_file(visit: Visit) -> Response:
    """Milestones and game nights as a calendar."""
    answer = _answer(visit)
    if answer.order is None:
        return show(visit)
    text = calendar(
        answer.order.dates,
        force=answer.checked.force.title,
        made=visit.now,
        repairs=answer.order.ladder.repairs,
    )
    headers = {"content-disposition": f'attachment; filename="{CALENDAR}"'}
    return visit.with_cookie(Response(text, media_type="text/calendar", headers=headers))


def undo(visit: Visit) -> Response:
    """Strikes the newest entry out."""
    undone = visit.form.text("undone")
    return _logged(visit, striking_out(visit, entry=undone, note="Undone at the bench."))


def _logged(visit: Visit, request: LogRequest) -> Response:
    """Writes it; what is doubtful about it is said at once, for nobody would look for it later."""
    done = log(visit.folder, today=visit.today, request=request, memory=visit.memory)
    if done.entry is None:
        return _page(visit, told=Told(findings=done.findings, status=UNPROCESSABLE))
    doubts = tuple(found for found in done.findings if found.place.file == "command line")
    if doubts:
        return _page(visit, told=Told(findings=doubts))
    return _seen_written(visit, done.entry.id)


def _seen_written(visit: Visit, entry: str) -> Response:
    return visit.back_to(f"bench?{urlencode({'written': entry})}")


def _answer(visit: Visit) -> BenchAnswer:
    return order_of_work(visit.folder, today=visit.today, choice=Choice(), memory=visit.memory)


def _page(visit: Visit, *, told: Told) -> Response:
    answer = _answer(visit)
    order = answer.order
    found = answer.checked.findings
    if order is None:
        title = "Bench"
        every = (*told.findings, *found)
        return visit.page("stopped.html", status=told.status, title=title, found=every)
    view: BenchView = visit.memory.kept(
        ("bench view", visit.folder, visit.today),
        lambda: bench_view(order, today=visit.today),
        rests_on=(order,),
    )
    past = history(visit.folder, today=visit.today, last=LOOKED_AT, memory=visit.memory)
    last = past.newest_in_force
    struck = past.struck_just_now
    return visit.page(
        "bench.html",
        status=told.status,
        force=order.force,
        view=view,
        orders=orders_view(visit, order),
        rows=view.batches[:MOST_ROWS],
        told=told,
        last=last if _is_of_today(last, visit=visit) else None,
        undone=struck if past.entries and _is_new(past.entries[0], visit=visit) else None,
        is_new=bool(visit.query.get("written")),
        minutes=remembered(past, visit=visit),
        today_minutes=minutes_of_today(past, visit=visit),
        most_beside=MOST_BESIDE,
        new_id=new_id,
        patterns=patterns(USUAL_STAGES),
        stops=_of(Level.STOP, found),
        doubts=[each for each in found if each.level is not Level.STOP],
        entry_words=entry_words,
        day_words=day_words,
        several=several,
    )


def _is_of_today(entry: JournalEntry | None, *, visit: Visit) -> bool:
    """Whether an entry is of those that the bench writes, and of the last hours.

    So that one press takes back a slip, and never a parcel or a count, nor work of last week.
    """
    return entry is not None and entry.kind in WRITTEN_HERE and _is_new(entry, visit=visit)


def _is_new(entry: JournalEntry, *, visit: Visit) -> bool:
    return visit.now - entry.written < A_DAY


def _of(level: Level, found: Sequence[Finding]) -> list[Finding]:
    return [each for each in found if each.level is level]


def _sessions(past: History) -> Sequence[JournalEntry]:
    """The newest sessions that count."""
    return [
        each
        for each in past.entries
        if each.kind is EntryKind.SESSION and each.id not in past.strikes
    ]


def minutes_of_today(past: History, *, visit: Visit) -> int:
    """What is written down for today already."""
    return sum(each.minutes for each in _sessions(past) if each.on == visit.today)


def remembered(past: History, *, visit: Visit) -> int | None:
    """The minutes of the newest session, asked once and offered again.

    None where there was none, and on a day whose minutes are written down: what else was brought on
    in them has no more of its own.
    """
    if minutes_of_today(past, visit=visit):
        return None
    return next((each.minutes for each in _sessions(past)), None)


PAGE = Page(
    path="bench",
    title="Bench",
    in_bar=True,
    show=show,
    actions={"session": session, "undo": undo, "keep": keep},
    parts={CALENDAR: calendar_file},
)
"""The sheet of the bench: its ladder, the forms that write an evening down, and a calendar."""
