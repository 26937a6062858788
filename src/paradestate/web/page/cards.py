"""Job cards: one for each batch and each kind of figure, with what they use up and what to mind."""

from starlette.responses import Response

from paradestate.core.choice import Choice
from paradestate.core.finding import Finding, Level, stops
from paradestate.core.sentence.caution import CAUTIONS, FIRST
from paradestate.core.sentence.wording import several
from paradestate.journeys.paper.papers import papers
from paradestate.web.cards.view import cards_view, supplies_view
from paradestate.web.page_kind import Page
from paradestate.web.visit import Visit

UNPROCESSABLE = 422
TOLD = frozenset({"bench-minutes-missing", "must-have-left-out", "painted-surface-unknown"})
"""Findings that are told here; the others have their own sheets."""


def show(visit: Visit) -> Response:
    """The cards, as far as the milestone that is asked for."""
    up_to = visit.query.get("until", "")
    answer = papers(
        visit.folder, today=visit.today, choice=Choice(), up_to=up_to, memory=visit.memory
    )
    made, force = answer.papers, answer.checked.force
    if made is None:
        return _stopped(visit, answer.checked.findings)
    return visit.page(
        "cards.html",
        view=cards_view(made),
        up_to=up_to,
        milestones=made.milestones,
        supplies=supplies_view(made.requisition, force.bench.supplies),
        made=made.requisition,
        title=force.title,
        found=[
            each
            for each in answer.checked.findings
            if each.code in TOLD and each.level is not Level.STOP
        ],
        cautions=CAUTIONS,
        first=FIRST,
        several=several,
    )


def _stopped(visit: Visit, found: tuple[Finding, ...]) -> Response:
    """What prevents the cards: a slip in the address, or something in the files."""
    halting = stops(found)
    if all(each.code == "milestone-unknown" for each in halting):
        return visit.page("cards_unknown.html", status=UNPROCESSABLE, stops=halting)
    return visit.page("stopped.html", title="Job cards", found=halting)


PAGE = Page(path="bench/cards", title="Job cards", show=show)
"""It stands below the sheet of the bench, and so not in the index."""
