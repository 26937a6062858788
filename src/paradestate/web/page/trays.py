"""Trays: every stand where it lies, from above; changed by hand, kept, and laid out anew."""

from dataclasses import dataclass, replace

from starlette.responses import JSONResponse, Response

from paradestate.core.choice import Choice
from paradestate.core.finding import Level, stops
from paradestate.core.sentence.tray import barred_sentence
from paradestate.core.sentence.wording import capital
from paradestate.core.tray.moving import Barred, Move
from paradestate.journeys.rewriting import ChangedSinceError
from paradestate.journeys.trays import (
    AskedToPack,
    Kept,
    TraysAnswer,
    file_of,
    keep,
    put_packed_back,
    trays,
    with_moves,
)
from paradestate.sheet.tray_plan import barred_pattern
from paradestate.text.former import former_versions
from paradestate.web.choosing.question import for_the_page
from paradestate.web.page_kind import Page
from paradestate.web.trays.barring import keys_of, swap_rules, taken_up, transfer_rules
from paradestate.web.trays.question import TraysQuestion, mark_of, moves_of, trays_question
from paradestate.web.trays.view import trays_view
from paradestate.web.visit import Visit

SHEET = "trays"
UNPROCESSABLE, CONFLICT = 422, 409
RULES = "rules.json"


@dataclass(frozen=True, slots=True, kw_only=True)
class _Looked:
    """The question looked into."""

    asked: TraysQuestion
    before: TraysAnswer
    """Before anything was moved."""
    answer: TraysAnswer
    made: tuple[Move, ...]
    barred: Barred | None
    is_stale: bool
    """Whether the moves begin from another arrangement than there is now."""


def show(visit: Visit) -> Response:
    """The trays, as the address has them changed."""
    return _page(visit, _looked(visit, trays_question(visit.query)))


def take(visit: Visit) -> Response:
    """Keeps the arrangement as it is shown; laid out anew it is the tool's again."""
    made = _looked(visit, trays_question(visit.form.texts))
    if made.answer.plan is None or made.is_stale or made.barred is not None:
        return _page(visit, made, status=CONFLICT)
    is_by_hand = made.answer.plan.is_by_hand
    laid = made.answer.plan.trays if is_by_hand else ()
    kept = keep(visit.folder, today=visit.today, at=visit.now, laid_trays=laid)
    return _written(visit, kept)


def put_back(visit: Visit) -> Response:
    """Puts the arrangement back that was kept before."""
    former = visit.form.text("former")
    try:
        kept = put_packed_back(visit.folder, today=visit.today, at=visit.now, former=former)
    except ChangedSinceError:
        told = "The folder has been written since: look what is there now."
        made = _looked(visit, trays_question({}))
        return _page(visit, made, status=CONFLICT, told=told)
    return _written(visit, kept)


def rules(visit: Visit) -> Response:
    """What forbids the stand that is taken up each other place, for whoever drags it."""
    made = _looked(visit, trays_question(visit.query))
    ground, laid = made.answer.ground, made.answer.trays
    name = "" if ground is None else taken_up(ground, laid, key=made.asked.stand)
    if ground is None or not name:
        return JSONResponse({"stands": {}, "trays": {}})
    keys, numbers = keys_of(ground), {tray: number for number, tray in enumerate(laid, start=1)}
    stands = swap_rules(ground, laid, name=name)
    others = transfer_rules(ground, laid, name=name)
    return JSONResponse(
        {
            "stands": {str(keys[other]): rule for other, rule in stands.items()},
            "trays": {str(numbers[tray]): rule for tray, rule in others.items()},
        }
    )


PAGE = Page(
    path=SHEET,
    title="Trays",
    show=show,
    actions={"keep": take, "put-back": put_back},
    parts={RULES: rules},
)
"""What the sheet of trays is made of: the drawings, what is kept, and what forbids a move."""


def _written(visit: Visit, kept: Kept) -> Response:
    if kept.former is not None:
        visit.memory.keep(("packed", visit.folder), kept)
    if kept.checked.is_stopped:
        return visit.page(
            "stopped.html", status=UNPROCESSABLE, title="Trays", found=kept.checked.findings
        )
    return visit.back_to(SHEET)


def _looked(visit: Visit, asked: TraysQuestion) -> _Looked:
    before = trays(
        visit.folder,
        today=visit.today,
        asked=AskedToPack(
            choice=Choice(game=asked.game or None),
            only_finished=asked.only_finished,
            anew=asked.anew,
        ),
        memory=visit.memory,
    )
    is_stale = bool(asked.moves) and asked.of != mark_of(before.trays)
    if is_stale or before.ground is None:
        unmoved = asked.unmoved
        return _Looked(
            asked=unmoved, before=before, answer=before, made=(), barred=None, is_stale=is_stale
        )
    made = moves_of(asked.moves, ground=before.ground)
    answer, barred, done = with_moves(before, made)
    kept = replace(asked, moves=asked.moves[: len(done)]) if len(done) < len(made) else asked
    return _Looked(
        asked=kept, before=before, answer=answer, made=done, barred=barred, is_stale=False
    )


def _page(visit: Visit, made: _Looked, *, status: int = 200, told: str = "") -> Response:
    answer = made.answer
    if answer.plan is None and answer.checked.is_stopped and not _lacks_trays(answer):
        found = answer.checked.findings
        return visit.page("stopped.html", status=status, title="Trays", found=found)
    view = trays_view(
        answer,
        before=made.before,
        asked=made.asked,
        address=visit.address(SHEET),
        made=made.made,
    )
    every = for_the_page(answer.checked.findings)
    mine = tuple(each for each in every if each.code in CODES)
    return visit.page(
        "trays.html",
        status=status,
        force=answer.checked.force,
        view=view,
        asked=made.asked,
        fields=made.asked.fields,
        stops=stops(mine),
        doubts=tuple(each for each in mine if each.level is not Level.STOP),
        barred="" if made.barred is None else barred_sentence(made.barred),
        is_stale=made.is_stale,
        told=told,
        undo=_undo(visit, answer),
        textures=barred_pattern(),
        capital=capital,
    )


CODES = frozenset(
    {
        "no-trays",
        "too-many-to-lay",
        "trays-left-out",
        "size-unsaid",
        "height-unsaid",
        "tray-too-low",
        "larger-than-tray",
        "no-place-left",
        "packed-astray",
        "packed-no-more",
        "packed-too",
    }
)
"""Findings that are about trays, and so are said on this sheet."""


def _lacks_trays(answer: TraysAnswer) -> bool:
    return {each.code for each in stops(answer.checked.findings)} <= CODES


def _undo(visit: Visit, answer: TraysAnswer) -> str:
    """The name of the version that can be put back; empty where nothing was kept since."""
    kept = visit.memory.last(("packed", visit.folder), Kept)
    file = file_of(answer.checked.force)
    if kept is None or kept.former is None or file is None:
        return ""
    newest = former_versions(file)[:1]
    return kept.former.name if [each.path.name for each in newest] == [kept.former.name] else ""
