"""What may be finished next with hours of work: one more stand of a pattern that is put down.

Work is reckoned with the must layer of the first of the games; where games raise different
numbers, each of them gives its own must stands what is finished of their patterns first.
"""

from collections.abc import Mapping, Sequence
from dataclasses import replace
from fractions import Fraction

from paradestate.chance.force.fielding import Depot
from paradestate.chance.next.expectation import Stock
from paradestate.core.advice.advice import Candidate, LeftOut
from paradestate.core.advice.basket import Basket
from paradestate.core.advice.bench_work import BenchWork, Pattern, Staged
from paradestate.core.ceiling import stands_of
from paradestate.core.choice import CHOSEN_HERE
from paradestate.core.finding import Finding, Level
from paradestate.core.force import Force
from paradestate.core.formation import Need
from paradestate.core.number import summed
from paradestate.core.place import nearest_place
from paradestate.core.sentence.wording import counted, listed
from paradestate.core.strength import StandState, strength
from paradestate.core.work.rates import Rates
from paradestate.core.work.workload import minutes_hint
from paradestate.journeys.count import Count
from paradestate.journeys.goods import Goods, PlayedGame, wish_findings


def stands_to_finish(
    games: Sequence[PlayedGame], *, limit: Fraction, wish: Mapping[str, int]
) -> Goods:
    """The patterns of which at least one more stand can be finished within the limit."""
    counted_force = games[0].count
    rates = _rates(counted_force.force)
    free, begun = _bench(counted_force)
    kept: list[Pattern] = []
    most: list[int] = []
    left_out: list[LeftOut] = []
    for name, figures in _patterns(games).items():
        pattern = Pattern(name=name, figures=figures, begun=begun.get(name, ()))
        pattern = replace(pattern, ready=_ready(pattern, free=free, rates=rates))
        number = _most(pattern, free=free, rates=rates, limit=limit, wish=wish.get(name, 0))
        if isinstance(number, str):
            left_out.append(LeftOut(name=name, reason=number))
        else:
            kept.append(pattern)
            most.append(number)
    work = BenchWork(kept, free=free, rates=rates, most=most)

    def ceiling(basket: Basket) -> Stock:
        return tuple(_with_stands(game.owned, kept, more=work.stands(basket)) for game in games)

    def stock(basket: Basket) -> Stock:
        used = {kind: -number for kind, number in work.work(basket).finished.items()}
        return tuple(each.with_figures(used) for each in ceiling(basket))

    return Goods(
        candidates=tuple(
            Candidate(name=each.name, words=f"one more with {counted(each.figures)}")
            for each in kept
        ),
        means=work,
        limit=limit,
        left_out=tuple(left_out),
        kinds=frozenset(kind for pattern in kept for kind in pattern.figures),
        stock=stock,
        ceiling=ceiling,
    )


def without_minutes(games: Sequence[PlayedGame], *, wish: Mapping[str, int]) -> tuple[Finding, ...]:
    """Stops: no minutes are given for anything that may be finished, an unknown wish."""
    force = games[0].count.force
    patterns = _patterns(games)
    rates = _rates(force)
    unknown = {
        name: rates.unknown(Pattern(name=name, figures=figures, begun=()))
        for name, figures in patterns.items()
    }
    if all(unknown.values()):
        return (_no_minutes(force, dict.fromkeys(k for kinds in unknown.values() for k in kinds)),)
    return tuple(wish_findings(tuple(patterns), wish=wish, what="stand"))


def _no_minutes(force: Force, kinds: Mapping[str, None]) -> Finding:
    return Finding(
        level=Level.STOP,
        code="minutes-missing",
        message="No minutes are given for any stand that may be finished.",
        effect="It can't be said what hours of work bring.",
        hint=minutes_hint(force, kinds),
        place=nearest_place(force.places, ("bench",)) if force.places else CHOSEN_HERE,
    )


def _rates(force: Force) -> Rates:
    return Rates(bench=force.bench, figures=force.figures)


def _patterns(games: Sequence[PlayedGame]) -> Mapping[str, Mapping[str, int]]:
    """The patterns that the must layer or an entry puts down with figures on them."""
    names: dict[str, None] = {}
    for game in games:
        must = (each.pattern for each in game.count.made.stands if each.layer is Need.MUST)
        names |= dict.fromkeys(must)
        names |= dict.fromkeys(p for entry in game.entries.values() for p in stands_of(entry))
    return {name: figures for name in names if (figures := games[0].owned.on_stand.get(name, {}))}


def _bench(count: Count) -> tuple[Staged, Mapping[str, tuple[Staged, ...]]]:
    """Figures by stage that nothing of the must layer holds, and its stands that are begun."""
    force = count.force
    must = tuple(stand for stand in count.made.stands if stand.layer is Need.MUST)
    states = strength(force, replace(count.made, stands=must)).stands
    last = force.bench.stages[-1]
    held: list[tuple[str, str, int]] = []
    begun: dict[str, list[Staged]] = {}
    for pattern in dict.fromkeys(state.stand.pattern for state in states):
        own = [state for state in states if state.stand.pattern == pattern]
        own.sort(key=lambda state: not _is_whole(state, last=last))
        for state in own[force.stock_stands.get(pattern, {}).get(last, 0) :]:
            held.extend((each.kind, each.stage, each.number) for each in state.fillings)
            if not state.lacking:
                begun.setdefault(pattern, []).append(_staged(state))
    free = {kind: dict(stages) for kind, stages in _loose(force).items()}
    for kind, stage, number in held:
        free[kind][stage] -= number
    return free, {pattern: tuple(each) for pattern, each in begun.items()}


def _is_whole(state: StandState, *, last: str) -> bool:
    """Whether it may be a finished stand: all its own kinds, and finished."""
    return state.stage == last and all(each.kind == each.stands_for for each in state.fillings)


def _staged(state: StandState) -> Staged:
    staged: dict[str, dict[str, int]] = {}
    for each in state.fillings:
        stages = staged.setdefault(each.kind, {})
        stages[each.stage] = stages.get(each.stage, 0) + each.number
    return staged


def _loose(force: Force) -> Staged:
    """All figures that are on no finished stand, by stage."""
    loose = {kind: dict(stages) for kind, stages in force.stock.items()}
    last = force.bench.stages[-1]
    for pattern, stages in force.stock_stands.items():
        stand = force.stands.get(pattern)
        for stage, number in stages.items():
            for kind, each in (stand.modelled if stand and stage != last else {}).items():
                own = loose.setdefault(kind, {})
                own[stage] = own.get(stage, 0) + each * number
    return loose


def _most(pattern: Pattern, *, free: Staged, rates: Rates, limit: Fraction, wish: int) -> int | str:
    """How many stands of a pattern can be finished within the limit; else why none is."""
    unknown = rates.unknown(pattern)
    if unknown:
        return f"no minutes are given for {listed(unknown)}"
    work = BenchWork([pattern], free=free, rates=rates, most=[0])
    number = 0
    while work.can_be_had((number + 1,)) and work.cost((number + 1,)) <= limit:
        number += 1
    if number or wish:
        return max(number, wish)
    return (
        "there are no figures for one more"
        if not work.can_be_had((1,))
        else "it takes longer than the hours"
    )


def _ready(pattern: Pattern, *, free: Staged, rates: Rates) -> int:
    """How many stands can be put together of finished figures."""
    work = BenchWork([pattern], free=free, rates=rates, most=[0])
    number = 0
    figures = sum(pattern.figures.values())
    while sum(work.work((number + 1,)).finished.values()) == figures * (number + 1):
        number += 1
    return number


def _with_stands(owned: Depot, patterns: Sequence[Pattern], *, more: Mapping[str, int]) -> Depot:
    """What there is with so many more finished stands, their finished figures still loose."""
    served = [
        {kind: -each * min(more[pattern.name], max(0, -owned.spare[pattern.name]))}
        for pattern in patterns
        if pattern.name in more
        for kind, each in pattern.figures.items()
    ]
    return replace(owned, spare=summed((owned.spare, more)), must=summed((owned.must, *served)))
