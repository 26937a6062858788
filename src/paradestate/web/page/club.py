"""Club: who plays when with what, what is short and what mends it, boxes, and what is out."""

import datetime
from collections.abc import Mapping

from starlette.responses import Response

from paradestate.core.club.booking import Club
from paradestate.core.club.week import monday_of, weeks_later
from paradestate.core.finding import Finding, stops
from paradestate.core.sentence.wording import several
from paradestate.journeys.choosing import day_of
from paradestate.journeys.club_weeks import WEEKS, club_weeks
from paradestate.sheet.texture import patterns
from paradestate.web.choosing.question import for_the_page
from paradestate.web.club.view import club_view
from paradestate.web.page_kind import Page
from paradestate.web.visit import Visit

UNPROCESSABLE = 422
FROM = "from"
"""The field that says from which day's week on."""


def show(visit: Visit) -> Response:
    """Some weeks from that of a day on; without one, from this week on."""
    typed = visit.query.get(FROM, "").strip()
    day, slips = day_of(typed)
    first = monday_of(day or visit.today)
    found = club_weeks(visit.folder, today=visit.today, first=first, memory=visit.memory)
    answer = found.answer
    if answer.stock is None:
        return visit.page("stopped.html", title="Club", found=answer.findings)
    if not _says_anything(answer.club):
        return visit.page("club_nothing.html")
    view = club_view(found, today=visit.today)
    return visit.page(
        "club.html",
        status=UNPROCESSABLE if slips else 200,
        view=view,
        slips=slips,
        typed=typed,
        first=first,
        steps=_steps(visit, first),
        is_this_week=first == monday_of(visit.today),
        doubts=_said(view.doubts),
        remarks=_said(view.remarks),
        patterns=patterns(()),
        several=several,
    )


def _says_anything(club: Club) -> bool:
    return bool(club.bookings or club.boxes or club.loans)


def _said(found: tuple[Finding, ...]) -> tuple[Finding, ...]:
    every = for_the_page(tuple(dict.fromkeys(found)))
    return tuple(each for each in every if each not in stops(every))


def _steps(visit: Visit, first: datetime.date) -> Mapping[str, str]:
    """Where one can go from here: words to the end of an address."""
    ways = {"Earlier": weeks_later(first, -WEEKS), "Later": weeks_later(first, WEEKS)}
    return {
        words: visit.address(f"club?{FROM}={monday.isoformat()}")
        for words, monday in ways.items()
        if monday is not None
    }


PAGE = Page(path="club", title="Club", show=show)
