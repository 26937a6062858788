"""Companies given to trays so that each tray has rows that can be read.

A company goes whole into the first tray in which rows for all of it are found. One that goes into
no tray whole is given platoon by platoon, and a platoon that doesn't either stand by stand.
"""

from collections.abc import Iterable, Iterator, Sequence

from paradestate.core.tray.ground import Ground
from paradestate.core.tray.row import Row, puts, rows
from paradestate.core.tray.thing import Put

Filled = tuple[tuple[Put, ...], ...]
"""For every tray what lies in it."""


class RowTrays:
    """Trays that are being filled row by row."""

    def __init__(self, ground: Ground) -> None:
        self.ground = ground
        self.held: list[list[int]] = [[] for _ in ground.cases]
        self.rows: list[tuple[Row, ...]] = [() for _ in ground.cases]
        self.left: list[int] = []
        """Things without a place."""

    def take(self, lots: Iterable[Sequence[int]]) -> "RowTrays":
        """Gives every lot its tray, those last that don't go into one whole."""
        torn = [lot for lot in lots if not self._goes(lot)]
        for lot in torn:
            for part in self._platoons(lot):
                if not self._goes(part):
                    self.left += [number for number in part if not self._goes((number,))]
        return self

    def filled(self) -> Filled:
        """Where everything lies."""
        return tuple(
            tuple(puts(room, made)) for room, made in zip(self.ground.rooms, self.rows, strict=True)
        )

    def _goes(self, numbers: Sequence[int]) -> bool:
        """Puts them into the first tray that holds them all; says whether one does."""
        for case in self.ground.order:
            if not all(self.ground.may_hold(case, number) for number in numbers):
                continue
            held = sorted((*self.held[case], *numbers))
            made = rows_for(self.ground, case, numbers=held)
            if made is not None:
                self.held[case] = held
                self.rows[case] = made
                return True
        return False

    def _platoons(self, lot: Sequence[int]) -> Iterator[tuple[int, ...]]:
        platoons: dict[str, list[int]] = {}
        for number in lot:
            platoons.setdefault(self.ground.things[number].platoon, []).append(number)
        yield from (tuple(platoon) for platoon in platoons.values())


def rows_for(ground: Ground, case: int, *, numbers: Iterable[int]) -> tuple[Row, ...] | None:
    """Rows of a tray for those things, in the order of the organisation; None without any."""
    lots: dict[str, list[int]] = {}
    for number in numbers:
        lots.setdefault(ground.things[number].company, []).append(number)
    of_none = ground.pieces_in(case, lots.pop("", ()))
    of_each = [ground.pieces_in(case, lot) for lot in lots.values()]
    return rows(ground.rooms[case], of_each, of_none=of_none)
