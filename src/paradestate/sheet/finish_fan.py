"""The fan of finish dates: work done so far as a line, then how much more, and how surely.

Days go to the right and hours up. The line on is what half of all courses reach, the ruled band
lies between four in five and one in five, the outline between nineteen and one in twenty.
Milestones are levels that the fan climbs to, game nights are flags on the base line.
"""

import datetime
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from paradestate.core.bench import USUAL_STAGES
from paradestate.core.sentence.wording import capital, day_words, hours_words, several
from paradestate.core.span import MONTH_NAMES
from paradestate.core.work.forecast_value import FOUR_IN_FIVE, HALF, NINETEEN_IN_TWENTY, FanWeek
from paradestate.core.work.habit import DAYS, later
from paradestate.sheet.axis import ticks
from paradestate.sheet.lettering import fitted
from paradestate.sheet.svg import Drawing, Element, drawing, element
from paradestate.sheet.texture import texture_of

WIDE, PHONE = 560, 358
HIGH = 360
TOP, BOTTOM, LEFT, RIGHT = 30, 44, 50, 14
LINE = 19
SHORT_NAME = 3
NAME_ROOM = 42
MOST_PAST = 182
"""Days of the past that are shown; work before them is where the line begins."""
MOST_NIGHTS = 24
MINUTES_OF_AN_HOUR = 60
RULED = texture_of(USUAL_STAGES[1], stages=USUAL_STAGES).fill
"""The rules of the page's second texture."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Level:
    """A milestone, by the minutes of work from now until it is reached."""

    name: str
    minutes: Fraction


@dataclass(frozen=True, slots=True, kw_only=True)
class Course:
    """What the fan shows."""

    done: Mapping[datetime.date, int]
    """Day to minutes of work that were logged."""
    begins: datetime.date
    """First of the days to come."""
    fan: Sequence[FanWeek]
    levels: Sequence[Level]
    nights: Sequence[datetime.date]


class _Frame:
    """Where days and minutes stand."""

    def __init__(self, course: Course, *, width: int) -> None:
        self.width = width
        past = [day for day in course.done if (course.begins - day).days <= MOST_PAST]
        self.first = min([*past, course.begins])
        self.last = later(course.begins, DAYS * max(1, course.fan[-1].week))
        self.before = sum(course.done.values())
        """Minutes done in all."""
        top = self.before + max([level.minutes for level in course.levels], default=Fraction(0))
        whole = -(-int(top) // MINUTES_OF_AN_HOUR) + 1
        self.up = ticks(0, whole, most=5)

    def x(self, day: datetime.date) -> float:
        """Where a day stands."""
        share = (day - self.first).days / max(1, (self.last - self.first).days)
        return LEFT + (self.width - LEFT - RIGHT) * share

    def y(self, minutes: Fraction | int) -> float:
        """Where so many minutes stand."""
        share = float(minutes) / (self.up[-1] * MINUTES_OF_AN_HOUR)
        return HIGH - BOTTOM - (HIGH - TOP - BOTTOM) * share

    @property
    def floor(self) -> int:
        """The base line."""
        return HIGH - BOTTOM


def finish_fan(course: Course, *, width: int = WIDE) -> Drawing | None:
    """The fan; None where nothing is left to do. The page has the textures of usual stages."""
    if not course.fan:
        return None
    frame = _Frame(course, width=width)
    shown = (
        *_axes(frame),
        *_nights(frame, course.nights),
        *_bands(frame, course),
        *_done(frame, course),
        *_levels(frame, course.levels),
    )
    return drawing(shown, size=(width, HIGH), words=fan_words(course))


def fan_words(course: Course) -> str:
    """What the fan shows, in a sentence."""
    done = hours_words(Fraction(sum(course.done.values())))
    last = course.fan[-1]
    reached = "; ".join(
        f"{level.name} at {hours_words(level.minutes)} from now" for level in course.levels
    )
    return (
        f"{done} of work logged, and how much more will be done in "
        f"{several(max(1, last.week), 'week')} from {day_words(course.begins)}: {reached}."
    )


def _axes(frame: _Frame) -> Iterator[Element]:
    for tick in frame.up:
        y = frame.y(tick * MINUTES_OF_AN_HOUR)
        stroke = "var(--hair)" if tick else "var(--ink)"
        path = f"M{LEFT} {y:.2f}H{frame.width - RIGHT}"
        yield element("path", d=path, stroke=stroke, stroke_width=1.2)
        text = f"{tick} h"
        yield element("text", text=text, x=LEFT - 8, y=y + 5, text_anchor="end", class_="soft")
    free = 0.0
    for day in _firsts(frame.first, frame.last):
        x = frame.x(day)
        if x < free or x + NAME_ROOM > frame.width:
            continue
        free = x + NAME_ROOM
        yield element("path", d=f"M{x:.2f} {frame.floor}v6", stroke="var(--ink)", stroke_width=1.2)
        name = MONTH_NAMES[day.month - 1][:SHORT_NAME]
        text = f"{day.year}" if day.month == 1 else name
        yield element("text", text=text, x=x + 2, y=frame.floor + 24, class_="soft")


def _firsts(first: datetime.date, last: datetime.date) -> Iterator[datetime.date]:
    """The first days of the months between two days, the first of them by itself where none is."""
    months = range(first.year * 12 + first.month, last.year * 12 + last.month)
    found = [datetime.date(month // 12, month % 12 + 1, 1) for month in months]
    yield from found or [first]


def _nights(frame: _Frame, nights: Iterable[datetime.date]) -> Iterator[Element]:
    """A dashed line and a flag on the base line for each game night."""
    within = [night for night in nights if frame.first <= night <= frame.last]
    for night in within[:MOST_NIGHTS]:
        x = frame.x(night)
        path = f"M{x:.2f} {TOP}V{frame.floor}"
        yield element(
            "path", d=path, stroke="var(--rule)", stroke_width=1.2, stroke_dasharray="2 4"
        )
        flag = f"M{x:.2f} {frame.floor}v-13h9l-3 4l3 4h-9"
        yield element("path", d=flag, fill="var(--ink)", stroke="var(--ink)", stroke_width=1.2)


def _bands(frame: _Frame, course: Course) -> Iterator[Element]:
    wide = (NINETEEN_IN_TWENTY, 1 - NINETEEN_IN_TWENTY)
    yield _band(frame, course, between=wide, fill="none", stroke="var(--soft)")
    likely = (FOUR_IN_FIVE, 1 - FOUR_IN_FIVE)
    yield _band(frame, course, between=likely, fill=RULED, stroke="var(--ink)")
    path = "M" + "L".join(_points(frame, course, chance=HALF))
    yield element("path", d=path, fill="none", stroke="var(--ink)", stroke_width=3)


def _band(
    frame: _Frame,
    course: Course,
    *,
    between: tuple[Fraction, Fraction],
    fill: str,
    stroke: str,
) -> Element:
    least, most = (_points(frame, course, chance=chance) for chance in between)
    path = f"M{'L'.join([*least, *reversed(most)])}Z"
    return element("path", d=path, fill=fill, stroke=stroke, stroke_width=1.2)


def _points(frame: _Frame, course: Course, *, chance: Fraction) -> Sequence[str]:
    return [
        f"{frame.x(later(course.begins, DAYS * week.week)):.2f} "
        f"{frame.y(frame.before + week.at_least[chance]):.2f}"
        for week in course.fan
    ]


def _done(frame: _Frame, course: Course) -> Iterator[Element]:
    """The work logged, day by day, and a dot for now."""
    shown = sorted(day for day in course.done if day >= frame.first)
    total = frame.before - sum(course.done[day] for day in shown)
    path = f"M{frame.x(frame.first):.2f} {frame.y(total):.2f}"
    for day in shown:
        path += f"H{frame.x(day):.2f}"
        total += course.done[day]
        path += f"V{frame.y(total):.2f}"
    x, y = frame.x(course.begins), frame.y(frame.before)
    path += f"H{x:.2f}"
    yield element("path", d=path, fill="none", stroke="var(--pencil)", stroke_width=3)
    yield element("circle", cx=x, cy=y, r=5, fill="var(--pencil)")


def _levels(frame: _Frame, levels: Sequence[Level]) -> Iterator[Element]:
    """A heavy line for each milestone, named where names don't run into each other."""
    taken = float(HIGH)
    for level in sorted(levels, key=lambda each: each.minutes):
        y = frame.y(frame.before + level.minutes)
        path = f"M{LEFT} {y:.2f}H{frame.width - RIGHT}"
        yield element("path", d=path, stroke="var(--ink)", stroke_width=3)
        if taken - y >= LINE:
            taken = y
            name = f"{capital(level.name)}, {hours_words(level.minutes)} from now"
            text = fitted(name, room=frame.width - LEFT - RIGHT)
            yield element("text", text=text, x=LEFT + 4, y=y - 7, class_="b halo")


def fan_key() -> tuple[tuple[Drawing, str], ...]:
    """What the lines and bands mean, with what each is called."""
    marks = (
        (element("path", d="M1 9H33", stroke="var(--pencil)", stroke_width=3), "logged"),
        (element("path", d="M1 9H33", stroke="var(--ink)", stroke_width=3), "half chance"),
        (_box(RULED), "from one in five down to four in five"),
        (_box("none"), "from one in twenty down to nineteen in twenty"),
        (_flag(), "game night"),
    )
    return tuple(
        (drawing([mark], size=(34, 18), words=words, class_="key-box"), words)
        for mark, words in marks
    )


def _box(fill: str) -> Element:
    return element(
        "rect", x=1, y=1, width=32, height=16, fill=fill, stroke="var(--ink)", stroke_width=1.2
    )


def _flag() -> Element:
    path = "M14 17v-13h9l-3 4l3 4h-9"
    return element("path", d=path, fill="var(--ink)", stroke="var(--ink)", stroke_width=1.2)
