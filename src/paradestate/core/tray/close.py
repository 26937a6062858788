"""Trays filled as close as they go: company by company, or with no regard to companies.

Afterwards alike things change places so that they lie in the order of the organisation.
"""

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import replace
from fractions import Fraction

from paradestate.core.tray.ground import Ground
from paradestate.core.tray.in_rows import Filled
from paradestate.core.tray.thing import Put, Thing
from paradestate.core.tray.tight import Fit, Tight

MEASURES: Mapping[str, Callable[[Thing], Fraction]] = {
    "area": lambda thing: thing.width * thing.depth,
    "longer side": lambda thing: max(thing.width, thing.depth),
    "both sides": lambda thing: thing.width + thing.depth,
    "shorter side": lambda thing: min(thing.width, thing.depth),
}
"""What may be meant by large."""


def by_company(ground: Ground, lots: Iterable[Sequence[int]], *, fit: Fit) -> Filled:
    """Each company whole in the first tray that holds it; else its things wherever they go."""
    trays = [Tight(room) for room in ground.rooms]
    torn = [lot for lot in lots if not _goes_whole(ground, trays, lot=lot, fit=fit)]
    rest = [number for lot in torn for number in lot]
    _each_in_turn(ground, trays, numbers=_by_size(ground, rest), fit=fit)
    return in_order(ground, tuple(tuple(tray.puts) for tray in trays))


def by_size(ground: Ground, numbers: Iterable[int], *, fit: Fit, size: str = "area") -> Filled:
    """The largest first, each where it fits best of all trays that have something in them."""
    trays = [Tight(room) for room in ground.rooms]
    _each_in_turn(ground, trays, numbers=_by_size(ground, numbers, size=size), fit=fit)
    return in_order(ground, tuple(tuple(tray.puts) for tray in trays))


def together(
    ground: Ground, case: int, *, numbers: Iterable[int], fit: Fit, size: str, tries: int = 1
) -> tuple[Put, ...] | None:
    """All those things in one tray; None where they don't go in in so many tries.

    What has found no place is laid first at the next try (Joslin and Clements 1999: squeaky wheel).
    """
    order = list(ground.pieces_in(case, _by_size(ground, numbers, size=size)))
    for _ in range(tries):
        tray = Tight(ground.rooms[case])
        if tray.put_all(order, fit=fit):
            return tuple(tray.puts)
        order.insert(0, order.pop(len(tray.puts)))
    return None


def _goes_whole(ground: Ground, trays: list[Tight], *, lot: Sequence[int], fit: Fit) -> bool:
    for case in ground.order:
        if not all(ground.may_hold(case, number) for number in lot):
            continue
        trial = trays[case].copy()
        pieces = ground.pieces_in(case, _by_size(ground, lot))
        if trial.put_all(pieces, fit=fit):
            trays[case] = trial
            return True
    return False


def _each_in_turn(ground: Ground, trays: list[Tight], *, numbers: Iterable[int], fit: Fit) -> None:
    for number in numbers:
        opened = [case for case in ground.order if trays[case].puts]
        fresh = [case for case in ground.order if not trays[case].puts]
        for cases in (opened, *([case] for case in fresh)):
            best = _best(ground, trays, cases=cases, number=number, fit=fit)
            if best is not None:
                trays[best[0]].put(best[1])
                break


def _best(
    ground: Ground, trays: Sequence[Tight], *, cases: Iterable[int], number: int, fit: Fit
) -> tuple[int, Put] | None:
    """The tray among those in which the thing fits best, and where."""
    found: tuple[tuple[int, int], int, Put] | None = None
    for case in cases:
        if not ground.may_hold(case, number):
            continue
        best = trays[case].best(ground.pieces[case][number], fit=fit)
        if best is not None and (found is None or best[0] < found[0]):
            found = best[0], case, best[1]
    return None if found is None else found[1:]


def _by_size(ground: Ground, numbers: Iterable[int], *, size: str = "area") -> tuple[int, ...]:
    """By falling area, or another measure of size."""
    measure = MEASURES[size]
    return tuple(sorted(numbers, key=lambda number: -measure(ground.things[number])))


def in_order(ground: Ground, made: Filled) -> Filled:
    """The same places, with alike things in the order of the organisation."""
    every = [(case, put) for case, puts in enumerate(made) for put in puts]
    every.sort(key=lambda each: (each[0], each[1].deep, each[1].across))
    waiting: dict[object, list[int]] = {}
    for number in sorted(put.piece.number for _, put in every):
        waiting.setdefault(_likeness(ground, number), []).append(number)
    filled: list[list[Put]] = [[] for _ in ground.cases]
    for case, put in every:
        number = waiting[_likeness(ground, put.piece.number)].pop(0)
        filled[case].append(replace(put, piece=replace(put.piece, number=number)))
    return tuple(tuple(puts) for puts in filled)


def _likeness(ground: Ground, number: int) -> tuple[object, ...]:
    thing = ground.things[number]
    return thing.outline, thing.height, thing.pattern
