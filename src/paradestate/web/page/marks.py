"""Marks: who bears which, how well they are told apart, and colours chosen and written down."""

from collections.abc import Sequence

from starlette.exceptions import HTTPException
from starlette.responses import Response

from paradestate.core.certainty import Within
from paradestate.core.choice import Choice
from paradestate.core.finding import Finding, stops
from paradestate.core.mark.difference import THRESHOLD
from paradestate.core.mark.paint import MOST_AT_HAND
from paradestate.core.sentence.mark import DIFFERS, HEADINGS, difference_text
from paradestate.core.sentence.wording import listed, several
from paradestate.journeys.colouring import ColouringAnswer, colour_anew, put_colours_back
from paradestate.journeys.marks import MarksAnswer, Proposal, marks
from paradestate.journeys.rewriting import ChangedSinceError, kept_names
from paradestate.text.error import EditError
from paradestate.web.marks.question import MarksQuestion, marks_question
from paradestate.web.marks.view import marks_view
from paradestate.web.page_kind import Page
from paradestate.web.visit import Visit

SHEET = "marks"
UNPROCESSABLE, CONFLICT = 422, 409


def show(visit: Visit) -> Response:
    """The marks as they are written, or with the colours that are proposed."""
    return _page(visit, marks_question(visit.query))


def write(visit: Visit) -> Response:
    """Writes the colours chosen into the folder."""
    question = marks_question(visit.form.texts)
    answer = _answer(visit, question)
    if answer.proposal is None:
        return _page(visit, question, answer=answer, status=UNPROCESSABLE)
    try:
        written = colour_anew(
            visit.folder, today=visit.today, at=visit.now, after=answer.proposal.after
        )
    except EditError as error:
        raise HTTPException(CONFLICT, str(error)) from None
    return _written(visit, written)


def put_back(visit: Visit) -> Response:
    """Puts the version from before the last change of the colours back."""
    try:
        answer = put_colours_back(
            visit.folder, today=visit.today, at=visit.now, former=visit.form.text("former")
        )
    except ChangedSinceError:
        raise HTTPException(
            CONFLICT,
            "The file was changed since, so nothing was put back. Its former versions are kept: "
            "see Files.",
        ) from None
    return _written(visit, answer, undone="yes")


PAGE = Page(
    path=SHEET,
    title="Marks",
    show=show,
    actions={"write": write, "put-back": put_back},
)


def _written(visit: Visit, answer: ColouringAnswer, *, undone: str = "") -> Response:
    done = answer.coloured
    if answer.checked.is_stopped:
        return visit.page(
            "stopped.html", status=UNPROCESSABLE, title="Marks", found=answer.checked.findings
        )
    if done is None:
        return visit.back_to(SHEET)
    gone = "yes" if done.comments_gone else ""
    query = MarksQuestion().query(written=done.former.name, undone=undone, gone=gone)
    return visit.back_to(f"{SHEET}{query}")


def _answer(visit: Visit, question: MarksQuestion) -> MarksAnswer:
    return marks(
        visit.folder,
        today=visit.today,
        choice=Choice(),
        asked=question.asked,
        memory=visit.memory,
    )


def _page(
    visit: Visit,
    question: MarksQuestion,
    *,
    answer: MarksAnswer | None = None,
    status: int = 200,
) -> Response:
    answer = answer or _answer(visit, question)
    found = answer.checked.findings
    if answer.marked is None:
        return visit.page("stopped.html", title="Marks", found=found)
    halting = stops(found)
    return visit.page(
        "marks.html",
        status=UNPROCESSABLE if question.is_unreadable else status,
        question=question,
        view=marks_view(answer, answer.marked, question=question),
        proposal=answer.proposal,
        sure="" if answer.proposal is None else _sure(answer.proposal),
        stops=halting,
        doubts=_of_marks(found, halting),
        remarks=tuple(each for each in found if each.code not in CODES and each not in halting),
        headings=tuple(HEADINGS.values()),
        differs=DIFFERS,
        most=MOST_AT_HAND,
        kept=kept_names(visit.folder, visit.query.get("written", "")),
        was_put_back="undone" in visit.query,
        comment_gone="gone" in visit.query,
        several=several,
        listed=listed,
    )


CODES = {"marks-unsaid", "colour-without-value", "colours-alike", "enemy-alike"}
"""Doubts about the marks themselves."""


def _of_marks(found: Sequence[Finding], halting: Sequence[Finding]) -> tuple[Finding, ...]:
    return tuple(each for each in found if each.code in CODES and each not in halting)


BELOW = "They are less than {} apart all the same: go by sign and bars, or add paints."


def _sure(proposal: Proposal) -> str:
    """How good the choice is, and how sure that is."""
    choice = proposal.choice
    below = difference_text(THRESHOLD)
    enough = "" if (choice.least or THRESHOLD) >= THRESHOLD else f" {BELOW.format(below)}"
    if choice.least is None:
        return "There is nothing to tell apart."
    if isinstance(choice.certainty, Within):
        bound = difference_text(choice.certainty.bound)
        return f"Within: no other choice from these is further apart than {bound}.{enough}"
    return f"Exact: no other choice from these is further apart.{enough}"
