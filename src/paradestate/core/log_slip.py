"""What is wrong with what is to be logged, whatever is held."""

import datetime
import json
from collections.abc import Iterator, Mapping

from paradestate.core import log_finding
from paradestate.core.cancelled import cancel_slips
from paradestate.core.choice import unknown_choice
from paradestate.core.finding import Finding
from paradestate.core.holdings import Holdings, piles, together
from paradestate.core.journal_entry import BRINGS_ON, EntryKind
from paradestate.core.log_request import Desk, LogRequest
from paradestate.core.ordered import order_slips, unknown_source
from paradestate.core.play.event import Played
from paradestate.core.play.event_text import played_record

OPTIONS: Mapping[EntryKind, frozenset[str]] = {
    EntryKind.COUNTED: frozenset({"figures", "staged", "to"}),
    EntryKind.ORDERED: frozenset({"figures", "source", "expected"}),
    EntryKind.RECEIVED: frozenset({"figures", "to", "stand", "source"}),
    EntryKind.CANCELLED: frozenset({"figures", "source"}),
    EntryKind.MOVED: frozenset({"figures", "from", "to", "stand", "stands", "wanted"}),
    EntryKind.LOST: frozenset({"figures", "from", "stand"}),
    EntryKind.SOLD: frozenset({"figures", "from", "stand"}),
    EntryKind.LENT: frozenset({"figures", "from", "stand"}),
    EntryKind.RETURNED: frozenset({"figures", "from", "to", "stand"}),
    EntryKind.SESSION: frozenset({"figures", "from", "to", "stand", "stands", "minutes"}),
    EntryKind.PROMISED: frozenset({"figures"}),
    EntryKind.NOTED: frozenset({"stand"}),
    EntryKind.FORECAST: frozenset(),
    EntryKind.PLAYED: frozenset(),
    EntryKind.STRUCK_OUT: frozenset(),
}
"""What each kind can be told beside a day and a note."""


ALONE = frozenset(
    {
        EntryKind.CANCELLED,
        EntryKind.NOTED,
        EntryKind.SESSION,
        EntryKind.PROMISED,
        EntryKind.FORECAST,
        EntryKind.PLAYED,
        EntryKind.STRUCK_OUT,
    }
)
"""The kinds that say enough without naming figures or a stand."""


def slips(request: LogRequest, desk: Desk) -> Iterator[Finding]:
    """Everything that is wrong with what was said, as stops."""
    owned = together(desk.state.held, desk.state.lent)
    for option in sorted(request.said - OPTIONS[request.kind]):
        yield log_finding.option_without_meaning(option, kind=request.kind)
    match request.kind:
        case EntryKind.CANCELLED:
            # What the files don't know any more may be on order all the same.
            yield from cancel_slips(request, desk)
        case EntryKind.ORDERED:
            yield from unknown_source(request, desk)
            yield from order_slips(request, desk)
        case _:
            yield from unknown_source(request, desk)
            yield from _unknown_kinds(request, desk, owned=owned)
    held = {pile.stage for pile in piles(owned)}
    counted = {stage: held for stages in request.staged.values() for stage in stages}
    said = ((request.from_stage, held), (request.to_stage, ()), *counted.items())
    for stage, others in said:
        if stage and stage not in desk.stages and stage not in others:
            yield log_finding.unwritten(unknown_choice(stage, desk.stages, what="stage"))
    if request.stand and request.stand not in {*desk.stands, *owned.stands}:
        yield log_finding.unwritten(unknown_choice(request.stand, desk.stands, what="stand"))
    yield from _of_stands(request, desk)
    if not all(map(is_text, (request.note, request.force, *_texts_of(request.played)))):
        yield log_finding.not_text()
    if request.kind is not EntryKind.PROMISED and request.on > desk.today:
        yield log_finding.not_yet(request.on)
    yield from _missing(request, desk)


def _unknown_kinds(request: LogRequest, desk: Desk, *, owned: Holdings) -> Iterator[Finding]:
    for kind in dict.fromkeys((*request.figures, *request.staged)):
        if kind not in desk.kinds and kind not in owned.figures:
            yield log_finding.unwritten(unknown_choice(kind, desk.kinds, what="figure kind"))


def _of_stands(request: LogRequest, desk: Desk) -> Iterator[Finding]:
    """What is wrong with several stands that are brought on alike."""
    known = [name for name in request.stands if name in desk.stands]
    for name in request.stands:
        if name not in desk.stands:
            yield log_finding.unwritten(unknown_choice(name, desk.stands, what="stand"))
    if len({desk.stands[name].pattern for name in known}) > 1:
        yield log_finding.not_alike(request)
    if len(set(request.stands)) < len(request.stands):
        yield log_finding.named_twice(request)
    if request.stands and (request.figures or request.stand):
        yield log_finding.not_alone()


def _texts_of(played: Played | None) -> tuple[str, ...]:
    """What was told of a game, as it is going to be written."""
    return () if played is None else (json.dumps(played_record(played), ensure_ascii=False),)


def is_text(words: str) -> bool:
    """Whether words can be written in UTF-8."""
    return not any("\ud800" <= letter <= "\udfff" for letter in words)


def _missing(request: LogRequest, desk: Desk) -> Iterator[Finding]:
    about_nothing = not (request.figures or request.stand or request.stands or request.staged)
    yield from _said_twice(request)
    match request.kind:
        case EntryKind.NOTED if not request.note:
            yield log_finding.incomplete("A note needs its text.", hint="Add --note TEXT.")
        case EntryKind.SESSION if not request.minutes:
            yield log_finding.incomplete("A session needs its minutes.", hint="Add --minutes 90.")
        case EntryKind.PROMISED if about_nothing and not desk.wanted:
            yield log_finding.incomplete(
                "Nothing is named, and the force wants no figures.",
                hint='Name what is promised: "rifleman=20".',
            )
        case kind if kind in ALONE:
            pass
        case _ if about_nothing:
            yield log_finding.incomplete(
                f"Nothing is named that was {request.kind}.", hint='Name it: "rifleman=6".'
            )
        case _:
            pass
    if request.kind is not EntryKind.COUNTED and 0 in request.figures.values():
        yield log_finding.incomplete(
            f"'{request.kind}' with a number of 0 says nothing.",
            hint="Leave names with 0 out; only a count can find none.",
        )
    if request.kind in BRINGS_ON:
        yield from _no_way(request, desk)
    yield from _no_milestone(request)
    if request.kind is EntryKind.MOVED and request.wanted is not None:
        yield from _no_repair(request, desk, wanted=request.wanted)


def _no_repair(request: LogRequest, desk: Desk, *, wanted: datetime.date) -> Iterator[Finding]:
    """What is lacking of a repair: its stand, a way back, and a day that is to come."""
    if not (request.stand or request.stands):
        yield log_finding.incomplete(
            "A repair is of a stand, and none is named.", hint="Add --stand NAME."
        )
    stages = desk.stages
    known = request.from_stage in stages and request.to_stage in stages
    if not known or stages.index(request.to_stage) >= stages.index(request.from_stage):
        yield log_finding.incomplete(
            "A repair goes back to an earlier stage.",
            hint=f"Say both: --from {stages[-1]!r} --to STAGE; or leave --wanted out.",
        )
    if wanted < request.on:
        yield log_finding.wanted_before(wanted, on=request.on)


def _said_twice(request: LogRequest) -> Iterator[Finding]:
    """What can't be said of the same things at once."""
    if request.stand and request.source:
        yield log_finding.incomplete(
            "A whole stand is on no order.", hint="Leave --source out, or name its figures."
        )
    if request.figures and request.stand and request.kind not in BRINGS_ON:
        yield log_finding.stand_and_figures()
    if request.staged and (request.figures or request.to_stage):
        yield log_finding.stages_twice()


def _no_milestone(request: LogRequest) -> Iterator[Finding]:
    if request.kind is EntryKind.FORECAST and not request.forecasts:
        yield log_finding.incomplete(
            "No milestone is forecast.", hint="Say under `raise` what is to be raised."
        )


def _no_way(request: LogRequest, desk: Desk) -> Iterator[Finding]:
    """What is lacking of the stages between which something was brought."""
    is_about_something = bool(request.figures or request.stand or request.stands)
    if not is_about_something and request.kind is EntryKind.SESSION:
        if request.from_stage or request.to_stage:
            yield log_finding.incomplete(
                "Nothing is named that was brought on.", hint='Name it: "rifleman=6".'
            )
    elif not request.to_stage:
        yield log_finding.incomplete(
            "Nothing says to which stage they were brought.", hint="Add --to STAGE."
        )
    elif request.to_stage == request.from_stage:
        yield log_finding.incomplete(
            f"They would stay at '{request.to_stage}'.", hint="Name another stage with --to."
        )
    elif request.to_stage == desk.stages[0] and not request.from_stage:
        yield log_finding.incomplete(
            f"No stage is before '{request.to_stage}'.", hint="Add --from STAGE."
        )
