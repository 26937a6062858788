"""The raised force as a tree: each body with what it holds, and how much of that is done."""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass

from paradestate.core.establishment import Establishment
from paradestate.core.force import Force
from paradestate.core.formation import Arm, Echelon
from paradestate.core.mark.code import Mark
from paradestate.core.mark.marking import Marking
from paradestate.core.number import NONE, NumberRange, exactly, summed
from paradestate.core.strength import StandState, Strength
from paradestate.core.unfolding import SEPARATOR, Body, Stand, capitals, name_within
from paradestate.core.variant import compositions


@dataclass(frozen=True, slots=True, kw_only=True)
class Fill:
    """How far stands are that hold figures and are wanted; printed ones are left out."""

    by_stage: Mapping[str, int]
    """Stage to stands that have all their figures, the least advanced at that stage."""
    short: int
    """Stands that still lack figures."""
    lacking: Mapping[str, int]
    """Kind to figures that they lack."""
    finished: int
    """Stands at the last stage."""

    @property
    def whole(self) -> int:
        """Stands that have all their figures, at any stage."""
        return sum(self.by_stage.values())

    @property
    def number(self) -> int:
        """All of them."""
        return self.whole + self.short


@dataclass(frozen=True, slots=True, kw_only=True)
class Group:
    """The stands of one pattern that stand directly in one body."""

    pattern: str
    wishes: tuple[str, ...]
    """The wished items that they belong to; empty in the must layer."""
    is_wanted: bool
    printed: bool
    is_modelled: bool
    """The wished, modelled version of stands for which a printed marker suffices."""
    number: int
    men: NumberRange
    figures: Mapping[str, int]
    """Kind to figures on all of them."""
    fill: Fill


@dataclass(frozen=True, slots=True, kw_only=True)
class Branch:
    """A body with everything below it.

    Its numbers leave out what is wished within it, so that must and wished are never one sum.
    """

    name: str
    """The whole path; empty for the raised formation itself."""
    label: str
    """The last step of the path."""
    formation: str
    echelon: Echelon | None
    arm: Arm | None
    wishes: tuple[str, ...]
    """The wished items that it belongs to itself."""
    is_wanted: bool
    mark: Mark | None
    """Of its own stands; None where its company has no colour."""
    men: NumberRange
    stands: int
    """Without printed ones."""
    figures: int
    fill: Fill
    groups: tuple[Group, ...]
    branches: tuple["Branch", ...]


def tree(force: Force, made: Establishment, *, strength: Strength, marks: Marking) -> Branch:
    """The tree of the raised force."""
    states = {id(state.stand): state for state in strength.stands}
    growing = _Growing(force, made, states=states, marks=marks)
    return growing.root()


class _Growing:
    """Makes branches from the bottom up."""

    def __init__(
        self,
        force: Force,
        made: Establishment,
        *,
        states: Mapping[int, StandState],
        marks: Marking,
    ) -> None:
        self.force = force
        self.bodies = made.bodies
        self.states = states
        self.arms = {
            name: made_of.formation.arm for name, made_of in compositions(force)[0].items()
        }
        self.marks = marks.of_bodies
        self.directly: list[list[Stand]] = [[] for _ in made.bodies]
        for stand in made.stands:
            self.directly[stand.within].append(stand)
        self.below: list[list[Branch]] = [[] for _ in made.bodies]

    def root(self) -> Branch:
        """Every body is listed after the one that holds it, so that the last can be made first."""
        for place in range(len(self.bodies) - 1, 0, -1):
            within = self.bodies[place].within
            assert within is not None  # noqa: S101 - only the first is held by none
            self.below[within].append(self.branch(place))
        return self.branch(0)

    def branch(self, place: int) -> Branch:
        """The branch of a body whose own branches are made."""
        body = self.bodies[place]
        held = tuple(reversed(self.below[place]))
        groups = tuple(self.groups(self.directly[place]))
        own: list[Branch | Group] = [
            *(group for group in groups if group.wishes == body.wishes),
            *(branch for branch in held if branch.wishes == body.wishes),
        ]
        return Branch(
            name=body.name,
            label=_label(body, self.bodies),
            formation=body.formation,
            echelon=body.echelon,
            arm=self.arms[body.formation],
            wishes=body.wishes,
            is_wanted=body.is_wanted,
            mark=self.marks[place],
            men=sum((each.men for each in own), exactly(body.men)),
            stands=sum(_stands(each) for each in own),
            figures=sum(_figures(each) for each in own),
            fill=_together([each.fill for each in own], stages=self.force.bench.stages),
            groups=groups,
            branches=held,
        )

    def groups(self, stands: Iterable[Stand]) -> Iterator[Group]:
        """The stands of a body by pattern, in their order."""
        sorts: dict[tuple[str, tuple[str, ...]], list[Stand]] = {}
        for stand in stands:
            sorts.setdefault((stand.pattern, stand.wishes), []).append(stand)
        for (pattern, wishes), alike in sorts.items():
            known = self.force.stands.get(pattern)
            yield Group(
                pattern=pattern,
                wishes=wishes,
                is_wanted=alike[0].is_wanted,
                printed=alike[0].printed,
                is_modelled=known is not None and known.printed and not alike[0].printed,
                number=len(alike),
                men=sum((stand.men for stand in alike), NONE),
                figures=summed(stand.figures for stand in alike),
                fill=self.fill(alike),
            )

    def fill(self, stands: Iterable[Stand]) -> Fill:
        """How far those of the stands are that are wanted and hold figures."""
        states = [self.states[id(stand)] for stand in stands if id(stand) in self.states]
        stages = [state.stage for state in states]
        ladder = self.force.bench.stages
        return Fill(
            by_stage={stage: stages.count(stage) for stage in ladder if stage in stages},
            short=stages.count(None),
            lacking=summed(state.lacking for state in states),
            finished=stages.count(ladder[-1]),
        )


def _label(body: Body, bodies: Sequence[Body]) -> str:
    if body.within is None:
        return capitals(body.formation)
    above = bodies[body.within].name
    return name_within(body.name, above)


def _stands(part: Branch | Group) -> int:
    if isinstance(part, Branch):
        return part.stands
    return 0 if part.printed else part.number


def _figures(part: Branch | Group) -> int:
    return part.figures if isinstance(part, Branch) else sum(part.figures.values())


def _together(fills: Sequence[Fill], *, stages: Sequence[str]) -> Fill:
    by_stage = summed(fill.by_stage for fill in fills)
    return Fill(
        by_stage={stage: by_stage[stage] for stage in stages if stage in by_stage},
        short=sum(fill.short for fill in fills),
        lacking=summed(fill.lacking for fill in fills),
        finished=sum(fill.finished for fill in fills),
    )


def path_to(root: Branch, name: str) -> tuple[Branch, ...]:
    """The branches from the root down to the one of that name; the root alone where none is."""
    path = [root]
    while path[-1].name != name:
        inside = [each for each in path[-1].branches if _leads_to(each, name)]
        if not inside:
            return (root,)
        path.append(max(inside, key=lambda each: len(each.name)))
    return tuple(path)


def _leads_to(branch: Branch, name: str) -> bool:
    return name == branch.name or name.startswith(f"{branch.name}{SEPARATOR}")


def only_in(one: Establishment, other: Establishment) -> tuple[str, ...]:
    """Bodies by name that only one has; what stands in such a body isn't named again."""
    known = {body.name for body in other.bodies}
    return tuple(
        body.name
        for body in one.bodies
        if body.name not in known and (body.within is None or one.bodies[body.within].name in known)
    )
