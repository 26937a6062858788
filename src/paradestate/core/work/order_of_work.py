"""The order of work: which batches are done after which, so that forces are playable soonest.

milestones, works -> order with the least weighted waiting -> batches of each stretch -> rungs

Inside a stretch the order of the batches moves no milestone; there what is here comes before what
is on order, batches that dry take turns, and those with like colours stand together.
"""

import datetime
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from types import MappingProxyType

from paradestate.core.work.coats import colours_of, mixed
from paradestate.core.work.drying import Turn, spells, turns
from paradestate.core.work.ladder import NOTHING, Critical, Ladder, Reached, Rung
from paradestate.core.work.milestone import Milestone
from paradestate.core.work.stand_work import StandWork
from paradestate.core.work.to_come import there_on
from paradestate.core.work.waiting import BestOrder, Share, Waiting, best_order
from paradestate.core.work.workload import Workload

Due = Mapping[datetime.date, Fraction]
"""Day to the minutes of work up to the evening before it."""
AT_ONCE: Due = MappingProxyType({})


def ladder(load: Workload, due: Due = AT_ONCE) -> Ladder:
    """The order of work: repairs as little late as can be, then the least weighted waiting.

    Repairs that are wanted on a day that `due` doesn't have are wanted at once.
    """
    targets = _targets(load)
    days = _days_wanted(load)
    problem = Waiting(
        shares=tuple(_shares(load, targets)),
        weights=tuple(weight for _, weight in targets),
        set_up=load.bench.set_up,
        due={
            number: due.get(days[stands], NOTHING)
            for number, (stands, _) in enumerate(targets)
            if stands in days
        },
    )
    best = best_order(problem)
    return _with_rungs(load, _stretches(load, targets, best=best), best=best, due=due)


def _days_wanted(load: Workload) -> Mapping[frozenset[str], datetime.date]:
    """Stands in repair to the day on which they are wanted."""
    return {frozenset(each.stands): each.wanted for each in load.repairs if each.wanted is not None}


def ladder_by_kind(load: Workload) -> Ladder:
    """The same work kind by kind, that of which there is most first, then in file order."""
    wanted = {name for milestone in load.milestones for name in milestone.stands}
    works = [work for name, work in load.works.items() if name in wanted]
    alike = by_pattern(work for work in works if not work.is_finished)
    in_order = sorted(alike.values(), key=lambda each: -len(each))
    batches = [[_Batch(works=each, early=frozenset())] for each in in_order]
    return _with_rungs(load, batches, best=None)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Batch:
    """Stands of one pattern that are done together."""

    works: Sequence[StandWork]
    early: frozenset[str]


Target = tuple[frozenset[str], Fraction]
"""Unfinished stands for which milestones wait alike, and the weight of all of these."""


def _targets(load: Workload) -> list[Target]:
    """What is waited for: repairs, then in the owner's order; what can be played now isn't."""
    weights: dict[frozenset[str], Fraction] = {}
    for milestone in (*load.repairs, *load.milestones):
        stands = frozenset(name for name in milestone.stands if not load.works[name].is_finished)
        if stands:
            weights[stands] = weights.get(stands, NOTHING) + milestone.weight
    return list(weights.items())


def _shares(load: Workload, targets: Sequence[Target]) -> Iterator[Share]:
    minutes: dict[tuple[str, frozenset[int]], Fraction] = {}
    for name, work in load.works.items():
        of = frozenset(number for number, (stands, _) in enumerate(targets) if name in stands)
        if of and work.minutes:
            key = (work.stand.pattern, of)
            minutes[key] = minutes.get(key, NOTHING) + work.minutes
    for (kind, of), each in minutes.items():
        yield Share(kind=kind, of=of, minutes=each)


def _stretches(
    load: Workload, targets: Sequence[Target], *, best: BestOrder
) -> Sequence[Sequence[_Batch]]:
    """The batches of each stretch, in file order."""
    wanted: dict[str, int] = {}
    for place, number in enumerate(best.order):
        for name in targets[number][0]:
            wanted.setdefault(name, place)
    stretches: list[dict[str, list[StandWork]]] = [{} for _ in best.order]
    for name, work in load.works.items():
        if name in wanted:
            kind = work.stand.pattern
            done = best.stretch[kind, wanted[name]] if work.minutes else wanted[name]
            stretches[done].setdefault(kind, []).append(work)
    return [
        [
            _Batch(
                works=works,
                early=frozenset(
                    each.stand.name for each in works if wanted[each.stand.name] > place
                ),
            )
            for works in batches.values()
        ]
        for place, batches in enumerate(stretches)
    ]


def by_pattern(works: Iterable[StandWork]) -> Mapping[str, list[StandWork]]:
    """Works of the same pattern together."""
    alike: dict[str, list[StandWork]] = {}
    for work in works:
        alike.setdefault(work.stand.pattern, []).append(work)
    return alike


def _with_rungs(
    load: Workload,
    stretches: Sequence[Sequence[_Batch]],
    *,
    best: BestOrder | None,
    due: Due = AT_ONCE,
) -> Ladder:
    rungs = tuple(_rungs(load, stretches))
    ends = {work.stand.name: rung for rung in rungs for work in rung.works}
    reached = [_reached(load, each, ends=ends, due=due) for each in load.milestones]
    reached.sort(key=lambda each: each.ends if each.rung else -1)
    names = {rung.number: _completed(rung, reached) for rung in rungs}
    repairs = tuple(_reached(load, each, ends=ends, due=due) for each in load.repairs)
    waiting = sum((each.milestone.weight * each.ends for each in (*repairs, *reached)), NOTHING)
    return Ladder(
        rungs=tuple(replace(rung, completes=names[rung.number]) for rung in rungs),
        reached=tuple(reached),
        mixed=mixed(rung.colours for rung in rungs),
        waiting=waiting,
        least=waiting if best is None else best.least,
        critical=_critical(reached),
        repairs=repairs,
    )


def _rungs(load: Workload, stretches: Sequence[Sequence[_Batch]]) -> Iterator[Rung]:
    number, clock = 0, NOTHING
    before: frozenset[str] = frozenset()
    for stretch, batches in enumerate((each for each in stretches if each), start=1):
        for alike, turn in _arranged(load, batches, before=before):
            first = number + 1
            for place, which in enumerate(turn.batches):
                number += 1
                other = first + 1 - place if len(turn.batches) > 1 else None
                rung = _rung(load, alike[which], number=number, stretch=stretch, begun=clock)
                waiting = NOTHING if place else turn.waiting
                yield replace(rung, takes_turns_with=other, waiting=waiting)
                clock = rung.ends
                before = frozenset(rung.colours)


def _rung(load: Workload, batch: _Batch, *, number: int, stretch: int, begun: Fraction) -> Rung:
    by_stage = _by_stage(load, batch.works)
    minutes = sum(by_stage.values(), NOTHING)
    set_up = load.bench.set_up if minutes else NOTHING
    return Rung(
        number=number,
        stretch=stretch,
        pattern=batch.works[0].stand.pattern,
        works=tuple(batch.works),
        set_up=set_up,
        minutes=minutes,
        ends=begun + set_up + minutes,
        by_stage=by_stage,
        early=tuple(work.stand.name for work in batch.works if work.stand.name in batch.early),
        takes_turns_with=None,
        waiting=NOTHING,
        colours=_colours(load, batch),
        completes=(),
    )


def _by_stage(load: Workload, works: Iterable[StandWork]) -> Mapping[str, Fraction]:
    minutes: dict[str, Fraction] = {}
    for work in works:
        for stage, each in work.by_stage.items():
            minutes[stage] = minutes.get(stage, NOTHING) + each
    return {stage: minutes[stage] for stage in load.bench.stages if stage in minutes}


def _arranged(
    load: Workload, batches: Sequence[_Batch], *, before: frozenset[str]
) -> Iterator[tuple[Sequence[_Batch], Turn]]:
    """The turns of a stretch with the batches they are of: first what is here, then as it comes."""
    by_day: dict[datetime.date, list[_Batch]] = {}
    for batch in batches:
        by_day.setdefault(there_on(batch.works), []).append(batch)
    for _, alike in sorted(by_day.items()):
        for turn in _in_turn(load, alike, before=before):
            yield alike, turn
            before = frozenset(_colours(load, alike[turn.batches[-1]]))


def _in_turn(
    load: Workload, batches: Sequence[_Batch], *, before: frozenset[str]
) -> Sequence[Turn]:
    """The turns of such batches: what takes no minutes first, then like colours together."""
    paired = turns([spells(_by_stage(load, batch.works), load.bench.dry) for batch in batches])
    colours = {
        turn: frozenset(
            colour for which in turn.batches for colour in _colours(load, batches[which])
        )
        for turn in paired
    }
    idle = [turn for turn in paired if not _minutes(batches, turn)]
    left = [turn for turn in paired if turn not in idle]
    arranged = idle
    while left:
        following = min(left, key=lambda turn: (-len(colours[turn] & before), turn.batches))
        left.remove(following)
        arranged.append(following)
        before = colours[following]
    return arranged


def _colours(load: Workload, batch: _Batch) -> tuple[str, ...]:
    return colours_of(batch.works, load.bench, figures=load.figures, patterns=load.patterns)


def _minutes(batches: Sequence[_Batch], turn: Turn) -> Fraction:
    return sum((work.minutes for which in turn.batches for work in batches[which].works), NOTHING)


def _reached(
    load: Workload, milestone: Milestone, *, ends: Mapping[str, Rung], due: Due
) -> Reached:
    last = max(
        (ends[name] for name in milestone.stands if name in ends),
        key=lambda rung: rung.number,
        default=None,
    )
    return Reached(
        milestone=milestone,
        ends=NOTHING if last is None else last.ends,
        rung=None if last is None else last.number,
        works=tuple(load.works[name] for name in milestone.stands),
        due=None if milestone.wanted is None else due.get(milestone.wanted, NOTHING),
    )


def _completed(rung: Rung, reached: Iterable[Reached]) -> tuple[str, ...]:
    return tuple(each.milestone.name for each in reached if each.rung == rung.number)


def _critical(reached: Iterable[Reached]) -> Critical | None:
    """What of the next milestone lacks figures; else the most work; of equals the first."""
    following = next((each for each in reached if each.rung is not None), None)
    if following is None:
        return None
    lacking = [work for work in following.to_finish if work.lacking]
    return Critical(
        milestone=following.milestone.name,
        work=max(lacking or following.to_finish, key=lambda work: work.minutes),
        lacking=len(lacking),
    )
