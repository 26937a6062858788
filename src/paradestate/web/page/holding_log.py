"""The form that writes one entry: what happened first, then only what that calls for."""

from collections.abc import Mapping, Sequence

from starlette.exceptions import HTTPException
from starlette.responses import Response

from paradestate.core.finding import Finding
from paradestate.core.holdings import Staged, all_stages
from paradestate.core.journal import JournalState
from paradestate.core.journal_entry import EntryKind
from paradestate.core.log_finding import unwritten
from paradestate.core.log_request import LogRequest
from paradestate.core.log_slip import OPTIONS
from paradestate.core.sentence.journal import entry_words
from paradestate.core.sentence.wording import day_words
from paradestate.journeys.choosing import number_of
from paradestate.journeys.holdings import holdings
from paradestate.journeys.log import Logged, log
from paradestate.web.log_form import field, figures_said, head_said, new_id, numbers_said
from paradestate.web.visit import Visit

KINDS: Mapping[EntryKind, str] = {
    EntryKind.MOVED: "brought on from one stage to another",
    EntryKind.SESSION: "worked at the bench, with its minutes",
    EntryKind.COUNTED: "how many there really are",
    EntryKind.RECEIVED: "came without an order: a gift, second hand",
    EntryKind.LENT: "away for a while, still owned",
    EntryKind.RETURNED: "back from being lent",
    EntryKind.LOST: "broken or gone",
    EntryKind.SOLD: "sold, swapped or given away",
    EntryKind.PROMISED: "to be there on a day to come",
    EntryKind.NOTED: "anything else worth remembering",
}
"""What can be written down here, in the order in which it is offered."""

OF_ALL = frozenset({EntryKind.COUNTED, EntryKind.RECEIVED, EntryKind.PROMISED})
"""Kinds of entry that may name figures of which none is held."""


def show(visit: Visit) -> Response:
    """The choice of what happened, or the form for it."""
    return _page(visit, kind=_kind(visit.query.get("kind", "")))


def write(visit: Visit) -> Response:
    """Writes the entry; where something is to be said of it the form says it."""
    kind = _kind(visit.form.text("kind"))
    if kind is None:
        raise HTTPException(400, "The form doesn't say what happened. Nothing was changed.")
    request, slips = _request(visit, kind=kind)
    if slips:
        return _page(visit, kind=kind, findings=slips, status=422)
    done = log(visit.folder, today=visit.today, request=request, memory=visit.memory)
    told = [found for found in done.findings if found.place.file == "command line"]
    if done.entry is None:
        return _page(visit, kind=kind, findings=done.findings, status=422)
    if told:
        return _page(visit, kind=kind, findings=told, done=done)
    return visit.back_to(f"holdings?written={done.entry.id}")


def _kind(word: str) -> EntryKind | None:
    return EntryKind(word) if word in set(KINDS) else None


def _request(visit: Visit, *, kind: EntryKind) -> tuple[LogRequest, tuple[Finding, ...]]:
    form, head = visit.form, head_said(visit)
    options = OPTIONS[kind]
    if kind is EntryKind.COUNTED:
        numbers, slips = numbers_said(form, "figures")
        figures: Mapping[str, int] = {names[0]: number for names, number in numbers.items()}
    else:
        figures, slips = figures_said(form, "figures")
    minutes, more = number_of(form.text("minutes"), of="Minutes")
    request = LogRequest(
        id=head.id,
        kind=kind,
        written=head.written,
        on=head.on,
        figures=figures if "figures" in options else {},
        from_stage=form.text("from") if "from" in options else "",
        to_stage=form.text("to") if "to" in options else "",
        stand=form.text("stand") if "stand" in options else "",
        minutes=minutes if "minutes" in options else None,
        note=form.text("note"),
    )
    return request, (*head.findings, *slips, *map(unwritten, more))


def _page(
    visit: Visit,
    *,
    kind: EntryKind | None,
    findings: Sequence[Finding] = (),
    done: Logged | None = None,
    status: int = 200,
) -> Response:
    answer = visit.counted()
    known = holdings(visit.folder, today=visit.today, memory=visit.memory)
    if answer.count is None or known.state is None:
        found = (*findings, *answer.checked.findings, *known.findings)
        return visit.page("stopped.html", status=status, title="Holdings", found=found)
    force = answer.count.force
    piles = {} if kind is None else _piles(known.state, kind=kind, kinds=tuple(force.figures))
    return visit.page(
        "holding_log.html",
        status=status,
        kind=kind,
        kinds=KINDS,
        options=frozenset() if kind is None else OPTIONS[kind],
        piles=piles,
        stages=all_stages(piles, usual=force.bench.stages),
        goals=force.bench.stages,
        stands=[each.name for each in answer.count.made.stands if each.figures],
        findings_here=findings,
        done=done,
        said={} if done is not None else visit.form.texts,
        entry=visit.form.text("entry") if status != 200 else new_id(),  # noqa: PLR2004 - 200: fine
        field=field,
        words={"entry": entry_words, "day": day_words},
    )


def _piles(state: JournalState, *, kind: EntryKind, kinds: Sequence[str]) -> Staged:
    """Kind to what of it there is by stage, for the kinds that such an entry may name."""
    there = state.lent.figures if kind is EntryKind.RETURNED else state.held.figures
    if kind in OF_ALL:
        return {name: there.get(name, {}) for name in dict.fromkeys((*kinds, *there))}
    return there
