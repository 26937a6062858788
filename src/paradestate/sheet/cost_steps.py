"""Cost against what is left over: every step an order that no other beats in both.

Cost goes to the right and figures left over go up. The chosen order is filled.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from paradestate.core.money import Currency, decimal_places, money_text
from paradestate.core.sentence.wording import listed
from paradestate.sheet.axis import ticks
from paradestate.sheet.lettering import width_of
from paradestate.sheet.svg import Drawing, Element, drawing, element

WIDE, PHONE = 560, 358
HIGH = 290
TOP, BOTTOM, LEFT, RIGHT = 40, 62, 46, 26
MOST_TOLD = 6
"""Of more steps the sentence tells the first and the last; the table beside has them all."""
LETTER_SIZE = 16
"""Of the letters of steps."""


@dataclass(frozen=True, slots=True, kw_only=True)
class CostStep:
    """An order by what counts here; the total in minor units."""

    letter: str
    """Empty for an order that others beat."""
    total: int
    left_over: int
    chosen: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class _Frame:
    width: int
    across: tuple[int, ...]
    up: tuple[int, ...]

    def x(self, total: int) -> float:
        """Where a total stands."""
        return LEFT + (self.width - LEFT - RIGHT) * _share(total, self.across)

    def y(self, left_over: int) -> float:
        """Where so many left over stand."""
        return HIGH - BOTTOM - (HIGH - TOP - BOTTOM) * _share(left_over, self.up)


def _share(value: int, ticks_: tuple[int, ...]) -> float:
    return (value - ticks_[0]) / (ticks_[-1] - ticks_[0])


def cost_steps(
    steps: Sequence[CostStep],
    *,
    currency: Currency,
    others: Sequence[CostStep] = (),
    width: int = WIDE,
) -> Drawing | None:
    """The steps, and beside them other orders as rings; None where there is no step."""
    if not steps:
        return None
    every = (*steps, *others)
    totals = [step.total for step in every]
    unit = 10 ** decimal_places(currency)
    least, most = min(totals) // unit, -(-max(totals) // unit)
    margin = max(1, (most - least) // 8)
    whole = ticks(max(0, least - margin), most + margin, most=6 if width > PHONE else 4)
    frame = _Frame(
        width=width,
        across=tuple(each * unit for each in whole),
        up=ticks(0, max(1, *(step.left_over for step in every)), most=5),
    )
    shown = (
        *_axes(frame, currency=currency),
        _line(frame, steps),
        *(_ring(frame, each) for each in others),
        *_points(frame, steps),
    )
    return drawing(shown, size=(width, HIGH), words=step_words(steps, currency=currency))


def step_words(steps: Sequence[CostStep], *, currency: Currency) -> str:
    """What the steps show, in a sentence."""
    told = steps if len(steps) <= MOST_TOLD else (steps[0], steps[-1])
    said = listed(
        f"{step.letter} costs {money_text(step.total, currency)} and leaves {step.left_over} over"
        for step in told
    )
    if len(told) < len(steps):
        said = f"of {len(steps)} orders {said}"
    chosen = "".join(f"; {step.letter} is chosen" for step in steps if step.chosen)
    return f"Cost against figures left over: {said}{chosen}."


def _axes(frame: _Frame, *, currency: Currency) -> Iterator[Element]:
    right, floor = frame.width - RIGHT, HIGH - BOTTOM
    yield element("text", text="figures left over", x=0, y=16, class_="soft")
    for tick in frame.up:
        y = frame.y(tick)
        stroke = "var(--ink)" if tick == frame.up[0] else "var(--hair)"
        yield element("path", d=f"M{LEFT} {y:.2f}H{right}", stroke=stroke, stroke_width=1.2)
        yield element(
            "text", text=f"{tick}", x=LEFT - 10, y=y + 5, text_anchor="end", class_="soft"
        )
    for tick in frame.across:
        x = frame.x(tick)
        yield element("path", d=f"M{x:.2f} {floor}v6", stroke="var(--ink)", stroke_width=1.2)
        text = money_text(tick, currency).removesuffix(".00")
        yield element("text", text=text, x=x, y=floor + 24, text_anchor="middle", class_="soft")
    yield element(
        "text",
        text="all paid, carriage and discount in",
        x=right,
        y=HIGH - 8,
        text_anchor="end",
        class_="soft",
    )


def _line(frame: _Frame, steps: Sequence[CostStep]) -> Element:
    """Down to each step and along from it: nothing lies below the line."""
    first = steps[0]
    path = f"M{frame.x(first.total):.2f} {TOP - 12}V{frame.y(first.left_over):.2f}"
    for step in steps[1:]:
        path += f"H{frame.x(step.total):.2f}V{frame.y(step.left_over):.2f}"
    return element(
        "path",
        d=f"{path}H{frame.width - RIGHT}",
        fill="none",
        stroke="var(--ink)",
        stroke_width=2.4,
    )


def _ring(frame: _Frame, step: CostStep) -> Element:
    return element(
        "circle",
        cx=frame.x(step.total),
        cy=frame.y(step.left_over),
        r=3.5,
        fill="var(--paper)",
        stroke="var(--soft)",
        stroke_width=1.4,
    )


def _points(frame: _Frame, steps: Sequence[CostStep]) -> Iterator[Element]:
    """The steps, the chosen one last and on top; letters where they don't run into each other."""
    taken: list[tuple[float, float]] = []
    for step in sorted(steps, key=lambda each: not each.chosen):
        x, y = frame.x(step.total), frame.y(step.left_over)
        wide = width_of(step.letter, size=LETTER_SIZE)
        if all(abs(x - other) > wide + 14 or abs(y - up) > LETTER_SIZE for other, up in taken):
            taken.append((x, y))
            yield element(
                "text",
                text=step.letter,
                x=x - 12,
                y=y + 18,
                text_anchor="end",
                class_="b",
                font_size=LETTER_SIZE,
            )
    for step in sorted(steps, key=lambda each: each.chosen):
        colours = ("var(--pencil)",) * 2 if step.chosen else ("var(--paper)", "var(--ink)")
        yield element(
            "circle",
            cx=frame.x(step.total),
            cy=frame.y(step.left_over),
            r=8 if step.chosen else 6,
            fill=colours[0],
            stroke=colours[1],
            stroke_width=2.4,
        )
