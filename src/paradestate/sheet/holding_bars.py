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

DIGIT = 8.5
"""About how wide a digit is."""

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
    is_narrow = width < DESK
    left = 0 if is_narrow else 8 + max((len(bar.name) for bar in bars), default=0) * DIGIT
    room = width - left - 2 - len("000 held") * DIGIT
    greatest = max((bar.total for bar in bars), default=1) or 1
    row = 70 if is_narrow else 54
    rows = [
        group(
            *_row(bar, stages=stages, left=left, unit=room / greatest, is_narrow=is_narrow),
            transform=f"translate(0 {number * row})",
        )
        for number, bar in enumerate(bars)
    ]
    return drawing(rows, size=(width, max(row * len(bars), 1)), words=_words(bars, stages=stages))


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


def _row(
    bar: Bar, *, stages: Sequence[str], left: float, unit: float, is_narrow: bool
) -> Iterator[Element]:
    top = 20 if is_narrow else 2
    yield element("text", text=bar.name, x=0, y=14 if is_narrow else top + 16, class_="b")
    at, end = left + 1.0, 0.0
    for stage, number in _in_order(bar, stages):
        wide = number * unit
        look = texture_of(stage, stages=stages)
        yield _box(at, top=top, wide=wide, fill=look.fill, stroke=look.stroke)
        end = max(at + wide / 2 - _wide(number) / 2, end)
        yield element("text", text=str(number), x=end, y=top + HIGH + 16, class_="soft")
        end += _wide(number) + APART
        at += wide
    if bar.lent:
        wide = bar.lent * unit
        yield _box(at, top=top, wide=wide, fill="none", stroke=RULE)
        place = max(at + wide / 2 - 22, end)
        yield element("text", text=f"{bar.lent} lent", x=place, y=top + HIGH + 16, class_="soft")
        at += wide
    held = f"{bar.total - bar.lent} held"
    yield element("text", text=held, x=at + 8, y=top + 16)


def _wide(number: int) -> float:
    return len(str(number)) * DIGIT


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
