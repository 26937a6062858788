"""Figures spread over their stand in columns, with as much room around each as is found.

This is how a person would set them: few ways are tried, and quickly. Where none serves there may
still be one; `core.fit` looks on. All lengths are in whole units, as in `core.spot`.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from paradestate.core.spot import Put, Shape, is_within

HALVINGS = 6
"""How often the room on a disc is narrowed down; a sixty-fourth of it is left open."""

MOST_COLUMNS = 40
"""Columns of figures that are tried; more would be narrower than people can set."""

Columns = tuple[tuple[Shape, ...], ...]
"""Figures from left to right, in each column from front to rear."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Ground:
    """A base, and what is to be kept free on it."""

    base: Shape
    edge: int
    gap: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Arrangement:
    """Figures in columns, all within their edges and apart by their gaps."""

    puts: tuple[Put, ...]
    room: int
    """Units around each figure beyond the edge and gap that were asked for."""
    wider: int
    """The same in that direction, across or deep, in which there is more of it."""

    @property
    def roominess(self) -> tuple[int, int]:
        """The greater, the better."""
        return self.room, self.wider


def arranged(ground: Ground, figures: Sequence[Shape]) -> Arrangement | None:
    """The roomiest way of setting at least one figure in columns; None where none serves.

    Rectangles are turned by a quarter only where they don't fit as they are; of ways that are
    equally roomy the one with most columns is taken, since troops stand side by side.
    """
    spread = _on_a_disc if ground.base.is_round else _on_a_rectangle
    turned = tuple(figure.ways_to_lie[-1] for figure in figures)
    for lying in dict.fromkeys((tuple(figures), turned)):
        best: Arrangement | None = None
        for columns in _ways(ground, lying):
            found = spread(ground, columns)
            if found is not None and (best is None or found.roominess > best.roominess):
                best = found
        if best is not None:
            return best
    return None


def _ways(ground: Ground, figures: tuple[Shape, ...]) -> Iterator[Columns]:
    """Columns of figures, from many to few; those of the largest outline in the middle."""
    largest = max(figures, key=lambda figure: figure.width * figure.depth)
    large = tuple(figure for figure in figures if figure == largest)
    small = tuple(figure for figure in figures if figure != largest)
    narrowest = min((figure.width for figure in small), default=0)
    for number in _numbers(ground, large):
        middle = _columns(large, number)
        for beside in _numbers(ground, small):
            least = number * largest.width + beside * narrowest
            if least + (number + beside - 1) * ground.gap > ground.base.width:
                continue
            outer = _columns(small, beside) if small else ()
            half = (len(outer) + 1) // 2
            yield (*outer[:half], *middle, *outer[half:])


def _numbers(ground: Ground, figures: tuple[Shape, ...]) -> Iterator[int]:
    """So many columns may hold these figures, none of them deeper than the base; none for none."""
    if not figures:
        yield 0
    shallowest = min((figure.depth for figure in figures), default=0) + ground.gap
    for number in range(min(len(figures), MOST_COLUMNS), 0, -1):
        if -(-len(figures) // number) * shallowest - ground.gap <= ground.base.depth:
            yield number


def _columns(figures: tuple[Shape, ...], number: int) -> Columns:
    """So many columns, as even as can be and the same on both sides where that is possible."""
    least, more = divmod(len(figures), number)
    from_middle = sorted(range(number), key=lambda place: (abs(2 * place - number + 1), place))
    if number % 2 and not more % 2:
        from_middle = from_middle[1:]
    longer = set(from_middle[:more])
    columns, begun = [], 0
    for place in range(number):
        ended = begun + least + (place in longer)
        columns.append(figures[begun:ended])
        begun = ended
    return tuple(columns)


def _on_a_rectangle(ground: Ground, columns: Columns) -> Arrangement | None:
    """All room left over is shared evenly, across and in each column."""
    base, edge, gap = ground.base, ground.edge, ground.gap
    widths = _widths(columns)
    across = _room(base.width, widths, ground=ground)
    deep = [_room(base.depth, _depths(column), ground=ground) for column in columns]
    if min(across, *deep) < 0:
        return None
    puts: list[Put] = []
    spare = base.width - 2 * (edge + across) - _length(widths, gap=gap + across)
    left = edge + across + spare // 2
    for column, width, behind in zip(columns, widths, deep, strict=True):
        length = _length(_depths(column), gap=gap + behind)
        front = (base.depth - length) // 2
        puts.extend(_column(column, box=(left, width), front=front, gap=gap + behind))
        left += width + gap + across
    rooms = across, min(deep)
    return Arrangement(puts=tuple(puts), room=min(rooms), wider=max(rooms))


def _column(
    column: tuple[Shape, ...], *, box: tuple[int, int], front: int, gap: int
) -> Iterator[Put]:
    """Figures one behind the other, in the middle of a box from its left and of its width."""
    left, width = box
    for figure in column:
        yield Put(shape=figure, left=left + (width - figure.width) // 2, front=front)
        front += figure.depth + gap


def _widths(columns: Columns) -> list[int]:
    return [max(figure.width for figure in column) for column in columns]


def _depths(column: tuple[Shape, ...]) -> list[int]:
    return [figure.depth for figure in column]


def _room(length: int, sizes: Sequence[int], *, ground: Ground) -> int:
    """What is left of a length, for each space in it; below nought: it is too short."""
    return (length - 2 * ground.edge - _length(sizes, gap=ground.gap)) // (len(sizes) + 1)


def _length(sizes: Sequence[int], *, gap: int) -> int:
    return sum(sizes) + (len(sizes) - 1) * gap


def _on_a_disc(ground: Ground, columns: Columns) -> Arrangement | None:
    """The same room on all sides, as great as the rim lets it be, halving by halving."""
    least, most = 0, ground.base.width // 2
    best = _with_room(ground, columns, room=least)
    for _ in range(HALVINGS if best else 0):
        room = (least + most) // 2
        found = _with_room(ground, columns, room=room)
        if found is None:
            most = room
        else:
            best, least = found, room
    return best


def _with_room(ground: Ground, columns: Columns, *, room: int) -> Arrangement | None:
    """The columns in the middle of a disc, with that much room; None where that is past the rim."""
    gap = ground.gap + room
    widths = _widths(columns)
    left = (ground.base.width - _length(widths, gap=gap)) // 2
    puts: list[Put] = []
    for column, width in zip(columns, widths, strict=True):
        front = (ground.base.width - _length(_depths(column), gap=gap)) // 2
        puts.extend(_column(column, box=(left, width), front=front, gap=gap))
        left += width + gap
    if all(is_within(ground.base, put, edge=ground.edge + room) for put in puts):
        return Arrangement(puts=tuple(puts), room=room, wider=room)
    return None
