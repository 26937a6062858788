"""Pieces of several sizes laid on pages in rows, so that a straight cut parts row from row.

What is of one size stays together: it goes on in its own rows, and joins the row before only where
all of it has room there. Only where that takes a page more than rows filled as tightly as may be
are the sizes mixed. A piece lies turned by a quarter where more of its size go on a page so.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from paradestate.core.certainty import Certainty, Exact, Within
from paradestate.core.fit import area
from paradestate.core.imposition.frame import Frame
from paradestate.core.imposition.grid import lies_turned
from paradestate.core.imposition.layout import Layout
from paradestate.core.outline import Disc, Millimetres, Outline, Rectangle, millimetres
from paradestate.core.spot import depth_of, width_of

NOUGHT = millimetres(0)


@dataclass(frozen=True, slots=True, kw_only=True)
class Laid:
    """One piece on its page."""

    piece: int
    """Its place among the pieces, from 0."""
    frame: Frame
    is_turned: bool
    """Whether it lies turned by a quarter."""
    is_round: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Imposition:
    """Pieces on pages."""

    layout: Layout
    pages: tuple[tuple[Laid, ...], ...]
    without_room: tuple[int, ...]
    """Pieces that are greater than a page."""
    certainty: Certainty
    """Exact where no arrangement takes fewer pages, by area."""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Row:
    page: int
    top: Millimetres
    height: Millimetres
    used: Millimetres
    """From the left edge of the room to the last piece's right edge."""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Size:
    """Pieces of one outline, as they lie."""

    pieces: tuple[int, ...]
    width: Millimetres
    height: Millimetres
    is_turned: bool
    is_round: bool

    @property
    def box_area(self) -> Fraction:
        return len(self.pieces) * self.width * self.height

    def with_gutter(self, gutter: Millimetres) -> Outline:
        """One piece with half a gutter on every side."""
        width, depth = Millimetres(self.width + gutter), Millimetres(self.height + gutter)
        return Disc(diameter=width) if self.is_round else Rectangle(width=width, depth=depth)


def imposed(outlines: Sequence[Outline], layout: Layout, *, may_turn: bool = True) -> Imposition:
    """The pieces on as few pages as rows allow, each within the room and a gutter apart.

    What is read on its page may not turn.
    """
    sizes, without = _sizes(outlines, layout, may_turn=may_turn)
    together = _Rows(layout)
    for size in sizes:
        together.lay_together(size)
    tight = _Rows(layout)
    for size in sorted(sizes, key=lambda each: each.height, reverse=True):
        tight.lay_tightly(size)
    best = min((together, tight), key=lambda rows: len(rows.pages))
    bound = _bound(sizes, layout)
    number = len(best.pages)
    return Imposition(
        layout=layout,
        pages=tuple(tuple(page) for page in best.pages),
        without_room=without,
        certainty=Exact() if number == bound else Within(bound=bound),
    )


def _sizes(
    outlines: Sequence[Outline], layout: Layout, *, may_turn: bool
) -> tuple[list[_Size], tuple[int, ...]]:
    """The pieces by their outline, those that cover most first; and those without room."""
    by_outline: dict[Outline, list[int]] = {}
    for number, outline in enumerate(outlines):
        by_outline.setdefault(outline, []).append(number)
    sizes, without = [], []
    for outline, pieces in by_outline.items():
        size = _lying(outline, tuple(pieces), layout=layout, may_turn=may_turn)
        if size is None:
            without.extend(pieces)
        else:
            sizes.append(size)
    return sorted(sizes, key=lambda each: each.box_area, reverse=True), tuple(sorted(without))


def _lying(
    outline: Outline, pieces: tuple[int, ...], *, layout: Layout, may_turn: bool
) -> _Size | None:
    width, height, room = width_of(outline), depth_of(outline), layout.room
    upright = _Size(
        pieces=pieces,
        width=width,
        height=height,
        is_turned=False,
        is_round=isinstance(outline, Disc),
    )
    turned = replace(upright, width=height, height=width, is_turned=True)
    more = lies_turned(room, width=width, height=height, gutter=layout.gutter)
    ways = (turned, upright) if more else (upright, turned)
    for size in ways if may_turn else (upright,):
        if size.width <= room.width and size.height <= room.height:
            return size
    return None


def _bound(sizes: Iterable[_Size], layout: Layout) -> int:
    """Pages by area: pieces that are a gutter apart don't overlap with half of it around each."""
    gutter, room = layout.gutter, layout.room
    covered = sum(
        (len(each.pieces) * area(each.with_gutter(gutter)) for each in sizes), Fraction(0)
    )
    whole = (room.width + gutter) * (room.height + gutter)
    return -int(-covered // whole)


class _Rows:
    """Lays pieces row after row."""

    def __init__(self, layout: Layout) -> None:
        self.layout = layout
        self.room = layout.room
        self.pages: list[list[Laid]] = []
        self.rows: list[_Row] = []

    def lay_together(self, size: _Size) -> None:
        """All of a size in the open row where it holds them, else in rows of their own."""
        gutter = self.layout.gutter
        whole = len(size.pieces) * (size.width + gutter) - gutter
        row = self.rows[-1] if self.rows else None
        left = Millimetres(self._left(row)) if row else NOUGHT
        fits = row is not None and whole <= left and self._may_be(row, size.height)
        at = len(self.rows) - 1 if fits else self._new_row(size)
        for piece in size.pieces:
            if size.width > self._left(self.rows[at]):
                at = self._new_row(size)
            self._put(piece, size=size, at=at)

    def lay_tightly(self, size: _Size) -> None:
        """Each piece in the first row with room, rows from the highest pieces down."""
        first = 0
        for piece in size.pieces:
            open_rows = range(first, len(self.rows))
            fitting = (at for at in open_rows if size.width <= self._left(self.rows[at]))
            at = next(fitting, None)
            first = self._new_row(size) if at is None else at
            self._put(piece, size=size, at=first)

    def _left(self, row: _Row) -> Fraction:
        """What is left of a row, behind a gutter where something lies in it."""
        return self.room.width - row.used - (self.layout.gutter if row.used else 0)

    def _may_be(self, row: _Row, height: Millimetres) -> bool:
        """Whether the last row may become as high as that."""
        return row.top + max(height, row.height) <= self.room.bottom

    def _new_row(self, size: _Size) -> int:
        last = self.rows[-1] if self.rows else None
        top = last.top + last.height + self.layout.gutter if last else self.room.top
        page = last.page if last else -1
        if last is None or top + size.height > self.room.bottom:
            page, top = page + 1, self.room.top
            self.pages.append([])
        self.rows.append(_Row(page=page, top=Millimetres(top), height=size.height, used=NOUGHT))
        return len(self.rows) - 1

    def _put(self, piece: int, *, size: _Size, at: int) -> None:
        row = self.rows[at]
        left = row.used + (self.layout.gutter if row.used else 0)
        frame = Frame(
            left=Millimetres(self.room.left + left),
            top=row.top,
            width=size.width,
            height=size.height,
        )
        self.pages[row.page].append(
            Laid(piece=piece, frame=frame, is_turned=size.is_turned, is_round=size.is_round)
        )
        self.rows[at] = replace(
            row, used=Millimetres(left + size.width), height=max(row.height, size.height)
        )
