"""The state board: what befalls each platoon, ticked as it happens, and what fire is left."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from paradestate.core.mark.code import Mark
from paradestate.core.mark.unit import Unit
from paradestate.core.paper.ground import Ground
from paradestate.core.paper.order_of_battle import troops_lines, unit_lines, unit_name
from paradestate.core.paper.paper import Draft
from paradestate.core.play.loss_count import LimitedBody, fielded_bodies
from paradestate.core.sentence.loss_limit import body_words, steps_words, unit_of_losses
from paradestate.core.sentence.wording import listed
from paradestate.core.unfolding import name_within, spoken

MOST_BOXES = 60
"""Of one row; a body that may lose more has its steps in words, and a line to count on."""


@dataclass(frozen=True, slots=True, kw_only=True)
class StateRow:
    """A unit, or supporting troops: a box for each stand, crossed when it is out."""

    name: str
    mark: Mark | None
    stands: tuple[str, ...]
    limits: tuple[str, ...] = ()
    """What happens at how many losses of this unit by itself."""


@dataclass(frozen=True, slots=True, kw_only=True)
class LossStretch:
    """Boxes that are crossed one after the other, the last of them with what happens at it."""

    boxes: int
    """Those before it; of the stretch that ends a row all that are left."""
    at: int
    """The number of the one with a mark; nought where nothing more happens."""
    effects: str


@dataclass(frozen=True, slots=True, kw_only=True)
class LossRow:
    """A body of several units with a limit to its losses, a box for each that it may lose."""

    name: str
    words: str
    """What is counted: `of 8 out`."""
    stretches: tuple[LossStretch, ...]
    """None where there are too many boxes for a row."""
    steps: str
    """The same in words: `at 3 shaken, at 5 falls back`."""


@dataclass(frozen=True, slots=True, kw_only=True)
class MissionRow:
    """Fire missions of one purchase, a box each."""

    name: str
    number: int


@dataclass(frozen=True, slots=True, kw_only=True)
class StateBoard:
    """One row for each platoon."""

    states: tuple[str, ...]
    """The owner's words; a box for each stands in every row."""
    rows: tuple[StateRow, ...]
    missions: tuple[MissionRow, ...]
    losses: tuple[LossRow, ...] = ()


def state_board(ground: Ground) -> Draft[StateBoard]:
    """The state board of the raised force and its supporting troops."""
    bodies = fielded_bodies(ground.force, ground.made, plan=ground.plan)
    rows = tuple(_rows(ground, bodies))
    missions = tuple(
        MissionRow(name=each.name, number=each.missions)
        for each in troops_lines(ground)
        if each.missions
    )
    if not rows:
        return Draft(shown=None)
    return Draft(
        shown=StateBoard(
            states=ground.force.states,
            rows=rows,
            missions=missions,
            losses=tuple(_loss_row(each) for each in bodies if each.unit is None),
        )
    )


def _rows(ground: Ground, bodies: Sequence[LimitedBody]) -> Iterator[StateRow]:
    for own in unit_lines(ground):
        limits = tuple(
            _unit_words(each, unit=each.unit)
            for each in bodies
            if each.unit is not None and unit_name(ground, each.unit) == own.name
        )
        yield StateRow(name=own.name, mark=own.mark, stands=own.stands, limits=limits)
    for line in troops_lines(ground):
        if line.stands:
            yield StateRow(name=line.name, mark=None, stands=line.stands)


def _unit_words(body: LimitedBody, *, unit: Unit) -> str:
    """`2 of 3 out: shaken`; with the body's name where it is only a part of the unit."""
    is_whole = body.name == unit.name
    part = "" if is_whole else f"{spoken(name_within(body.name, unit.name))}, "
    word = f"of {body.total} {unit_of_losses(body.limit)}"
    return part + "; ".join(f"{each.needs} {word}: {listed(each.effects)}" for each in body.steps)


def _loss_row(body: LimitedBody) -> LossRow:
    return LossRow(
        name=body_words(body),
        words=f"of {body.total} {unit_of_losses(body.limit)}",
        stretches=tuple(_stretches(body)) if body.total <= MOST_BOXES else (),
        steps=steps_words(body),
    )


def _stretches(body: LimitedBody) -> Iterator[LossStretch]:
    done = 0
    for step in body.steps:
        yield LossStretch(boxes=step.needs - done - 1, at=step.needs, effects=listed(step.effects))
        done = step.needs
    if done < body.total:
        yield LossStretch(boxes=body.total - done, at=0, effects="")
