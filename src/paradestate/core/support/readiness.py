"""How far the stands of a plan are, once everything that must be there is served.

plan -> its stands -> allotted after the must layer -> finished, unfinished, lacking
"""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, replace

from paradestate.core.establishment import Establishment
from paradestate.core.finding import Finding, Level
from paradestate.core.force import Force
from paradestate.core.formation import Need
from paradestate.core.game import Purchase
from paradestate.core.number import NONE, summed
from paradestate.core.on_order import figures_on_order
from paradestate.core.sentence.wording import counted, listed, several
from paradestate.core.strength import strength
from paradestate.core.support.entry import Entry, Position
from paradestate.core.support.judge_finding import Known
from paradestate.core.unfolding import Stand

PLAN = "plan"
"""Stands for the wished item that all stands of the plan belong to while they are allotted."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Readiness:
    """The stands of one pattern that an entry of the plan puts down."""

    entry: str
    pattern: str
    wanted: int
    finished: int
    unfinished: int
    """All figures are there, and work is left."""
    lacking: Mapping[str, int]
    """Kind to figures that are lacking."""
    on_order: int = 0
    """Of the stands that lack figures those of which all that they lack is on order."""


def plan_stands(entry: Entry, purchase: Purchase) -> Mapping[str, int]:
    """The stands that one purchase brings, those that come free and those exchanged included."""
    stands = {name: each * purchase.number for name, each in entry.each.items()}
    for name, number in entry.grants.items():
        stands[name] = stands.get(name, 0) + number
    if entry.replaces is not None:
        name = entry.replaces.with_
        stands[name] = stands.get(name, 0) + entry.replaces.number
    return stands


def readiness(
    force: Force, made: Establishment, *, plan: tuple[Purchase, ...]
) -> tuple[Readiness, ...]:
    """How far each pattern of each entry is; printed ones and those off the table are left out.

    All stands of the plan are served at once from what the must layer leaves, stand-ins included.
    """
    wanted: dict[tuple[str, str], int] = {}
    for purchase in plan:
        entry = force.supporting_troops[purchase.entry]
        if entry.place is Position.OFF_TABLE:
            continue
        for pattern, number in plan_stands(entry, purchase).items():
            if force.stands[pattern].figures and not force.stands[pattern].printed:
                key = (purchase.entry, pattern)
                wanted[key] = wanted.get(key, 0) + number
    if not wanted:
        return ()
    return tuple(_served(force, made, plan=plan, wanted=wanted))


def _served(
    force: Force,
    made: Establishment,
    *,
    plan: tuple[Purchase, ...],
    wanted: Mapping[tuple[str, str], int],
) -> Iterator[Readiness]:
    most = _most_of_use(force)
    stands = tuple(
        _stand(force, pattern, entry=entry)
        for (entry, pattern), number in wanted.items()
        for _ in range(min(number, most))
    )
    must = without_exchanged(force, made, plan=plan)
    states = strength(force, replace(made, stands=(*must, *stands))).stands
    last = force.bench.stages[-1]
    to_come = _less(
        figures_on_order(force.on_order),
        summed(state.lacking for state in states if state.stand.layer is Need.MUST),
    )
    for (entry, pattern), number in wanted.items():
        own = [
            state
            for state in states
            if state.stand.wishes == (PLAN, entry) and state.stand.pattern == pattern
        ]
        finished = sum(state.stage == last for state in own)
        bare = {
            kind: each * (number - len(own)) for kind, each in force.stands[pattern].figures.items()
        }
        on_order = _covered((state.lacking for state in own), to_come=to_come)
        whole = force.stands[pattern].figures
        more = min(number - len(own), *(to_come.get(kind, 0) // n for kind, n in whole.items()))
        on_order += _covered([whole] * more, to_come=to_come)
        yield Readiness(
            entry=entry,
            pattern=pattern,
            wanted=number,
            finished=finished,
            unfinished=sum(state.stage is not None for state in own) - finished,
            lacking=summed([*(state.lacking for state in own), bare if number > len(own) else {}]),
            on_order=on_order,
        )


def _less(there: Mapping[str, int], taken: Mapping[str, int]) -> dict[str, int]:
    return {kind: max(0, number - taken.get(kind, 0)) for kind, number in there.items()}


def _covered(lacking: Iterable[Mapping[str, int]], *, to_come: dict[str, int]) -> int:
    """How many stands get all that they lack of what is on order, which is taken off it."""
    covered = 0
    for figures in lacking:
        if figures and all(to_come.get(kind, 0) >= each for kind, each in figures.items()):
            covered += 1
            for kind, each in figures.items():
                to_come[kind] -= each
    return covered


def _most_of_use(force: Force) -> int:
    """Stands of one sort that what is owned can serve, and one more, which lacks something.

    Any further ones go without anything, since stands are served in their order; they are counted
    and not laid out, for a plan may have any number.
    """
    figures = sum(sum(stages.values()) for stages in force.stock.values())
    on_stands = sum(
        sum(stages.values()) * sum(force.stands[pattern].figures.values())
        for pattern, stages in force.stock_stands.items()
        if pattern in force.stands
    )
    return figures + on_stands + 1


def _stand(force: Force, pattern: str, *, entry: str) -> Stand:
    """A stand of the plan, as if it were a wished item that is wanted."""
    return Stand(
        name=f"{entry} / {pattern}",
        pattern=pattern,
        wishes=(PLAN, entry),
        is_wanted=True,
        figures=force.stands[pattern].figures,
        men=NONE,
        printed=False,
        company="",
        level=None,
        within=0,
    )


def without_exchanged(
    force: Force, made: Establishment, *, plan: tuple[Purchase, ...]
) -> tuple[Stand, ...]:
    """The must stands, less those that an entry of the plan exchanges for others."""
    less: dict[str, int] = {}
    for purchase in plan:
        change = force.supporting_troops[purchase.entry].replaces
        if change is not None:
            less[change.of] = less.get(change.of, 0) + change.number
    kept = []
    for stand in made.stands:
        if stand.layer is not Need.MUST:
            continue
        if less.get(stand.pattern, 0):
            less[stand.pattern] -= 1
        else:
            kept.append(stand)
    return tuple(kept)


def readiness_findings(
    ready: tuple[Readiness, ...], *, plan: tuple[Purchase, ...], known: Known
) -> Iterator[Finding]:
    """What was chosen and isn't finished or owned, entry by entry."""
    for entry in dict.fromkeys(each.entry for each in ready):
        own = [each for each in ready if each.entry == entry]
        if all(each.finished == each.wanted for each in own):
            continue
        lacking = summed(each.lacking for each in own)
        missing = f" Lacking: {counted(lacking)}." if lacking else ""
        yield Finding(
            level=Level.WARN,
            code="not-finished",
            message=f"{entry}: {listed(_progress(each) for each in own)}.",
            effect=f"Not all of it can be put down; what is legal doesn't rest on it.{missing}",
            hint="Finish or get them, or borrow them for the evening.",
            place=known.place_of(plan, entry),
        )


def _progress(each: Readiness) -> str:
    """How far the stands of one pattern are: `2 light tanks chosen, 1 finished, 1 unfinished`."""
    absent = each.wanted - each.finished - each.unfinished
    unfinished = f", {each.unfinished} unfinished" if each.unfinished else ""
    lacking = f", {absent} without all figures, {each.on_order} of these on order" if absent else ""
    chosen = several(each.wanted, each.pattern)
    return f"{chosen} chosen, {each.finished} finished{unfinished}{lacking}"
