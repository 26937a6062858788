"""What is to spare: owned, here, serving no force of the collection, and promised to nobody.

A figure that stands in for another kind serves. A finished stand is spared whole or not at all.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace

from paradestate.core.force import Force
from paradestate.core.journal import Promise
from paradestate.core.promise import Cupboard
from paradestate.core.strength import Strength


@dataclass(frozen=True, slots=True, kw_only=True)
class Use:
    """What one force has and what of it serves."""

    loose: Mapping[str, int]
    """Kind to figures that aren't on finished stands."""
    loose_used: Mapping[str, int]
    stands: Mapping[str, int]
    """Pattern to finished stands."""
    stands_used: Mapping[str, int]
    figures_on: Mapping[str, Mapping[str, int]] = field(default_factory=dict)
    """Pattern to the figures of one stand."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Spare:
    """So many of one kind, or of one finished stand, that could go."""

    name: str
    is_stand: bool
    held: int
    number: int
    """Even if all forces parade on one day."""
    one_at_a_time: int
    """If no two forces parade on one day; promises are kept all the same."""


def use_of(force: Force, found: Strength) -> Use:
    """What serves a force, finished stands apart from all other figures."""
    last = force.bench.stages[-1]
    finished = {
        pattern: stages[last] for pattern, stages in force.stock_stands.items() if stages.get(last)
    }
    wanted = [state.stand.pattern for state in found.stands]
    used = {pattern: min(number, wanted.count(pattern)) for pattern, number in finished.items()}
    on_them = _figures(used, on={name: force.stands[name].modelled for name in used})
    return Use(
        loose=found.loose,
        loose_used={kind: found.used.get(kind, 0) - on_them.get(kind, 0) for kind in found.loose},
        stands=finished,
        stands_used=used,
        figures_on={name: force.stands[name].modelled for name in finished},
    )


def _figures(stands: Mapping[str, int], *, on: Mapping[str, Mapping[str, int]]) -> dict[str, int]:
    total: dict[str, int] = {}
    for pattern, number in stands.items():
        for kind, each in on[pattern].items():
            total[kind] = total.get(kind, 0) + each * number
    return total


def spares(
    uses: Iterable[Use], *, promises: Iterable[Promise] = (), cupboard: Cupboard
) -> tuple[Spare, ...]:
    """Everything of which some could go, loose figures first.

    `promises` are those still to be kept; `cupboard` is what they are kept from.
    """
    every, kept = tuple(uses), tuple(promises)
    together = _left(every, kept, cupboard=cupboard, is_together=True)
    singly = _left(every, kept, cupboard=cupboard, is_together=False)
    return tuple(
        Spare(
            name=name,
            is_stand=is_stand,
            held=_most(every, name, is_stand=is_stand),
            number=together.get((name, is_stand), 0),
            one_at_a_time=number,
        )
        for (name, is_stand), number in singly.items()
    )


def _left(
    uses: tuple[Use, ...],
    promises: tuple[Promise, ...],
    *,
    cupboard: Cupboard,
    is_together: bool,
) -> Mapping[tuple[str, bool], int]:
    """Name and whether it is a stand, to how many could go without breaking a promise.

    What stands first goes first, so that no promise is kept by figures that went before.
    """
    found: dict[tuple[str, bool], int] = {}
    there = cupboard
    for name, is_stand in _names(uses):
        needed = [_used(use, name, is_stand=is_stand) for use in uses]
        idle = _most(uses, name, is_stand=is_stand) - (sum(needed) if is_together else max(needed))
        each = _on_one(uses, name) if is_stand else {name: 1}
        number = _unpromised(max(idle, 0), each, promises=promises, cupboard=there)
        there = _without(there, each, times=number)
        if number:
            found[name, is_stand] = number
    return found


def _names(uses: tuple[Use, ...]) -> Iterable[tuple[str, bool]]:
    loose = [(kind, False) for use in uses for kind in use.loose]
    stands = [(pattern, True) for use in uses for pattern in use.stands]
    return dict.fromkeys((*loose, *stands))


def _most(uses: tuple[Use, ...], name: str, *, is_stand: bool) -> int:
    """How many there are; forces share them, so those that know the name say the same."""
    return max((use.stands if is_stand else use.loose).get(name, 0) for use in uses)


def _used(use: Use, name: str, *, is_stand: bool) -> int:
    return (use.stands_used if is_stand else use.loose_used).get(name, 0)


def _on_one(uses: tuple[Use, ...], pattern: str) -> Mapping[str, int]:
    return next(use.figures_on[pattern] for use in uses if pattern in use.figures_on)


def _without(cupboard: Cupboard, figures: Mapping[str, int], *, times: int) -> Cupboard:
    held = {kind: number - figures.get(kind, 0) * times for kind, number in cupboard.held.items()}
    return replace(cupboard, held={kind: max(number, 0) for kind, number in held.items()})


def _unpromised(
    most: int, each: Mapping[str, int], *, promises: tuple[Promise, ...], cupboard: Cupboard
) -> int:
    """The most that can go, up to `most`, while every day's promises lack no more than before."""
    days = {promise.day for promise in promises}
    by_day = [[promise for promise in promises if promise.day == day] for day in sorted(days)]
    before = [cupboard.lacking(promised) for promised in by_day]

    def keeps_all(number: int) -> bool:
        left = _without(cupboard, each, times=number)
        return [sum(left.lacking(promised).values()) for promised in by_day] == [
            sum(lacking.values()) for lacking in before
        ]

    least, beyond = 0, most + 1
    while beyond - least > 1:
        middle = (least + beyond) // 2
        least, beyond = (middle, beyond) if keeps_all(middle) else (least, middle)
    return least
