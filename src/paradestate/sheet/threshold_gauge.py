"""Goods of one source against the values from which it charges otherwise.

A bar for the goods so far, a red line at each value, and the words beside the two that matter: the
one reached last and the one that comes next.
"""

from collections.abc import Iterator

from paradestate.core.money import Currency
from paradestate.core.sentence.threshold import standing_words, threshold_words
from paradestate.core.threshold import Standing, Threshold
from paradestate.sheet.lettering import fitted, width_of
from paradestate.sheet.svg import Drawing, Element, drawing, element

WIDE = PHONE = 358
"""One form serves both: a slip is as wide as a phone."""
BAR, LINE = 18, 20
ROOM = 0.16
"""Share of the bar to the right of all that it shows."""


def threshold_gauge(
    standing: Standing,
    thresholds: tuple[Threshold, ...],
    *,
    currency: Currency,
    width: int = WIDE,
) -> Drawing | None:
    """The gauge; None where the source charges the same whatever the goods."""
    if not thresholds:
        return None
    furthest = max(standing.goods, *(each.at for each in thresholds), 1)
    unit = (width - 2) * (1 - ROOM) / furthest
    named = [each for each in (standing.reached, standing.following) if each]
    top = LINE * len(named) + 8
    labels = [
        _label(each, currency=currency, x=1 + unit * each.at, y=LINE * row + 14, width=width)
        for row, each in enumerate(named)
    ]
    lines = [
        _line(1 + unit * each.at, top=_top(each, named=named, bar=top), bar=top)
        for each in thresholds
    ]
    shown = (*_bar(unit * standing.goods, top=top, width=width), *lines, *labels)
    words = standing_words(standing, currency=currency)
    return drawing(shown, size=(width, top + BAR + 8), words=words)


def _top(threshold: Threshold, *, named: list[Threshold], bar: int) -> int:
    """A line that is named reaches up to its words."""
    return LINE * named.index(threshold) + LINE if threshold in named else bar - 5


def _bar(long: float, *, top: int, width: int) -> Iterator[Element]:
    yield element(
        "rect",
        x=1,
        y=top,
        width=width - 2,
        height=BAR,
        fill="none",
        stroke="var(--ink)",
        stroke_width=1.5,
    )
    yield element("rect", x=1, y=top, width=long, height=BAR, fill="var(--ink)")


def _line(x: float, *, top: int, bar: int) -> Element:
    return element(
        "path", d=f"M{x:.2f} {top}V{bar + BAR + 5}", stroke="var(--red)", stroke_width=2.4
    )


def _label(threshold: Threshold, *, currency: Currency, x: float, y: int, width: int) -> Element:
    text = fitted(threshold_words(threshold, currency=currency), room=width)
    half = width_of(text) / 2
    middle = min(max(x, half), max(half, width - half))
    return element("text", text=text, x=middle, y=y, text_anchor="middle")
