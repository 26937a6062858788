"""What is to be logged, made into an entry that says exactly what it does to the holdings.

Stages that were left out are filled in only where there is one answer; else the choices are listed.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace

from paradestate.core import log_finding
from paradestate.core.choice import unknown_choice
from paradestate.core.finding import Finding, stops
from paradestate.core.holdings import Holdings, piles
from paradestate.core.journal_entry import EntryKind, JournalEntry
from paradestate.core.log_request import Desk, LogRequest

MOST_MINUTES = 24 * 60
"""Minutes of a day."""

OPTIONS: Mapping[EntryKind, frozenset[str]] = {
    EntryKind.COUNTED: frozenset({"figures", "to"}),
    EntryKind.RECEIVED: frozenset({"figures", "to"}),
    EntryKind.MOVED: frozenset({"figures", "from", "to", "stand"}),
    EntryKind.LOST: frozenset({"figures", "from", "stand"}),
    EntryKind.SOLD: frozenset({"figures", "from", "stand"}),
    EntryKind.LENT: frozenset({"figures", "from", "stand"}),
    EntryKind.RETURNED: frozenset({"figures", "from", "to", "stand"}),
    EntryKind.SESSION: frozenset({"figures", "from", "to", "stand", "minutes"}),
    EntryKind.PROMISED: frozenset({"figures"}),
    EntryKind.NOTED: frozenset({"stand"}),
    EntryKind.STRUCK_OUT: frozenset(),
}
"""What each kind can be told beside a day and a note."""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Effect:
    leaves: Holdings = Holdings()
    comes: Holdings = Holdings()


def drafted(request: LogRequest, desk: Desk) -> tuple[JournalEntry | None, tuple[Finding, ...]]:
    """The entry, or None with the stops that prevent it; and what is doubtful about it."""
    slips = tuple(_slips(request, desk))
    if slips:
        return None, slips
    effect, findings = _effect(request, desk)
    doubts = (*findings, *_doubts(request, desk))
    if stops(doubts):
        return None, doubts
    return (
        JournalEntry(
            id=request.id,
            kind=request.kind,
            written=request.written,
            on=request.on,
            force=request.force,
            leaves=effect.leaves,
            comes=effect.comes,
            stand=request.stand,
            minutes=request.minutes or 0,
            promised=_promised(request, desk),
            note=request.note,
            struck_out=request.struck_out,
        ),
        doubts,
    )


def _promised(request: LogRequest, desk: Desk) -> Mapping[str, int]:
    if request.kind is not EntryKind.PROMISED:
        return {}
    return request.figures or desk.wanted


def _slips(request: LogRequest, desk: Desk) -> Iterator[Finding]:
    """What is wrong with what was said, whatever is held."""
    for option in sorted(request.said - OPTIONS[request.kind]):
        yield log_finding.option_without_meaning(option, kind=request.kind)
    for kind in request.figures:
        if kind not in desk.kinds and kind not in desk.state.held.figures:
            yield log_finding.unwritten(unknown_choice(kind, desk.kinds, what="figure kind"))
    held = {pile.stage for pile in piles(desk.state.held)}
    for stage, others in ((request.from_stage, held), (request.to_stage, ())):
        if stage and stage not in desk.stages and stage not in others:
            yield log_finding.unwritten(unknown_choice(stage, desk.stages, what="stage"))
    if request.stand and request.stand not in desk.stands:
        yield log_finding.unwritten(unknown_choice(request.stand, desk.stands, what="stand"))
    if request.kind is not EntryKind.PROMISED and request.on > desk.today:
        yield log_finding.not_yet(request.on)
    yield from _missing(request, desk)


def _missing(request: LogRequest, desk: Desk) -> Iterator[Finding]:
    about_nothing = not (request.figures or request.stand)
    if request.figures and request.stand:
        yield log_finding.stand_and_figures()
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
        case EntryKind.NOTED | EntryKind.SESSION | EntryKind.PROMISED | EntryKind.STRUCK_OUT:
            pass
        case _ if about_nothing:
            yield log_finding.incomplete(
                f"Nothing is named that was {request.kind}.", hint='Name it: "rifleman=6".'
            )
        case _:
            pass
    moves = request.kind is EntryKind.MOVED or (
        request.kind is EntryKind.SESSION and not about_nothing
    )
    if moves and not request.to_stage:
        yield log_finding.incomplete(
            "Nothing says to which stage they were brought.", hint="Add --to STAGE."
        )
    if moves and request.to_stage == desk.stages[0] and not request.from_stage:
        yield log_finding.incomplete(
            f"No stage is before '{request.to_stage}'.", hint="Add --from STAGE."
        )


def _doubts(request: LogRequest, desk: Desk) -> Iterator[Finding]:
    minutes = request.minutes or 0
    day = desk.state.minutes.get(request.on, 0) + minutes
    if minutes and day > MOST_MINUTES:
        yield log_finding.day_too_long(day, on=request.on)
    stages = desk.stages
    moves = request.kind in {EntryKind.MOVED, EntryKind.SESSION} and request.to_stage
    if moves and request.from_stage in stages:
        before, after = stages.index(request.from_stage), stages.index(request.to_stage)
        if after < before:
            yield log_finding.stage_backward(request)


def _effect(request: LogRequest, desk: Desk) -> tuple[_Effect, tuple[Finding, ...]]:
    """What the entry does to the holdings, with stops where that can't be."""
    match request.kind:
        case EntryKind.COUNTED:
            return _counted(request, desk)
        case EntryKind.RECEIVED:
            stage = request.to_stage or desk.stages[0]
            return _Effect(comes=_at(stage, request.figures)), ()
        case EntryKind.MOVED | EntryKind.SESSION if request.to_stage:
            return _moved(request, desk)
        case EntryKind.LOST | EntryKind.SOLD | EntryKind.LENT:
            leaves, findings = _taken(request, desk, there=desk.state.held)
            return _Effect(leaves=leaves), findings
        case EntryKind.RETURNED:
            leaves, findings = _taken(request, desk, there=desk.state.lent)
            comes = _restaged(leaves, request.to_stage) if request.to_stage else leaves
            return _Effect(leaves=leaves, comes=comes), findings
        case _:
            return _Effect(), ()


def _at(stage: str, figures: Mapping[str, int]) -> Holdings:
    return Holdings(figures={kind: {stage: number} for kind, number in figures.items()})


def _restaged(holdings: Holdings, stage: str) -> Holdings:
    """The same things, all at one stage."""
    return Holdings(
        figures={name: {stage: sum(each.values())} for name, each in holdings.figures.items()},
        stands={name: {stage: sum(each.values())} for name, each in holdings.stands.items()},
    )


def _counted(request: LogRequest, desk: Desk) -> tuple[_Effect, tuple[Finding, ...]]:
    comes: dict[str, Mapping[str, int]] = {}
    findings = []
    for kind, number in request.figures.items():
        there = desk.state.held.figures.get(kind, {})
        if request.to_stage:
            comes[kind] = {request.to_stage: number}
        elif number == sum(there.values()) and there:
            comes[kind] = there
        elif number == 0:
            comes[kind] = dict.fromkeys(desk.stages, 0)
        elif len(there) == 1:
            comes[kind] = dict.fromkeys(there, number)
        else:
            findings.append(
                log_finding.stage_unsaid(
                    kind, number=number, there=there, stages=desk.stages, option="--to"
                )
            )
    return _Effect(comes=Holdings(figures=comes)), tuple(findings)


def _taken(
    request: LogRequest, desk: Desk, *, there: Holdings
) -> tuple[Holdings, tuple[Finding, ...]]:
    """What goes out of a pile, and stops where it can't be told from where or isn't there."""
    if request.stand:
        pattern = desk.stands[request.stand].pattern
        stage, found = _stage(request, desk, name=pattern, number=1, there=there.stands)
        return Holdings(stands={pattern: {stage: 1}}), found
    figures: dict[str, dict[str, int]] = {}
    findings: list[Finding] = []
    for kind, number in request.figures.items():
        stage, found = _stage(request, desk, name=kind, number=number, there=there.figures)
        findings.extend(found)
        figures[kind] = {stage: number}
    return Holdings(figures=figures), tuple(findings)


def _stage(
    request: LogRequest,
    desk: Desk,
    *,
    name: str,
    number: int,
    there: Mapping[str, Mapping[str, int]],
) -> tuple[str, tuple[Finding, ...]]:
    """From which stage so many go, and the stop where that isn't clear or not so many are there."""
    stages = there.get(name, {})
    if not request.from_stage and len(stages) > 1:
        return "", (
            log_finding.stage_unsaid(
                name, number=number, there=stages, stages=desk.stages, option="--from"
            ),
        )
    stage = request.from_stage or next(iter(stages), "")
    if stages.get(stage, 0) < number:
        return stage, (log_finding.more_than_held(request, name, number=number, there=stages),)
    return stage, ()


def _moved(request: LogRequest, desk: Desk) -> tuple[_Effect, tuple[Finding, ...]]:
    """Figures, or a whole stand, brought from one stage to another.

    Loose figures that are brought to the last stage on a named stand become that stand.
    """
    stages, last = desk.stages, desk.stages[-1]
    origin = request.from_stage or stages[stages.index(request.to_stage) - 1]
    asked = replace(request, from_stage=origin)
    if not request.stand:
        leaves, findings = _taken(asked, desk, there=desk.state.held)
        return _Effect(leaves=leaves, comes=_restaged(leaves, request.to_stage)), findings
    stand = desk.stands[request.stand]
    if desk.state.held.stands.get(stand.pattern, {}).get(origin, 0):
        leaves = Holdings(stands={stand.pattern: {origin: 1}})
        return _Effect(leaves=leaves, comes=_restaged(leaves, request.to_stage)), ()
    loose = replace(asked, stand="", figures=stand.figures)
    leaves, findings = _taken(loose, desk, there=desk.state.held)
    if request.to_stage == last:
        comes = Holdings(stands={stand.pattern: {last: 1}})
    else:
        comes = _restaged(leaves, request.to_stage)
    return _Effect(leaves=leaves, comes=comes), findings
