"""The workload of a force: its milestones, and what is left to do on every stand they hold.

What is owned goes first to the stands for which most of the milestones wait, by their weight; like
figures are alike, so this changes no number of the count.
"""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from paradestate.core.bench import Bench
from paradestate.core.establishment import Establishment, establishment
from paradestate.core.figure import FigureKind
from paradestate.core.finding import Finding, Level, stops
from paradestate.core.force import Force
from paradestate.core.place import Place, nearest_place
from paradestate.core.sentence.wording import counted, hours_words, listed
from paradestate.core.strength import strength
from paradestate.core.structure import Structure, structure
from paradestate.core.unfolding import Stand
from paradestate.core.work.aims import aims, with_numbers
from paradestate.core.work.milestone import (
    Aimed,
    Milestone,
    milestone_of,
    repairs_wanted,
    stand_beside,
)
from paradestate.core.work.rates import Rates
from paradestate.core.work.stand_work import StandWork, printed_work, stand_work
from paradestate.core.work.to_come import with_orders


@dataclass(frozen=True, slots=True, kw_only=True)
class Workload:
    """What there is to do, and for what."""

    milestones: tuple[Milestone, ...]
    """In the owner's order."""
    works: Mapping[str, StandWork]
    """Stand by its name to its work, in the order of the widest force."""
    bench: Bench
    figures: Mapping[str, FigureKind]
    patterns: frozenset[str]
    """Names of all stand patterns."""
    repairs: tuple[Milestone, ...] = ()
    """Stands of the milestones that are in repair, by the day on which they are wanted."""


def workload(
    force: Force, made: Establishment, *, game: str | None = None
) -> tuple[Workload | None, tuple[Finding, ...]]:
    """The workload of a raised force, or None with the stops that prevent it."""
    aimed, findings = aims(force, made, game=game)
    structures = [structure(with_numbers(force, each.numbers)) for each in aimed]
    stopped = [finding for _, more in structures for finding in stops(more)]
    widest, more = _widest(force, aimed)
    findings = tuple(dict.fromkeys((*findings, *stopped, *stops(more))))
    settled = [each for each, _ in structures if each is not None]
    if widest is None or stops(findings) or len(settled) < len(aimed):
        return None, findings
    works = _works(force, widest)
    milestones = _milestones(widest, aimed, settled=settled, works=works)
    works = _works(force, _by_weight(widest, milestones))
    works = {stand.name: works[stand.name] for stand in widest.stands if stand.name in works}
    found = Workload(
        milestones=milestones,
        works=works,
        bench=force.bench,
        figures=force.figures,
        patterns=frozenset(force.stands),
        repairs=tuple(_repairs(force, works, milestones=milestones)),
    )
    findings = (*findings, *_no_minutes(force, found), *_left_out(found, aimed))
    return (None if stops(findings) else found), findings


def _widest(
    force: Force, aimed: Iterable[Aimed]
) -> tuple[Establishment | None, tuple[Finding, ...]]:
    """The force of which every milestone is a part."""
    numbers: dict[str, int] = {}
    beside: dict[str, int] = {}
    for each in aimed:
        for of, number in each.numbers.items():
            numbers[of] = max(number, numbers.get(of, 0))
        for of, number in each.beside.items():
            beside[of] = max(number, beside.get(of, 0))
    widest, findings = establishment(with_numbers(force, numbers))
    if widest is None:
        return None, findings
    more = [
        stand_beside(force.stands[of], number=each)
        for of, number in beside.items()
        for each in range(1, number + 1)
    ]
    return replace(widest, stands=(*widest.stands, *more)), findings


def _works(force: Force, widest: Establishment) -> Mapping[str, StandWork]:
    rates = Rates(bench=force.bench, figures=force.figures)
    states = strength(force, widest).stands
    own = {state.stand.name: stand_work(state, rates=rates) for state in states}
    made = with_orders(own, force.on_order, rates=rates)
    for repair in force.repairs:
        if repair.stand in made and not made[repair.stand].is_finished:
            made = {**made, repair.stand: replace(made[repair.stand], repair=repair)}
    printed = (stand for stand in widest.stands if stand.is_wanted and stand.name not in made)
    return {**made, **{stand.name: printed_work(stand) for stand in printed}}


def _repairs(
    force: Force, works: Mapping[str, StandWork], *, milestones: Iterable[Milestone]
) -> Iterator[Milestone]:
    """Repairs of stands that some milestone has, and that aren't finished."""
    waited_for = {name for milestone in milestones for name in milestone.stands}
    unfinished = {name for name in waited_for if not works[name].is_finished}
    yield from repairs_wanted(force.repairs, stands=unfinished)


def _milestones(
    widest: Establishment,
    aimed: Sequence[Aimed],
    *,
    settled: Sequence[Structure],
    works: Mapping[str, StandWork],
) -> tuple[Milestone, ...]:
    minutes = {name: work.minutes for name, work in works.items()}
    return tuple(
        milestone_of(each, widest, settled=structure_, minutes=minutes)
        for each, structure_ in zip(aimed, settled, strict=True)
    )


def _by_weight(widest: Establishment, milestones: Iterable[Milestone]) -> Establishment:
    """The same with those stands first for which most of the milestones wait."""
    weights: dict[str, Fraction] = {}
    for milestone in milestones:
        for name in milestone.stands:
            weights[name] = weights.get(name, Fraction(0)) + milestone.weight

    def least_first(stand: Stand) -> Fraction:
        return -weights.get(stand.name, Fraction(0))

    return replace(widest, stands=tuple(sorted(widest.stands, key=least_first)))


def _no_minutes(force: Force, found: Workload) -> Iterator[Finding]:
    """Kinds of figure for which no minutes are given: a stop where that is so of all."""
    wanted = {name for milestone in found.milestones for name in milestone.stands}
    to_do = [work for name, work in found.works.items() if name in wanted and not work.is_finished]
    unknown = [work for work in to_do if work.unknown]
    if not unknown:
        return
    kinds = dict.fromkeys(kind for work in unknown for kind in work.unknown)
    numbers: dict[str, int] = {}
    for work in unknown:
        numbers[work.stand.pattern] = numbers.get(work.stand.pattern, 0) + 1
    is_all = len(unknown) == len(to_do)
    yield Finding(
        level=Level.STOP if is_all else Level.WARN,
        code="bench-minutes-missing",
        message=f"No minutes are given for {listed(kinds)}: {counted(numbers)}.",
        effect="There is no order of work."
        if is_all
        else "Their work counts as nothing: what waits for them is said to be playable too soon.",
        hint=minutes_hint(force, kinds),
        place=_where_bench_is(force),
    )


def minutes_hint(force: Force, kinds: Iterable[str]) -> str:
    """How minutes are given for these kinds, by their sorts."""
    sorts = dict.fromkeys(force.figures[kind].sort.value for kind in kinds if kind in force.figures)
    last = force.bench.stages[-1]
    return (
        f"Add minutes for {listed(sorts) or 'each kind'} to 'bench', such as "
        f"minutes: {{{next(iter(sorts), 'foot')}: {{{last}: 20}}}}, or 'minutes per stand'."
    )


def _where_bench_is(force: Force) -> Place:
    """The section, or what is raised where there is none: the file in which it would stand."""
    path = ("bench",) if ("bench",) in force.places else ("raise",)
    return nearest_place(force.places, path)


def _left_out(found: Workload, aimed: Iterable[Aimed]) -> Iterator[Finding]:
    """Milestones of the owner without something that the list needs."""
    for milestone, wanted in zip(found.milestones, aimed, strict=True):
        if not milestone.left_out:
            continue
        numbers: dict[str, int] = {}
        for name in milestone.left_out:
            pattern = found.works[name].stand.pattern
            numbers[pattern] = numbers.get(pattern, 0) + 1
        minutes = sum((found.works[name].minutes for name in milestone.left_out), Fraction(0))
        yield _without(milestone, numbers, minutes=minutes, place=wanted.place)


def _without(
    milestone: Milestone, numbers: Mapping[str, int], *, minutes: Fraction, place: Place | None
) -> Finding:
    the = f"the {next(iter(numbers))}" if sum(numbers.values()) == 1 else counted(numbers)
    hours = hours_words(minutes)
    return Finding(
        level=Level.WARN,
        code="must-have-left-out",
        message=f"'{milestone.name}' leaves out {the}, which the list needs. Add {hours}?",
        effect="What is reached then isn't a legal force.",
        hint="Take these numbers out of the milestone, or raise them to the least of the list.",
        place=place or nearest_place({}, ()),
    )
