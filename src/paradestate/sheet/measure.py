"""Measures on a drawing: lines with ticks at their ends, and what they measure."""

from collections.abc import Iterator
from dataclasses import dataclass

from paradestate.sheet.svg import Element, element

INK, SHEET, TINT = "var(--ink)", "var(--sheet)", "var(--tint)"
RULE, HAIR, RED = "var(--rule)", "var(--hair)", "var(--red)"


@dataclass(frozen=True, slots=True, kw_only=True)
class Pen:
    """How a drawing is drawn; lengths in its own units."""

    scale: float
    """Units for one millimetre of what is drawn."""
    type_size: float
    line: float
    """Breadth of a line."""

    def text(self, words: str, *, at: tuple[float, float], anchor: str = "start") -> Element:
        """Words on a base line."""
        return element(
            "text", text=words, x=at[0], y=at[1], text_anchor=anchor, font_size=self.type_size
        )

    def stroke(self, path: str, *, colour: str = INK, breadth: float = 1) -> Element:
        """A path drawn with so many breadths of a line."""
        return element("path", d=path, fill="none", stroke=colour, stroke_width=self.line * breadth)


def point(x: float, y: float) -> str:
    """A point of a path, to a hundredth."""
    return f"{x:.2f} {y:.2f}"


def measure_across(pen: Pen, *, at: tuple[float, float], length: float) -> Element:
    """A line from left to right with a tick at each end."""
    x, y = at
    tick = pen.type_size * 0.35
    return pen.stroke(
        f"M{point(x, y - tick)}v{2 * tick:.2f}M{point(x, y)}h{length:.2f}"
        f"M{point(x + length, y - tick)}v{2 * tick:.2f}"
    )


def measure_down(pen: Pen, *, at: tuple[float, float], length: float) -> Element:
    """A line from top to bottom with a tick at each end."""
    x, y = at
    tick = pen.type_size * 0.35
    return pen.stroke(
        f"M{point(x - tick, y)}h{2 * tick:.2f}M{point(x, y)}v{length:.2f}"
        f"M{point(x - tick, y + length)}h{2 * tick:.2f}"
    )


def scale_line(
    pen: Pen, *, at: tuple[float, float], millimetres: int, step: int = 10
) -> Iterator[Element]:
    """So many millimetres at the scale of the drawing, with a tick at each step."""
    x, y = at
    tick = pen.type_size * 0.35
    path = f"M{point(x, y)}h{millimetres * pen.scale:.2f}"
    for number in range(0, millimetres + 1, step):
        is_long = number in {0, millimetres} or number * 2 == millimetres
        path += f"M{point(x + number * pen.scale, y)}v-{tick * (2 if is_long else 1):.2f}"
    yield pen.stroke(path)
    yield pen.text(f"{millimetres} mm", at=(x, y + pen.type_size * 1.15))
