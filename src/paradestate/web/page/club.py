"""Club: who plays when with what, what is short and what mends it, boxes, and what is out."""

import datetime
from collections.abc import Callable, Mapping
from urllib.parse import urlencode

from starlette.exceptions import HTTPException
from starlette.responses import Response

from paradestate.core.club.booking import Club
from paradestate.core.club.week import monday_of, weeks_later
from paradestate.core.finding import Finding
from paradestate.core.sentence.wording import several
from paradestate.journeys.choosing import day_of
from paradestate.journeys.club import book_change as change
from paradestate.journeys.club.club_weeks import WEEKS, ClubWeeks, club_weeks
from paradestate.journeys.rewriting import ChangedSinceError, kept_names
from paradestate.sheet.texture import patterns
from paradestate.text.error import EditError
from paradestate.web.choosing.question import for_the_page
from paradestate.web.club.slip import way_out
from paradestate.web.club.view import club_view
from paradestate.web.page_kind import Page
from paradestate.web.visit import Visit

UNPROCESSABLE, CONFLICT = 422, 409
FROM = "from"
"""The field that says from which day's week on."""
NOT_ANY_MORE = (
    "The bookings have changed since this was offered, so nothing was written. Look at the sheet "
    "again: it says what is short now."
)


def show(visit: Visit) -> Response:
    """Some weeks from that of a day on; without one, from this week on."""
    typed = visit.query.get(FROM, "").strip()
    day, slips = day_of(typed)
    first = monday_of(day or visit.today)
    found = _found(visit, first)
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
        kept=kept_names(visit.folder, visit.query.get("written", "")),
        was_put_back="undone" in visit.query,
        comment_gone="gone" in visit.query,
        several=several,
    )


def mend(visit: Visit) -> Response:
    """Writes the change that puts a day right, if it still would."""
    day, _ = day_of(visit.form.text(FROM))
    first = monday_of(day or visit.today)
    with visit.site.writing:
        remedy = way_out(
            _found(visit, first), hours=visit.form.text("hours"), words=visit.form.text("way")
        )
        if remedy is None:
            raise HTTPException(CONFLICT, NOT_ANY_MORE)
        return _written(visit, lambda pen: change.mend(pen, remedy))


def back(visit: Visit) -> Response:
    """Writes down that a box is here again."""
    with visit.site.writing:
        return _written(visit, lambda pen: change.take_back(pen, visit.form.text("box")))


def put_back(visit: Visit) -> Response:
    """Puts the version from before the last change of the club back."""
    former = visit.form.text("former")
    with visit.site.writing:
        return _written(visit, lambda pen: change.put_club_back(pen, former), undone="yes")


def _found(visit: Visit, first: datetime.date) -> ClubWeeks:
    return club_weeks(visit.folder, today=visit.today, first=first, memory=visit.memory)


def _written(
    visit: Visit,
    write: Callable[[change.ClubPen], change.ClubWritten],
    *,
    undone: str = "",
) -> Response:
    try:
        answer = write(change.ClubPen(folder=visit.folder, today=visit.today, at=visit.now))
    except EditError as error:
        raise HTTPException(CONFLICT, str(error)) from None
    except ChangedSinceError:
        raise HTTPException(
            CONFLICT,
            "The file was changed since, so nothing was put back. Its former versions are kept: "
            "see Files.",
        ) from None
    if answer.written is None:
        return visit.page(
            "stopped.html", status=UNPROCESSABLE, title="Club", found=answer.checked.findings
        )
    gone = "yes" if answer.written.comments_gone else ""
    said = {
        FROM: visit.form.text(FROM),
        "written": answer.written.former.name,
        "undone": undone,
        "gone": gone,
    }
    query = urlencode({name: text for name, text in said.items() if text})
    return visit.back_to(f"club?{query}")


def _says_anything(club: Club) -> bool:
    return bool(club.bookings or club.boxes or club.loans)


def _said(found: tuple[Finding, ...]) -> tuple[Finding, ...]:
    return for_the_page(tuple(dict.fromkeys(found)))


def _steps(visit: Visit, first: datetime.date) -> Mapping[str, str]:
    """Where one can go from here: words to the end of an address."""
    ways = {"Earlier": weeks_later(first, -WEEKS), "Later": weeks_later(first, WEEKS)}
    return {
        words: visit.address(f"club?{FROM}={monday.isoformat()}")
        for words, monday in ways.items()
        if monday is not None
    }


PAGE = Page(
    path="club",
    title="Club",
    show=show,
    actions={"mend": mend, "back": back, "put-back": put_back},
)
