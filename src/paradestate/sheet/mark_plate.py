"""The plate of a mark: one drawing of it, for pages and papers alike.

`plate_of` gives the shapes as values, in units of which a plate is 26 high; a page draws them as
SVG here, and whoever sets papers draws the same shapes in his own way. From left to right: the
sign, then the bars. None of the signs is a triangle, square, circle or diamond.
"""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from typing import TypeAlias, assert_never

from paradestate.core.mark.code import MOST_DRAWN_BARS, Mark, Sign
from paradestate.core.sentence.mark import mark_words
from paradestate.sheet.colour import sign_on
from paradestate.sheet.svg import Drawing, Element, drawing, element, group

HIGH = 26
NARROW, WIDE = 32, 44
"""Widths without bars, and with up to three."""
THREE = 3
FOOT = 6
"""What a bar along the foot adds to the height."""
EDGE = 1.6
PITCH, THICK, LONG = 6, 3.6, 16
"""Of bars: from one to the next, their width, their height."""
INK, SHEET = "#111", "#fff"

Point: TypeAlias = tuple[float, float]


@dataclass(frozen=True, slots=True, kw_only=True)
class Ring:
    """A circle drawn with a broad line."""

    middle: Point
    radius: float
    line: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Outline:
    """A filled outline."""

    points: tuple[Point, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Numeral:
    """A number, in the middle of a point's level."""

    text: str
    middle: Point
    size: float
    """Height of its digits."""


Shape: TypeAlias = Ring | Outline | Numeral


@dataclass(frozen=True, slots=True, kw_only=True)
class Plate:
    """A plate as shapes."""

    width: float
    height: float
    ground: str
    """Six hexadecimal digits; empty for the plain plate, which is left as the paper is."""
    ink: str
    """Of sign and bars: `#111` or `#fff`, whichever reads better."""
    shapes: tuple[Shape, ...]


def _points(text: str) -> tuple[Point, ...]:
    """Points as they are written: `-8 -5, -5 -8`."""
    pairs = (pair.split() for pair in text.split(","))
    return tuple((float(x), float(y)) for x, y in pairs)


_TEE = "-8 -8, 8 -8, 8 -3.4, 2.3 -3.4, 2.3 8, -2.3 8, -2.3 -3.4, -8 -3.4"
_STEP = "-8 -8, 2.3 -8, 2.3 3.4, 8 3.4, 8 8, -2.3 8, -2.3 -3.4, -8 -3.4"
_FORK = "-8 -8, -3 -8, 0 -3.6, 3 -8, 8 -8, 2.3 1, 2.3 8, -2.3 8, -2.3 1"
_CROSS = "-8 -5, -5 -8, 0 -3, 5 -8, 8 -5, 3 0, 8 5, 5 8, 0 3, -5 8, -8 5, -3 0"
_OUTLINES: Mapping[Sign, tuple[Point, ...]] = {
    Sign.CROSS: _points(_CROSS),
    Sign.CHEVRON: _points("-8 1.5, 0 -7.5, 8 1.5, 8 7.5, 0 -1.5, -8 7.5"),
    Sign.BLOCK: _points("-8 -4.5, 8 -4.5, 8 4.5, -8 4.5"),
    Sign.TEE: _points(_TEE),
    Sign.FORK: _points(_FORK),
    Sign.HOOK: _points("-7 -8, -2.4 -8, -2.4 3.4, 7 3.4, 7 8, -7 8"),
    Sign.STEP: _points(_STEP),
}
"""About the middle of a sign that is 16 wide and high."""


def plate_of(mark: Mark) -> Plate:
    """The plate of a mark."""
    width = _width(mark)
    middle = (width / 2 if not mark.bars else 13.0, HIGH / 2)
    shapes: list[Shape] = []
    if mark.sign is not None:
        shapes.append(_sign(mark.sign, middle))
    elif mark.bars:
        shapes.append(Numeral(text=str(mark.bars), middle=middle, size=14))
    shapes.extend(_bars(mark.bars, left=25))
    if mark.has_rear_bar:
        shapes.append(_box(4, HIGH - 1, width=width - 8, height=3))
    return Plate(
        width=width,
        height=HIGH + FOOT * mark.has_rear_bar,
        ground=mark.value,
        ink=sign_on(mark.value) if mark.value else INK,
        shapes=tuple(shapes),
    )


def _width(mark: Mark) -> int:
    if not mark.bars:
        return NARROW
    drawn = mark.bars if mark.bars <= MOST_DRAWN_BARS else THREE
    return WIDE + PITCH * max(0, drawn - THREE)


def _sign(sign: Sign, middle: Point) -> Shape:
    if sign is Sign.RING:
        return Ring(middle=middle, radius=6.1, line=3.8)
    return Outline(points=tuple((middle[0] + x, middle[1] + y) for x, y in _OUTLINES[sign]))


def _bars(number: int, *, left: float) -> Iterator[Shape]:
    """Upright bars; of more than five their number, so that nobody has to count."""
    if number > MOST_DRAWN_BARS:
        yield Numeral(text=str(number), middle=(left + 8, HIGH / 2), size=14)
        return
    for at in range(number):
        yield _box(left + PITCH * at, (HIGH - LONG) / 2, width=THICK, height=LONG)


def _box(left: float, top: float, *, width: float, height: float) -> Outline:
    right, foot = left + width, top + height
    return Outline(points=((left, top), (right, top), (right, foot), (left, foot)))


def plate_elements(
    plate: Plate, *, seen: Callable[[str], str] = lambda colour: colour
) -> tuple[Element, ...]:
    """The plate as SVG, from its upper left corner; `seen` says how a viewer sees its colour.

    The plain plate is as the page is, and its print as the page's print.
    """
    ground = f"#{seen(plate.ground)}" if plate.ground else "var(--sheet)"
    edge = element(
        "rect",
        x=EDGE / 2,
        y=EDGE / 2,
        width=plate.width - EDGE,
        height=plate.height - EDGE,
        fill=ground,
        stroke="var(--ink)",
        stroke_width=EDGE,
    )
    ink = sign_on(seen(plate.ground)) if plate.ground else "var(--ink)"
    return edge, *(_drawn(shape, ink=ink) for shape in plate.shapes)


def signs_on_stand(mark: Mark, *, size: tuple[float, float]) -> Element:
    """Sign and bars alone, as large as a stand of that size holds them, in its middle."""
    plate = plate_of(mark)
    width, depth = size
    scale = min(width * 0.94 / plate.width, depth * 0.94 / plate.height)
    ink = plate.ink if plate.ground else "var(--sheet)"
    return group(
        *(_drawn(shape, ink=ink) for shape in plate.shapes),
        transform=f"translate({(width - plate.width * scale) / 2:.2f} "
        f"{(depth - plate.height * scale) / 2:.2f}) scale({scale:.3f})",
    )


def _drawn(shape: Shape, *, ink: str) -> Element:
    match shape:
        case Ring(middle=(x, y), radius=radius, line=line):
            return element(
                "circle", cx=x, cy=y, r=radius, fill="none", stroke=ink, stroke_width=line
            )
        case Outline(points=points):
            path = "L".join(f"{x:g} {y:g}" for x, y in points)
            return element("path", d=f"M{path}Z", fill=ink)
        case Numeral(text=text, middle=(x, y), size=size):
            return element(
                "text",
                text=text,
                x=x,
                y=y + size / 2,
                font_size=size * 1.4,
                text_anchor="middle",
                class_="b",
                fill=ink,
            )
        case _:
            assert_never(shape)


def plate_drawing(mark: Mark, *, words: str = "", is_hidden: bool = False) -> Drawing:
    """The plate alone, for a list, a rank or a key."""
    plate = plate_of(mark)
    return drawing(
        plate_elements(plate),
        size=(plate.width, plate.height),
        words=words or mark_words(mark),
        class_="plate" if plate.width == NARROW else "plate wide",
        is_hidden=is_hidden,
    )
