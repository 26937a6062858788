"""Next: which purchase, or which hours at the bench, add most to the games to come."""

from starlette.exceptions import HTTPException
from starlette.responses import Response, StreamingResponse

from paradestate.core.certainty import NotComputed
from paradestate.core.finding import Finding, Level
from paradestate.core.force import Force
from paradestate.core.sentence.wording import several
from paradestate.journeys.count import CountAnswer
from paradestate.journeys.next import NextAnswer, NextAsked, NextFound, games_played, what_next
from paradestate.web.choosing.question import for_the_page
from paradestate.web.next.progress import progress_of
from paradestate.web.next.question import GRADE, SECONDS, Question, question, usual_text
from paradestate.web.next.view import next_view
from paradestate.web.page_kind import Page
from paradestate.web.purchase.progress import events_of
from paradestate.web.search import RunningSearch, TooManySearchesError
from paradestate.web.visit import Visit

AT_ONCE = 0.25
"""Seconds that a page waits for a search before it shows how far that is."""
A_MOMENT = 2.0
"""Seconds that a page waits for one that was told to stop."""
UNPROCESSABLE, BUSY = 422, 503


def show(visit: Visit) -> Response:
    """What to get next, or how far the search for it is."""
    asked = question(visit.query)
    counted = visit.counted()
    if counted.count is None:
        return visit.page("stopped.html", title="Next", found=counted.checked.findings)
    force = counted.checked.force
    if not force.games or not force.supporting_troops:
        return visit.page("next_nothing.html", force=force)
    wanted = asked.asked(force)
    if asked.findings or wanted is None:
        return _filled(visit, force, asked=asked, found=asked.findings)
    try:
        search = _search(visit, counted, asked=asked, wanted=wanted)
    except TooManySearchesError as error:
        busy = f"{several(int(str(error)), 'search')} run already, and no more at once."
        return _filled(visit, force, asked=asked, busy=busy)
    if not search.wait(AT_ONCE):
        return _filled(visit, force, asked=asked, search=search)
    answer = search.answer()
    found = answer.checked.findings
    return _filled(visit, force, asked=asked, found=found, answer=answer, ended=search)


def _search(
    visit: Visit, counted: CountAnswer, *, asked: Question, wanted: NextAsked
) -> RunningSearch[NextAnswer]:
    """The search of a question; it joins the one that runs for the same."""
    counts = games_played(visit.folder, today=visit.today, memory=visit.memory)
    played = repr(sorted(counts.items()))
    return visit.site.searches.begun(
        ("next", visit.folder, repr(wanted), repr(asked.choice), repr(asked.grades), played),
        lambda search: what_next(
            visit.folder,
            today=visit.today,
            choice=asked.choice,
            grades=asked.grades,
            asked=wanted,
            memory=visit.memory,
            stop=search.stop,
        ),
        seconds=wanted.seconds,
        rests_on=counted,
    )


def _filled(
    visit: Visit,
    force: Force,
    *,
    asked: Question,
    found: tuple[Finding, ...] = (),
    answer: NextAnswer | None = None,
    search: RunningSearch[NextAnswer] | None = None,
    ended: RunningSearch[NextAnswer] | None = None,
    busy: str = "",
) -> Response:
    advised = answer.found if answer else None
    said = for_the_page(tuple(dict.fromkeys(found)))
    stops = [each for each in said if each.level is Level.STOP]
    return visit.page(
        "next.html",
        status=UNPROCESSABLE if stops else BUSY if busy else 200,
        force=force,
        asked=asked,
        found=said,
        stops=stops,
        view=next_view(advised, force=force, asked=asked)
        if isinstance(advised, NextFound)
        else None,
        refused=advised.reason if isinstance(advised, NotComputed) else "",
        search=search,
        ended=ended,
        progress=progress_of(search) if search else None,
        busy=busy,
        here=f"next{asked.query()}",
        usual={word: usual_text(force, is_hours=word == "hours") for word in ("money", "hours")},
        seconds=SECONDS,
        grade_field=GRADE,
        several=several,
    )


def progress(visit: Visit) -> Response:
    """The events of a search."""
    search = visit.site.searches.found(visit.query.get("search", ""))
    if search is None:
        raise HTTPException(404, "This search has ended, and its answer isn't kept any more.")
    return StreamingResponse(events_of(search, told=progress_of), media_type="text/event-stream")


def stop(visit: Visit) -> Response:
    """Ends a search with the best so far."""
    search = visit.site.searches.found(visit.form.text("search"))
    if search is not None:
        search.stop()
        search.wait(A_MOMENT)
    return visit.back_to(f"next{question(visit.form.texts).query()}")


def again(visit: Visit) -> Response:
    """Looks anew for what was looked for, as if it had never been."""
    visit.site.searches.forget(visit.form.text("search"))
    return visit.back_to(f"next{question(visit.form.texts).query()}")


PAGE = Page(
    path="next",
    title="Next",
    show=show,
    actions={"stop": stop, "again": again},
    parts={"progress": progress},
)
