"""Points that may be left, a bar for each number, and where each plan begins to be paid for.

Where there are few ways, each is a square of its own. What pays for the first plan is solid; a
plan is a violet line on the left of the least number that pays for it.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction

from paradestate.core.sentence.chance import chance_words, near_text
from paradestate.core.sentence.wording import capital, several
from paradestate.core.support.chances import Chances
from paradestate.sheet.axis import with_room
from paradestate.sheet.lettering import fitted, width_of
from paradestate.sheet.line_label import ROW, Label, arranged, drawn_label, label
from paradestate.sheet.svg import Drawing, Element, drawing, element, group

WIDE, PHONE = 720, 320
BARS, SQUARE = 168, 28
"""Heights of the greatest bar, and of a square at the most."""
MOST_SQUARES, MOST_WAYS = 10, 216
BROADEST = 64
"""Of a bar and the space beside it."""
COUNTS = 23
"""Height of the numbers over the greatest bar."""
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
    paid_by: frozenset[int] | None = None
    """Points with which it may be taken, where it is not just those that are as many as it costs:
    groups may have to keep to a share of them."""

    def pays(self, points: int) -> bool:
        """Whether it may be taken with so many points left."""
        return points >= self.cost if self.paid_by is None else points in self.paid_by

    def chance(self, allowance: Chances) -> Fraction:
        """The chance of such points."""
        return sum((allowance.of(each) for each in allowance.counts if self.pays(each)), Fraction())


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
    labels = arranged([_label(plan, frame, known=known) for plan in plans[:MOST_PLANS]])
    shown = (
        *_bars(frame, plan=plans[0] if plans else None),
        *_ways(frame),
        *_points(frame, plan=plans[0] if plans else None, known=known),
        *(
            piece
            for row, each in enumerate(labels)
            for piece in drawn_label(each, row=row, floor=frame.floor)
        ),
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

    def x_of(self, plan: PlanLine) -> float:
        """Before the least number that pays; at the end where none does."""
        counts = tuple(self.allowance.counts)
        pays = (place for place, points in enumerate(counts) if plan.pays(points))
        return self.x(next(pays, len(counts)))


def _frame(allowance: Chances, *, plans: Sequence[PlanLine], width: int) -> _Frame:
    pitch = min(BROADEST, (width - 2) / len(allowance.counts))
    greatest = max(allowance.counts.values())
    is_squares = greatest <= MOST_SQUARES and allowance.ways <= MOST_WAYS and pitch > width_of("00")
    return _Frame(
        allowance=allowance,
        width=width,
        top=ROW * len(plans) + COUNTS,
        pitch=pitch,
        unit=min(SQUARE, BARS / greatest) if is_squares else BARS / greatest,
        is_squares=is_squares,
    )


def _bars(frame: _Frame, *, plan: PlanLine | None) -> Iterator[Element]:
    """Each bar in squares or in one piece; those without space between them are grey or solid."""
    is_thin = frame.pitch <= BESIDE
    unpaid = "var(--rule)" if is_thin else "var(--sheet)"
    for place, (points, ways) in enumerate(frame.allowance.counts.items()):
        left = frame.x(place) + (frame.pitch - frame.bar) / 2
        is_paid = plan is None or plan.pays(points)
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


def _points(frame: _Frame, *, plan: PlanLine | None, known: int | None) -> Iterator[Element]:
    """The numbers under their bars, bold where they pay; of many the known one and round ones."""
    counts = tuple(frame.allowance.counts)
    room = max(width_of(f"{points}", size=NUMBER) for points in counts) + 4
    for place in with_room(counts, first=known, room=room, pitch=frame.pitch):
        points, x = counts[place], frame.x(place) + frame.pitch / 2
        half = width_of(f"{points}", size=NUMBER) / 2
        yield element(
            "text",
            text=f"{points}",
            x=min(max(x, half), frame.width - half),
            y=frame.floor + 20,
            text_anchor="middle",
            font_size=NUMBER,
            class_="b" if plan is not None and plan.pays(points) else None,
        )


def _paid(plan: PlanLine, allowance: Chances, *, known: int | None) -> str:
    """The chance that it is paid for, or what the roll has made of it."""
    if known is None:
        return chance_words(plan.chance(allowance))
    if known < plan.cost:
        return f"{several(plan.cost - known, 'point')} short"
    if not plan.pays(known):
        return "not with these points"
    return f"{known - plan.cost} left over" if known > plan.cost else "just enough"


def _label(plan: PlanLine, frame: _Frame, *, known: int | None) -> Label:
    told = f" costs {plan.cost}"
    name = fitted(plan.name, room=frame.width - width_of(told)) + told
    texts = (name, _paid(plan, frame.allowance, known=known))
    return label(texts, x=frame.x_of(plan), width=frame.width)


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
