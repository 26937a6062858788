"""Papers: everything that is printed, as it prints, to be looked at and taken away.

What may be handed over is also shown at an address of its own, below no force: there one paper is
looked up by its digest on a shelf that holds nothing else, and nothing is worked out.
"""

import hashlib
from collections.abc import Hashable, Mapping
from dataclasses import replace
from fractions import Fraction
from pathlib import Path
from urllib.parse import quote

from starlette.exceptions import HTTPException
from starlette.responses import Response

from paradestate.core.choice import Choice
from paradestate.core.finding import stops
from paradestate.core.imposition.layout import TurnEdge
from paradestate.core.imposition.paper_size import SIZES, Stock
from paradestate.core.sentence.wording import several
from paradestate.journeys.count import Count, count
from paradestate.journeys.game.games import game_going_on
from paradestate.journeys.history import history
from paradestate.journeys.paper.every_paper import EVERY_PAPER
from paradestate.journeys.paper.game_meant import game_meant
from paradestate.journeys.paper.one_paper import HandedOver, OnePaper, one_paper
from paradestate.journeys.paper.paper_kind import PaperKind
from paradestate.journeys.paper.paper_use import Eyes
from paradestate.web.page_kind import Handler, Page
from paradestate.web.papers.bundle import bundle
from paradestate.web.papers.offered import Offered, offered
from paradestate.web.papers.press import Setting
from paradestate.web.papers.printer import printer_of, remember, remembered
from paradestate.web.papers.question import GRADE, NO_GAME, PapersQuestion, papers_question
from paradestate.web.papers.view import (
    MOST_SHOWN,
    SMALL,
    for_this_page,
    leaves,
    papers_view,
    size_of,
)
from paradestate.web.search import TooManySearchesError
from paradestate.web.visit import Visit

SHEET = "papers"
NOT_FOUND, NOT_CHANGED, UNPROCESSABLE, BUSY = 404, 304, 422, 503
AT_ONCE = 1.0
"""Seconds that the list waits for papers before it shows those that are set."""
FOR_ONE = 20.0
"""Seconds that a paper is waited for which is asked for by itself."""
HANDED_OVER = "/handed-over"
PDF, SVG, ZIP = "application/pdf", "image/svg+xml", "application/zip"
PRIVATELY = "private, no-cache"
"""A browser may keep it, and asks each time whether it is still the same."""


def show(visit: Visit) -> Response:
    """The list of papers, with those that are set by now."""
    return _listed(visit, _question(visit))


def paper(visit: Visit) -> Response:
    """One paper at full size."""
    question, kind = _question(visit), _kind(visit)
    made = _one(visit, question, kind=kind)
    if made is None:
        return _listed(visit, question)
    return visit.page(
        "paper.html",
        kind=kind,
        made=made,
        question=question,
        eyes=kind.eyes,
        leaves=leaves(made, question),
        found=for_this_page(made.findings),
        more=0 if made.sheet is None else max(0, len(made.sheet.printed.pictures) - MOST_SHOWN),
        several=several,
        size=question.asked.layout.size.name,
    )


def pdf(visit: Visit) -> Response:
    """The file of one paper."""
    question, kind = _question(visit), _kind(visit)
    made = _one(visit, question, kind=kind)
    if made is None:
        return visit.back_to(f"{SHEET}{question.query()}")
    if made.sheet is None:
        raise HTTPException(NOT_FOUND, f"There is nothing to print on '{kind.title}'.")
    sheet = made.sheet
    return _file(visit, sheet.printed.pdf, kind=PDF, name=sheet.file_name)


def picture(visit: Visit) -> Response:
    """One page of a paper as it is drawn on a screen."""
    kind = _kind(visit)
    made = _one(visit, _question(visit), kind=kind)
    if made is None:
        raise HTTPException(BUSY, "It is being set.", headers={"retry-after": "2"})
    drawn = () if made.sheet is None else made.sheet.printed.pictures
    return _file(visit, _page_of(drawn, visit.query.get("number", "")), kind=SVG)


def every(visit: Visit) -> Response:
    """All papers in one file, or those alone that may be handed over."""
    question = _question(visit)
    setting, _ = _setting(visit, question)
    if setting is None or not setting.wait(AT_ONCE):
        return visit.back_to(f"{SHEET}{question.query()}")
    is_for_others = visit.query.get("eyes") == Eyes.ANYBODY.name.lower()
    made = [each for each in _in_order(setting) if each.sheet is not None]
    if is_for_others:
        made = [each for each in made if each.kind.may_be_handed_over]
    if not made:
        raise HTTPException(NOT_FOUND, "There is nothing to print.")
    name = "papers-to-hand-over.zip" if is_for_others else f"{visit.name}-papers.zip"
    return _file(visit, bundle(made), kind=ZIP, name=name, is_kept=True)


def printer(visit: Visit) -> Response:
    """Has the browser remember what the printer makes of 100 mm."""
    said = printer_of(visit.form.texts)
    question = _question(visit)
    if said.findings:
        return _listed(visit, replace(question, printer=said, findings=said.findings))
    answer = visit.back_to(f"{SHEET}{question.query()}#printer")
    return remember(answer, said, is_secure=visit.request.url.scheme == "https")


PAGE = Page(
    path=SHEET,
    title="Papers",
    show=show,
    actions={"printer": printer},
    parts={"paper": paper, "pdf": pdf, "picture": picture, "all": every},
)


def handed_over(visit: Visit) -> Response:
    """A paper for the other side: on this page stands the paper, and nothing of the force."""
    shown = _on_shelf(visit)
    text = visit.site.templates.get_template("handed_over.html").render(
        shown=shown, here=f"{HANDED_OVER}/{shown.digest}"
    )
    return Response(text, media_type="text/html", headers={"cache-control": PRIVATELY})


def handed_over_pdf(visit: Visit) -> Response:
    """Its file."""
    shown = _on_shelf(visit)
    return _file(visit, shown.pdf, kind=PDF, name=shown.file_name)


def handed_over_picture(visit: Visit) -> Response:
    """One page of it."""
    drawn = _on_shelf(visit).pictures
    return _file(visit, _page_of(drawn, visit.request.path_params["page"]), kind=SVG)


SHELF: Mapping[str, Handler] = {
    f"{HANDED_OVER}/{{digest}}": handed_over,
    f"{HANDED_OVER}/{{digest}}/pdf": handed_over_pdf,
    f"{HANDED_OVER}/{{digest}}/pages/{{page}}": handed_over_picture,
}
"""The addresses of what may be handed over, below no force."""


def _on_shelf(visit: Visit) -> HandedOver:
    found = visit.site.press.shelf.found(visit.request.path_params["digest"])
    if found is None:
        raise HTTPException(NOT_FOUND, "That paper isn't laid out any more: open it anew.")
    return found


def _question(visit: Visit) -> PapersQuestion:
    return papers_question(
        visit.query,
        printer=remembered(visit.request.cookies),
        games=visit.counted().checked.force.games,
        sides=_sides(visit),
    )


def _sides(visit: Visit) -> Mapping[str, Path]:
    """The other forces that are served here."""
    forces = visit.site.forces()
    return {name: folder for name, folder in forces.items() if folder != visit.folder}


def _offered(visit: Visit, question: PapersQuestion, *, counted: Count) -> Offered:
    """What the form offers of a game."""
    meant = None
    if question.is_of_record:
        meant = game_meant(
            visit.folder,
            today=visit.today,
            choice=question.choice,
            asked=question.asked,
            memory=visit.memory,
        )
    going = game_going_on(visit.folder, today=visit.today, memory=visit.memory)
    return offered(counted, question, going=going, meant=meant, sides=_sides(visit))


def _rests_on(visit: Visit, question: PapersQuestion, *, key: Hashable) -> object:
    """What a setting rests on: this force, the other side, and the journal of a game."""
    other, newest = None, ""
    if question.asked.other is not None:
        other = count(question.asked.other, today=visit.today, choice=Choice(), memory=visit.memory)
    if question.is_of_record:
        past = history(visit.folder, today=visit.today, last=1, memory=visit.memory)
        newest = next((each.id for each in past.entries), "")
    counted = visit.counted(question.choice)
    return visit.memory.kept(
        ("papers rest on", key, newest), lambda: (counted, other), rests_on=(counted, other)
    )


def _kind(visit: Visit) -> PaperKind:
    name = visit.query.get("name", "")
    found = next((kind for kind in EVERY_PAPER if kind.name == name), None)
    if found is None:
        raise HTTPException(NOT_FOUND, "No paper is called so.")
    return found


def _setting(visit: Visit, question: PapersQuestion) -> tuple[Setting | None, str]:
    """The papers as far as they are set, and why they aren't being set now."""
    counted = visit.counted(question.choice)
    if question.findings or counted.count is None:
        return None, ""

    def make(kind: PaperKind) -> OnePaper:
        return one_paper(
            kind,
            visit.folder,
            today=visit.today,
            choice=question.choice,
            asked=question.asked,
            memory=visit.memory,
        )

    press = visit.site.press
    key = ("papers", visit.folder, visit.today, question.key)
    setting = press.setting(
        key, kinds=EVERY_PAPER, make=make, rests_on=_rests_on(visit, question, key=key)
    )
    try:
        press.set_on(setting, key=("papers", visit.folder), searches=visit.site.searches)
    except TooManySearchesError as error:
        return setting, f"{several(int(str(error)), 'search')} run already, and no more at once."
    return setting, ""


def _one(visit: Visit, question: PapersQuestion, *, kind: PaperKind) -> OnePaper | None:
    setting, _ = _setting(visit, question)
    return None if setting is None else setting.waited_for(kind.name, seconds=FOR_ONE)


def _in_order(setting: Setting) -> list[OnePaper]:
    done = setting.done
    return [done[kind.name] for kind in EVERY_PAPER if kind.name in done]


def _listed(visit: Visit, question: PapersQuestion) -> Response:
    counted = visit.counted()
    read = counted.checked
    if counted.count is None:
        return visit.page("stopped.html", title="Papers", found=read.findings)
    setting, busy = _setting(visit, question)
    if setting is not None:
        setting.wait(AT_ONCE)
    found = question.findings or visit.counted(question.choice).checked.findings
    halting = stops(found)
    view = None if setting is None else papers_view(setting, question)
    is_refused = bool(halting) or bool(view and view.of_question)
    return visit.page(
        "papers.html",
        status=UNPROCESSABLE if is_refused else 200,
        force=read.force,
        question=question,
        view=view,
        setting=None if setting is None or setting.is_whole else setting,
        busy=busy,
        stops=for_this_page(halting),
        papers={each.value: SIZES[each].name for each in Stock},
        turns={each.value: f"about the {each.value} edge" for each in TurnEdge},
        no_game=NO_GAME,
        offered=_offered(visit, question, counted=counted.count),
        grade_field=GRADE,
        blank=size_of(question.asked.layout, share=Fraction(1, SMALL)),
        handed_over=HANDED_OVER,
        several=several,
    )


def _page_of(drawn: tuple[bytes, ...], text: str) -> bytes:
    """A page by its number. Raises HTTPException where there is none."""
    number = int(text) if text.isascii() and text.isdecimal() and len(text) <= len("999") else 0
    if not 0 < number <= min(len(drawn), MOST_SHOWN):
        raise HTTPException(NOT_FOUND, "There is no such page.")
    return drawn[number - 1]


def _file(
    visit: Visit, data: bytes, *, kind: str, name: str = "", is_kept: bool = False
) -> Response:
    """A file, unless the browser has the very same already.

    With a name it is shown under that, or with `is_kept` put among what was downloaded.
    """
    tag = f'W/"{hashlib.sha256(data).hexdigest()}"'
    headers = {"etag": tag, "cache-control": PRIVATELY}
    if name:
        how = "attachment" if is_kept else "inline"
        headers["content-disposition"] = f"{how}; filename*=UTF-8''{quote(name, safe='')}"
    known = visit.request.headers.get("if-none-match", "")
    if tag in (each.strip() for each in known.split(",")):
        return Response(status_code=NOT_CHANGED, headers=headers)
    return Response(data, media_type=kind, headers=headers)
