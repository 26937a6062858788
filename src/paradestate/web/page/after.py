"""After a game: who is out, their dice, what no dice decide, and what the next game finds."""

from dataclasses import dataclass
from urllib.parse import unquote

from starlette.responses import Response

from paradestate.core.campaign.casualty import PROMOTED
from paradestate.core.finding import Finding, Level
from paradestate.core.sentence.campaign import FLOW_STEPS
from paradestate.core.sentence.play import note_words
from paradestate.core.sentence.wording import several
from paradestate.core.unfolding import spoken
from paradestate.journeys.check import checked
from paradestate.journeys.game.losses import AfterGame, losses
from paradestate.journeys.game.losses_pen import LossesTold, Teller
from paradestate.journeys.game.losses_rolled import (
    YES,
    Seen,
    TypedRoll,
    faces_typed,
    roll_recoveries,
)
from paradestate.journeys.game.losses_struck import strike_loss
from paradestate.journeys.game.losses_told import WORDS, tell_fate, tell_out
from paradestate.journeys.game.repairs import put_on_the_bench, repairs_offered
from paradestate.web.after.question import COMPANIES, question
from paradestate.web.after.repair import repair_view, repairs_typed
from paradestate.web.after.view import ROLL, after_view, dated_words, example_of
from paradestate.web.log_form import head_said, new_id
from paradestate.web.page_kind import Page
from paradestate.web.visit import Visit

UNPROCESSABLE = 422
MOST_GAMES = 50
"""Games that may be chosen, the newest first."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Said:
    """What is to be said of a form that was sent; its dice stand in their fields again."""

    findings: tuple[Finding, ...] = ()
    status: int = 200
    of_repairs: bool = False
    """Whether it is said of the form for repairs, which says it itself."""


def show(visit: Visit) -> Response:
    """The losses of a game as they are now."""
    return _page(visit, said=Said())


def roll(visit: Visit) -> Response:
    """Writes down what real dice showed, of one form all or nothing."""
    typed: list[TypedRoll] = []
    wrong: list[Finding] = []
    for name, text in visit.form.texts.items():
        word, _, quoted = name.partition("/")
        if word != ROLL or not text.strip():
            continue
        of = unquote(quoted)
        numbers = faces_typed(text, of=spoken(of))
        if isinstance(numbers, Finding):
            wrong.append(numbers)
        else:
            typed.append(TypedRoll(name=of, numbers=numbers))
    if wrong:
        return _page(visit, said=Said(findings=tuple(wrong), status=UNPROCESSABLE))
    seen = Seen(roller=visit.form.text("roller"), witness=visit.form.text("witness"))
    with visit.site.writing:
        done = roll_recoveries(_teller(visit), typed, seen=seen)
    return _answered(visit, done)


def tell(visit: Visit) -> Response:
    """Writes down of stands what no dice decide: how they were out, or what came of them."""
    names = visit.form.every.get("stand", ())
    word = visit.form.text("word")
    with visit.site.writing:
        if word in WORDS:
            done = tell_fate(_teller(visit), names, word=word)
        else:
            done = tell_out(_teller(visit), names, how=word or YES)
    return _answered(visit, done)


def bench(visit: Visit) -> Response:
    """Puts on the bench what the game left to be repaired."""
    asked, wrong = repairs_typed(visit.form)
    if wrong:
        said = Said(findings=tuple(wrong), status=UNPROCESSABLE, of_repairs=True)
        return _page(visit, said=said)
    with visit.site.writing:
        done = put_on_the_bench(_teller(visit), asked)
    if done.findings:
        said = Said(findings=done.findings, status=UNPROCESSABLE, of_repairs=True)
        return _page(visit, said=said)
    return _answered(visit, done)


def strike(visit: Visit) -> Response:
    """Strikes a line out with its reason, and of a roll what followed from it."""
    line, because = visit.form.text("line"), visit.form.text("because")
    with visit.site.writing:
        done = strike_loss(_teller(visit), line, because=because)
    return _answered(visit, done)


def _teller(visit: Visit) -> Teller:
    head, asked = head_said(visit), question(visit.form.texts)
    return Teller(
        folder=visit.folder,
        today=visit.today,
        now=head.written,
        new_id=new_id,
        of=asked.of,
        next_game=asked.next_game,
        memory=visit.memory,
        form=head.id,
    )


def _answered(visit: Visit, done: LossesTold) -> Response:
    if done.findings or done.after.record is None:
        return _page(visit, said=Said(findings=done.findings, status=UNPROCESSABLE))
    of = "" if done.after.is_newest else done.after.record.id
    return visit.back_to(f"after{question(visit.form.texts).query(of=of)}")


def _page(visit: Visit, *, said: Said) -> Response:
    asked = question(visit.form.texts or visit.query)
    after = losses(
        visit.folder,
        today=visit.today,
        next_game=asked.next_game,
        of=asked.of,
        memory=visit.memory,
    )
    record = after.record
    if record is None:
        return _nothing(visit, after, said=said)
    offered = repairs_offered(visit.folder, today=visit.today, memory=visit.memory)
    own = [each for each in after.findings if each.place.file == "command line"]
    return visit.page(
        "after.html",
        status=said.status,
        said=said,
        asked=asked,
        after=after,
        view=after_view(after, record, asked=asked),
        repairs=repair_view(after, offered, typed=visit.form if said.of_repairs else None),
        typed=visit.form.texts if said.findings else {},
        games=[(each.id, dated_words(each)) for each in after.games[::-1][:MOST_GAMES]],
        ways_out=((YES, "out of action"), *((each, each) for each in after.campaign.never_back)),
        doubts=[each for each in own if each.level is Level.WARN],
        remarks=[each for each in after.findings if each not in own],
        noted=[note_words(each) for each in record.notes],
        steps=FLOW_STEPS,
        promoted=PROMOTED,
        companies=COMPANIES,
        new_id=new_id,
        spoken=spoken,
        several=several,
    )


def _nothing(visit: Visit, after: AfterGame, *, said: Said) -> Response:
    """No game was written down, the one that is meant isn't there, or the files stop it."""
    found = [each for each in after.findings if each.level is Level.STOP]
    is_unplayed = [each.code for each in found] == ["no-game-played"]
    if found and not is_unplayed and any(each.place.file != "command line" for each in found):
        return visit.page("stopped.html", status=said.status, title="After", found=found)
    asked = question(visit.form.texts or visit.query)
    force = checked(visit.folder, today=visit.today, memory=visit.memory).force
    return visit.page(
        "after_nothing.html",
        example=example_of(force.campaign, force.stands),
        status=UNPROCESSABLE if asked.fields else said.status,
        found=found if asked.fields else (),
        is_asked=bool(asked.fields),
    )


PAGE = Page(
    path="after",
    title="After",
    show=show,
    actions={"roll": roll, "tell": tell, "bench": bench, "strike": strike},
    parts={"roll": show, "tell": show, "bench": show, "strike": show},
)
"""What a game left behind; where a form was answered in its place, loading anew shows the sheet."""
