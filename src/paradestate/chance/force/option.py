"""Options: the forces of one number of points as one choice for each entry, with room under limits.

Every rule of a game can be said as sums over its entries that may not pass a bound (see `tie`), and
the points are one more. What no force can do without is taken off beforehand, so that each option
uses some room, or none, under each limit; limits that no force can reach are left out.
"""

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass
from math import lcm
from typing import NamedTuple, TypeAlias

from paradestate.chance.force.groundwork import Groundwork
from paradestate.chance.force.taking import ValuedTaking
from paradestate.chance.force.tie import Move, Sum, Tie
from paradestate.core.certainty import NotComputed

FINENESS = 64
"""A point less is so many units of weight, so that prices can stand between two weights."""


MOST_USES = 1_000_000
"""Takings times limits; with more it would take many seconds before the search begins."""

_Choices: TypeAlias = Mapping[str, tuple["Option", ...]]


class Option(NamedTuple):
    """One taking of an entry."""

    weight: int
    uses: tuple[int, ...]
    """Under each limit the room that it uses, nought or more."""
    taking: ValuedTaking

    @property
    def move(self) -> Move:
        """What a tie may ask about it."""
        return Move(self.taking.purchases, self.taking.number, self.taking.points)


@dataclass(frozen=True, slots=True, kw_only=True)
class Options:
    """What may be chosen for each entry."""

    of: Mapping[str, tuple[Option, ...]]
    """In file order, for each entry one at least."""
    room: tuple[int, ...]
    """Under each limit."""
    ties: tuple[Tie, ...]
    """Rules that the limits don't say in full."""
    scale: int
    """The unit of worth is one over this."""
    span: int
    """So many points weigh as much as a unit of worth: more than two forces can differ by."""

    def units(self, weight: int) -> int:
        """The units of worth in a weight that points may have lessened."""
        return -(-(weight // FINENESS) // self.span)


def options_of(ground: Groundwork, *, points: int) -> Options | NotComputed | None:
    """The options with so many points; None where no force can be legal.

    Refused where they and the limits are too many.
    """
    scale = lcm(
        *(
            worth.denominator
            for each in ground.taken.values()
            for table in each.takings.offer.worths.values()
            for worth in table.values()
        )
    )
    span = points + 1 - sum(each.lowest for each in ground.taken.values())
    sums = [Sum(frozenset(ground.taken), lambda _, move: move.points, points)]
    sums += [each for tie in ground.ties for each in tie.sums(points=points)]
    if len(sums) * sum(each.takings.number for each in ground.taken.values()) > MOST_USES:
        return NotComputed(
            reason=f"the ways to take each entry, times the limits, are more than {MOST_USES:,}"
        )
    every = {
        name: tuple(
            _option(name, taking, sums=sums, weight=taking.worth * span - taking.points)
            for taking in each.takings.valued(scale)
        )
        for name, each in ground.taken.items()
    }
    fitted = _fitted(every, most=[each.most for each in sums])
    if fitted is None:
        return None
    ties = [tie for tie in ground.ties if not all(s.is_rule for s in tie.sums(points=points))]
    walked = frozenset(name for tie in ties for name in tie.entries)
    choices, room = fitted
    return Options(
        of={name: _best(options, is_walked=name in walked) for name, options in choices.items()},
        room=room,
        ties=tuple(ties),
        scale=scale,
        span=span,
    )


def _option(name: str, taking: ValuedTaking, *, sums: Sequence[Sum], weight: int) -> Option:
    option = Option(weight * FINENESS, (), taking)
    uses = tuple(int(each.of(name, option.move)) if name in each.entries else 0 for each in sums)
    return option._replace(uses=uses)


def _fitted(every: _Choices, *, most: Sequence[int]) -> tuple[_Choices, tuple[int, ...]] | None:
    """The options that fit under all limits beside the least of all other entries, and the room.

    Limits that all forces keep are left out. None where nothing fits.
    """
    choices = every
    while all(choices.values()):
        least = {name: _each(min, options) for name, options in choices.items()}
        room = [bound - sum(each[row] for each in least.values()) for row, bound in enumerate(most)]
        if min(room) < 0:
            return None
        lowered = {name: _lowered(options, least[name]) for name, options in choices.items()}
        fitting = {name: _within(options, room) for name, options in lowered.items()}
        if fitting == lowered:
            most_used = [_each(max, options) for options in lowered.values()]
            rows = [
                row
                for row, there in enumerate(room)
                if sum(each[row] for each in most_used) > there
            ]
            return _narrowed(lowered, rows), tuple(room[row] for row in rows)
        choices, most = fitting, room
    return None


def _each(of: Callable[[Iterable[int]], int], options: Sequence[Option]) -> tuple[int, ...]:
    """For each limit the least, or most, that the options use."""
    return tuple(map(of, zip(*(option.uses for option in options), strict=True)))


def _lowered(options: Sequence[Option], least: Sequence[int]) -> tuple[Option, ...]:
    return tuple(
        option._replace(uses=tuple(map(int.__sub__, option.uses, least))) for option in options
    )


def _within(options: Sequence[Option], room: Sequence[int]) -> tuple[Option, ...]:
    return tuple(option for option in options if all(map(int.__le__, option.uses, room)))


def _narrowed(choices: _Choices, rows: Sequence[int]) -> _Choices:
    return {
        name: tuple(
            option._replace(uses=tuple(option.uses[row] for row in rows)) for option in options
        )
        for name, options in choices.items()
    }


def _best(options: Sequence[Option], *, is_walked: bool) -> tuple[Option, ...]:
    """Of options that no rule tells apart the one of the greatest weight."""
    found: dict[tuple[tuple[int, ...], Move | None], Option] = {}
    for option in options:
        alike = (option.uses, option.move if is_walked else None)
        if alike not in found or option.weight > found[alike].weight:
            found[alike] = option
    return tuple(found.values())
