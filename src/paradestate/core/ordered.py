"""What was ordered, made into figures: packs of one source, or figures, and when they are expected.

The day is the one that is said; else that of the entry and the longest lead time of the packs.
"""

import datetime
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace

from paradestate.core import log_finding
from paradestate.core.choice import unknown_choice
from paradestate.core.finding import Finding
from paradestate.core.log_request import Desk, LogRequest
from paradestate.core.number import summed
from paradestate.core.source import Source
from paradestate.core.work.habit import later

OF = "/"
"""Between a source and its pack, as in `North/N1`."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Ordered:
    """What an entry says of it."""

    source: str = ""
    packs: Mapping[str, int] = field(default_factory=dict)
    figures: Mapping[str, int] = field(default_factory=dict)
    expected: datetime.date | None = None


def ordered(request: LogRequest, desk: Desk) -> Ordered:
    """What a request orders; it must have no slip."""
    source, packs = _source(request, desk), _packs(request, desk)
    own = {} if source not in desk.sources else desk.sources[source].packs
    named = {name.removeprefix(f"{source}{OF}"): number for name, number in packs.items()}
    loose = {name: number for name, number in request.figures.items() if name not in packs}
    held = (
        {kind: each * number for kind, each in own[pack].holds.items()}
        for pack, number in named.items()
    )
    return Ordered(
        source=source,
        packs=named,
        figures=summed([loose, *held]),
        expected=request.expected or _by_lead_time(request, desk.sources.get(source), packs=named),
    )


def order_slips(request: LogRequest, desk: Desk) -> Iterator[Finding]:
    """What is wrong with what was ordered, as stops."""
    packs = _pack_names(desk)
    unknown = [name for name in request.figures if name not in desk.kinds and name not in packs]
    for name in unknown:
        known = (*desk.kinds, *packs)
        yield log_finding.unwritten(unknown_choice(name, known, what="figure kind or pack"))
    named = {packs[name] for name in _packs(request, desk)} | ({request.source} - {""})
    if len(named) > 1:
        yield log_finding.several_sources(sorted(named))
    elif request.figures and not named and not unknown:
        yield log_finding.incomplete(
            "Nothing says from whom it was ordered.", hint="Add --source NAME."
        )
    if request.expected is not None and request.expected < request.on:
        yield log_finding.expected_before(request.expected, on=request.on)


def unknown_source(request: LogRequest, desk: Desk) -> Iterator[Finding]:
    """The stop for a source that the files don't have; where they have none any name will do."""
    if request.source and desk.sources and request.source not in desk.sources:
        found = unknown_choice(request.source, desk.sources, what="source")
        yield log_finding.unwritten(found)


def in_one(sources: Iterable[Source]) -> Source:
    """A source of several forces as one, with the packs of all; of one pack that of the last."""
    *_, last = every = tuple(sources)
    return replace(last, packs={name: pack for each in every for name, pack in each.packs.items()})


def sources_differ(
    request: LogRequest, sources: Mapping[str, Mapping[str, Source]]
) -> Iterator[Finding]:
    """The warning where what is ordered isn't the same by all forces of a collection.

    `sources` has those of each force, by its name.
    """
    for source in sorted({name for each in sources.values() for name in each}):
        own = {force: each[source] for force, each in sources.items() if source in each}
        for pack in in_one(own.values()).packs:
            forces = [force for force, each in own.items() if pack in each.packs]
            readings = _readings((own[force] for force in forces), pack)
            if len(readings) > 1 and _bears_on(request, source, pack=pack):
                yield log_finding.sources_differ(source, pack=pack, forces=forces)


def _bears_on(request: LogRequest, source: str, *, pack: str) -> bool:
    """Whether a pack is ordered, or its lead time says when figures of its source come."""
    named = {name.partition(OF)[0] for name in request.figures if OF in name}
    if f"{source}{OF}{pack}" in request.figures:
        return True
    return request.source == source and source not in named and request.expected is None


def _readings(sources: Iterable[Source], pack: str) -> Sequence[object]:
    """What sources that have a pack say of it that an order depends on, each once."""
    found: list[object] = []
    for each in sources:
        reading = (dict(each.packs[pack].holds), each.packs[pack].lead_days)
        found += [reading] if reading not in found else []
    return found


def _source(request: LogRequest, desk: Desk) -> str:
    return next((_pack_names(desk)[name] for name in _packs(request, desk)), request.source)


def _packs(request: LogRequest, desk: Desk) -> Mapping[str, int]:
    """What of a request is packs, by source and name; a kind of that name comes first."""
    packs = _pack_names(desk)
    return {
        name: number
        for name, number in request.figures.items()
        if name not in desk.kinds and name in packs
    }


def _pack_names(desk: Desk) -> Mapping[str, str]:
    """Every pack as it is typed, to its source."""
    return {
        f"{source.name}{OF}{pack}": source.name
        for source in desk.sources.values()
        for pack in source.packs
    }


def _by_lead_time(
    request: LogRequest, source: Source | None, *, packs: Mapping[str, int]
) -> datetime.date | None:
    """The day on which the last pack is there; of figures alone by the longest of the source.

    None where the lead time of one of those packs isn't known.
    """
    if source is None:
        return None
    days = [source.packs[name].lead_days for name in packs or source.packs]
    known = [each for each in days if each is not None]
    return later(request.on, max(known)) if known and len(known) == len(days) else None
