"""What is left to do on one stand: minutes stage by stage, from the stage at which each figure is.

Figures that are lacking count from the first stage on, as if they were bought in their packet.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field
from fractions import Fraction

from paradestate.core.on_order import OnOrder, figures_on_order
from paradestate.core.repair import Repair
from paradestate.core.strength import Filling, StandState
from paradestate.core.unfolding import Stand
from paradestate.core.work.rates import Rates


@dataclass(frozen=True, slots=True, kw_only=True)
class StandWork:
    """One stand with its work."""

    stand: Stand
    is_finished: bool
    by_stage: Mapping[str, Fraction]
    """Stage still to be reached to minutes, in order; stages that take none included."""
    lacking: Mapping[str, int]
    """Kind to figures that aren't owned yet."""
    fillings: tuple[Filling, ...] = ()
    """What it has of the figures that it wants."""
    unknown: tuple[str, ...] = ()
    """Kinds for which no minutes are given; they count as none."""
    to_reach: Mapping[str, Mapping[str, int]] = field(default_factory=dict)
    """Stage still to be reached to the figures that it wants, by kind; stages as in `by_stage`."""

    to_come: tuple[OnOrder, ...] = ()
    """What is on order of the figures that it lacks."""
    waiting: Mapping[str, Fraction] = field(default_factory=dict)
    """Entry of such an order to those of its minutes that can't begin before that comes."""

    repair: Repair | None = None
    """By when it is wanted again, where it is in repair."""

    @property
    def unordered(self) -> Mapping[str, int]:
        """Kind to figures that it lacks and that nobody ordered."""
        ordered = figures_on_order(self.to_come)
        left = {kind: number - ordered.get(kind, 0) for kind, number in self.lacking.items()}
        return {kind: number for kind, number in left.items() if number}

    @property
    def minutes(self) -> Fraction:
        """All that is left."""
        return sum(self.by_stage.values(), Fraction(0))


@dataclass(frozen=True, slots=True, kw_only=True)
class PatternMade:
    """The figures of a stand under the name of its pattern."""

    name: str
    figures: Mapping[str, int]


def made_of(stand: Stand) -> PatternMade:
    """A stand as the bench sees it."""
    return PatternMade(name=stand.pattern, figures=stand.figures)


def stand_work(state: StandState, *, rates: Rates) -> StandWork:
    """What is left to do on a stand that holds figures."""
    stages = rates.bench.stages
    pattern = made_of(state.stand)
    piles = [(each.kind, each.stage, each.number) for each in state.fillings]
    piles += [(kind, stages[0], number) for kind, number in state.lacking.items()]
    minutes: dict[str, Fraction] = {}
    to_reach: dict[str, dict[str, int]] = {}
    for kind, stage, number in piles:
        for later, each in rates.left_by_stage(pattern, kind, stage=stage).items():
            minutes[later] = minutes.get(later, Fraction(0)) + each * number
            figures = to_reach.setdefault(later, {})
            figures[kind] = figures.get(kind, 0) + number
    is_finished = not state.lacking and state.stage == stages[-1]
    return StandWork(
        stand=state.stand,
        is_finished=is_finished,
        by_stage={stage: minutes[stage] for stage in stages if stage in minutes},
        lacking=state.lacking,
        fillings=state.fillings,
        unknown=() if is_finished else rates.unknown(pattern),
        to_reach={stage: to_reach[stage] for stage in stages if stage in to_reach},
    )


def printed_work(stand: Stand) -> StandWork:
    """A stand of which a printed marker suffices: nothing is left to do at the bench."""
    return StandWork(stand=stand, is_finished=True, by_stage={}, lacking={})
