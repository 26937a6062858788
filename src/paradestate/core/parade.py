"""The parade ground: every stand of the raised force in ranks by company, as far as it is."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from paradestate.core.establishment import Establishment
from paradestate.core.formation import Need
from paradestate.core.mark.code import Mark
from paradestate.core.mark.marking import Marking
from paradestate.core.strength import StandState, Strength
from paradestate.core.unfolding import SEPARATOR, Stand


@dataclass(frozen=True, slots=True, kw_only=True)
class OnParade:
    """One stand in its place."""

    stand: Stand
    state: StandState | None
    """None for a printed marker, which needs no figures, and for a wished item nobody wants."""
    group: str
    """The body that it stands in directly, by its own name; empty for the company's own troops."""
    mark: Mark | None
    """None where its company has no colour, and on a printed marker, which must not tell."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Rank:
    """The stands of one company, or those that belong to none."""

    name: str
    mark: Mark | None
    """Of the company's own troops; None where it has no colour."""
    colour: str
    """Six sRGB hexadecimal digits of the company's colour; empty where it has none."""
    must: tuple[OnParade, ...]
    wished: tuple[OnParade, ...]

    def finished(self, stages: Sequence[str]) -> int:
        """Stands of the must layer that are finished."""
        return sum(each.state.stage == stages[-1] for each in self.must if each.state is not None)

    @property
    def wanted(self) -> int:
        """Stands of the must layer that have to be made."""
        return sum(each.state is not None for each in self.must)


def ranks(made: Establishment, *, strength: Strength, marks: Marking) -> tuple[Rank, ...]:
    """All ranks, in the order of the files; troops of no company come where the first stands."""
    states = {state.stand.name: state for state in strength.stands}
    of_bodies = dict(zip((body.name for body in made.bodies), marks.of_bodies, strict=True))
    names = dict.fromkeys(stand.company for stand in made.stands)
    return tuple(
        _rank(
            name,
            stands=[stand for stand in made.stands if stand.company == name],
            states=states,
            marks=marks,
            mark=of_bodies.get(name),
            formation=made.formation,
        )
        for name in names
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class Nearest:
    """What would bring the parade on soonest: the stands that are nearest to being finished."""

    stage: str
    to_stage: str
    stands: tuple[OnParade, ...]


def nearest(placed: Iterable[Rank], *, stages: Sequence[str]) -> Nearest | None:
    """The must stands at the most advanced stage but the last; None where there are none."""
    stands = [each for rank in placed for each in rank.must if each.state is not None]
    for stage, to_stage in zip(stages[-2::-1], stages[:0:-1], strict=True):
        at_stage = tuple(each for each in stands if each.state and each.state.stage == stage)
        if at_stage:
            return Nearest(stage=stage, to_stage=to_stage, stands=at_stage)
    return None


def numbers_by_stage(stands: Iterable[OnParade]) -> Mapping[str | None, int]:
    """Stands that have to be made, by stage; None for those that lack figures."""
    stages = [each.state.stage for each in stands if each.state is not None]
    return {stage: stages.count(stage) for stage in dict.fromkeys(stages)}


def _rank(
    name: str,
    *,
    stands: Sequence[Stand],
    states: Mapping[str, StandState],
    marks: Marking,
    mark: Mark | None,
    formation: str,
) -> Rank:
    by_stand = marks.by_stand
    placed = [_placed(stand, states=states, mark=by_stand[stand.name].rear) for stand in stands]
    return Rank(
        name=name or f"{formation.capitalize()} troops",
        mark=mark,
        colour="" if mark is None else mark.value,
        must=tuple(each for each in placed if each.stand.layer is Need.MUST),
        wished=tuple(each for each in placed if each.stand.layer is Need.WISHED),
    )


def _placed(stand: Stand, *, states: Mapping[str, StandState], mark: Mark | None) -> OnParade:
    above = stand.name.rpartition(SEPARATOR)[0]
    is_own = above in {"", stand.company}
    return OnParade(
        stand=stand,
        state=states.get(stand.name),
        group="" if is_own else above.rpartition(SEPARATOR)[2],
        mark=mark,
    )
