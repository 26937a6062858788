"""Strength, deficiency and surplus: what is owned, allotted to what is wanted, kind by kind.

Each figure serves once. A finished stand serves itself first and its figures serve no other; all
other figures are allotted at once, stand-ins included. Which stand gets what was allotted to its
like makes no difference to any sum: what was worked on as one stand stays with it, the rest goes to
the stands in their order.
"""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from paradestate.core.allotment import AllotmentProblem, Serving, allotted
from paradestate.core.establishment import Establishment
from paradestate.core.figure import StandIn
from paradestate.core.force import Force
from paradestate.core.formation import Need
from paradestate.core.holdings import Holdings
from paradestate.core.number import summed
from paradestate.core.unfolding import Stand


@dataclass(frozen=True, slots=True, kw_only=True)
class Filling:
    """So many figures of one owned kind, at one stage, that are allotted to a stand."""

    kind: str
    stands_for: str
    """The kind that is wanted; the same as `kind` unless the figures stand in."""
    stage: str
    number: int


@dataclass(frozen=True, slots=True, kw_only=True)
class StandState:
    """How far one wanted stand is."""

    stand: Stand
    stage: str | None
    """The least advanced stage among its figures; None while some are lacking."""
    lacking: Mapping[str, int]
    """Kind to figures that it still wants."""
    fillings: tuple[Filling, ...]
    """What it has of the figures that it wants."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Strength:
    """What can be fielded of an establishment, and what is lacking."""

    stands: tuple[StandState, ...]
    """Wanted stands that hold figures, must first, in order of the establishment."""
    wanted: Mapping[str, int]
    held: Mapping[str, int]
    used: Mapping[str, int]
    """Kind to figures owned that serve, as themselves or as another kind."""
    stand_ins: tuple[StandIn, ...]
    deficiency: Mapping[str, int]
    """Kind to figures lacking; kinds that lack nothing are left out."""
    surplus: Mapping[str, int]
    """Kind to figures owned and not wanted."""
    loose: Mapping[str, int]
    """Kind to figures owned that aren't on finished stands, and so may serve as anything."""
    loose_wanted: Mapping[str, int]
    """Kind to figures wanted for stands that no finished one serves whole."""

    @property
    def filled(self) -> Mapping[str, int]:
        """Kind to figures wanted that are there, as themselves or by a stand-in."""
        there = {
            kind: number - self.deficiency.get(kind, 0) for kind, number in self.wanted.items()
        }
        return {kind: number for kind, number in there.items() if number}


def stands_by_stage(strength_: Strength) -> Mapping[str, int]:
    """Stage to how many wanted stands have all their figures, the least advanced at that stage."""
    stages = [state.stage for state in strength_.stands if state.stage is not None]
    return {stage: stages.count(stage) for stage in dict.fromkeys(stages)}


def strength(force: Force, made: Establishment) -> Strength:
    """The stock of the force allotted to its must stands and wanted wished items."""
    drawer = _Drawer(force)
    wanted_stands = [stand for stand in made.stands if stand.is_wanted and stand.figures]
    in_order = sorted(wanted_stands, key=lambda stand: stand.layer is Need.WISHED)
    by_name = sorted(in_order, key=lambda stand: (stand.layer is Need.WISHED, _turn(force, stand)))
    whole = {id(stand): drawer.take_stand(stand.pattern) for stand in by_name}
    rest = [stand for stand in in_order if not whole[id(stand)]]
    servings = drawer.allotted(force, rest)
    tray = _Tray(servings, stages=force.bench.stages)
    for stand in rest:
        tray.give_own(stand, force.worked.get(stand.name, NONE_WORKED))
    states = tuple(
        _finished(stand, stage=force.bench.stages[-1]) if whole[id(stand)] else tray.state_of(stand)
        for stand in in_order
    )
    wanted = summed(stand.figures for stand in in_order)
    deficiency = summed(state.lacking for state in states)
    used = summed(
        [
            *(stand.figures for stand in in_order if whole[id(stand)]),
            *({serving.kind: serving.number} for serving in servings),
        ]
    )
    surplus = {
        kind: number - used.get(kind, 0)
        for kind, number in drawer.held.items()
        if number > used.get(kind, 0)
    }
    return Strength(
        stands=states,
        wanted=wanted,
        held=drawer.held,
        used=used,
        stand_ins=_stand_ins(servings),
        deficiency=deficiency,
        surplus=surplus,
        loose=summed({kind: sum(each.values())} for kind, each in drawer.figures.items()),
        loose_wanted=summed(stand.figures for stand in rest),
    )


NONE_WORKED = Holdings()


def _turn(force: Force, stand: Stand) -> int:
    """When a stand takes a finished one: first what was finished as it, last what is in work."""
    worked = force.worked.get(stand.name, NONE_WORKED).stands.get(stand.pattern, {})
    if force.bench.stages[-1] in worked:
        return 0
    return 2 if worked else 1


def _finished(stand: Stand, *, stage: str) -> StandState:
    fillings = tuple(
        Filling(kind=kind, stands_for=kind, stage=stage, number=number)
        for kind, number in stand.figures.items()
    )
    return StandState(stand=stand, stage=stage, lacking={}, fillings=fillings)


def _stand_ins(servings: Iterable[Serving]) -> tuple[StandIn, ...]:
    numbers: dict[tuple[str, str], int] = {}
    for serving in servings:
        if serving.kind != serving.stands_for:
            pair = (serving.kind, serving.stands_for)
            numbers[pair] = numbers.get(pair, 0) + serving.number
    return tuple(
        StandIn(kind=kind, stands_for=other, number=number)
        for (kind, other), number in sorted(numbers.items())
    )


class _Drawer:
    """What is owned and not yet given out, most finished first."""

    def __init__(self, force: Force) -> None:
        self.stages = force.bench.stages
        self.finished_stands: dict[str, int] = {}
        self.figures: dict[str, dict[str, int]] = {
            kind: dict(stages) for kind, stages in force.stock.items()
        }
        self._take_in_stands(force)
        self.held = self._held(force)

    def _take_in_stands(self, force: Force) -> None:
        """Unfinished stands lend their figures at their stage; finished ones stay whole."""
        for pattern, stages in force.stock_stands.items():
            for stage, number in stages.items():
                if stage == self.stages[-1]:
                    self.finished_stands[pattern] = number
                    continue
                for kind, each in _figures_on(force, pattern).items():
                    by_stage = self.figures.setdefault(kind, {})
                    by_stage[stage] = by_stage.get(stage, 0) + each * number

    def _held(self, force: Force) -> Mapping[str, int]:
        loose = {kind: sum(stages.values()) for kind, stages in self.figures.items()}
        for pattern, number in self.finished_stands.items():
            for kind, each in _figures_on(force, pattern).items():
                loose[kind] = loose.get(kind, 0) + each * number
        return {kind: number for kind, number in loose.items() if number}

    def take_stand(self, pattern: str) -> bool:
        """Takes a finished stand of a pattern, if there is one."""
        if not self.finished_stands.get(pattern):
            return False
        self.finished_stands[pattern] -= 1
        return True

    def allotted(self, force: Force, stands: Iterable[Stand]) -> tuple[Serving, ...]:
        """What serves these stands of the figures that are not on finished ones."""
        want: dict[tuple[Need, str], int] = {}
        for stand in stands:
            for kind, number in stand.figures.items():
                want[stand.layer, kind] = want.get((stand.layer, kind), 0) + number
        return allotted(
            AllotmentProblem(
                want=want, held=self.figures, figures=force.figures, stages=self.stages
            )
        )


class _Tray:
    """Figures allotted to each layer and kind, handed out stand by stand."""

    def __init__(self, servings: Iterable[Serving], *, stages: Sequence[str]) -> None:
        self._stages = stages
        self._left: dict[tuple[Need, str], dict[tuple[str, str], int]] = {}
        # Of each kind its own figures first, those that stand in after them.
        for serving in sorted(servings, key=lambda each: each.kind != each.stands_for):
            pile = self._left.setdefault((serving.layer, serving.stands_for), {})
            sort = (serving.kind, serving.stage)
            pile[sort] = pile.get(sort, 0) + serving.number
        self._given: dict[int, list[Filling]] = {}

    def give_own(self, stand: Stand, worked: Holdings) -> None:
        """Gives a stand of what was allotted for its figures what was worked on as that stand."""
        for kind in stand.figures:
            for own, stages in worked.figures.items():
                for stage, number in stages.items():
                    self._give(stand, kind, sort=(own, stage), most=number)
            for stage in worked.stands.get(stand.pattern, {}):  # a piece, with all its figures
                self._give(stand, kind, sort=(kind, stage), most=stand.figures[kind])

    def _give(self, stand: Stand, kind: str, *, sort: tuple[str, str], most: int) -> None:
        given = self._given.setdefault(id(stand), [])
        pile = self._left.get((stand.layer, kind), {})
        there = sum(each.number for each in given if each.stands_for == kind)
        number = min(most, pile.get(sort, 0), stand.figures[kind] - there)
        if number > 0:
            pile[sort] -= number
            given.append(Filling(kind=sort[0], stands_for=kind, stage=sort[1], number=number))

    def state_of(self, stand: Stand) -> StandState:
        """Gives a stand the rest of what was allotted for its figures, its own kinds first."""
        lacking: dict[str, int] = {}
        for kind, number in stand.figures.items():
            for sort in self._left.get((stand.layer, kind), {}):
                self._give(stand, kind, sort=sort, most=number)
            given = self._given.get(id(stand), [])
            still = number - sum(each.number for each in given if each.stands_for == kind)
            if still:
                lacking[kind] = still
        fillings = self._given.get(id(stand), [])
        stages = [each.stage for each in fillings]
        stage = None if lacking else min(stages, key=self._stages.index)
        return StandState(stand=stand, stage=stage, lacking=lacking, fillings=tuple(fillings))


def _figures_on(force: Force, pattern: str) -> Mapping[str, int]:
    """Figures of a stand, of a printed one those of its modelled version."""
    stand = force.stands.get(pattern)
    return {} if stand is None else stand.modelled
