"""Things and trays made ready for a search: in whole units, each thing as grown for each tray.

What a tray may hold at all is known here: whether a thing goes under its lid, and between its
sides.
"""

from collections.abc import Iterable, Sequence
from fractions import Fraction
from functools import cached_property

from paradestate.core.tray.thing import (
    Case,
    Lying,
    Piece,
    Put,
    Room,
    Thing,
    piece_of,
    room_of,
    units_in,
)


class Ground:
    """The question: which things go into which trays."""

    def __init__(self, *, cases: tuple[Case, ...], things: tuple[Thing, ...]) -> None:
        self.cases = cases
        self.things = things

    @cached_property
    def units(self) -> int:
        """Units in a millimetre."""
        return units_in(self.cases, self.things)

    @cached_property
    def rooms(self) -> tuple[Room, ...]:
        """Every tray, grown by its gap."""
        return tuple(room_of(case, units=self.units) for case in self.cases)

    @cached_property
    def pieces(self) -> tuple[tuple[Piece, ...], ...]:
        """For every tray all things as grown for it."""
        by_gap: dict[Fraction, tuple[Piece, ...]] = {}
        for case in self.cases:
            if case.gap not in by_gap:
                by_gap[case.gap] = tuple(
                    piece_of(thing, number=number, gap=case.gap, units=self.units)
                    for number, thing in enumerate(self.things)
                )
        return tuple(by_gap[case.gap] for case in self.cases)

    @cached_property
    def order(self) -> tuple[int, ...]:
        """The trays by falling size, alike ones as the folder has them."""
        sizes = [room.width * room.depth for room in self.rooms]
        return tuple(sorted(range(len(sizes)), key=lambda place: -sizes[place]))

    @cached_property
    def lots(self) -> tuple[tuple[int, ...], ...]:
        """The things of each company that some tray holds, in the order of the organisation."""
        lots: dict[str, list[int]] = {}
        for number, thing in enumerate(self.things):
            if self.homes(number):
                lots.setdefault(thing.company, []).append(number)
        return tuple(tuple(lot) for lot in lots.values())

    def may_hold(self, case: int, number: int) -> bool:
        """Whether a tray holds a thing when it is empty."""
        if self.cases[case].is_too_low_for(self.things[number]):
            return False
        room = self.rooms[case]
        return any(
            way.width <= room.width and way.depth <= room.depth
            for way in self.pieces[case][number].ways
        )

    def homes(self, number: int) -> tuple[int, ...]:
        """The trays that hold a thing when they are empty."""
        return tuple(case for case in range(len(self.cases)) if self.may_hold(case, number))

    def pieces_in(self, case: int, numbers: Iterable[int]) -> tuple[Piece, ...]:
        """Those things as grown for a tray."""
        return tuple(self.pieces[case][number] for number in numbers)

    def lying(self, puts: Sequence[Put]) -> tuple[Lying, ...]:
        """Where they lie in millimetres."""
        return tuple(
            Lying(
                thing=self.things[put.piece.number],
                across=Fraction(put.across, self.units),
                deep=Fraction(put.deep, self.units),
                is_turned=self._is_turned(put),
            )
            for put in puts
        )

    def _is_turned(self, put: Put) -> bool:
        thing = self.things[put.piece.number]
        if put.piece.width == put.piece.depth:
            return False
        return (put.piece.width > put.piece.depth) != (thing.width > thing.depth)
