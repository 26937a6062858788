"""The evening: a game written down line by line, and what comes next as the form at hand."""

import secrets
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from urllib.parse import urlencode

from starlette.exceptions import HTTPException
from starlette.responses import Response

from paradestate.core.choice import CHOSEN_HERE
from paradestate.core.finding import Finding, stops
from paradestate.core.play.event import Opened, Revealed, Spoken, Subject
from paradestate.core.play.game_record import GameRecord, Line
from paradestate.core.play.machine_roll import MOST_LETTERS, SECRET_BYTES
from paradestate.core.play.play_finding import no_game
from paradestate.core.sentence.journal import SHORT
from paradestate.core.sentence.play import event_words, game_words
from paradestate.core.sentence.support import allowance_words
from paradestate.core.sentence.wording import capital, listed, several
from paradestate.journeys.check import checked
from paradestate.journeys.choosing import number_of
from paradestate.journeys.game.game_note import note
from paradestate.journeys.game.machine_roll import bind, reveal, speak
from paradestate.journeys.game.pen import Pen
from paradestate.journeys.game.play import Wrote, ask, end, mark, opened, roll, strike, take
from paradestate.journeys.game.played_game import PlayedGame, played_game
from paradestate.web.choosing.question import GRADE, MOST_TYPED, question
from paradestate.web.evening.sending import OF, first_id, lines_from, pen_of
from paradestate.web.evening.step import RollStep
from paradestate.web.evening.typed import (
    asked_typed,
    face_field,
    faces_typed,
    taken_typed,
    terms_typed,
)
from paradestate.web.evening.view import EveningView, evening_view
from paradestate.web.evening.words import for_the_evening
from paradestate.web.form import Form
from paradestate.web.log_form import ENTRY, field, new_id
from paradestate.web.page_kind import Handler, Page
from paradestate.web.visit import Visit

SHEET = "evening"
UNPROCESSABLE, UNREADABLE = 422, 400
SLIP = "slip"
"""The field that says which form it is: a field named `form` would hide what a browser calls so."""
KEPT = (Opened, Spoken, Revealed)
"""Lines that nobody writes by a slip of the finger alone, and so isn't asked about at once."""
WRITTEN, STRUCK = "written", "struck"
"""Words of the address that say which line a form has written, or struck out, just now."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Refused:
    """What a form was answered where it wasn't taken, or not without a word."""

    form: str
    """Which form it was."""
    findings: tuple[Finding, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Striking:
    """A line that is about to be struck out."""

    line: Line
    words: str
    is_whole_game: bool
    """Whether it is the opening, without which nothing of the game counts."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Written:
    """What a form has written just now."""

    words: tuple[str, ...]
    line: str
    """Id of the line that is struck out where it was a slip; empty where there is none."""


def show(visit: Visit) -> Response:
    """The game that goes on, or the one that is named in the address."""
    return _page(visit, of=visit.query.get(OF, ""))


def _start(pen: Pen, form: Form) -> Wrote:
    return opened(pen, terms_typed(form), opponent=form.text("opponent"))


def _roll(pen: Pen, form: Form) -> Wrote:
    numbers, findings = faces_typed(form)
    if findings:
        return Wrote(findings=findings)
    return roll(
        pen,
        form.text("what"),
        numbers=numbers,
        dice=form.text("dice"),
        roller=form.text("roller"),
        witness=form.text("witness"),
    )


def _ask(pen: Pen, form: Form) -> Wrote:
    return ask(pen, asked_typed(form))


def _take(pen: Pen, form: Form) -> Wrote:
    return take(pen, taken_typed(form))


def _mark(pen: Pen, form: Form) -> Wrote:
    turn, findings = number_of(form.text("turn"), of="Turn")
    if findings:
        return Wrote(findings=findings)
    subject = Subject(form.text("aspect"), form.text("subject"))
    return mark(pen, subject, value=form.text("value"), turn=turn)


def _strike(pen: Pen, form: Form) -> Wrote:
    return strike(pen, form.text("line"), because=form.text("because"))


def _end(pen: Pen, form: Form) -> Wrote:
    held = form.text("held")
    return end(
        pen,
        outcome=form.text("outcome"),
        held=(held,) if held else (),
        time=form.text("time"),
    )


def _note(pen: Pen, form: Form) -> Wrote:
    return note(pen, form.text("text"), about=form.text("about"))


def _bind(pen: Pen, form: Form) -> Wrote:
    secret = secrets.token_bytes(SECRET_BYTES)
    return bind(pen, form.text("what"), secret=secret, dice=form.text("dice"))


def _word(pen: Pen, form: Form) -> Wrote:
    return speak(pen, form.text("word"), keeps_secret=bool(form.text("later")))


def _reveal(pen: Pen, form: Form) -> Wrote:
    del form
    return reveal(pen)


ACTIONS: Mapping[str, Callable[[Pen, Form], Wrote]] = {
    "start": _start,
    "roll": _roll,
    "ask": _ask,
    "take": _take,
    "mark": _mark,
    "strike": _strike,
    "end": _end,
    "note": _note,
    "bind": _bind,
    "word": _word,
    "reveal": _reveal,
}
"""What each form does; the command `play` does the same under the same names."""


def _written_by(act: Callable[[Pen, Form], Wrote]) -> Handler:
    """What takes a form: it writes once, however often it is sent."""

    def answer(visit: Visit) -> Response:
        if max(map(len, visit.form.texts.values()), default=0) > MOST_TYPED:
            raise HTTPException(
                UNREADABLE, f"A field holds more than {MOST_TYPED} letters. Nothing was changed."
            )
        with visit.site.writing:
            done = act(pen_of(visit), visit.form)
        said = tuple(each for each in done.findings if each.place == CHOSEN_HERE)
        if done.is_stopped or said:
            refused = Refused(form=visit.form.text(SLIP), findings=said or done.findings)
            is_written = not done.is_stopped
            return _page(visit, of=_of(visit, done), refused=refused, is_written=is_written)
        return _look(visit, of=_of(visit, done))

    return answer


def _of(visit: Visit, done: Wrote) -> str:
    """The game that is looked at once a form was taken: the one that it began, or is about."""
    if done.game is not None and done.game.record is None:
        return ""  # its opening is struck out
    began = [each.played.game for each in done.entries if each.played is not None]
    return began[0] if began else visit.form.text(OF)


def _look(visit: Visit, *, of: str) -> Response:
    """The game with what was written just now, and a mark where it says so."""
    struck = visit.form.text("line")
    said = {STRUCK: struck} if struck else {WRITTEN: first_id(visit)}
    game = {OF: of[:SHORT]} if of else {}
    return visit.back_to(f"{SHEET}?{urlencode(game | said)}#now")


def _page(
    visit: Visit, *, of: str, refused: Refused | None = None, is_written: bool = False
) -> Response:
    game = played_game(visit.folder, today=visit.today, now=visit.now, of=of, memory=visit.memory)
    read = checked(visit.folder, today=visit.today, memory=visit.memory)
    is_new = "new" in visit.query or (refused is not None and refused.form == "start")
    record = game.record if not is_new or is_written else None
    if record is None and read.is_stopped:
        return visit.page("stopped.html", title=PAGE.title, found=read.findings)
    view = None
    if record is not None:
        view = evening_view(visit, game, record=record, asked=_asked(visit, refused))
    striking = _striking(visit, record)
    unknown = (no_game(of),) if of and game.record is None else ()
    return visit.page(
        "evening.html",
        status=UNPROCESSABLE if refused and not is_written else 200,
        force=read.force,
        asked=question(visit.query),
        view=view,
        going=game.open_game if record is None else None,
        game_words=game_words,
        refused=refused,
        found_here=for_the_evening(() if refused is None else refused.findings),
        found=_found(game, unknown, view=view),
        said=_said(visit, refused, is_written=is_written),
        striking=striking,
        homeless=refused is not None
        and (is_written or not _is_shown(refused.form, view, is_striking=striking is not None)),
        held=_held(visit) if refused is not None and not is_written else "",
        written=_written(visit, record),
        new_id=new_id,
        field=field,
        face=face_field,
        grade_field=GRADE,
        most_letters=MOST_LETTERS,
        several=several,
        capital=capital,
        allowance=allowance_words,
    )


def _asked(visit: Visit, refused: Refused | None) -> str:
    """What somebody wants to roll for: as the address says, or the form that was refused."""
    if refused is not None and refused.form in {"roll", "bind"}:
        return visit.form.text("what")
    return visit.query.get("ask", "")


def _is_shown(form: str, view: EveningView | None, *, is_striking: bool) -> bool:
    """Whether a form is on the page as it is now, and so can say itself what is amiss in it."""
    if view is None:
        return form == "start"
    shown = {"note"}
    if view.untold:
        shown.add("reveal")
    if is_striking:
        shown.add("strike")
    if view.step is not None:
        shown |= {view.step.form, "free", "free-bind", "end", "arrange-any", *view.numbered}
        if view.buys:
            shown.add("buy-other")
    if isinstance(view.step, RollStep):
        shown.add("bind")
    return form in shown


def _held(visit: Visit) -> str:
    """What was filled in, in one line, for a form that isn't on the page any more."""
    hidden = {ENTRY, SLIP, OF}
    return listed(text for name, text in visit.form.texts.items() if text and name not in hidden)


def _found(
    game: PlayedGame, unknown: tuple[Finding, ...], *, view: EveningView | None
) -> Mapping[str, tuple[Finding, ...]]:
    """What is to be said of the game: on top, beside its record, and of the files."""
    every = for_the_evening((*unknown, *game.findings, *(view.findings if view else ())))
    halts = stops(every)
    doubts = tuple(each for each in every if each.place == CHOSEN_HERE and each not in halts)
    rest = tuple(each for each in every if each not in halts and each not in doubts)
    return {"stops": halts, "doubts": doubts, "remarks": rest}


def _said(visit: Visit, refused: Refused | None, *, is_written: bool) -> Callable[..., str]:
    """What was typed into a field of the form that was refused, else what stands in it at first."""

    def said(form: str, name: str, *, usual: str = "") -> str:
        if refused is None or is_written or refused.form != form:
            return usual
        return visit.form.texts.get(name, usual)

    return said


def _striking(visit: Visit, record: GameRecord | None) -> Striking | None:
    """The line that is to be struck out, as the address or its form names it."""
    id_ = visit.form.text("line") or visit.query.get("strike", "")
    lines = () if record is None else record.lines
    line = next((each for each in lines if each.id == id_ and each.holds), None)
    if line is None:
        return None
    is_whole = isinstance(line.event, Opened)
    return Striking(line=line, words=capital(event_words(line.event)), is_whole_game=is_whole)


def _written(visit: Visit, record: GameRecord | None) -> Written | None:
    """What was written just now, in words."""
    if record is None:
        return None
    struck = visit.query.get(STRUCK, "")
    for line in record.lines:
        if line.id == struck and line.struck_because is not None:
            gone = f"Struck out, {line.struck_because}: {event_words(line.event)}."
            return Written(words=(gone,), line="")
    lines = lines_from(record, visit.query.get(WRITTEN, ""))
    if not lines:
        return None
    words = tuple(f"{capital(event_words(each.event))}." for each in lines)
    undone = (each.id for each in lines if each.holds and not isinstance(each.event, KEPT))
    return Written(words=words, line=next(undone, ""))


PAGE = Page(
    path=SHEET,
    title="Evening",
    show=show,
    actions={name: _written_by(act) for name, act in ACTIONS.items()},
)
