"""What is held, a bar for each kind: one figure is one unit of length in all rows.

Finished lies on the left in solid ink; the number of each stage stands under its part of the bar.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from paradestate.sheet.svg import Drawing, Element, drawing, element, group
from paradestate.sheet.texture import RULE, texture_of

DESK, PHONE = 1184, 358

HIGH = 22
"""Height of a bar."""

TYPE, PHONE_TYPE = 14, 17
"""Size of type; larger on a phone, where the drawing is shown smaller."""

DIGIT = 0.62
"""About how wide a letter or digit is, of the size of type."""

APART = 7
"""Least space between two numbers."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Bar:
    """One kind: figures by stage, and what is told at the end of the bar."""

    name: str
    stages: Mapping[str, int]
    lent: int = 0
    """Figures owned and away, as an open box."""

    @property
    def total(self) -> int:
        """Figures drawn."""
        return sum(self.stages.values()) + self.lent


def holding_bars(bars: Sequence[Bar], *, stages: Sequence[str], width: int = DESK) -> Drawing:
    """The bars under one another; on a phone each name stands above its bar."""
    greatest = max((bar.total for bar in bars), default=1) or 1
    frame = _frame(bars, width=width, greatest=greatest)
    rows = [
        group(
            *_row(bar, stages=stages, frame=frame),
            transform=f"translate(0 {number * frame.row})",
            font_size=frame.type,
        )
        for number, bar in enumerate(bars)
    ]
    size = (width, max(frame.row * len(bars), 1))
    return drawing(rows, size=size, words=_words(bars, stages=stages))


@dataclass(frozen=True, slots=True, kw_only=True)
class _Frame:
    """Where things stand in a row."""

    left: float
    top: int
    """Of the bar."""
    row: int
    unit: float
    """Length of one figure."""
    type: int

    def wide(self, text: str) -> float:
        """About how wide a text is."""
        return len(text) * DIGIT * self.type


def _frame(bars: Sequence[Bar], *, width: int, greatest: int) -> _Frame:
    is_narrow = width < DESK
    size = PHONE_TYPE if is_narrow else TYPE
    names = max((len(bar.name) for bar in bars), default=0)
    left = 0.0 if is_narrow else 8 + names * DIGIT * size
    end = len(f"{greatest} held") * DIGIT * size + 10
    return _Frame(
        left=left,
        top=24 if is_narrow else 2,
        row=78 if is_narrow else 54,
        unit=(width - left - 2 - end) / greatest,
        type=size,
    )


def _words(bars: Sequence[Bar], *, stages: Sequence[str]) -> str:
    return ". ".join(f"{bar.name}: {', '.join(_numbers(bar, stages))}" for bar in bars)


def _numbers(bar: Bar, stages: Sequence[str]) -> Iterator[str]:
    for stage, number in _in_order(bar, stages):
        yield f"{number} {stage}"
    if bar.lent:
        yield f"{bar.lent} lent"
    if not bar.total:
        yield "none"


def _in_order(bar: Bar, stages: Sequence[str]) -> list[tuple[str, int]]:
    """Finished first, then stages that the force doesn't have."""
    order = (*reversed(stages), *(stage for stage in bar.stages if stage not in stages))
    return [(stage, bar.stages[stage]) for stage in order if bar.stages.get(stage)]


def _row(bar: Bar, *, stages: Sequence[str], frame: _Frame) -> Iterator[Element]:
    base = frame.top + 16
    yield _text(bar.name, x=0, y=16 if frame.top > HIGH else base, class_="b")
    at, free = frame.left + 1.0, frame.left
    looks = [(texture_of(stage, stages=stages), number) for stage, number in _in_order(bar, stages)]
    parts = [(look.fill, look.stroke, number, str(number)) for look, number in looks]
    if bar.lent:
        parts.append(("none", RULE, bar.lent, f"{bar.lent} lent"))
    for fill, stroke, number, words in parts:
        wide = number * frame.unit
        yield _box(at, top=frame.top, wide=wide, fill=fill, stroke=stroke)
        # A number stands under the middle of its part, or beside the one before.
        place = max(at + wide / 2 - frame.wide(words) / 2, free)
        yield _text(words, x=place, y=frame.top + HIGH + frame.type + 2, class_="soft")
        free = place + frame.wide(words) + APART
        at += wide
    yield _text(f"{bar.total - bar.lent} held", x=at + 8, y=base)


def _text(words: str, *, x: float, y: int, class_: str = "") -> Element:
    return element("text", text=words, x=x, y=y, class_=class_ or None, font_size="inherit")


def _box(left: float, *, top: int, wide: float, fill: str, stroke: str) -> Element:
    return element(
        "rect",
        x=left,
        y=top,
        width=wide,
        height=HIGH,
        fill=fill,
        stroke=stroke,
        stroke_width=1.5,
    )
