"""The width of the table drawn small, with the platoons of one body on it, and the opponent's.

Units are about a pixel; each strip is as wide as the drawing.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction

from paradestate.core.abreast import Abreast, InLine
from paradestate.core.frontage import line_front
from paradestate.core.outline import Millimetres, decimal_text
from paradestate.core.sentence.wording import several
from paradestate.sheet.measure import INK, RED, RULE, SHEET, Pen, measure_across, point
from paradestate.sheet.svg import Drawing, Element, drawing, element

DESK, MIDDLE, PHONE = 1180, 740, 358
"""Widths of the drawings for three widths of page."""

_TYPE, _LINE = 14, 1.4
_DEEP = 20
"""How deep stands are drawn; only fronts are to scale."""


MOST_DRAWN = 300
"""Stands of one side that are drawn singly; of more, only their platoons, or one block."""

_TYPE, _LINE = 14, 1.4
_DEEP = 20
"""How deep stands are drawn; only fronts are to scale."""
_FRAME = _DEEP + 16
_STRIP = _FRAME + 2.9 * _TYPE
"""How deep one strip is with its measure."""
_SAID, _BESIDE = 1.5 * _TYPE, 1
"""What is kept for the words above a strip, and left of it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Side:
    """Platoons of one side: of each the front of a stand, and how many there are."""

    words: str
    platoons: Sequence[tuple[Millimetres, int]]
    gap: Millimetres
    front: Millimetres
    fill: str


@dataclass(frozen=True, slots=True, kw_only=True)
class _Block:
    """What is drawn as one piece, in millimetres from the left of the table."""

    left: Fraction
    width: Fraction


def ground_strip(line: Abreast, *, width: float = DESK) -> Drawing:
    """Both sides, one above the other at one scale, each with its measure below."""
    sides = tuple(_sides(line))
    longest = max(line.table_width or line.front, *(side.front for side in sides))
    pen = Pen(scale=(width - 2 * _BESIDE) / float(longest), type_size=_TYPE, line=_LINE)
    elements: list[Element] = []
    height = 0.0
    for side in sides:
        elements.append(pen.text(side.words, at=(_BESIDE, height + _TYPE)))
        elements.extend(_strip(side, table=line.table_width, top=height + _SAID, pen=pen))
        height += _SAID + _STRIP
    if line.table_width is not None:
        wide = float(line.table_width) * pen.scale
        elements.append(measure_across(pen, at=(_BESIDE, height + 0.7 * _TYPE), length=wide))
        words = f"the table, {decimal_text(line.table_width)} mm"
        middle = (_BESIDE + wide / 2, height + 2 * _TYPE)
        elements.append(pen.text(words, at=middle, anchor="middle"))
        height += 2.5 * _TYPE
    return drawing(elements, size=(width, height), words=strip_words(line))


def strip_words(line: Abreast) -> str:
    """What the drawing shows, in a sentence."""
    said = f"{line.name}: {several(len(line.platoons), 'platoon')} in line, "
    said += f"{decimal_text(line.front)} mm"
    if line.table_width is not None:
        said += f" of a table {decimal_text(line.table_width)} mm wide"
    if line.his_front is not None:
        said += f"; as many of the opponent's, {decimal_text(line.his_front)} mm"
    return f"{said}."


def _sides(line: Abreast) -> Iterator[_Side]:
    number = several(len(line.platoons), "platoon")
    yield _Side(
        words=f"yours: {number}",
        platoons=[_stands(each, gap=line.gap) for each in line.platoons],
        gap=line.gap,
        front=line.front,
        fill=INK,
    )
    if line.his is not None and line.his_front is not None:
        yield _Side(
            words=f"his: {number} as well",
            platoons=[(line.his.width, line.his.number)] * len(line.platoons),
            gap=line.his_gap,
            front=line.his_front,
            fill=SHEET,
        )


def _stands(platoon: InLine, *, gap: Millimetres) -> tuple[Millimetres, int]:
    """The front of one stand, and how many are in line."""
    front = platoon.front
    return Millimetres((front.front - (front.stands - 1) * gap) / front.stands), front.stands


def _strip(side: _Side, *, table: Millimetres | None, top: float, pen: Pen) -> Iterator[Element]:
    """A strip of table with what stands on it, a line under each platoon, and the measure."""
    if table is not None:
        wide = float(table) * pen.scale
        yield element(
            "rect",
            x=_BESIDE,
            y=top,
            width=wide,
            height=_FRAME,
            fill="none",
            stroke=RULE,
            stroke_width=1.5,
        )
    for block in _blocks(side):
        yield _drawn(block, side=side, table=table, top=top + 5, pen=pen)
    for block in _platoons(side):
        under = point(_BESIDE + float(block.left) * pen.scale, top + _DEEP + 10)
        yield pen.stroke(f"M{under}h{float(block.width) * pen.scale:.2f}", breadth=1.8)
    length = float(side.front) * pen.scale
    yield measure_across(pen, at=(_BESIDE, top + _FRAME + 0.7 * _TYPE), length=length)
    words = f"{decimal_text(side.front)} mm"
    yield pen.text(words, at=(_BESIDE, top + _FRAME + 2 * _TYPE))


def _drawn(
    block: _Block, *, side: _Side, table: Millimetres | None, top: float, pen: Pen
) -> Element:
    """A stand, filled where it has room on the table, else an outline in red."""
    is_past = table is not None and block.left + block.width > table
    return element(
        "rect",
        x=_BESIDE + float(block.left) * pen.scale,
        y=top,
        width=float(block.width) * pen.scale,
        height=_DEEP,
        fill="none" if is_past else side.fill,
        stroke=RED if is_past else INK,
        stroke_width=1.2,
        stroke_dasharray="4 3" if is_past else None,
    )


def _platoons(side: _Side) -> Iterator[_Block]:
    """One block for each platoon; none where there are too many to see."""
    if len(side.platoons) > MOST_DRAWN:
        return
    left = Fraction(0)
    for front, number in side.platoons:
        width = line_front(front, number=number, gap=side.gap)
        yield _Block(left=left, width=width)
        left += width + side.gap


def _blocks(side: _Side) -> Iterator[_Block]:
    """Every stand, or every platoon where there are too many stands, or one block for all."""
    if len(side.platoons) > MOST_DRAWN:
        yield _Block(left=Fraction(0), width=side.front)
    elif sum(number for _, number in side.platoons) > MOST_DRAWN:
        yield from _platoons(side)
    else:
        left = Fraction(0)
        for front, number in side.platoons:
            for _ in range(number):
                yield _Block(left=left, width=front)
                left += front + side.gap
