"""The list: what its author should know before others play by it, and what a change would do."""

from collections.abc import Mapping
from pathlib import Path

from starlette.responses import Response

from paradestate.core.finding import Finding, Level
from paradestate.core.sentence.chance import chance_words
from paradestate.core.sentence.wording import several
from paradestate.journeys.check import checked
from paradestate.journeys.order import Search
from paradestate.web.choosing.question import GRADE, for_the_page
from paradestate.web.page_kind import Page
from paradestate.web.proof.answer import Answered, Asker, answered
from paradestate.web.proof.question import BESIDE, Question, question
from paradestate.web.proof.view import ListView, list_view
from paradestate.web.search import RunningSearch, TooManySearchesError
from paradestate.web.visit import Visit

AT_ONCE = 2.0
"""Seconds that a page waits for an answer before it says that it is being worked out."""
SECONDS = 120.0
"""After so long nothing more is begun for one page."""
UNPROCESSABLE, BUSY = 422, 503
MOST_BOXES = 40
"""Numbers of an entry that its slip has boxes for."""


def show(visit: Visit) -> Response:
    """The proof of the list, and what is asked about it."""
    asked = question(visit.query)
    read = checked(visit.folder, today=visit.today, memory=visit.memory)
    if read.is_stopped:
        return visit.page("stopped.html", title="List", found=read.findings)
    force = read.force
    if not force.games or not force.supporting_troops:
        return visit.page("proof_nothing.html", force=force)
    if asked.findings:
        return _filled(visit, asked, found=asked.findings, status=UNPROCESSABLE)
    try:
        search = _search(visit, asked, rests_on=read)
    except TooManySearchesError as error:
        busy = f"{several(int(str(error)), 'search')} run already, and no more at once."
        return _filled(visit, asked, busy=busy, status=BUSY)
    if not search.wait(AT_ONCE):
        return _filled(visit, asked, search=search)
    return _answer(visit, asked, found=search.answer())


def _answer(visit: Visit, asked: Question, *, found: Answered) -> Response:
    """The page once everything is worked out."""
    made = found.proof
    view = None if made.proof is None else list_view(found, made.proof, asked=asked)
    said = (*found.stops, *made.checked.findings)
    is_stopped = view is None or bool(view.what_if and view.what_if.findings)
    return _filled(visit, asked, found=said, view=view, status=UNPROCESSABLE if is_stopped else 200)


def _search(visit: Visit, asked: Question, *, rests_on: object) -> RunningSearch[Answered]:
    """What answers the question: it runs, or has its answer, else it is begun."""
    beside = _versions(visit).get(asked.beside)
    asker = Asker(folder=visit.folder, today=visit.today, memory=visit.memory, beside=beside)
    if beside is not None:
        other = checked(beside, today=visit.today, memory=visit.memory)
        rests_on = visit.memory.kept(
            ("both versions", visit.folder, beside), object, rests_on=(rests_on, other)
        )

    def run(search: Search) -> Answered:
        return answered(asker, asked, search=search)

    key = ("list", visit.folder, tuple(sorted(asked.typed.items())))
    return visit.site.searches.begun(key, run, seconds=SECONDS, rests_on=rests_on)


def _versions(visit: Visit) -> Mapping[str, Path]:
    """The other forces of the folder that is served, any of which may be another version."""
    return {name: path for name, path in visit.site.forces().items() if name != visit.name}


def _filled(
    visit: Visit,
    asked: Question,
    *,
    found: tuple[Finding, ...] = (),
    view: ListView | None = None,
    search: RunningSearch[Answered] | None = None,
    busy: str = "",
    status: int = 200,
) -> Response:
    read = checked(visit.folder, today=visit.today, memory=visit.memory)
    said = for_the_page(tuple(dict.fromkeys(found)))
    versions = _versions(visit)
    return visit.page(
        "proof.html",
        status=status,
        force=read.force,
        asked=asked,
        view=view,
        found=said,
        stops=[each for each in said if each.level is Level.STOP],
        versions=tuple(versions),
        no_version=asked.beside if asked.beside not in versions else "",
        waited=None if search is None else several(int(search.state.seconds), "second"),
        busy=busy,
        several=several,
        chance=chance_words,
        grade_field=GRADE,
        beside_field=BESIDE,
        most_boxes=MOST_BOXES,
    )


PAGE = Page(path="list", title="List", show=show)
