"""Job cards, one for each batch of the ladder, and colour cards, one for each kind of figure."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from paradestate.core.figure import Sort
from paradestate.core.force import Force
from paradestate.core.work.coats import PAINTED, Part, parts_of
from paradestate.core.work.ladder import Rung
from paradestate.core.work.paint import figures_to
from paradestate.core.work.stand_work import StandWork


@dataclass(frozen=True, slots=True, kw_only=True)
class CardStand:
    """A stand on a job card."""

    name: str
    is_done: tuple[bool, ...]
    """For each stage of the card, whether all its figures have reached it."""
    lacking: Mapping[str, int]


@dataclass(frozen=True, slots=True, kw_only=True)
class CardPart:
    """A part of the uniform on a job card."""

    part: Part
    kinds: tuple[str, ...]
    """Of the figures that wear it."""
    is_for_all: bool
    """Whether those are all that the card has to paint."""


@dataclass(frozen=True, slots=True, kw_only=True)
class JobCard:
    """One batch, as it lies beside the work."""

    rung: Rung
    stages: tuple[str, ...]
    """Still to be reached by any of its stands, in their order."""
    stands: tuple[CardStand, ...]
    parts: tuple[CardPart, ...]
    dry: Mapping[str, Fraction]
    """Stage to the minutes for which it dries."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ColourCard:
    """How one kind of figure is painted."""

    kind: str
    sort: Sort
    number: int
    """Figures still to be painted so."""
    patterns: tuple[str, ...]
    """Stands on which they are."""
    parts: tuple[Part, ...]


def job_cards(rungs: Sequence[Rung], force: Force) -> tuple[JobCard, ...]:
    """A card for each batch."""
    return tuple(_card(rung, force) for rung in rungs)


def _card(rung: Rung, force: Force) -> JobCard:
    stages = tuple(
        stage for stage in force.bench.stages if any(stage in work.to_reach for work in rung.works)
    )
    return JobCard(
        rung=rung,
        stages=stages,
        stands=tuple(
            CardStand(
                name=work.stand.name,
                is_done=tuple(stage not in work.to_reach for stage in stages),
                lacking=work.lacking,
            )
            for work in rung.works
        ),
        parts=tuple(_parts(rung.works, force)),
        dry={stage: force.bench.dry[stage] for stage in stages if force.bench.dry.get(stage)},
    )


def _parts(works: Sequence[StandWork], force: Force) -> Iterator[CardPart]:
    every: set[str] = set()
    kinds: dict[Part, dict[str, None]] = {}
    for kind, _, parts in _to_paint(works, force):
        every.add(kind)
        for part in parts:
            kinds.setdefault(part, {})[kind] = None
    order = list(force.bench.colours)
    for part, of in sorted(kinds.items(), key=lambda each: order.index(each[0].name)):
        yield CardPart(part=part, kinds=tuple(of), is_for_all=len(of) == len(every))


def _to_paint(
    works: Sequence[StandWork], force: Force
) -> Iterator[tuple[str, StandWork, tuple[Part, ...]]]:
    """Kinds that still have to be painted, stand by stand, with their parts."""
    patterns = frozenset(force.stands)
    for work in works:
        for kind in figures_to(PAINTED, work, bench=force.bench):
            parts = parts_of(
                kind,
                force.bench,
                pattern=work.stand.pattern,
                figures=force.figures,
                patterns=patterns,
            )
            yield kind, work, parts


def colour_cards(rungs: Sequence[Rung], force: Force) -> tuple[ColourCard, ...]:
    """A card for each kind of figure that still has to be painted, and has colours.

    A kind that is painted otherwise on some stands has a card for each way.
    """
    works = [work for rung in rungs for work in rung.works]
    numbers: dict[tuple[str, tuple[Part, ...]], int] = {}
    patterns: dict[tuple[str, tuple[Part, ...]], dict[str, None]] = {}
    for kind, work, parts in _to_paint(works, force):
        if parts:
            key = (kind, parts)
            number = figures_to(PAINTED, work, bench=force.bench)[kind]
            numbers[key] = numbers.get(key, 0) + number
            patterns.setdefault(key, {})[work.stand.pattern] = None
    return tuple(
        ColourCard(
            kind=kind,
            sort=force.figures[kind].sort,
            number=number,
            patterns=tuple(patterns[kind, parts]),
            parts=parts,
        )
        for (kind, parts), number in numbers.items()
    )
