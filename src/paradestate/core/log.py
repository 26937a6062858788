"""What is to be logged, made into an entry that says exactly what it does to the holdings.

Stages that were left out are filled in only where there is one answer; else the choices are listed.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace

from paradestate.core import log_finding
from paradestate.core.cancelled import Cancelled, cancelled
from paradestate.core.finding import Finding, stops
from paradestate.core.holdings import Holdings, piles
from paradestate.core.journal_entry import BRINGS_ON, EntryKind, JournalEntry
from paradestate.core.log_request import Desk, LogRequest
from paradestate.core.log_slip import slips
from paradestate.core.on_order import figures_on_order
from paradestate.core.ordered import OF, Ordered, ordered
from paradestate.core.stand_progress import there_already

MOST_MINUTES = 24 * 60
"""Minutes of a day."""

YEARS = 10
"""Of a day that lies further back the year is doubted."""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Effect:
    leaves: Holdings = Holdings()
    comes: Holdings = Holdings()


def drafted(request: LogRequest, desk: Desk) -> tuple[JournalEntry | None, tuple[Finding, ...]]:
    """The entry, or None with the stops that prevent it; and what is doubtful about it."""
    said_wrong = tuple(slips(request, desk))
    if said_wrong:
        return None, said_wrong
    bought = ordered(request, desk) if request.kind is EntryKind.ORDERED else Ordered()
    is_off = request.kind is EntryKind.CANCELLED
    off = cancelled(request, desk) if is_off else Cancelled()
    effect, findings = _effect(request, desk)
    doubts = (*findings, *_doubts(request, desk, effect=effect))
    if stops(doubts):
        return None, stops(doubts)
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
            stands=request.stands,
            minutes=request.minutes or 0,
            promised=_promised(request, desk),
            source=bought.source or off.source or request.source,
            packs=bought.packs,
            ordered=bought.figures,
            cancelled=off.figures,
            expected=bought.expected,
            wanted=request.wanted,
            forecasts=request.forecasts,
            played=request.played,
            note=request.note,
            struck_out=request.struck_out,
        ),
        doubts,
    )


def _promised(request: LogRequest, desk: Desk) -> Mapping[str, int]:
    if request.kind is not EntryKind.PROMISED:
        return {}
    return request.figures or desk.wanted


def _doubts(request: LogRequest, desk: Desk, *, effect: "_Effect") -> Iterator[Finding]:
    if request.on.year < desk.today.year - YEARS:
        yield log_finding.long_ago(request)
    if desk.today < desk.state.last_day:
        yield log_finding.clock_behind(desk.today, last_day=desk.state.last_day)
    yield from _of_orders(request, desk)
    yield from there_already(request, desk)
    for pattern in effect.comes.stands:
        named = sum(stand.pattern == pattern for stand in desk.stands.values())
        more = sum(effect.comes.stands[pattern].values())
        whole = more + sum(desk.state.held.stands.get(pattern, {}).values())
        if not effect.leaves.stands and whole > named:
            yield log_finding.more_stands_than_named(pattern, whole, named=named)
    minutes = request.minutes or 0
    day = desk.state.minutes.get(request.on, 0) + minutes
    if minutes and day > MOST_MINUTES:
        yield log_finding.day_too_long(day, on=request.on)
    stages = desk.stages
    moves = request.kind in BRINGS_ON and request.to_stage
    if moves and request.wanted is None and request.from_stage in stages:
        before, after = stages.index(request.from_stage), stages.index(request.to_stage)
        if after < before:
            yield log_finding.stage_backward(request)


def _of_orders(request: LogRequest, desk: Desk) -> Iterator[Finding]:
    """Whether what came without a source may be what is on order."""
    if request.kind is not EntryKind.RECEIVED or request.source:
        return
    orders = [each for each in desk.state.on_order if set(each.figures) & set(request.figures)]
    figures = figures_on_order(orders)
    if figures:
        same = {kind: number for kind, number in figures.items() if kind in request.figures}
        sources = tuple(dict.fromkeys(each.source for each in orders))
        yield log_finding.still_on_order(same, sources=sources)


def _effect(request: LogRequest, desk: Desk) -> tuple[_Effect, tuple[Finding, ...]]:
    """What the entry does to the holdings, with stops where that can't be."""
    match request.kind:
        case EntryKind.COUNTED:
            return _counted(request, desk)
        case EntryKind.RECEIVED if request.stand:
            whole = {_pattern(request, desk): {request.to_stage or desk.stages[-1]: 1}}
            return _Effect(comes=Holdings(stands=whole)), ()
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


def _pattern(request: LogRequest, desk: Desk) -> str:
    """The pattern of the stand that is named; one that is held may be named by its pattern."""
    named = desk.stands.get(request.stand)
    return request.stand if named is None else named.pattern


def _at(stage: str, figures: Mapping[str, int]) -> Holdings:
    return Holdings(figures={kind: {stage: number} for kind, number in figures.items()})


def _restaged(holdings: Holdings, stage: str) -> Holdings:
    """The same things, all at one stage."""
    return Holdings(
        figures={name: {stage: sum(each.values())} for name, each in holdings.figures.items()},
        stands={name: {stage: sum(each.values())} for name, each in holdings.stands.items()},
    )


def _counted(request: LogRequest, desk: Desk) -> tuple[_Effect, tuple[Finding, ...]]:
    comes: dict[str, Mapping[str, int]] = dict(request.staged)
    findings = []
    for kind, number in request.figures.items():
        there = desk.state.held.figures.get(kind, {})
        if request.to_stage:
            comes[kind] = {request.to_stage: number}
        elif number == 0:
            comes[kind] = dict.fromkeys((*desk.stages, *there), 0)
        elif number == sum(there.values()) and min(there.values()) >= 0:
            comes[kind] = there
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
        pattern = _pattern(request, desk)
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

    Loose figures that are brought to the last stage on a named stand become that stand; figures
    that are named beside it are only some of its own.
    """
    stages, last = desk.stages, desk.stages[-1]
    origin = request.from_stage or stages[stages.index(request.to_stage) - 1]
    asked = replace(request, from_stage=origin)
    if request.stands:
        return _moved_alike(asked, desk)
    if request.figures or not request.stand:
        some = replace(asked, stand="")
        leaves, findings = _taken(some, desk, there=desk.state.held)
        return _Effect(leaves=leaves, comes=_restaged(leaves, request.to_stage)), findings
    pattern = _pattern(request, desk)
    if request.stand not in desk.stands or desk.state.held.stands.get(pattern, {}).get(origin, 0):
        leaves, findings = _taken(asked, desk, there=desk.state.held)
        return _Effect(leaves=leaves, comes=_restaged(leaves, request.to_stage)), findings
    loose = replace(asked, stand="", figures=desk.stands[request.stand].figures)
    leaves, findings = _taken(loose, desk, there=desk.state.held)
    if request.to_stage == last:
        comes = Holdings(stands={pattern: {last: 1}})
    else:
        comes = _restaged(leaves, request.to_stage)
    return _Effect(leaves=leaves, comes=comes), findings


def _moved_alike(request: LogRequest, desk: Desk) -> tuple[_Effect, tuple[Finding, ...]]:
    """Several stands of one pattern: as pieces where so many are held whole, else their figures."""
    named = desk.stands[request.stands[0]]
    number = len(request.stands)
    asked = replace(request, stands=())
    if desk.state.held.stands.get(named.pattern, {}).get(request.from_stage, 0) >= number:
        leaves = Holdings(stands={named.pattern: {request.from_stage: number}})
        return _Effect(leaves=leaves, comes=_restaged(leaves, request.to_stage)), ()
    loose = replace(asked, figures={kind: each * number for kind, each in named.figures.items()})
    leaves, findings = _taken(loose, desk, there=desk.state.held)
    if request.to_stage == desk.stages[-1]:
        comes = Holdings(stands={named.pattern: {request.to_stage: number}})
    else:
        comes = _restaged(leaves, request.to_stage)
    return _Effect(leaves=leaves, comes=comes), findings


def says_the_same(entry: JournalEntry, request: LogRequest) -> bool:
    """Whether an entry that is stored is what is sent again, whenever it was written.

    Stages that were filled in, and the time of writing, are no difference.
    """
    numbers: dict[str, int] = dict(entry.promised)
    for pile in piles(entry.leaves or entry.comes):
        if not pile.is_stand:
            numbers[pile.name] = numbers.get(pile.name, 0) + pile.number
    if request.kind is EntryKind.ORDERED:
        return _orders_the_same(entry, request)
    if request.kind is EntryKind.CANCELLED:
        return _cancels_the_same(entry, request)
    named = request.figures or (
        numbers if request.stand or request.stands or request.staged else {}
    )
    return (
        entry.kind is request.kind
        and (entry.on, entry.note, entry.stand) == (request.on, request.note, request.stand)
        and entry.stands == request.stands
        and (entry.minutes, entry.source) == (request.minutes or 0, request.source)
        and entry.struck_out.startswith(request.struck_out.lower())
        and (entry.wanted, entry.forecasts) == (request.wanted, request.forecasts)
        and entry.played == request.played
        and (not request.staged or request.staged == entry.comes.figures)
        and request.from_stage in _stages_of(entry.leaves)
        and request.to_stage in _stages_of(entry.comes)
        and (numbers == dict(named) or (request.kind is EntryKind.PROMISED and not named))
    )


def _orders_the_same(entry: JournalEntry, request: LogRequest) -> bool:
    """Whether a stored order is what is sent again; figures in packs were filled in."""
    packs = {f"{entry.source}{OF}{name}": number for name, number in entry.packs.items()}
    loose = {k: number for k, number in request.figures.items() if k not in packs}
    return (
        entry.kind is request.kind
        and (entry.on, entry.note) == (request.on, request.note)
        and request.source in {"", entry.source}
        and request.expected in {None, entry.expected}
        and packs == {name: request.figures.get(name, 0) for name in packs}
        and (bool(packs) or entry.ordered == loose)
        and all(entry.ordered.get(kind, 0) >= number for kind, number in loose.items())
    )


def _cancels_the_same(entry: JournalEntry, request: LogRequest) -> bool:
    """Whether what is stored not to come is what is sent again; what was left out was filled in."""
    return (
        entry.kind is request.kind
        and (entry.on, entry.note) == (request.on, request.note)
        and request.source in {"", entry.source}
        and (not request.figures or request.figures == entry.cancelled)
    )


def _stages_of(holdings: Holdings) -> frozenset[str]:
    """The stages at which things are, and none said."""
    return frozenset({"", *(pile.stage for pile in piles(holdings))})
