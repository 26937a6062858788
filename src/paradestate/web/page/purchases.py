"""Purchases: what is lacking, the cheapest way to get it, and in which months to pay for it."""

from collections.abc import Sequence
from fractions import Fraction

from starlette.exceptions import HTTPException
from starlette.responses import JSONResponse, Response, StreamingResponse

from paradestate.core.choice import Choice
from paradestate.core.finding import Finding
from paradestate.core.force import Aim, Force
from paradestate.core.outline import decimal_text
from paradestate.core.sentence.journal import entry_words
from paradestate.core.sentence.wording import day_words, several
from paradestate.journeys.aiming import (
    AimingAnswer,
    aim_anew,
    put_aim_back,
)
from paradestate.journeys.choosing import choice_of, money_of
from paradestate.journeys.count import Count, CountAnswer, count
from paradestate.journeys.document import finding_document
from paradestate.journeys.order import OrderJourney, gaps_of, order_of
from paradestate.journeys.order_document import order_document
from paradestate.journeys.rewriting import ChangedSinceError, kept_names
from paradestate.web.log_form import new_id
from paradestate.web.page_kind import Page
from paradestate.web.purchase.ending import is_cut_short, is_not_computed
from paradestate.web.purchase.lead import lacking_words
from paradestate.web.purchase.ordering import order_told, placed
from paradestate.web.purchase.progress import events_of, progress_of
from paradestate.web.purchase.question import (
    LONGEST_SECONDS,
    SOURCE,
    USUAL_SECONDS,
    Question,
    for_the_page,
    question,
)
from paradestate.web.purchase.view import OrderView, bars_of, order_view
from paradestate.web.search import RunningSearch, TooManySearchesError
from paradestate.web.visit import Visit

AT_ONCE = 0.25
"""Seconds that a page waits for a search before it shows how far that is."""
A_MOMENT = 2.0
"""Seconds that a program waits for it, and a page for one that was told to stop."""
UNPROCESSABLE, BUSY, UNDER_WAY = 422, 503, 202
OPTIONS = {
    "stand-ins": "Bought figures may stand in",
    "fewest-left-over": "As few left over as can be",
    "one-parcel": "One parcel",
    "soonest": "As soon as can be",
}
TOLD = ("aimed", "undone", "gone", "ordered")
"""Words of an address that say what was written down."""
SECONDS = (10, USUAL_SECONDS, 300, LONGEST_SECONDS)


def show(visit: Visit) -> Response:
    """The order of what is lacking, or how far the search for it is."""
    return _page(visit, question(visit.query))


def _page(
    visit: Visit, asked: Question, *, status: int = 200, found: Sequence[Finding] = ()
) -> Response:
    """The page for a question, with findings about what was sent."""
    counted = _counted(visit)
    if counted.count is None:
        return visit.page("stopped.html", title="Purchases", found=counted.checked.findings)
    if asked.findings:
        return _without_order(
            visit, counted.count, asked=asked, found=(*asked.findings, *found), status=UNPROCESSABLE
        )
    try:
        search = _search(visit, counted, asked=asked)
    except TooManySearchesError as error:
        busy = f"{several(int(str(error)), 'search')} run already, and no more at once."
        return _without_order(
            visit, counted.count, asked=asked, found=tuple(found), status=BUSY, busy=busy
        )
    if not search.wait(AT_ONCE):
        return _without_order(
            visit, counted.count, asked=asked, found=tuple(found), status=status, search=search
        )
    journey = search.answer()
    view = order_view(counted.count, journey, question=asked, today=visit.today)
    plan_found = view.plan.findings if view else ()
    every = (*found, *journey.checked.findings, *plan_found)
    if view is None:
        return _without_order(
            visit, counted.count, asked=asked, found=every, status=status, ended=search
        )
    return _filled(
        visit,
        counted.count,
        asked=asked,
        status=status,
        found=every,
        view=view,
        ended=search,
        bars=view.bars,
    )


def _without_order(
    visit: Visit,
    counted: Count,
    *,
    asked: Question,
    found: tuple[Finding, ...],
    status: int,
    search: RunningSearch[OrderJourney] | None = None,
    ended: RunningSearch[OrderJourney] | None = None,
    busy: str = "",
) -> Response:
    """The page with what is lacking only: there is no order, or not yet."""
    gaps = gaps_of(counted, request=asked.request, bought=None)
    return _filled(
        visit,
        counted,
        asked=asked,
        status=status,
        found=found,
        bars=bars_of(gaps),
        search=search,
        ended=ended,
        busy=busy,
    )


def _filled(
    visit: Visit,
    counted: Count,
    *,
    asked: Question,
    status: int,
    found: tuple[Finding, ...],
    bars: object,
    view: OrderView | None = None,
    search: RunningSearch[OrderJourney] | None = None,
    ended: RunningSearch[OrderJourney] | None = None,
    busy: str = "",
) -> Response:
    gaps = gaps_of(counted, request=asked.request, bought=None)
    force = counted.force
    return visit.page(
        "purchases.html",
        status=status,
        asked=asked,
        found=for_the_page(found),
        bars=bars,
        view=view,
        lacking=lacking_words(gaps),
        number=several(sum(max(0, gap.lack) for gap in gaps), "figure"),
        search=search,
        here=f"purchases{asked.query(**_told(visit))}",
        progress=progress_of(search) if search else None,
        ended=ended,
        is_cut_short=is_cut_short(ended),
        busy=busy,
        no_order="not computed" if busy or is_not_computed(found) else "none exists",
        options=OPTIONS,
        seconds=SECONDS,
        source_field=SOURCE,
        sources=tuple(force.sources),
        aim=_aim_texts(force),
        kept=kept_names(visit.folder, visit.query.get("aimed", "")),
        was_put_back="undone" in visit.query,
        comment_gone="gone" in visit.query,
        ordered=order_told(visit),
        new_id=new_id,
        words={"entry": entry_words, "day": day_words},
        day_field="Ordered on",
    )


def _told(visit: Visit) -> dict[str, str]:
    """What the address says that was done, so that it is still said once a search has ended."""
    return {word: visit.query.get(word, "") for word in TOLD}


def _aim_texts(force: Force) -> dict[str, str]:
    """The aim as its form is filled in."""
    aim = force.aim or Aim()
    return {
        "deadline": str(aim.deadline or ""),
        "a month": decimal_text(aim.a_month) if aim.a_month else "",
        "text": aim.text,
    }


def _counted(visit: Visit) -> CountAnswer:
    """The force with what is away, as an order counts it."""
    return count(
        visit.folder,
        today=visit.today,
        choice=Choice(),
        lent_too=True,
        ordered_too=True,
        memory=visit.memory,
    )


def _search(visit: Visit, counted: CountAnswer, *, asked: Question) -> RunningSearch[OrderJourney]:
    """The search of a question; it joins the one that runs for the same."""
    return visit.site.searches.begun(
        (visit.folder, repr(asked.request), asked.seconds),
        lambda search: order_of(counted, request=asked.request, search=search),
        seconds=asked.seconds,
        rests_on=counted,
    )


def order_json(visit: Visit) -> Response:
    """The order for programs; while it is looked for, how far that is."""
    asked, counted = question(visit.query), _counted(visit)
    if counted.count is None or asked.findings:
        return _refused_json((*counted.checked.findings, *asked.findings))
    try:
        search = _search(visit, counted, asked=asked)
    except TooManySearchesError:
        return JSONResponse(
            {"certainty": "not computed"}, status_code=BUSY, headers={"retry-after": "5"}
        )
    if not search.wait(A_MOMENT):
        known = {"certainty": "not computed", **progress_of(search)}
        return JSONResponse(known, status_code=UNDER_WAY, headers={"retry-after": "2"})
    journey = search.answer()
    if journey.answer is None:
        return _refused_json(journey.checked.findings)
    return JSONResponse(order_document(journey))


def _refused_json(found: Sequence[Finding]) -> Response:
    documents = [finding_document(each) for each in found]
    return JSONResponse({"findings": documents}, status_code=UNPROCESSABLE)


def progress(visit: Visit) -> Response:
    """The events of a search."""
    search = visit.site.searches.found(visit.query.get("search", ""))
    if search is None:
        raise HTTPException(404, "This search has ended, and its answer isn't kept any more.")
    return StreamingResponse(events_of(search), media_type="text/event-stream")


def stop(visit: Visit) -> Response:
    """Ends a search with the best so far."""
    search = visit.site.searches.found(visit.form.text("search"))
    if search is not None:
        search.stop()
        search.wait(A_MOMENT)
    return _to(visit, question(visit.form.texts))


def again(visit: Visit) -> Response:
    """Looks anew for what was looked for, as if it had never been."""
    visit.site.searches.forget(visit.form.text("search"))
    return _to(visit, question(visit.form.texts))


def aim(visit: Visit) -> Response:
    """Writes the deadline and the money a month into the folder."""
    form, asked = visit.form, question(visit.form.texts)
    choice, findings = choice_of(date=form.text("deadline"))
    a_month, more = money_of(form.text("a-month"))
    if findings or more:
        return _page(visit, asked, status=UNPROCESSABLE, found=(*findings, *more))
    answer = aim_anew(
        visit.folder,
        today=visit.today,
        at=visit.now,
        deadline=choice.date,
        a_month=a_month if a_month is None else Fraction(a_month),
    )
    return _aimed(visit, asked, answer=answer)


def ordered(visit: Visit) -> Response:
    """Writes down that a slip was ordered."""
    asked = question(visit.form.texts)
    entry, found = placed(visit)
    if entry is None:
        return _page(visit, asked, status=UNPROCESSABLE, found=found)
    return _to(visit, asked, ordered=entry.id)


def aim_back(visit: Visit) -> Response:
    """Puts the version from before the last change of the aim back."""
    asked = question(visit.form.texts)
    try:
        answer = put_aim_back(
            visit.folder, today=visit.today, at=visit.now, former=visit.form.text("former")
        )
    except ChangedSinceError:
        raise HTTPException(
            409,
            "The file was changed again since, so nothing was put back. Its former versions are "
            "kept: see Files.",
        ) from None
    return _aimed(visit, asked, answer=answer, undone="yes")


def _aimed(visit: Visit, asked: Question, *, answer: AimingAnswer, undone: str = "") -> Response:
    if answer.checked.is_stopped:
        return _page(visit, asked, status=UNPROCESSABLE, found=answer.checked.findings)
    if answer.aimed is None:
        return _to(visit, asked)
    gone = "yes" if answer.aimed.comments_gone else ""
    return _to(visit, asked, aimed=answer.aimed.former.name, undone=undone, gone=gone)


def _to(visit: Visit, asked: Question, **told: str) -> Response:
    return visit.back_to(f"purchases{asked.query(**told)}")


PAGE = Page(
    path="purchases",
    title="Purchases",
    in_bar=True,
    show=show,
    actions={"stop": stop, "again": again, "aim": aim, "aim-back": aim_back, "ordered": ordered},
    parts={"order.json": order_json, "progress": progress},
)
