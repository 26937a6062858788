"""Where legal forces by points stand in a drawing: steps over an axis, and strips of shares below.

Where there are many forces every line up is ten times as many, or more; a share has a strip of its
own, for on such a scale a half would look like nearly all.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import log10

from paradestate.core.sentence.chance import hundredths_words
from paradestate.sheet.axis import round_step, ticks, with_room
from paradestate.sheet.lettering import SIZE, width_of
from paradestate.sheet.long_number import mark, placed, text_of
from paradestate.sheet.long_number import number as written
from paradestate.sheet.svg import Element, element

WIDE, PHONE = 720, 320
TOP, STEPS, AXIS, STRIP, FOOT = 36, 190, 50, 44, 30
"""Heights: over the steps, of them, of the axis under them, of a strip and of its caption."""
BETWEEN = 26
"""Over a strip, for its numbers."""
RIGHT, BROADEST, APART = 8, 56, 14
MOST_LINEAR = 200
"""Of more forces the scale goes up by tens."""
NUMBER = 16


@dataclass(frozen=True, slots=True, kw_only=True)
class ForceFrame:
    """The levels of points from left to right, and numbers of forces upwards."""

    points: Sequence[int]
    """Of each level, rising."""
    width: int
    left: float
    pitch: float
    marks: tuple[int, ...]
    """Numbers of forces at the lines of the scale."""
    is_by_tens: bool

    def mark(self, number: int) -> Element:
        """A number at a line of the scale."""
        return mark(number) if self.is_by_tens else written(number)

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
        return self.x(len(self.points))

    def outline(self, tops: Sequence[float], *, floor: float) -> str:
        """The path around steps of these heights."""
        return f"M{self.left:.1f} {floor:.1f}{self._along(tops)}V{floor:.1f}Z"

    def steps(self, tops: Sequence[float]) -> str:
        """The path along the tops of steps of these heights, open at both ends."""
        return f"M{self.left:.1f} {tops[0]:.1f}{self._along(tops)}"

    def _along(self, tops: Sequence[float]) -> str:
        return "".join(f"V{top:.1f}H{self.x(place + 1):.1f}" for place, top in enumerate(tops))


def force_frame(
    points: Sequence[int], *, greatest: int, width: int, most_linear: int = MOST_LINEAR
) -> ForceFrame:
    """The frame for these levels, of which the highest has so many forces.

    Where it has more than `most_linear` the scale goes up by tens.
    """
    is_by_tens = greatest > most_linear
    if is_by_tens:
        powers = len(str(greatest - 1))
        step = round_step(powers, most=6)
        marks = (0, *(10**power for power in range(0, powers + step, step)))
    else:
        marks = ticks(0, max(greatest, 1), most=5)
    texts = [text_of(mark(each) if is_by_tens else written(each)) for each in marks]
    left = max(map(width_of, ("none", *texts))) + 8
    pitch = min((width - left - RIGHT) / len(points), BROADEST)
    return ForceFrame(
        points=points, width=width, left=left, pitch=pitch, marks=marks, is_by_tens=is_by_tens
    )


def scale(frame: ForceFrame) -> Iterator[Element]:
    """Lines across with their numbers of forces."""
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
            yield placed(frame.mark(each), x=frame.left - 6, y=y + 5, class_="soft")


def numbers(
    frame: ForceFrame, *, told: Sequence[int], tops: Sequence[float], marked: int | None
) -> Iterator[Element]:
    """How many forces each level has, at as many as have room; that of the marked one always."""
    taken: list[tuple[float, float]] = []
    places = range(len(frame.points))
    for place in sorted(places, key=lambda each: (frame.points[each] != marked, -each)):
        text = written(told[place])
        wide = width_of(text_of(text))
        end = max(frame.x(place + 1) - 4, frame.left + wide)
        begins = end - wide
        if all(end + APART < left or right + APART < begins for left, right in taken):
            taken.append((begins, end))
            class_ = "pen b halo" if frame.points[place] == marked else "halo"
            yield placed(text, x=end, y=tops[place] - 6, class_=class_)


def points_axis(frame: ForceFrame, *, marked: int | None) -> Iterator[Element]:
    """Points under the steps: the marked ones, and as many round ones as have room."""
    points = frame.points
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


@dataclass(frozen=True, slots=True, kw_only=True)
class Strip:
    """A strip of shares under the axis, from nought to all."""

    shares: Sequence[Fraction | None]
    """Of each level; None: there is none."""
    caption: str
    top: float

    @property
    def floor(self) -> float:
        """Where the shares stand."""
        return self.top + STRIP


STRIP_HEIGHT = BETWEEN + STRIP + FOOT
"""Of a strip with its numbers and its caption."""


def drawn_strip(
    frame: ForceFrame, strip: Strip, *, pattern: Element, marked: int | None
) -> Iterator[Element]:
    """The strip with how many of a hundred over each level; what is above all of them is cut."""
    top, floor = strip.top, strip.floor
    tops = [floor - STRIP * min(1.0, float(share or 0)) for share in strip.shares]
    yield element("defs", pattern)
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
        fill=f"url(#{pattern.get('id')})",
        stroke="var(--ink)",
        stroke_width=1.6,
    )
    yield from _shares(frame, strip, marked=marked)
    for text, y in (("all", top + 10), ("none", floor + 2)):
        yield element("text", text=text, x=frame.left - 6, y=y, text_anchor="end", class_="soft")
    yield element("text", text=strip.caption, x=0, y=floor + 22, class_="soft")


def hatching(name: str, *, ink: str = "var(--ink)") -> Element:
    """Rules aslant."""
    rule = element("path", d="M0 0V5", stroke=ink, stroke_width=1.6)
    made = element("pattern", rule, id=name, width=5, height=5, patternUnits="userSpaceOnUse")
    made.set("patternTransform", "rotate(45)")
    return made


def dotting(name: str, *, ink: str = "var(--ink)") -> Element:
    """Dots."""
    dot = element("circle", cx=2.5, cy=2.5, r=1.1, fill=ink)
    return element("pattern", dot, id=name, width=5, height=5, patternUnits="userSpaceOnUse")


def _shares(frame: ForceFrame, strip: Strip, *, marked: int | None) -> Iterator[Element]:
    """How many of a hundred, over the levels: of all where there is room, else of the marked."""
    has_room = frame.pitch >= width_of("<100")
    for place, (points, share) in enumerate(zip(frame.points, strip.shares, strict=True)):
        if share is not None and (has_room or points == marked):
            said = hundredths_words(share).removesuffix(" in 100")
            text = said.replace("less than 1", "<1").replace("more than 99", ">99")
            half = width_of(text) / 2
            x = min(max(frame.x(place) + frame.pitch / 2, half), frame.width - half)
            yield element(
                "text",
                text=text,
                x=x,
                y=strip.top - 6,
                text_anchor="middle",
                class_="pen b" if points == marked else None,
            )
