"""A share as a bar: how much of all, and how much of that for certain."""

from fractions import Fraction

from paradestate.sheet.force_frame import hatching
from paradestate.sheet.svg import Drawing, Element, drawing, element

WIDTH, HEIGHT = 160, 14
LINE = 1.5
HATCHED = "share-hatched"


def share_pattern() -> Drawing:
    """The hatching of the bars, to stand once on a page before any of them."""
    defs = element("defs", hatching(HATCHED))
    return drawing([defs], size=(1, 1), words="hatching", class_="vh", is_hidden=True)


def share_bar(solid: Fraction, *, hatched: Fraction = Fraction(0)) -> Drawing:
    """So much solid, so much more hatched, and the rest empty.

    It isn't read out: the same stands beside it in words.
    """
    inside = WIDTH - 2 * LINE
    middle = LINE + inside * float(solid)
    shown: list[Element] = []
    if hatched:
        end = middle + inside * float(hatched)
        shown.append(_part(middle, end=end, fill=f"url(#{HATCHED})", stroke="var(--ink)"))
    if solid:
        shown.append(_part(LINE, end=middle, fill="var(--ink)"))
    shown.append(
        element(
            "rect",
            x=LINE / 2,
            y=LINE / 2,
            width=WIDTH - LINE,
            height=HEIGHT - LINE,
            fill="none",
            stroke="var(--rule)",
            stroke_width=LINE,
        )
    )
    return drawing(shown, size=(WIDTH, HEIGHT), words="", class_="bar", is_hidden=True)


def _part(begins: float, *, end: float, fill: str, stroke: str | None = None) -> Element:
    """A part of the bar, at least as broad as can be seen."""
    return element(
        "rect",
        x=begins,
        y=LINE,
        width=max(end - begins, 1.0),
        height=HEIGHT - 2 * LINE,
        fill=fill,
        stroke=stroke,
        stroke_width=None if stroke is None else 1,
    )
