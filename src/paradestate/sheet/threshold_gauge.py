"""Goods of one source against the values from which it charges otherwise.

A bar for the goods so far, a red line at each value, and the words beside the two that matter: the
one reached last and the one that comes next.
"""

from collections.abc import Iterator

from paradestate.core.money import Currency, money_text
from paradestate.core.number import percent_text
from paradestate.core.sentence.wording import listed
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
    words = gauge_words(standing, currency=currency)
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


def threshold_words(threshold: Threshold, *, currency: Currency) -> str:
    """What holds from a value on: `£40: carriage free`."""
    said = []
    if threshold.sends:
        said.append("sends from here")
    if threshold.discount_rate is not None:
        said.append(f"{percent_text(threshold.discount_rate)} off")
    if threshold.carriage is not None:
        charged = money_text(threshold.carriage, currency)
        said.append(f"carriage {charged}" if threshold.carriage else "carriage free")
    return f"{short_money(threshold.at, currency)}: {listed(said)}"


def short_money(amount: int, currency: Currency) -> str:
    """Money without idle noughts: `£40`."""
    return money_text(amount, currency).removesuffix(".00")


def gauge_words(standing: Standing, *, currency: Currency) -> str:
    """Where the goods stand, in a sentence, such as `Goods £50.00, on the line`."""
    goods, above, short = standing.goods, standing.above, standing.short
    said = [f"Goods {money_text(goods, currency)}"]
    if above == 0:
        said.append("on the line")
    elif above is not None:
        said.append(f"{money_text(above, currency)} above the line")
    if short is not None:
        line = "the line" if above is None else "the next"
        said.append(f"{money_text(short, currency)} below {line}")
    return f"{', '.join(said)}."
