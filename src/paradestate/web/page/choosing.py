"""Choosing: what to ask for first in a game, what then, and whether a plan is legal and likely."""

from dataclasses import replace

from starlette.responses import Response

from paradestate.core.finding import Finding, Level
from paradestate.core.force import Force
from paradestate.core.sentence.chance import chance_words
from paradestate.core.sentence.wording import several
from paradestate.journeys.check import checked
from paradestate.journeys.game_plan import write_plan
from paradestate.journeys.terms import GameTerms, game_terms
from paradestate.sheet.long_number import number_words
from paradestate.web.choosing.question import GRADE, Question, for_the_page, question
from paradestate.web.choosing.view import choosing_view
from paradestate.web.page import entry_rows
from paradestate.web.page_kind import Page
from paradestate.web.visit import Visit

UNPROCESSABLE = 422
WRITTEN = "written"
"""Word of the address that says into which file the plan was written."""


def show(visit: Visit) -> Response:
    """What may be asked for in a game, and everything about the plan in the address."""
    return _page(visit, question(visit.query))


def write(visit: Visit) -> Response:
    """Writes the plan into the folder, as that of its game."""
    asked = question(visit.form.texts)
    read = checked(visit.folder, today=visit.today, memory=visit.memory)
    plan, findings = asked.plan(entries=read.force.supporting_troops)
    if findings:
        return _page(visit, asked, status=UNPROCESSABLE)
    done = write_plan(
        visit.folder,
        today=visit.today,
        at=visit.now,
        game=asked.choice.game or "",
        plan=plan,
    )
    if done.checked.is_stopped:
        return _page(visit, asked, status=UNPROCESSABLE, found=done.checked.findings)
    told = "" if done.file is None else done.file.name
    return visit.back_to(f"choosing{asked.with_fields({'plan': '', WRITTEN: told})}#plan")


def _page(
    visit: Visit, asked: Question, *, status: int = 200, found: tuple[Finding, ...] = ()
) -> Response:
    read = checked(visit.folder, today=visit.today, memory=visit.memory)
    if read.is_stopped:
        return visit.page("stopped.html", title="Choosing", found=read.findings)
    if not read.force.games or not read.force.supporting_troops:
        return visit.page("choosing_nothing.html", force=read.force)
    asked = with_game(asked, read.force)
    played = _played(visit, asked)
    found = (*found, *asked.findings, *played.checked.findings)
    view = None
    if played.count is not None and played.terms is not None and not asked.findings:
        view = choosing_view(visit, played, counted=played.count, terms=played.terms, asked=asked)
        found = (*found, *view.findings)
    said = for_the_page(tuple(dict.fromkeys(found)))
    stops = [each for each in said if each.level is Level.STOP]
    return visit.page(
        "choosing.html",
        status=UNPROCESSABLE if stops else status,
        force=read.force,
        asked=asked,
        view=view,
        found=said,
        stops=stops,
        written=_written(visit),
        several=several,
        chance=chance_words,
        number=number_words,
        grade_field=GRADE,
    )


def _written(visit: Visit) -> str:
    """The file that the plan was written into just now, if it is one of this force."""
    name = visit.query.get(WRITTEN, "")
    return name if name in {each.name for each in visit.folder.glob("*.yaml")} else ""


def with_game(asked: Question, force: Force) -> Question:
    """The question with a game: where none is chosen, the first of the files."""
    if asked.choice.game:
        return asked
    return replace(asked, choice=replace(asked.choice, game=next(iter(force.games))))


def _played(visit: Visit, asked: Question) -> GameTerms:
    """The terms of the game, kept so that what rests on them can be kept too."""
    made = game_terms(
        visit.folder,
        today=visit.today,
        choice=asked.choice,
        grades=asked.grades,
        memory=visit.memory,
    )
    if made.count is None:
        return made
    return visit.memory.kept(
        ("terms", visit.folder, repr(asked.choice), repr(asked.grades)),
        lambda: made,
        rests_on=(made.count,),
    )


PAGE = Page(
    path="choosing",
    title="Choosing",
    in_bar=True,
    show=show,
    actions={"plan": write, "list": entry_rows.take},
    parts={"list": entry_rows.show},
)
