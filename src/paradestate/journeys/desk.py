"""What must be known of the forces before something can be written down."""

import datetime
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from pathlib import Path

from paradestate.core.choice import Choice
from paradestate.core.cover import Substitutes
from paradestate.core.finding import Finding
from paradestate.core.holdings import Holdings, piles
from paradestate.core.journal import JournalState
from paradestate.core.journal_entry import EntryKind
from paradestate.core.log_finding import incomplete, stages_differ
from paradestate.core.log_request import Desk, LogRequest, NamedStand
from paradestate.core.log_slip import OPTIONS
from paradestate.core.ordered import in_one, sources_differ
from paradestate.core.promise import Cupboard
from paradestate.journeys.check import Checked
from paradestate.journeys.count import Count, count
from paradestate.journeys.memory import NOTHING, Memory


@dataclass(frozen=True, slots=True, kw_only=True)
class Laid:
    """A desk, with what is doubtful about it; or None with the stops that prevent it."""

    desk: Desk | None
    findings: tuple[Finding, ...] = ()
    parts: Mapping[str, Mapping[str, int]] = field(default_factory=dict)
    """Kind, then stand pattern, to figures that the promise of a whole force needs."""


def desk_of_force(
    folder: Path,
    read: Checked,
    *,
    request: LogRequest,
    state: JournalState,
    today: datetime.date,
    memory: Memory = NOTHING,
) -> Laid:
    """The desk of one force. It is counted only where a stand or a promise calls for that."""
    is_promise = request.kind is EntryKind.PROMISED
    asks_for_stands = request.stand or request.stands or is_promise
    answer = count(folder, today=today, choice=Choice(), memory=memory) if asks_for_stands else None
    if answer is not None and answer.count is None:
        return Laid(desk=None, findings=answer.checked.findings)
    counted = None if answer is None else answer.count
    desk = Desk(
        kinds=tuple(read.force.figures),
        stages=read.force.bench.stages,
        stands={} if counted is None else dict(_named(counted)),
        state=state,
        today=today,
        wanted={} if counted is None else counted.strength.wanted,
        sources=read.force.sources,
    )
    is_whole = counted is not None and is_promise and not request.figures
    return Laid(desk=desk, parts=_parts(counted) if counted is not None and is_whole else {})


def _named(counted: Count) -> Iterator[tuple[str, NamedStand]]:
    for stand in counted.made.stands:
        if stand.figures:
            yield stand.name, NamedStand(pattern=stand.pattern, figures=stand.figures)


def _parts(counted: Count) -> Mapping[str, Mapping[str, int]]:
    parts: dict[str, dict[str, int]] = {}
    for state in counted.strength.stands:
        for kind, number in state.stand.figures.items():
            of_kind = parts.setdefault(kind, {})
            of_kind[state.stand.pattern] = of_kind.get(state.stand.pattern, 0) + number
    return parts


def desk_of_collection(
    forces: Mapping[str, Checked],
    *,
    request: LogRequest,
    state: JournalState,
    today: datetime.date,
) -> Laid:
    """The desk of all forces together, for what belongs to none of them alone."""
    if request.stand or request.stands or request.kind is EntryKind.PROMISED:
        found = incomplete(
            "That belongs to one force of the collection.",
            hint=f"Name its folder: {', '.join(forces)}.",
        )
        return Laid(desk=None, findings=(found,))
    stages = {read.force.bench.stages for read in forces.values()}
    if len(stages) > 1 and OPTIONS[request.kind] & {"from", "to"}:
        return Laid(desk=None, findings=(stages_differ(forces),))
    is_order = request.kind is EntryKind.ORDERED
    sources = {name: read.force.sources for name, read in forces.items()}
    kinds = dict.fromkeys(kind for read in forces.values() for kind in read.force.figures)
    return Laid(
        desk=Desk(
            kinds=tuple(kinds),
            stages=next(iter(stages)),
            stands={},
            state=state,
            today=today,
            sources={
                name: in_one(each[name] for each in sources.values() if name in each)
                for name in dict.fromkeys(name for each in sources.values() for name in each)
            },
        ),
        findings=tuple(sources_differ(request, sources)) if is_order else (),
    )


def cupboard_of(
    forces: Mapping[str, Checked], held: Holdings, *, parts: Mapping[str, Mapping[str, int]]
) -> Cupboard:
    """What all forces of a collection can promise of what is held."""
    total: dict[str, int] = {}
    for pile in piles(held):
        each = _figures_on(forces, pile.name) if pile.is_stand else {pile.name: 1}
        for kind, number in each.items():
            total[kind] = total.get(kind, 0) + number * pile.number
    may_stand_for = {
        kind: figure.may_stand_for
        for read in forces.values()
        for kind, figure in read.force.figures.items()
    }
    return Cupboard(
        held={kind: number for kind, number in total.items() if number > 0},
        substitutes=Substitutes(may_stand_for=may_stand_for),
        parts=parts,
    )


def _figures_on(forces: Mapping[str, Checked], pattern: str) -> Mapping[str, int]:
    """The figures of a stand by the first force that has the pattern."""
    for read in forces.values():
        stand = read.force.stands.get(pattern)
        if stand is not None:
            return stand.modelled
    return {}
