"""Trays filled one after another in the order of the organisation, each as full as it goes.

So at most one company is torn apart between two trays, and none lies in more than it must.
"""

from collections.abc import Callable, Sequence

from paradestate.core.tray.close import in_order, together
from paradestate.core.tray.ground import Ground
from paradestate.core.tray.in_rows import Filled, rows_for
from paradestate.core.tray.row import puts
from paradestate.core.tray.thing import Put
from paradestate.core.tray.tight import Fit

Held = tuple[Put, ...]
Packing = Callable[[int, Sequence[int]], Held | None]
"""A tray and things to where they all lie in it, or None where they don't go in."""


def rows_in_turn(ground: Ground) -> Filled:
    """Each tray in rows."""

    def packed(case: int, numbers: Sequence[int]) -> Held | None:
        made = rows_for(ground, case, numbers=numbers)
        return None if made is None else tuple(puts(ground.rooms[case], made))

    return _in_turn(ground, packed)


def close_in_turn(ground: Ground, *, fit: Fit, size: str) -> Filled:
    """Each tray as close as it goes."""

    def packed(case: int, numbers: Sequence[int]) -> Held | None:
        return together(ground, case, numbers=numbers, fit=fit, size=size)

    return in_order(ground, _in_turn(ground, packed))


def _in_turn(ground: Ground, packed: Packing) -> Filled:
    waiting = [number for lot in ground.lots for number in lot]
    filled: list[Held] = [() for _ in ground.cases]
    for case in ground.order:
        may = [number for number in waiting if ground.may_hold(case, number)]
        filled[case] = _most(case, may, packed=packed)
        placed = {put.piece.number for put in filled[case]}
        waiting = [number for number in waiting if number not in placed]
    return tuple(filled)


def _most(case: int, numbers: Sequence[int], *, packed: Packing) -> Held:
    """As many of the first as go into a tray, found by halving what is in doubt."""
    held: Held = ()
    goes, fails = 0, len(numbers) + 1
    while fails - goes > 1:
        middle = (goes + fails) // 2
        made = packed(case, numbers[:middle])
        if made is None:
            fails = middle
        else:
            goes, held = middle, made
    return held
