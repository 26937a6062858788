"""The parade ground: every stand of the raised force in ranks by company, as far as it is."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from paradestate.core.establishment import Establishment
from paradestate.core.force import Force
from paradestate.core.formation import Need
from paradestate.core.mark import colours_of, numbers_among, numbers_in_formation
from paradestate.core.strength import StandState, Strength
from paradestate.core.unfolding import SEPARATOR, Body, Stand


@dataclass(frozen=True, slots=True, kw_only=True)
class OnParade:
    """One stand in its place."""

    stand: Stand
    state: StandState | None
    """None for a printed marker, which needs no figures, and for a wished item nobody wants."""
    group: str
    """The body that it stands in directly, by its own name; empty for the company's own troops."""
    number: int
    """Which of its like that body is in the company, from 1; nought for the company's own."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Rank:
    """The stands of one company, or those that belong to none."""

    name: str
    number: int
    """Which company it is, from 1; nought for troops that belong to none."""
    colour: str
    """Six sRGB hexadecimal digits of the company's colour; empty where it has none."""
    colour_name: str
    must: tuple[OnParade, ...]
    wished: tuple[OnParade, ...]

    def finished(self, stages: Sequence[str]) -> int:
        """Stands of the must layer that are finished."""
        return sum(each.state.stage == stages[-1] for each in self.must if each.state is not None)

    @property
    def wanted(self) -> int:
        """Stands of the must layer that have to be made."""
        return sum(each.state is not None for each in self.must)


def ranks(force: Force, made: Establishment, *, strength: Strength) -> tuple[Rank, ...]:
    """All ranks, in the order of the files; troops of no company come where the first stands."""
    states = {state.stand.name: state for state in strength.stands}
    companies = _companies(force, made.bodies)
    groups = _groups(made.bodies)
    names = dict.fromkeys(stand.company for stand in made.stands)
    return tuple(
        _rank(
            name,
            stands=[stand for stand in made.stands if stand.company == name],
            states=states,
            groups=groups,
            company=companies.get(name) if name else None,
            force=force,
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
    groups: Mapping[str, int],
    company: tuple[int, str] | None,
    force: Force,
    formation: str,
) -> Rank:
    placed = [_placed(stand, states=states, groups=groups) for stand in stands]
    number, colour = company or (0, "")
    return Rank(
        name=name or f"{formation.capitalize()} troops",
        number=number,
        colour=force.marks.colours.get(colour, ""),
        colour_name=colour,
        must=tuple(each for each in placed if each.stand.layer is Need.MUST),
        wished=tuple(each for each in placed if each.stand.layer is Need.WISHED),
    )


def _placed(
    stand: Stand, *, states: Mapping[str, StandState], groups: Mapping[str, int]
) -> OnParade:
    above = stand.name.rpartition(SEPARATOR)[0]
    is_own = above in {"", stand.company}
    return OnParade(
        stand=stand,
        state=states.get(stand.name),
        group="" if is_own else above.rpartition(SEPARATOR)[2],
        number=0 if is_own else groups.get(above, 0),
    )


def _companies(force: Force, bodies: Sequence[Body]) -> Mapping[str, tuple[int, str]]:
    """Body to which of its formation it is in the whole force, and the name of its colour."""
    numbers, colours = numbers_in_formation(bodies), colours_of(force.marks, bodies)
    return {
        body.name: (number, colour)
        for body, number, colour in zip(bodies, numbers, colours, strict=True)
    }


def _groups(bodies: Sequence[Body]) -> Mapping[str, int]:
    """Body to which of its formation it is under the body above it."""
    numbers = numbers_among(
        bodies, like=lambda body: (body.name.rpartition(SEPARATOR)[0], body.formation)
    )
    return {body.name: number for body, number in zip(bodies, numbers, strict=True)}
