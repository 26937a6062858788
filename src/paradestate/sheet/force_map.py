"""Legal forces by points, as steps, and under them the share that can be fielded, hatched.

Where there are many forces every line up is ten times as many, or more; the share has a strip of
its own, for on such a scale a half would look like nearly all.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import log10

from paradestate.core.sentence.chance import hundredths_words
from paradestate.core.sentence.wording import listed, several
from paradestate.core.support.force_map import LevelForces
from paradestate.sheet.axis import round_step, ticks, with_room
from paradestate.sheet.lettering import SIZE, width_of
from paradestate.sheet.long_number import mark, number, number_words, placed, text_of
from paradestate.sheet.svg import Drawing, Element, drawing, element

WIDE, PHONE = 720, 320
TOP, STEPS, AXIS, STRIP, FOOT = 36, 190, 50, 44, 30
"""Heights: over the steps, of them, of the axis under them, of the strip and of its caption."""
BETWEEN = 26
"""Over the strip, for its numbers."""
RIGHT, BROADEST, APART = 8, 56, 14
MOST_LINEAR = 200
"""Of more forces the scale goes up by tens."""
NUMBER = 16


@dataclass(frozen=True, slots=True, kw_only=True)
class ForceRow:
    """One line of the table beside the map."""

    points: int
    legal: int
    spending_all: int
    fieldable: int | None
    """None: not counted."""
    share: Fraction | None
    """Of the legal ones; None where there is none, or none was counted."""


def force_map(
    levels: Sequence[LevelForces],
    *,
    fieldable: Mapping[int, int] | None = None,
    marked: int | None = None,
    width: int = WIDE,
) -> Drawing | None:
    """The map of these levels, points rising, with one of them marked; None without a level.

    `fieldable` is points to legal forces that can be fielded.
    """
    if not levels:
        return None
    rows = force_rows(levels, fieldable=fieldable)
    frame = _frame(rows, width=width)
    shown = (
        *_scale(frame),
        *_steps(frame, marked=marked),
        *_points(frame, marked=marked),
        *(_strip(frame, marked=marked) if fieldable is not None else ()),
    )
    high = TOP + STEPS + AXIS + (BETWEEN + STRIP + FOOT if fieldable is not None else 0)
    return drawing(shown, size=(width, high), words=map_words(rows, marked=marked))


def force_rows(
    levels: Sequence[LevelForces], *, fieldable: Mapping[int, int] | None = None
) -> tuple[ForceRow, ...]:
    """The table beside the map."""
    rows = []
    for level in levels:
        number = None if fieldable is None else fieldable.get(level.points)
        is_shared = number is not None and level.legal > 0
        rows.append(
            ForceRow(
                points=level.points,
                legal=level.legal,
                spending_all=level.spending_all,
                fieldable=number,
                share=Fraction(number or 0, level.legal) if is_shared else None,
            )
        )
    return tuple(rows)


def map_words(rows: Sequence[ForceRow], *, marked: int | None = None) -> str:
    """What the map shows, in a sentence: its ends and the level that is marked."""
    told = [row for row in rows if row in (rows[0], rows[-1]) or row.points == marked]
    return f"Legal forces by points: {'; '.join(map(_row_words, told))}."


def _row_words(row: ForceRow) -> str:
    said = f"{number_words(row.legal)} at {several(row.points, 'point')}"
    more = [f"{number_words(row.spending_all)} of them spend all"] if row.legal else []
    if row.share is not None:
        more.append(f"{hundredths_words(row.share)} can be fielded")
    return f"{said}, {listed(more)}" if more else said


@dataclass(frozen=True, slots=True, kw_only=True)
class _Frame:
    rows: Sequence[ForceRow]
    width: int
    left: float
    pitch: float
    marks: tuple[int, ...]
    """Numbers of forces at the lines of the scale."""
    is_by_tens: bool

    def x(self, place: int) -> float:
        """The left of a level."""
        return self.left + self.pitch * place

    def y(self, number: int) -> float:
        """How far up a number of forces stands; on a scale by tens nought is a step below one."""
        return TOP + STEPS * (1 - self._height(number) / self._height(self.marks[-1]))

    def _height(self, number: int) -> float:
        if self.is_by_tens:
            return 1 + log10(number) if number else 0
        return number

    @property
    def right(self) -> float:
        """Where the last level ends."""
        return self.x(len(self.rows))

    def outline(self, tops: Sequence[float], *, floor: float) -> str:
        """The path around steps of these heights."""
        path = f"M{self.left:.1f} {floor:.1f}"
        for place, top in enumerate(tops):
            path += f"V{top:.1f}H{self.x(place + 1):.1f}"
        return f"{path}V{floor:.1f}Z"


def _frame(rows: Sequence[ForceRow], *, width: int) -> _Frame:
    greatest = max(row.legal for row in rows)
    is_by_tens = greatest > MOST_LINEAR
    if is_by_tens:
        powers = len(str(greatest - 1))
        step = round_step(powers, most=6)
        marks = (0, *(10**power for power in range(0, powers + step, step)))
    else:
        marks = ticks(0, max(greatest, 1), most=5)
    texts = [text_of(mark(each)) for each in marks]
    left = max(map(width_of, ("none", *texts))) + 8
    pitch = min((width - left - RIGHT) / len(rows), BROADEST)
    return _Frame(
        rows=rows, width=width, left=left, pitch=pitch, marks=marks, is_by_tens=is_by_tens
    )


def _scale(frame: _Frame) -> Iterator[Element]:
    yield element("text", text="legal forces", x=0, y=14, class_="soft")
    for each in frame.marks:
        y = frame.y(each)
        yield element(
            "path",
            d=f"M{frame.left:.1f} {y:.1f}H{frame.right:.1f}",
            stroke="var(--hair)" if each else "var(--ink)",
            stroke_width=1.2,
        )
        if each or y - frame.y(frame.marks[1]) > SIZE:
            yield placed(mark(each), x=frame.left - 6, y=y + 5, class_="soft")


def _steps(frame: _Frame, *, marked: int | None) -> Iterator[Element]:
    """The steps, with numbers at as many as have room; that of the marked one always."""
    tops = [frame.y(row.legal) for row in frame.rows]
    yield element(
        "path",
        d=frame.outline(tops, floor=TOP + STEPS),
        fill="var(--tint)",
        stroke="var(--ink)",
        stroke_width=2,
    )
    taken: list[tuple[float, float]] = []
    places = range(len(frame.rows))
    for place in sorted(places, key=lambda each: (frame.rows[each].points != marked, -each)):
        row = frame.rows[place]
        told = number(row.legal)
        wide = width_of(text_of(told))
        end = max(frame.x(place + 1) - 4, frame.left + wide)
        begins = end - wide
        if all(end + APART < left or right + APART < begins for left, right in taken):
            taken.append((begins, end))
            class_ = "pen b halo" if row.points == marked else "halo"
            yield placed(told, x=end, y=tops[place] - 6, class_=class_)
    if marked is not None:
        yield from _mark(frame, tops=tops, marked=marked)


def _mark(frame: _Frame, *, tops: Sequence[float], marked: int) -> Iterator[Element]:
    """The violet top of the step that is marked."""
    for place, row in enumerate(frame.rows):
        if row.points == marked:
            yield element(
                "path",
                d=f"M{frame.x(place):.1f} {tops[place]:.1f}H{frame.x(place + 1):.1f}",
                stroke="var(--pencil)",
                stroke_width=5,
            )


def _points(frame: _Frame, *, marked: int | None) -> Iterator[Element]:
    """Points under the steps: the marked ones, and as many round ones as have room."""
    points = [row.points for row in frame.rows]
    room = max(width_of(f"{each}", size=NUMBER) for each in points) + 6
    for place in with_room(points, first=marked, room=room, pitch=frame.pitch):
        each = points[place]
        half = width_of(f"{each}", size=NUMBER) / 2
        yield element(
            "text",
            text=f"{each}",
            x=min(frame.x(place) + frame.pitch / 2, frame.width - half),
            y=TOP + STEPS + 20,
            text_anchor="middle",
            font_size=NUMBER,
            class_="pen b" if each == marked else None,
        )
    y = TOP + STEPS + 40
    yield element("text", text="points left", x=frame.left, y=y, class_="soft")


def _strip(frame: _Frame, *, marked: int | None) -> Iterator[Element]:
    """The share of each level that can be fielded, from nought to all."""
    top = TOP + STEPS + AXIS + BETWEEN
    floor = top + STRIP
    name = f"fielded-{frame.width}"
    tops = [floor - STRIP * float(row.share or 0) for row in frame.rows]
    yield _hatching(name)
    yield element(
        "rect",
        x=frame.left,
        y=top,
        width=frame.right - frame.left,
        height=STRIP,
        fill="none",
        stroke="var(--rule)",
        stroke_width=1.2,
    )
    yield element(
        "path",
        d=frame.outline(tops, floor=floor),
        fill=f"url(#{name})",
        stroke="var(--ink)",
        stroke_width=1.6,
    )
    yield from _shares(frame, y=top - 6, marked=marked)
    for text, y in (("all", top + 10), ("none", floor + 2)):
        yield element("text", text=text, x=frame.left - 6, y=y, text_anchor="end", class_="soft")
    said = "of 100 legal forces so many can be fielded"
    yield element("text", text=said, x=0, y=floor + 22, class_="soft")


def _hatching(name: str) -> Element:
    rule = element("path", d="M0 0V5", stroke="var(--ink)", stroke_width=1.6)
    made = element("pattern", rule, id=name, width=5, height=5, patternUnits="userSpaceOnUse")
    made.set("patternTransform", "rotate(45)")
    return element("defs", made)


def _shares(frame: _Frame, *, y: float, marked: int | None) -> Iterator[Element]:
    """How many of a hundred, over the levels: of all where there is room, else of the marked."""
    has_room = frame.pitch >= width_of("<100")
    for place, row in enumerate(frame.rows):
        if row.share is not None and (has_room or row.points == marked):
            said = hundredths_words(row.share).removesuffix(" in 100")
            text = said.replace("less than 1", "<1").replace("more than 99", ">99")
            half = width_of(text) / 2
            x = min(max(frame.x(place) + frame.pitch / 2, half), frame.width - half)
            yield element(
                "text",
                text=text,
                x=x,
                y=y,
                text_anchor="middle",
                class_="pen b" if row.points == marked else None,
            )
