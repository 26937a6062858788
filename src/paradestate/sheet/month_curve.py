"""Money month by month: what is there, and the parcels bought, each as a flag with its number.

Months go across and money goes up. What is put aside raises the line at the beginning of a month,
a parcel lets it fall; it never goes below nought. A dashed line is what may be spent in a month.
"""

import datetime
from collections.abc import Iterator
from dataclasses import dataclass

from paradestate.core.money import decimal_places, money_text
from paradestate.core.months import Spread
from paradestate.core.savings import MONTHS_OF_A_YEAR, Savings
from paradestate.core.sentence.wording import listed, month_words
from paradestate.core.span import MONTH_NAMES
from paradestate.sheet.axis import ticks
from paradestate.sheet.lettering import width_of
from paradestate.sheet.svg import Drawing, Element, drawing, element, group

WIDE, PHONE = 560, 358
HIGH = 326
TOP, BOTTOM, LEFT, RIGHT = 58, 84, 64, 22
FLAG = 20
"""The height of a flag, as of a finger's breadth of type."""
SHORT_NAME = 3
APART = (1, 2, 3, 6, 12, 24, 60, 120, 240, 600)
"""Every how many months one is named."""
NAME_ROOM = 44


@dataclass(frozen=True, slots=True, kw_only=True)
class _Frame:
    width: int
    months: int
    up: tuple[int, ...]

    @property
    def pitch(self) -> float:
        """The breadth of a month."""
        return (self.width - LEFT - RIGHT) / self.months

    def x(self, month: float) -> float:
        """Where so many months have passed."""
        return LEFT + self.pitch * month

    def y(self, amount: int) -> float:
        """Where an amount stands."""
        share = amount / self.up[-1]
        return HIGH - BOTTOM - (HIGH - TOP - BOTTOM) * share


def month_curve(
    plan: Spread, savings: Savings, *, deadline: int | None = None, width: int = WIDE
) -> Drawing | None:
    """The curve of a plan, with the month by whose end all is needed; None without a purchase."""
    if not plan.months:
        return None
    last = len(plan.months)
    is_seen = deadline is not None and 0 < deadline <= 2 * last + 6
    number = max(last, deadline or 0) if is_seen else last
    unit = 10 ** decimal_places(savings.currency)
    highest = max(month.balance + month.spent for month in plan.months)
    whole = ticks(0, -(-max(highest, savings.a_month, 1) // unit), most=5)
    frame = _Frame(width=width, months=number, up=tuple(each * unit for each in whole))
    shown = (
        *_axes(frame, savings=savings),
        *(_deadline(frame, deadline) if is_seen and deadline is not None else ()),
        _limit(frame, savings),
        _curve(frame, plan, savings=savings),
        *_flags(frame, plan),
        *_key(width=width),
    )
    return drawing(shown, size=(width, HIGH), words=curve_words(plan, savings))


def curve_words(plan: Spread, savings: Savings) -> str:
    """What the curve shows, in a sentence."""
    bought = [
        f"{listed(month.orders)} in {month_words(savings.day(month.month))}, "
        f"{money_text(month.balance, savings.currency)} left"
        for month in plan.months
        if month.orders
    ]
    a_month = money_text(savings.a_month, savings.currency)
    return f"Money month by month with {a_month} put aside each: {'; '.join(bought)}."


def _axes(frame: _Frame, *, savings: Savings) -> Iterator[Element]:
    right = frame.width - RIGHT
    for tick in frame.up:
        y = frame.y(tick)
        stroke = "var(--hair)" if tick else "var(--ink)"
        yield element("path", d=f"M{LEFT} {y:.2f}H{right}", stroke=stroke, stroke_width=1.2)
        text = money_text(tick, savings.currency).removesuffix(".00")
        yield element("text", text=text, x=LEFT - 8, y=y + 5, text_anchor="end", class_="soft")
    apart = next(each for each in APART if frame.pitch * each >= NAME_ROOM)
    for month in range(1, frame.months + 1):
        day = savings.day(month)
        if (day.year * MONTHS_OF_A_YEAR + day.month - 1) % apart == 0:
            yield from _named(frame, month, day=day, is_year=apart >= MONTHS_OF_A_YEAR)
    if frame.months < apart:
        yield from _named(frame, 1, day=savings.begins, is_year=False)


def _named(frame: _Frame, month: int, *, day: datetime.date, is_year: bool) -> Iterator[Element]:
    """A month by its name, and under January its year; of long plans years only."""
    x, floor = frame.x(month - 1), HIGH - BOTTOM
    yield element("path", d=f"M{x:.2f} {floor}v6", stroke="var(--ink)", stroke_width=1.2)
    name = f"{day.year}" if is_year else MONTH_NAMES[day.month - 1][:SHORT_NAME]
    yield element("text", text=name, x=x + 2, y=floor + 22, class_="soft")
    if not is_year and (month == 1 or day.month == 1):
        yield element("text", text=f"{day.year}", x=x + 2, y=floor + 40, class_="soft")


def _key(*, width: int) -> Iterator[Element]:
    """What the dashed line and the flags mean."""
    dashes = "M0 0H30"
    line = element("path", d=dashes, stroke="var(--soft)", stroke_width=1.5, stroke_dasharray="6 4")
    flag = element("path", d="M1 -12V4M1 -12h16v12h-16", fill="none", stroke="var(--pencil)")
    flag.set("stroke-width", "2")
    y = HIGH - 8
    yield group(line, transform=f"translate(0 {y - 5})")
    yield element("text", text="put aside a month", x=38, y=y)
    beside = 196 if width > PHONE else 190
    yield group(flag, transform=f"translate({beside} {y - 2})")
    yield element("text", text="a parcel is bought", x=beside + 26, y=y)


def _limit(frame: _Frame, savings: Savings) -> Element:
    y = frame.y(savings.a_month)
    return element(
        "path",
        d=f"M{LEFT} {y:.2f}H{frame.width - RIGHT}",
        stroke="var(--soft)",
        stroke_width=1.5,
        stroke_dasharray="6 4",
    )


def _curve(frame: _Frame, plan: Spread, *, savings: Savings) -> Element:
    """Up at the beginning of each month, and down where something is bought."""
    path = f"M{LEFT} {frame.y(savings.carried):.2f}"
    for month in plan.months:
        there = month.balance + month.spent
        path += f"V{frame.y(there):.2f}"
        if month.spent:
            path += f"H{frame.x(month.month - 0.5):.2f}V{frame.y(month.balance):.2f}"
        path += f"H{frame.x(month.month):.2f}"
    return element(
        "path", d=path, fill="none", stroke="var(--ink)", stroke_width=2.4, stroke_linejoin="miter"
    )


def _flags(frame: _Frame, plan: Spread) -> Iterator[Element]:
    """A flag on its staff for each parcel, numbered in the order of buying."""
    number, ends = 0, [0.0, 0.0]
    for month in plan.months:
        if not month.orders:
            continue
        first, number = number + 1, number + len(month.orders)
        text = f"{first}" if first == number else f"{first}-{number}"
        x, wide = frame.x(month.month - 0.5), width_of(text) + 12
        row = 0 if ends[0] <= ends[1] or x >= ends[0] else 1
        ends[row] = x + wide + 4
        top = 6 + row * (FLAG + 4)
        foot = frame.y(month.balance + month.spent)
        yield group(
            element("path", d=f"M{x:.2f} {top}V{foot:.2f}", stroke="var(--pencil)", stroke_width=2),
            element(
                "path",
                d=f"M{x:.2f} {top}h{wide:.2f}v{FLAG}h-{wide:.2f}z",
                fill="var(--sheet)",
                stroke="var(--pencil)",
                stroke_width=2,
            ),
            element("text", text=text, x=x + 6, y=top + 15, class_="pen"),
        )


def _deadline(frame: _Frame, month: int) -> Iterator[Element]:
    x = frame.x(month)
    yield element(
        "path", d=f"M{x:.2f} {TOP - 6}V{HIGH - BOTTOM}", stroke="var(--red)", stroke_width=2.4
    )
    yield element("text", text="needed", x=x - 4, y=TOP + 6, text_anchor="end", class_="red")
