"""Tray plans at full size, to be stuck under the lid: every stand where it lies.

A tray that is larger than a page comes in parts that are cut out and joined edge to edge.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from paradestate.core.imposition.frame import Frame
from paradestate.core.imposition.layout import Layout
from paradestate.core.imposition.shelf import imposed
from paradestate.core.mark.code import Mark
from paradestate.core.outline import Millimetres, Rectangle, millimetres
from paradestate.core.paper.label_face import name_lines
from paradestate.core.paper.paper import Draft, ImposedPage, pages_of
from paradestate.core.sentence.wording import capital
from paradestate.core.tray.lid import Lid, LidStand
from paradestate.core.unfolding import name_within

FOR_WORDS = millimetres(6)
"""Kept free along the rim, so that what stands under a part runs into nothing."""

GUTTER = millimetres(8)
"""Between two parts, for the words under the upper one."""


@dataclass(frozen=True, slots=True, kw_only=True)
class StandDrawn:
    """A stand in its place, in millimetres from the far side and the left of the tray."""

    number: int
    """On the packing list."""
    lines: tuple[str, ...]
    mark: Mark | None
    across: Fraction
    deep: Fraction
    width: Fraction
    depth: Fraction
    is_round: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class TrayPart:
    """What of a tray is on one piece: all of it, or a part to be joined to others."""

    tray: str
    part: str
    """Such as `part 1 of 2`; empty where the tray is whole."""
    across: Fraction
    """Where the piece begins, from the left side of the tray."""
    deep: Fraction
    """From its far side."""
    width: Millimetres
    """Of the whole tray, inside."""
    depth: Millimetres
    stands: tuple[StandDrawn, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class TrayPlans:
    """All parts of all trays on their pages."""

    pages: tuple[ImposedPage[TrayPart], ...]


def tray_plans(lids: Sequence[Lid], *, layout: Layout) -> Draft[TrayPlans]:
    """A plan for each tray that holds something."""
    own = replace(layout, rim=Millimetres(layout.rim + FOR_WORDS), gutter=GUTTER)
    parts = [part for lid in lids for part in _parts(lid, room=own.room)]
    imposition = imposed([outline for outline, _ in parts], own, may_turn=False)
    pages = pages_of(imposition, tuple(part for _, part in parts))
    return Draft(shown=TrayPlans(pages=pages) if pages else None)


def _parts(lid: Lid, *, room: Frame) -> Iterator[tuple[Rectangle, TrayPart]]:
    columns, rows = _number_of_parts(lid, room)
    width, depth = Fraction(lid.width, columns), Fraction(lid.depth, rows)
    stands = tuple(map(_stand, lid.stands))
    outline = Rectangle(width=Millimetres(width), depth=Millimetres(depth))
    for number in range(columns * rows):
        row, column = divmod(number, columns)
        across, deep = column * width, row * depth
        yield (
            outline,
            TrayPart(
                tray=capital(lid.tray),
                part=f"part {number + 1} of {columns * rows}" if columns * rows > 1 else "",
                across=across,
                deep=deep,
                width=Millimetres(lid.width),
                depth=Millimetres(lid.depth),
                stands=tuple(
                    each
                    for each in stands
                    if _meets(each, across=across, deep=deep, outline=outline)
                ),
            ),
        )


def _number_of_parts(lid: Lid, room: Frame) -> tuple[int, int]:
    """Parts across and down, as few as the room of a page allows."""
    return -int(-lid.width // room.width), -int(-lid.depth // room.height)


def _meets(stand: StandDrawn, *, across: Fraction, deep: Fraction, outline: Rectangle) -> bool:
    """Whether a stand lies on a part, if only with its edge."""
    in_width = across <= stand.across + stand.width and stand.across <= across + outline.width
    in_depth = deep <= stand.deep + stand.depth and stand.deep <= deep + outline.depth
    return in_width and in_depth


def _stand(stand: LidStand) -> StandDrawn:
    return StandDrawn(
        number=stand.number,
        lines=_lines(stand),
        mark=stand.mark,
        across=stand.across,
        deep=stand.deep,
        width=stand.width,
        depth=stand.depth,
        is_round=stand.is_round,
    )


def _lines(stand: LidStand) -> tuple[str, ...]:
    """What it is; without its company where a colour tells that."""
    is_told = stand.mark is not None and stand.mark.colour and stand.company
    below = name_within(stand.name, stand.company) if is_told else stand.name
    return name_lines(below)
