"""Choosing: what to ask for first in a game, what then, and whether a plan is legal and likely."""

from dataclasses import replace

from starlette.responses import Response

from paradestate.core.finding import Level
from paradestate.core.force import Force
from paradestate.core.sentence.chance import chance_words
from paradestate.core.sentence.wording import several
from paradestate.journeys.check import checked
from paradestate.journeys.terms import GameTerms, game_terms
from paradestate.web.choosing.question import ALLOWED, GRADE, Question, for_the_page, question
from paradestate.web.choosing.view import choosing_view
from paradestate.web.page_kind import Page
from paradestate.web.visit import Visit

UNPROCESSABLE = 422


def show(visit: Visit) -> Response:
    """What may be asked for in a game, and everything about the plan in the address."""
    read = checked(visit.folder, today=visit.today, memory=visit.memory)
    if read.is_stopped:
        return visit.page("stopped.html", title="Choosing", found=read.findings)
    if not read.force.games or not read.force.supporting_troops:
        return visit.page("choosing_nothing.html", force=read.force)
    asked = with_game(question(visit.query), read.force)
    played = _played(visit, asked)
    found = (*asked.findings, *played.checked.findings)
    view = None
    if played.count is not None and played.terms is not None and not asked.findings:
        view = choosing_view(visit, played, counted=played.count, terms=played.terms, asked=asked)
        found = (*found, *view.findings)
    return visit.page(
        "choosing.html",
        status=200 if view else UNPROCESSABLE,
        force=read.force,
        asked=asked,
        view=view,
        found=for_the_page(found),
        stops=[each for each in for_the_page(found) if each.level is Level.STOP],
        several=several,
        chance=chance_words,
        grade_field=GRADE,
        allowed_field=ALLOWED,
    )


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


PAGE = Page(path="choosing", title="Choosing", show=show)
