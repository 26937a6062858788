"""The umpire's sheet: both sides side by side with all that is hidden, and who comes when."""

from collections.abc import Iterator
from dataclasses import dataclass

from paradestate.core.paper.ground import Ground
from paradestate.core.paper.order_of_battle import (
    marker_names,
    number_of_dummies,
    troops_lines,
    unit_lines,
)
from paradestate.core.paper.paper import Draft
from paradestate.core.paper.private_sheet import game_words, kind_lines, order_paragraph
from paradestate.core.scenario import Arrival
from paradestate.core.sentence.dice import dice_words, totals_words
from paradestate.core.sentence.wording import several
from paradestate.core.stand import Sight

TURNS = 12
"""Turns that the timetable has boxes for."""


@dataclass(frozen=True, slots=True, kw_only=True)
class UmpiresUnit:
    """A unit in short."""

    name: str
    stands: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Side:
    """What one side has, and what the other doesn't know of it."""

    title: str
    game: str
    order: tuple[str, ...]
    units: tuple[UmpiresUnit, ...]
    hidden: tuple[str, ...]
    """Kinds of stand that the other side may not see, with their numbers, and what is off table."""
    markers: tuple[str, ...]
    dummies: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Due:
    """Something that comes onto the table later."""

    side: str
    name: str
    number: int
    """How many of it; each rolls for itself."""
    how: str
    """`in turn 3`, or what is rolled each turn."""
    edge: str
    first: int
    last: int
    """The last turn in which it may come; beyond the timetable where it has no end."""


@dataclass(frozen=True, slots=True, kw_only=True)
class UmpiresSheet:
    """Both sides, or the one that is known."""

    sides: tuple[Side, ...]
    due: tuple[Due, ...]
    turns: int


def umpires_sheet(ground: Ground, *, other: Ground | None = None) -> Draft[UmpiresSheet]:
    """The umpire's sheet of this side, and of the other where it is known."""
    grounds = (ground,) if other is None else (ground, other)
    sides = tuple(map(_side, grounds))
    if not any(each.units or each.markers for each in sides):
        return Draft(shown=None)
    due = tuple(each for ground in grounds for each in _due(ground))
    last = max((each.first for each in due), default=0)
    return Draft(shown=UmpiresSheet(sides=sides, due=due, turns=max(TURNS, last)))


def _side(ground: Ground) -> Side:
    return Side(
        title=ground.force.title,
        game=game_words(ground),
        order=order_paragraph(ground),
        units=tuple(
            UmpiresUnit(name=each.name, stands=len(each.stands)) for each in unit_lines(ground)
        ),
        hidden=tuple(_hidden(ground)),
        markers=marker_names(ground),
        dummies=number_of_dummies(ground),
    )


def _hidden(ground: Ground) -> Iterator[str]:
    for kind in kind_lines(ground):
        if kind.sight is Sight.WHEN_REVEALED:
            yield f"{kind.number} x {kind.name}, until revealed"
        elif kind.sight is Sight.NO and kind.figures != "printed":
            yield f"{kind.number} x {kind.name}"
    for line in troops_lines(ground):
        if line.missions:
            yield f"{line.name}: {several(line.missions, 'fire mission')}"


def _due(ground: Ground) -> Iterator[Due]:
    game = ground.force.games.get(ground.game)
    if game is None:
        return
    for name, arrival in game.arrivals.items():
        bodies = ground.made.number_of.get(name, 0)
        stands = sum(each.pattern == name and each.is_wanted for each in ground.made.stands)
        yield Due(
            side=ground.force.title,
            name=name,
            number=bodies or stands,
            how=_how(arrival),
            edge=arrival.edge,
            first=arrival.from_turn,
            last=_last(arrival),
        )


def _how(arrival: Arrival) -> str:
    if arrival.roll is None or arrival.on is None:
        return f"in turn {arrival.from_turn}"
    until = f" to {arrival.until_turn}" if arrival.until_turn is not None else " on"
    return (
        f"from turn {arrival.from_turn}{until}, each rolling {dice_words(arrival.roll)}: "
        f"there {totals_words(arrival.on)}"
    )


def _last(arrival: Arrival) -> int:
    if arrival.roll is None:
        return arrival.from_turn
    return arrival.until_turn if arrival.until_turn is not None else max(TURNS, arrival.from_turn)
