"""The parade ground: stands in plan, all of them at one scale, rank by rank.

Units are millimetres. Every rank is drawn into the same width, and a page shows them equally wide,
so that each stand is true to every other.
"""

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import groupby

from paradestate.core.outline import Disc, Outline, Rectangle, outline_text
from paradestate.core.parade import OnParade, Rank
from paradestate.core.stand import StandPattern
from paradestate.core.unfolding import spoken
from paradestate.sheet.mark_plate import plate_drawing, signs_on_stand
from paradestate.sheet.svg import Drawing, Element, drawing, element, group, link
from paradestate.sheet.texture import INK, MISSING, RULE, SHEET, Texture, texture_of

WIDE = 480
"""Millimetres of table across the ground on a desk."""

NARROW = 256
"""And on a phone."""

BETWEEN_STANDS, BETWEEN_GROUPS, BETWEEN_ROWS = 4, 12, 9

UNKNOWN = (20.0, 20.0)
"""Drawn where a pattern says no size; it is said beside the drawing."""

_PIXELS = {WIDE: 700, NARROW: 330}
"""About how wide each is on the screen, for the size of its type."""

_TYPE_PIXELS = 14

Address = Callable[[str], str]
"""From the name of a stand to where its page is."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Ground:
    """What all ranks share."""

    patterns: Mapping[str, StandPattern]
    stages: Sequence[str]
    address: Address
    width: int = WIDE
    chosen: str = ""
    """Name of the stand that is looked at."""

    @property
    def type_size(self) -> float:
        """Size of type in millimetres of the drawing, for about 14 px on the screen."""
        return _TYPE_PIXELS * self.width / _PIXELS[self.width]


def state_words(placed: OnParade) -> str:
    """How far a stand is, in a word or two."""
    if placed.state is None:
        return "printed" if placed.stand.printed else "not wanted"
    if placed.state.stage is not None:
        return placed.state.stage
    return "in part" if placed.state.fillings else "missing"


def stand_words(placed: OnParade) -> str:
    """A stand with all its names: `No 2 Company, 1 Platoon, 2 Section: rifle section, painted`."""
    name = spoken(placed.stand.name)
    return f"{name}: {placed.stand.pattern}, {state_words(placed)}"


def rank_drawing(rank: Rank, stands: Sequence[OnParade], *, ground: Ground) -> Drawing:
    """The stands of a rank side by side, in as many rows as they need."""
    blocks = [
        _block(label, tuple(members), rank=rank, ground=ground)
        for label, members in groupby(stands, key=lambda each: each.group)
    ]
    placed, height = _rows(blocks, width=ground.width)
    words = f"{rank.name}: {len(stands)} stands"
    return drawing(
        placed, size=(ground.width, height), words=words, class_="rank-drawing", is_group=True
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class _Block:
    """Drawn stands that stay together, from a corner of their own."""

    width: float
    height: float
    elements: tuple[Element, ...]


def _block(label: str, members: Sequence[OnParade], *, rank: Rank, ground: Ground) -> _Block:
    """Stands of one body in rows no wider than the ground, with the body's name above."""
    size = ground.type_size
    top = size * 1.35 if label else 0.0
    stands = [_drawn(each, rank=rank, ground=ground) for each in members]
    placed, height = _rows(stands, width=ground.width, apart=BETWEEN_STANDS)
    wide = _row_width(stands, width=ground.width)
    elements = [group(*placed, transform=f"translate(0 {top:.2f})")]
    if label:
        elements.insert(0, element("text", text=label, y=size, font_size=size, class_="soft"))
    needed = max(wide, 0.58 * size * len(label))
    return _Block(width=min(needed, ground.width), height=top + height, elements=tuple(elements))


def _row_width(blocks: Sequence[_Block], *, width: float) -> float:
    total = sum(block.width for block in blocks) + BETWEEN_STANDS * (len(blocks) - 1)
    return min(total, width)


def _rows(
    blocks: Sequence[_Block], *, width: float, apart: float = BETWEEN_GROUPS
) -> tuple[list[Element], float]:
    """Blocks from left to right, in a new row where one doesn't fit; and how high that is."""
    rows: list[list[_Block]] = [[]]
    used = 0.0
    for block in blocks:
        if rows[-1] and used + block.width > width + 0.01:
            rows.append([])
            used = 0.0
        rows[-1].append(block)
        used += block.width + apart
    placed: list[Element] = []
    top = 1.0
    for row in rows:
        high = max((block.height for block in row), default=0.0)
        left = 1.0
        for block in row:
            down = (
                top + high - block.height
                if apart == BETWEEN_GROUPS
                else top + (high - block.height) / 2
            )
            placed.append(group(*block.elements, transform=f"translate({left:.2f} {down:.2f})"))
            left += block.width + apart
        top += high + BETWEEN_ROWS
    return placed, top - BETWEEN_ROWS + 1


def _drawn(placed: OnParade, *, rank: Rank, ground: Ground) -> _Block:
    pattern = ground.patterns.get(placed.stand.pattern)
    outline = None if pattern is None else pattern.outline
    width, depth = _size(outline)
    texture = _texture(placed, ground=ground)
    is_finished = texture.is_solid
    if is_finished and rank.colour:
        texture = Texture(fill=f"#{rank.colour}")
    field = element("rect", class_="field", x=-3, y=-5, width=width + 6, height=depth + 10)
    body = _shape(outline, texture=texture, is_heavy=is_finished)
    inside = tuple(_inside(placed, rank=rank, size=(width, depth), is_finished=is_finished))
    made = link(
        field,
        body,
        *inside,
        href=ground.address(placed.stand.name),
        words=stand_words(placed),
        class_="stand chosen" if placed.stand.name == ground.chosen else "stand",
    )
    if placed.stand.name == ground.chosen:
        made.set("aria-current", "true")
    return _Block(width=width, height=depth, elements=(made,))


def _texture(placed: OnParade, *, ground: Ground) -> Texture:
    if placed.state is None:
        return Texture(fill=SHEET) if placed.stand.printed else MISSING
    return texture_of(placed.state.stage, stages=ground.stages)


def _size(outline: Outline | None) -> tuple[float, float]:
    match outline:
        case Disc(diameter=diameter):
            return float(diameter), float(diameter)
        case Rectangle(width=width, depth=depth):
            return float(width), float(depth)
        case None:
            return UNKNOWN


def _shape(outline: Outline | None, *, texture: Texture, is_heavy: bool) -> Element:
    width, depth = _size(outline)
    if isinstance(outline, Disc):
        radius = width / 2
        made = element("circle", cx=radius, cy=radius, r=radius - 0.6)
    else:
        made = element("rect", x=0.6, y=0.6, width=width - 1.2, height=depth - 1.2)
    made.set("class", "body heavy" if is_heavy else "body")
    made.set("fill", texture.fill)
    made.set("stroke", texture.stroke)
    if texture.dash is not None:
        made.set("stroke-dasharray", texture.dash)
    made.set("vector-effect", "non-scaling-stroke")
    return made


def _inside(
    placed: OnParade, *, rank: Rank, size: tuple[float, float], is_finished: bool
) -> Iterator[Element]:
    """Its mark on a finished stand, a ring on a printed marker, dots for figures in hand."""
    width, depth = size
    if is_finished and placed.mark is not None and rank.colour:
        yield signs_on_stand(placed.mark, size=size)
    elif placed.state is None and placed.stand.printed:
        yield element(
            "circle", cx=width / 2, cy=depth / 2, r=min(width, depth) / 3, fill="none", stroke=RULE
        )
    elif placed.state is not None and placed.state.stage is None:
        yield from _dots(sum(each.number for each in placed.state.fillings), size=size)


def _dots(number: int, *, size: tuple[float, float]) -> Iterator[Element]:
    """A dot for each figure in hand, in rows that stay inside."""
    width, depth = size
    apart = 6.0
    across = max(1, int((min(width, depth * 4) - 6) // apart))
    rows = -(-number // across) if number else 0
    for at in range(min(number, across * max(1, int(depth // apart)))):
        row, column = divmod(at, across)
        in_row = min(across, number - row * across)
        yield element(
            "circle",
            cx=width / 2 + (column - (in_row - 1) / 2) * apart,
            cy=depth / 2 + (row - (rows - 1) / 2) * apart,
            r=1.5,
            fill=INK,
        )


def plate(rank: Rank) -> Drawing | None:
    """The plate of the company's own troops; None where it has no mark."""
    return None if rank.mark is None else plate_drawing(rank.mark)


def scale_line(*, width: int = WIDE) -> Drawing:
    """A line of 100 mm at the scale of the ground."""
    ticks = "".join(f"M{at} 2V10" for at in (0.5, 25, 50, 75, 99.5))
    line = element(
        "path",
        d=f"{ticks}M0 9.4H100",
        stroke=INK,
        fill="none",
        stroke_width=1.5,
        vector_effect="non-scaling-stroke",
    )
    return drawing([line], size=(width, 12), words="100 mm at this scale", class_="scale-line")


def one_stand(
    placed: OnParade, *, rank: Rank, patterns: Mapping[str, StandPattern], stages: Sequence[str]
) -> Drawing:
    """One stand alone, with its size in words for whoever can't see it."""
    pattern = patterns.get(placed.stand.pattern)
    outline = None if pattern is None else pattern.outline
    ground = Ground(patterns=patterns, stages=stages, address=lambda _: "", width=NARROW)
    width, depth = _size(outline)
    texture = _texture(placed, ground=ground)
    is_finished = texture.is_solid
    if is_finished and rank.colour:
        texture = Texture(fill=f"#{rank.colour}")
    body = _shape(outline, texture=texture, is_heavy=is_finished)
    inside = _inside(placed, rank=rank, size=(width, depth), is_finished=is_finished)
    words = f"{stand_words(placed)}, {outline_text(outline)}"
    return drawing(
        [group(body, *inside, class_="stand")],
        size=(max(width, LEAST_ALONE), depth),
        words=words,
        class_="drawing",
    )


LEAST_ALONE = 80
"""Millimetres across the drawing of one stand, so that a small one stays small."""
