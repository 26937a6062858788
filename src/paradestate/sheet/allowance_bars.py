"""Points that may be left, a bar for each number, and where each plan begins to be paid for.

Where there are few ways, each is a square of its own. What pays for the first plan is solid; a
plan is a violet line on the left of the least number that pays for it.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import permutations

from paradestate.core.sentence.chance import chance_words, near_text
from paradestate.core.sentence.wording import capital, several
from paradestate.core.support.chances import Chances
from paradestate.sheet.axis import round_step
from paradestate.sheet.lettering import SIZE, fitted, width_of
from paradestate.sheet.svg import Drawing, Element, drawing, element, group

WIDE, PHONE = 720, 320
BARS, SQUARE = 168, 28
"""Heights of the greatest bar, and of a square at the most."""
MOST_SQUARES, MOST_WAYS = 10, 216
BROADEST = 64
"""Of a bar and the space beside it."""
ROW, LINE = 44, 19
"""The words of a plan, two lines of them."""
MOST_PLANS = 4
"""Of more plans the first are drawn; the table beside has them all."""
BESIDE = 8
NUMBER = 16
"""Size of the numbers under the bars."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PlanLine:
    """A plan by what counts here."""

    name: str
    cost: int


@dataclass(frozen=True, slots=True, kw_only=True)
class AllowanceRow:
    """One line of the table beside the bars."""

    points: int
    chance: Fraction
    at_least: Fraction


def allowance_bars(
    allowance: Chances,
    *,
    plans: Sequence[PlanLine] = (),
    known: int | None = None,
    width: int = WIDE,
) -> Drawing:
    """The bars of points left, with plans and, once it is known, what is left after the roll.

    A number that the dice can't give has no mark.
    """
    frame = _frame(allowance, plans=plans[:MOST_PLANS], width=width)
    labels = _arranged([_label(plan, frame, known=known) for plan in plans[:MOST_PLANS]])
    shown = (
        *_bars(frame, cost=plans[0].cost if plans else None),
        *_ways(frame),
        *_points(frame, cost=plans[0].cost if plans else None, known=known),
        *(piece for row, each in enumerate(labels) for piece in _plan(each, frame, row=row)),
        *_caption(frame, known=known),
    )
    words = allowance_words(allowance, plans=plans, known=known)
    return drawing(shown, size=(width, frame.floor + (50 if known is None else 72)), words=words)


def allowance_words(
    allowance: Chances, *, plans: Sequence[PlanLine] = (), known: int | None = None
) -> str:
    """What the bars show, in sentences."""
    points = tuple(allowance.counts)
    reach = f"{points[0]} to {points[-1]}, {near_text(allowance.mean)} on average"
    said = [f"Points left: {reach if len(points) > 1 else points[0]}."]
    said += [
        f"{capital(plan.name)} costs {plan.cost}: {_paid(plan, allowance, known=known)}."
        for plan in plans
    ]
    if known is not None:
        said.insert(1, f"After the roll {known} are left.")
    return " ".join(said)


def allowance_rows(allowance: Chances) -> tuple[AllowanceRow, ...]:
    """The table beside the bars."""
    return tuple(
        AllowanceRow(points=each, chance=allowance.of(each), at_least=allowance.at_least(each))
        for each in allowance.counts
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class _Frame:
    allowance: Chances
    width: int
    top: int
    """Of the greatest bar."""
    pitch: float
    unit: float
    """Height of one way."""
    is_squares: bool

    @property
    def floor(self) -> float:
        """The line on which the bars stand."""
        return self.top + self.unit * max(self.allowance.counts.values())

    @property
    def bar(self) -> float:
        """The breadth of a bar."""
        return self.pitch * 0.8 if self.pitch > BESIDE else self.pitch

    def x(self, place: int) -> float:
        """The left of a bar with its half of the space beside it."""
        return 1 + self.pitch * place

    def x_of_cost(self, cost: int) -> float:
        """Between what is too little and what pays."""
        return self.x(sum(1 for each in self.allowance.counts if each < cost))


def _frame(allowance: Chances, *, plans: Sequence[PlanLine], width: int) -> _Frame:
    pitch = min(BROADEST, (width - 2) / len(allowance.counts))
    greatest = max(allowance.counts.values())
    is_squares = greatest <= MOST_SQUARES and allowance.ways <= MOST_WAYS and pitch > width_of("00")
    return _Frame(
        allowance=allowance,
        width=width,
        top=ROW * len(plans) + LINE + 4,
        pitch=pitch,
        unit=min(SQUARE, BARS / greatest) if is_squares else BARS / greatest,
        is_squares=is_squares,
    )


def _bars(frame: _Frame, *, cost: int | None) -> Iterator[Element]:
    """Each bar in squares or in one piece; those without space between them are grey or solid."""
    is_thin = frame.pitch <= BESIDE
    unpaid = "var(--rule)" if is_thin else "var(--sheet)"
    for place, (points, ways) in enumerate(frame.allowance.counts.items()):
        left = frame.x(place) + (frame.pitch - frame.bar) / 2
        is_paid = cost is None or points >= cost
        pieces, high = (ways, frame.unit) if frame.is_squares else (1, frame.unit * ways)
        for piece in range(pieces):
            yield element(
                "rect",
                x=left,
                y=frame.floor - high * (piece + 1) + 1,
                width=frame.bar,
                height=max(high - 2, 0.5),
                fill="var(--ink)" if is_paid else unpaid,
                stroke=None if is_thin else "var(--ink)" if is_paid else "var(--rule)",
                stroke_width=None if is_thin else 1.5,
            )
    right = frame.x(len(frame.allowance.counts))
    yield element(
        "path", d=f"M0 {frame.floor:.2f}H{right:.2f}", stroke="var(--ink)", stroke_width=1.5
    )


def _ways(frame: _Frame) -> Iterator[Element]:
    """How many ways there are to each number, where all of them have room over their bars."""
    counts = frame.allowance.counts
    if max(width_of(f"{ways}") for ways in counts.values()) < frame.pitch:
        for place, ways in enumerate(counts.values()):
            x, y = frame.x(place) + frame.pitch / 2, frame.floor - frame.unit * ways - 6
            yield element("text", text=f"{ways}", x=x, y=y, text_anchor="middle", class_="soft")


def _points(frame: _Frame, *, cost: int | None, known: int | None) -> Iterator[Element]:
    """The numbers under their bars, bold where they pay; of many the known one and round ones."""
    counts = tuple(frame.allowance.counts)
    room = max(width_of(f"{points}", size=NUMBER) for points in counts) + 4
    step = 1 if room <= frame.pitch else round_step(int(room / frame.pitch) + 1, most=1)
    taken: list[float] = []
    for points in sorted(counts, key=lambda each: (each != known, each)):
        x = frame.x(counts.index(points)) + frame.pitch / 2
        is_told = points == known or points % step == 0
        if is_told and all(abs(x - other) >= room for other in taken):
            taken.append(x)
            half = width_of(f"{points}", size=NUMBER) / 2
            yield element(
                "text",
                text=f"{points}",
                x=min(max(x, half), frame.width - half),
                y=frame.floor + 20,
                text_anchor="middle",
                font_size=NUMBER,
                class_="b" if cost is not None and points >= cost else None,
            )


@dataclass(frozen=True, slots=True, kw_only=True)
class _Label:
    x: float
    """Of the line."""
    left: float
    texts: tuple[str, str]

    @property
    def right(self) -> float:
        """Where its words end."""
        return self.left + max(map(width_of, self.texts))

    @property
    def is_over(self) -> bool:
        """Whether the words lie over the line instead of beside it."""
        return self.left < self.x < self.right


def _paid(plan: PlanLine, allowance: Chances, *, known: int | None) -> str:
    """The chance that it is paid for, or what the roll has made of it."""
    if known is None:
        return chance_words(allowance.at_least(plan.cost))
    if known < plan.cost:
        return f"{several(plan.cost - known, 'point')} short"
    return f"{known - plan.cost} left over" if known > plan.cost else "just enough"


def _label(plan: PlanLine, frame: _Frame, *, known: int | None) -> _Label:
    """The words right of the line, left of it, or where neither has room over it."""
    told = f" costs {plan.cost}"
    name = fitted(plan.name, room=frame.width - width_of(told)) + told
    texts = (name, _paid(plan, frame.allowance, known=known))
    x, wide = frame.x_of_cost(plan.cost), max(map(width_of, texts))
    if x + BESIDE + wide <= frame.width:
        return _Label(x=x, left=x + BESIDE, texts=texts)
    return _Label(x=x, left=max(min(x - BESIDE, frame.width) - wide, 0), texts=texts)


def _arranged(labels: Sequence[_Label]) -> Sequence[_Label]:
    """The labels from top to bottom, so that as few lines as can be run through words."""
    return min(permutations(labels), key=_crossings)


def _crossings(labels: Sequence[_Label]) -> int:
    return sum(
        lower.left - 3 < upper.x < lower.right + 3
        for row, upper in enumerate(labels)
        for lower in labels[row + 1 :]
    )


def _plan(label: _Label, frame: _Frame, *, row: int) -> Iterator[Element]:
    top = ROW * row + 2
    begins = top + LINE * 2 + 3 if label.is_over else top
    yield element(
        "path",
        d=f"M{label.x:.2f} {begins}V{frame.floor + 8:.2f}",
        stroke="var(--pencil)",
        stroke_width=3,
    )
    is_left = not label.is_over and label.left < label.x
    for place, text in enumerate(label.texts):
        yield element(
            "text",
            text=text,
            x=label.right if is_left else label.left,
            y=top + LINE * place + SIZE,
            text_anchor="end" if is_left else None,
            class_="pen b halo",
        )


def _caption(frame: _Frame, *, known: int | None) -> Iterator[Element]:
    """What the numbers mean, and the one that the roll has left."""
    ways = frame.allowance.ways
    right = min(frame.width, max(frame.x(len(frame.allowance.counts)), PHONE))
    y = frame.floor + (44 if known is None else 64)
    yield element("text", text="points left", x=0, y=y, class_="soft")
    if ways > 1:
        said = f"{'a square: 1 of' if frame.is_squares else 'of'} {ways:,} equal chances"
        yield element("text", text=said, x=right, y=y, text_anchor="end", class_="soft")
    if known is not None and known in frame.allowance.counts:
        place = list(frame.allowance.counts).index(known)
        yield group(*_rolled(frame, place=place, known=known))


def _rolled(frame: _Frame, *, place: int, known: int) -> Iterator[Element]:
    """A box around the number, and words under it."""
    middle, text = frame.x(place) + frame.pitch / 2, f"rolled: {known} left"
    half, wide = width_of(text) / 2, width_of(f"{known}", size=NUMBER) + 10
    yield element(
        "rect",
        x=middle - wide / 2,
        y=frame.floor + 4,
        width=wide,
        height=22,
        fill="none",
        stroke="var(--pencil)",
        stroke_width=2.4,
    )
    x = min(max(middle, half), frame.width - half)
    y = frame.floor + 43
    yield element("text", text=text, x=x, y=y, text_anchor="middle", class_="pen b")
