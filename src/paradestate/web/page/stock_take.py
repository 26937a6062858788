"""Stock-taking: the sheet to count on, the same as a form, and spreadsheets out and in."""

from collections.abc import Mapping, Sequence

from starlette.exceptions import HTTPException
from starlette.responses import Response

from paradestate.core.finding import Finding
from paradestate.core.holdings import all_stages
from paradestate.core.journal_entry import EntryKind
from paradestate.core.log_request import LogRequest
from paradestate.core.sentence.wording import day_words, several
from paradestate.journeys.holdings import holdings
from paradestate.journeys.log import log
from paradestate.journeys.paper.stock_sheet import Proposal, accepted, proposed, stock_sheet
from paradestate.journeys.spreadsheet import CannotWriteError
from paradestate.web.log_form import field, head_said, new_id, staged_said
from paradestate.web.visit import Visit

KINDS_OF_FILE = {
    ".xlsx": "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet",
    ".ods": "application/vnd.oasis.opendocument.spreadsheet",
    ".csv": "text/csv; charset=utf-8",
}
"""Ending to media type (IANA)."""


def show(visit: Visit) -> Response:
    """The sheet, to be printed or filled in here."""
    return _sheet(visit)


def write(visit: Visit) -> Response:
    """Writes the boxes that are filled in as one count."""
    request, slips = _request(visit, word="counted")
    if slips:
        return _sheet(visit, findings=slips, said=visit.form.texts, status=422)
    done = log(visit.folder, today=visit.today, request=request, memory=visit.memory)
    if done.entry is None:
        return _sheet(visit, findings=done.findings, said=visit.form.texts, status=422)
    return visit.back_to(f"holdings?written={done.entry.id}")


def _request(visit: Visit, *, word: str) -> tuple[LogRequest, tuple[Finding, ...]]:
    head = head_said(visit)
    staged, slips = staged_said(visit.form, word)
    request = LogRequest(
        id=head.id,
        kind=EntryKind.COUNTED,
        written=head.written,
        on=head.on,
        staged=staged,
        note=visit.form.text("note"),
    )
    return request, (*head.findings, *slips)


def _sheet(
    visit: Visit,
    *,
    findings: Sequence[Finding] = (),
    said: Mapping[str, str] | None = None,
    status: int = 200,
) -> Response:
    known = holdings(visit.folder, today=visit.today, memory=visit.memory)
    answer = visit.counted()
    if known.state is None or answer.count is None:
        found = (*findings, *known.findings, *answer.checked.findings)
        return visit.page("stopped.html", status=status, title="Stock-take", found=found)
    force, held = answer.count.force, known.state.held.figures
    return visit.page(
        "stock_take.html",
        day_field="Counted on",
        status=status,
        title=force.title,
        kinds=tuple(dict.fromkeys((*force.figures, *held))),
        stages=all_stages(held, usual=force.bench.stages),
        held=held,
        stands=known.state.held.stands,
        findings_here=findings,
        said=said or {},
        entry=visit.form.text("entry") or new_id(),
        field=field,
        day=day_words(visit.today),
    )


def spreadsheet(visit: Visit) -> Response:
    """What is held as a file, or without a choice of its form the page to send one back on."""
    ending = visit.query.get("as", "")
    if not ending:
        return _spreadsheet(visit)
    try:
        data = stock_sheet(visit.folder, today=visit.today, ending=ending, memory=visit.memory)
    except CannotWriteError as error:
        raise HTTPException(400, str(error)) from error
    if data is None:
        return show(visit)
    return visit.with_cookie(
        Response(
            data,
            media_type=KINDS_OF_FILE[ending],
            headers={"content-disposition": f'attachment; filename="stock{ending}"'},
        )
    )


def look(visit: Visit) -> Response:
    """What a spreadsheet would change, before anything is written."""
    upload = visit.form.file("file")
    if upload is None:
        return _spreadsheet(visit, told="No file was chosen.", status=422)
    proposal = proposed(
        visit.folder,
        today=visit.today,
        data=upload.data,
        file=upload.name,
        memory=visit.memory,
    )
    status = 422 if proposal.is_stopped else 200
    return _spreadsheet(visit, proposal=proposal, file=upload.name, status=status)


def accept(visit: Visit) -> Response:
    """Writes what was looked at, unless something else was written meanwhile."""
    request, slips = _request(visit, word="becomes")
    was, more = staged_said(visit.form, "was")
    if slips or more:
        return _spreadsheet(visit, findings=(*slips, *more), status=422)
    done = accepted(visit.folder, today=visit.today, request=request, was=was, memory=visit.memory)
    if done.entry is None:
        return _spreadsheet(visit, findings=done.findings, status=422)
    return visit.back_to(f"holdings?written={done.entry.id}")


def _spreadsheet(
    visit: Visit,
    *,
    proposal: Proposal | None = None,
    file: str = "",
    findings: Sequence[Finding] = (),
    told: str = "",
    status: int = 200,
) -> Response:
    return visit.page(
        "stock_sheet.html",
        day_field="Counted on",
        status=status,
        proposal=proposal,
        file=file,
        findings_here=(*findings, *(proposal.findings if proposal else ())),
        told=told,
        entry=new_id(),
        field=field,
        endings=tuple(KINDS_OF_FILE),
        several=several,
    )
