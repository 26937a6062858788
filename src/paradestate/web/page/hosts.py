"""Hosts: which platoon each weapon section of a plan goes with, moved by hand, worths put in."""

from collections.abc import Mapping, Sequence
from dataclasses import replace

from starlette.responses import Response

from paradestate.core.finding import Finding, Level, stops
from paradestate.core.force import Force
from paradestate.core.sentence.wording import capital, several
from paradestate.core.support.attachment import Attaching
from paradestate.journeys.attach import worth_sheet, worths_read
from paradestate.journeys.check import checked
from paradestate.web.choosing.question import for_the_page
from paradestate.web.hosts.place_worth import (
    MOST_IN_BOX,
    Worths,
    address_text,
    mark_of,
    of_sheet,
    too_long,
    worths_of_address,
    worths_typed,
)
from paradestate.web.hosts.question import HostsQuestion, hosts_question
from paradestate.web.hosts.view import Looked, hosts_view, looked
from paradestate.web.page.choosing import with_game
from paradestate.web.page_kind import Page
from paradestate.web.visit import Visit

UNPROCESSABLE = 422
SHEET = "worths.csv"


def show(visit: Visit) -> Response:
    """The plan's sections with their hosts, as the address has them moved."""
    return _page(visit, hosts_question(visit.query))


def take(visit: Visit) -> Response:
    """Worths put in by boxes or by a sheet; the address then says them."""
    made = _looked(visit, hosts_question(visit.form.texts))
    if made is None or made.question is None:
        return _page(visit, hosts_question(visit.form.texts))
    said = _said(visit, made, question=made.question)
    text = address_text(made.question, said.worths)
    said = replace(said, findings=(*said.findings, *too_long(text)))
    asked = made.asked.with_worths(text, of=mark_of(made.question))
    if said.findings:
        after = made.asked if stops(said.findings) else asked
        return _page(visit, after, said=said)
    return visit.back_to(f"hosts{asked.query}#board")


def _said(visit: Visit, made: Looked, *, question: Attaching) -> Worths:
    """The worths of the sheet that was sent; where none was, those of the boxes."""
    upload = visit.form.file("file")
    if upload is None:
        return worths_typed(question, visit.form.texts)
    entries = made.answer.checked.force.supporting_troops
    return of_sheet(worths_read(upload.data, file=upload.name, question=question, entries=entries))


def sheet(visit: Visit) -> Response:
    """The worths of every section and place as a sheet to be filled in."""
    made = _looked(visit, hosts_question(visit.query))
    if made is None or made.question is None:
        return show(visit)
    said = worths_of_address(made.question, text=made.asked.worths, of=made.asked.of)
    data = worth_sheet(replace(made.question, worths=said.worths))
    return visit.with_cookie(
        Response(
            data,
            media_type="text/csv",
            headers={"content-disposition": f'attachment; filename="{SHEET}"'},
        )
    )


def _looked(visit: Visit, asked: HostsQuestion) -> Looked | None:
    """The question looked into; None where the force has nothing to attach."""
    read = checked(visit.folder, today=visit.today, memory=visit.memory)
    if read.is_stopped or not _has_any(read.force):
        return None
    return looked(visit, replace(asked, asked=with_game(asked.asked, read.force)))


def _has_any(force: Force) -> bool:
    """Whether the force plays a game, and has an entry that may be attached."""
    entries = force.supporting_troops.values()
    return bool(force.games) and any(entry.attach is not None for entry in entries)


def _page(visit: Visit, asked: HostsQuestion, *, said: Worths | None = None) -> Response:
    read = checked(visit.folder, today=visit.today, memory=visit.memory)
    if read.is_stopped:
        return visit.page("stopped.html", title="Hosts", found=read.findings)
    made = _looked(visit, asked)
    if made is None:
        return visit.page("hosts_nothing.html", force=read.force)
    view = hosts_view(visit, made, said=said)
    found = made.answer.checked.findings if view is None else made.found.checked.findings
    mine = (*made.findings, *(view.findings if view else ()))
    every = for_the_page(tuple(dict.fromkeys((*mine, *found))))
    halting = stops(every)
    return visit.page(
        "hosts.html",
        status=UNPROCESSABLE if halting else 200,
        force=read.force,
        asked=made.asked,
        fields=_carried(made.asked),
        view=view,
        stops=halting,
        doubts=_doubts(for_the_page(mine)),
        remarks=_doubts(for_the_page(tuple(each for each in found if each not in mine))),
        most_in_box=MOST_IN_BOX,
        several=several,
        capital=capital,
    )


def _doubts(found: Sequence[Finding]) -> tuple[Finding, ...]:
    return tuple(each for each in dict.fromkeys(found) if each.level is not Level.STOP)


def _carried(asked: HostsQuestion) -> Mapping[str, str]:
    """What the forms of the sheet send along, where nobody was moved."""
    return {name: text for name, text in asked.anew.fields.items() if text}


PAGE = Page(
    path="hosts",
    title="Hosts",
    show=show,
    actions={"worths": take},
    parts={SHEET: sheet},
)
"""What the sheet of hosts is made of: its board, its worths, and these as a file."""
