"""Writing down on the page of purchases that a slip was ordered, and saying so afterwards."""

from paradestate.core.finding import Finding
from paradestate.core.journal_entry import EntryKind, JournalEntry
from paradestate.core.log_finding import unwritten
from paradestate.core.log_request import LogRequest
from paradestate.journeys.choosing import day_of, want_of
from paradestate.journeys.history import entry_of_id, history
from paradestate.journeys.log import log
from paradestate.web.log_form import head_said
from paradestate.web.visit import Visit


def placed(visit: Visit) -> tuple[JournalEntry | None, tuple[Finding, ...]]:
    """The entry of an order as its form says it, or None with the stops that prevent it."""
    form, head = visit.form, head_said(visit)
    packs, slips = want_of(form.text("packs"))
    due, more = day_of(form.text("expected"))
    if head.findings or slips or more:
        return None, (*head.findings, *map(unwritten, (*slips, *more)))
    request = LogRequest(
        id=head.id,
        kind=EntryKind.ORDERED,
        written=head.written,
        on=head.on,
        figures=packs or {},
        expected=due,
    )
    done = log(visit.folder, today=visit.today, request=request, memory=visit.memory)
    return done.entry, done.findings


def order_told(visit: Visit) -> JournalEntry | None:
    """The order that the address says was written down, while it counts."""
    named = visit.query.get("ordered", "")
    if not named:
        return None
    past = history(visit.folder, today=visit.today, last=1, about=named, memory=visit.memory)
    if named in past.strikes:
        return None
    return entry_of_id(visit.folder, named, today=visit.today, memory=visit.memory)
