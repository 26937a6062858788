"""What the drawing of a tray shows, in exact millimetres: on the page, and printed for its lid.

Seen from above with the far side on top, so that it is read as it is packed: row by row from the
left, each stand with its number on the packing list, which runs on from tray to tray.
"""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction

from paradestate.core.mark.code import Mark
from paradestate.core.mark.marking import Marking
from paradestate.core.tray.laid import LaidTray


@dataclass(frozen=True, slots=True, kw_only=True)
class LidStand:
    """One stand as it is drawn."""

    number: int
    """On the packing list, from 1."""
    name: str
    pattern: str
    company: str
    across: Fraction
    deep: Fraction
    width: Fraction
    depth: Fraction
    is_round: bool
    mark: Mark | None
    """As on its rear; None where it has none, and on printed markers, which must not tell."""


@dataclass(frozen=True, slots=True, kw_only=True)
class LidRow:
    """A row with its label."""

    number: int
    starts: Fraction
    ends: Fraction
    stands: tuple[LidStand, ...]

    @property
    def width(self) -> Fraction:
        """From the left side to the end of its last stand."""
        return max(stand.across + stand.width for stand in self.stands)


@dataclass(frozen=True, slots=True, kw_only=True)
class Lid:
    """A tray with all that lies in it."""

    tray: str
    width: Fraction
    depth: Fraction
    rows: tuple[LidRow, ...]

    @property
    def stands(self) -> tuple[LidStand, ...]:
        """All of them, in the order of the packing list."""
        return tuple(stand for row in self.rows for stand in row.stands)


def lids(trays: Iterable[LaidTray], *, marks: Mapping[str, Mark | None]) -> Iterator[Lid]:
    """The drawing of each tray; a stand without an entry in `marks` is drawn without one."""
    first = 1
    for tray in trays:
        made = _lid(tray, first=first, marks=marks)
        first += len(made.stands)
        yield made


def _lid(tray: LaidTray, *, first: int, marks: Mapping[str, Mark | None]) -> Lid:
    rows: list[LidRow] = []
    for number, row in enumerate(tray.rows, start=1):
        stands = tuple(
            LidStand(
                number=first + place,
                name=each.thing.name,
                pattern=each.thing.pattern,
                company=each.thing.company,
                across=each.across,
                deep=each.deep,
                width=each.width,
                depth=each.depth,
                is_round=each.thing.is_round,
                mark=marks.get(each.thing.name),
            )
            for place, each in enumerate(row.lying)
        )
        first += len(stands)
        rows.append(LidRow(number=number, starts=row.starts, ends=row.ends, stands=stands))
    inside = tray.case.inside
    return Lid(tray=tray.case.name, width=inside.width, depth=inside.depth, rows=tuple(rows))


def marks_of(marks: Marking) -> Mapping[str, Mark | None]:
    """Stand to the mark on its rear."""
    return {name: marked.rear for name, marked in marks.by_stand.items()}
