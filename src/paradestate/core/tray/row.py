"""Rows of a tray: filled so that they can be read, and laid one behind the other.

Lengths are in whole units, grown by the gap. A row runs from left to right in the order of the
organisation; the first is at the far side. Rows are filled by falling depth, each piece into the
first row that has room for it (Coffman, Garey, Johnson and Tarjan 1980: first fit, decreasing).
"""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from enum import Enum
from itertools import product

from paradestate.core.tray.stagger import Stagger, loosened, shallowest
from paradestate.core.tray.thing import Piece, Put, Room

SHARED = -1
"""The lot of a row in which several companies have something."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Row:
    """Pieces side by side, as they lie."""

    pieces: tuple[Piece, ...]
    lot: int = SHARED
    """Which company has it to itself."""
    stagger: Stagger | None = None

    @property
    def width(self) -> int:
        """All its pieces together, one after another."""
        if self.stagger is not None:
            return self.stagger.width
        return sum(piece.width for piece in self.pieces)

    @property
    def depth(self) -> int:
        """As deep as the deepest of it."""
        if self.stagger is not None:
            return self.stagger.depth
        return max(piece.depth for piece in self.pieces)


class Sharing(Enum):
    """Which rows several companies may share."""

    ODD_ONES = "odd ones"
    """Each company has rows for what most of it is like; all else lies in rows for all."""
    NONE = "none"
    EVERY = "every"


class Facing(Enum):
    """How rectangles lie."""

    AS_IT_IS = "as it is"
    TURNED = "turned"
    WIDE = "wide"
    NARROW = "narrow"


def rows(
    room: Room, lots: Sequence[Sequence[Piece]], *, of_none: Sequence[Piece] = ()
) -> tuple[Row, ...] | None:
    """The most readable rows that hold all lots of pieces, and those of no company.

    None where none of the ways holds them.
    """
    every = [*lots, of_none]
    area = sum(piece.width * piece.depth for lot in every for piece in lot if not piece.is_round)
    if area > room.width * room.depth:
        return None
    return next((made for made in _ways(room, every) if fits(room, made)), None)


def _ways(room: Room, lots: Sequence[Sequence[Piece]]) -> Iterator[tuple[Row, ...]]:
    """Every way to fill rows, the most readable first; whether they fit is not asked."""
    for facing in Facing:
        facing_so = [[_facing(piece, facing, room=room) for piece in lot] for lot in lots]
        for sharing, staggered in product(Sharing, tuple(_staggered(room, facing_so))):
            yield _filled(room, facing_so, sharing=sharing, staggered=staggered)


def fits(room: Room, made: Sequence[Row]) -> bool:
    """Whether the rows are within the room, all together."""
    deep = sum(row.depth for row in made)
    return deep <= room.depth and all(row.width <= room.width for row in made)


def puts(room: Room, made: Sequence[Row]) -> Iterator[Put]:
    """Where every piece of the rows lies; a staggered row has what depth there is left."""
    left, deep = room.depth - sum(row.depth for row in made), 0
    for row in made:
        if row.stagger is None:
            yield from _straight(row.pieces, deep=deep)
            deep += row.depth
            continue
        loose = loosened(row.stagger, depth=row.stagger.depth + left)
        left -= loose.depth - row.depth
        for piece, (across, further) in zip(row.pieces, loose.corners(), strict=True):
            yield Put(piece=piece, across=across, deep=deep + further)
        deep += loose.depth


def _straight(pieces: Iterable[Piece], *, deep: int) -> Iterator[Put]:
    across = 0
    for piece in pieces:
        yield Put(piece=piece, across=across, deep=deep)
        across += piece.width


def _facing(piece: Piece, facing: Facing, *, room: Room) -> Piece:
    """The piece as it is to lie; turned all the same where it has no room otherwise."""
    turns = {
        Facing.AS_IT_IS: False,
        Facing.TURNED: True,
        Facing.WIDE: piece.width < piece.depth,
        Facing.NARROW: piece.width > piece.depth,
    }
    lying = piece.turned if turns[facing] else piece
    has_room = lying.width <= room.width and lying.depth <= room.depth
    return lying if has_room else lying.turned


def _staggered(room: Room, lots: Sequence[Sequence[Piece]]) -> Iterator[frozenset[str]]:
    """Patterns of discs to be staggered: none, any one of those too many for a row, all."""
    widths: dict[str, int] = {}
    for piece in (piece for lot in lots for piece in lot if piece.is_round):
        widths[piece.pattern] = widths.get(piece.pattern, 0) + piece.width
    many = [pattern for pattern, width in widths.items() if width > room.width]
    yield frozenset()
    yield from (frozenset({pattern}) for pattern in many)
    if len(many) > 1:
        yield frozenset(many)


def _filled(
    room: Room,
    lots: Sequence[Sequence[Piece]],
    *,
    sharing: Sharing,
    staggered: frozenset[str],
) -> tuple[Row, ...]:
    """Rows for the lots, those of one company before those for all; the last lot is of none."""

    def is_in_lines(piece: Piece) -> bool:
        return piece.is_round and piece.pattern in staggered

    in_lines = [piece for lot in lots for piece in lot if is_in_lines(piece)]
    others = [[piece for piece in lot if not is_in_lines(piece)] for lot in lots]
    made = _shared(room, others, sharing=sharing)
    return (*(_in_order(row) for row in made), *_lines(room, in_lines))


def _shared(room: Room, lots: Sequence[Sequence[Piece]], *, sharing: Sharing) -> list[Row]:
    match sharing:
        case Sharing.NONE:
            return [
                row for number, lot in enumerate(lots) for row in _own(room, lot, number=number)
            ]
        case Sharing.EVERY:
            return _first_fit(room, [piece for lot in lots for piece in lot])
        case Sharing.ODD_ONES:
            return _with_odd_ones(room, lots[:-1], of_none=lots[-1])


def _own(room: Room, lot: Sequence[Piece], *, number: int) -> list[Row]:
    return [replace(row, lot=number) for row in _first_fit(room, lot)]


def _with_odd_ones(
    room: Room, lots: Sequence[Sequence[Piece]], *, of_none: Sequence[Piece]
) -> list[Row]:
    own: list[Row] = []
    odd: list[Piece] = list(of_none)
    for number, lot in enumerate(lots):
        depth = _usual_depth(lot)
        usual = [piece for piece in lot if not piece.is_round and piece.depth == depth]
        mine = _own(room, usual, number=number)
        others = [piece for piece in lot if piece not in usual]
        odd += [piece for piece in others if not _put_at_an_end(room, mine, piece=piece)]
        own += mine
    return [*own, *_first_fit(room, odd)]


def _usual_depth(lot: Sequence[Piece]) -> int:
    """The depth of those rectangles that take most of a row together; nought without any."""
    widths: dict[int, int] = {}
    for piece in lot:
        if not piece.is_round:
            widths[piece.depth] = widths.get(piece.depth, 0) + piece.width
    return max(widths, key=lambda depth: widths[depth], default=0)


def _put_at_an_end(room: Room, made: list[Row], *, piece: Piece) -> bool:
    """Puts a piece into the first row that is deep enough and has room; says whether one has."""
    for place, row in enumerate(made):
        if piece.depth <= row.depth and row.width + piece.width <= room.width:
            made[place] = replace(row, pieces=(*row.pieces, piece))
            return True
    return False


def _first_fit(room: Room, pieces: Iterable[Piece]) -> list[Row]:
    made: list[Row] = []
    for piece in sorted(pieces, key=lambda piece: -piece.depth):
        if not _put_at_an_end(room, made, piece=piece):
            made.append(Row(pieces=(piece,)))
    return made


def _in_order(row: Row) -> Row:
    return replace(row, pieces=tuple(sorted(row.pieces, key=lambda piece: piece.number)))


def _lines(room: Room, discs: Sequence[Piece]) -> Iterator[Row]:
    """A staggered row for each pattern; discs that can't be staggered lie straight."""
    for pattern in dict.fromkeys(disc.pattern for disc in discs):
        alike = tuple(disc for disc in discs if disc.pattern == pattern)
        made = shallowest(len(alike), diameter=alike[0].width, width=room.width)
        if made is None:
            yield from _first_fit(room, alike)
        else:
            yield Row(pieces=alike, stagger=made)
