"""A week of a club: rows of kinds and boxes, columns of days with their hours, games as bars.

Where something is short its bars are hatched and rimmed in red, with the number over them. A day on
which nothing is played is a narrow column. On a phone each day that is booked has its own drawing.
"""

import datetime
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from paradestate.core.club.booking import HOUR, Hours, clock, full_hours
from paradestate.core.club.week import Week, WeekRow
from paradestate.core.promise import WEEKDAYS, weekday_words
from paradestate.core.sentence.club_week import day_sentences
from paradestate.core.sentence.wording import capital
from paradestate.core.span import MONTH_NAMES
from paradestate.sheet.club_bar import NOTE, Lanes, bar_of
from paradestate.sheet.lettering import SIZE, fitted, width_of, wrapped
from paradestate.sheet.svg import Drawing, Element, drawing, element

WIDE, PAPER, PHONE = 1184, 720, 358
LABEL = 158
"""Breadth of what stands before the days."""
EMPTY = 46
"""Breadth of a day on which nothing is played."""
BAR, LANE = 26, 32
"""Heights of a bar, and of a bar with its room."""
HEAD, ROOM, NAME = 52, 8, 24
"""Heights of the days with their hours, of the room at a line, and of a name over its bars."""
EDGE = 26
"""Before the first hour of a day and behind its last one, so that both can be written."""
STEPS = (1, 2, 3, 4, 6, 12)
"""Hours between two that are written."""
SHORT_NAME = 3
"""Letters of a day's name where there is little room."""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Column:
    """One day."""

    on: datetime.date
    left: float
    width: float
    first: int
    """The full hours that are drawn, in minutes, as `last`."""
    last: int
    is_booked: bool

    @property
    def right(self) -> float:
        return self.left + self.width

    def x(self, minutes: int) -> float:
        """Where a time stands."""
        inner = self.width - 2 * EDGE
        return self.left + EDGE + inner * (minutes - self.first) / (self.last - self.first)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Row:
    row: WeekRow
    columns: tuple[tuple[_Column, Lanes], ...]
    label: tuple[str, ...]
    is_label_over: bool

    @property
    def notes(self) -> int:
        return max((lanes.of_notes for _, lanes in self.columns), default=0)

    @property
    def height(self) -> float:
        bars = max((lanes.of_bars for _, lanes in self.columns), default=0)
        drawn = self.notes * NOTE + bars * LANE + 2 * ROOM
        over = NAME if self.is_label_over else 0
        beside = 0 if self.is_label_over else len(self.label) * (SIZE + 4) + 2 * ROOM
        return max(over + drawn, beside)


def club_week(week: Week, *, width: int = WIDE) -> Drawing | None:
    """The whole week for a desk or for paper; None where nothing is booked."""
    if not week.bookings:
        return None
    columns = tuple(_columns(week, width=width))
    rows = tuple(_row(row, columns, is_label_over=False) for row in week.rows)
    return _drawn(rows, columns, width=width, words=week_words(week))


def club_days(week: Week) -> tuple[Drawing, ...]:
    """Each booked day for a phone, with the names of rows over their bars."""
    return tuple(_day(week, day) for day in week.booked)


def _day(week: Week, day: datetime.date) -> Drawing:
    column = _column(week, day, left=0, width=PHONE)
    own = (row.on(day) for row in week.rows)
    rows = tuple(_row(row, (column,), is_label_over=True) for row in own if row.uses)
    return _drawn(rows, (column,), width=PHONE, words=_day_words(week, day))


def week_words(week: Week) -> str:
    """What the drawing shows, in sentences."""
    return " ".join(_day_words(week, day) for day in week.booked)


def _day_words(week: Week, day: datetime.date) -> str:
    return f"{weekday_words(day)}: {' '.join(day_sentences(week, day))}"


def _columns(week: Week, *, width: int) -> Iterator[_Column]:
    booked = frozenset(week.booked)
    free = width - LABEL - EMPTY * (len(week.days) - len(booked))
    left = float(LABEL)
    for day in week.days:
        wide = free / len(booked) if day in booked else EMPTY
        yield _column(week, day, left=left, width=wide)
        left += wide


def _column(week: Week, day: datetime.date, *, left: float, width: float) -> _Column:
    """A day with the full hours around all that is played on it."""
    games = week.games(day)
    first, last = full_hours(each.hours for each in games)
    return _Column(
        on=day,
        left=left,
        width=width,
        first=first,
        last=last,
        is_booked=bool(games),
    )


def _row(row: WeekRow, columns: Sequence[_Column], *, is_label_over: bool) -> _Row:
    sound = sorted({each.sound for each in row.spells})
    beside = "box, lent whole" if row.is_box else f"{_span(sound)} sound"
    name = capital(row.name)
    label: tuple[str, ...]
    if is_label_over:
        label = (fitted(name, room=PHONE - width_of(beside) - 24), beside)
    else:
        label = (*wrapped(name, room=LABEL - 12, most=2), beside)
    own = ((each, row.on(each.on)) for each in columns if each.is_booked)
    return _Row(
        row=row,
        columns=tuple((each, _lanes(day, each)) for each, day in own if day.uses),
        label=label,
        is_label_over=is_label_over,
    )


def _span(numbers: Sequence[int]) -> str:
    return f"{numbers[0]}" if len(numbers) == 1 else f"{numbers[0]} to {numbers[-1]}"


def _lanes(day: WeekRow, column: _Column) -> Lanes:
    room = (column.left + ROOM / 2, column.right - ROOM / 2)
    lanes = Lanes()
    for use in day.uses:
        text = use.game if use.number is None else f"{use.game} {use.number}"
        lanes = lanes.with_bar(bar_of(text, span=_span_of(use.hours, column), room=room))
    return lanes.with_told(day.spells, x=column.x, room=room)


def _span_of(hours: Hours, column: _Column) -> tuple[float, float]:
    return column.x(hours.start), column.x(hours.end)


def _drawn(
    rows: Sequence[_Row], columns: Sequence[_Column], *, width: float, words: str
) -> Drawing:
    tops = [float(HEAD)]
    for row in rows:
        tops.append(tops[-1] + row.height)
    shown = [
        *_grid(columns, tops=tops, width=width),
        *(piece for each in columns for piece in _head(each)),
        *(piece for row, top in zip(rows, tops, strict=False) for piece in _of_row(row, top=top)),
    ]
    return drawing(shown, size=(width, tops[-1] + 2), words=words)


def _grid(columns: Sequence[_Column], *, tops: Sequence[float], width: float) -> Iterator[Element]:
    """Lines between days and between rows, and fine ones at the hours."""
    foot = tops[-1]
    for column in columns:
        for at in _written(column):
            x = column.x(at)
            yield element("path", d=f"M{x:.2f} {HEAD}V{foot:.2f}", stroke="var(--hair)")
        if column.left:
            yield element(
                "path", d=f"M{column.left:.2f} 0V{foot:.2f}", stroke="var(--rule)", stroke_width=1
            )
    for place, top in enumerate(tops):
        yield element(
            "path",
            d=f"M0 {top:.2f}H{width}",
            stroke="var(--rule)" if place else "var(--ink)",
            stroke_width=1 if place else 1.5,
        )


def _written(column: _Column) -> range:
    """The hours that are written under a day, in minutes."""
    if not column.is_booked:
        return range(0)
    hour = (column.width - 2 * EDGE) * HOUR / (column.last - column.first)
    step = next((each for each in STEPS if each * hour >= width_of("00:00") + 10), STEPS[-1])
    return range(column.first, column.last + 1, step * HOUR)


def _head(column: _Column) -> Iterator[Element]:
    weekday, month = WEEKDAYS[column.on.weekday()], MONTH_NAMES[column.on.month - 1]
    short = weekday[:SHORT_NAME]
    if not column.is_booked:
        middle = column.left + column.width / 2
        for text, y in ((short, 16), (f"{column.on.day}", 34)):
            yield element("text", text=text, x=middle, y=y, text_anchor="middle", class_="soft")
        return
    room = column.width - ROOM
    long, brief = f"{weekday} {column.on.day} {month}", f"{short} {column.on.day}"
    name = long if width_of(long, size=15) <= room else fitted(brief, room=room)
    yield element("text", text=name, x=column.left + ROOM / 2, y=17, font_size=15, class_="b")
    for at in _written(column):
        x = column.x(at)
        yield element("text", text=clock(at), x=x, y=42, text_anchor="middle", class_="soft")


def _of_row(row: _Row, *, top: float) -> Iterator[Element]:
    yield from _label(row, top=top)
    first = top + ROOM + (NAME if row.is_label_over else 0)
    for column, lanes in row.columns:
        floor = first + row.notes * NOTE
        for bar, lane in lanes.bars:
            yield from bar.drawn(top=floor + lane * LANE, height=BAR)
        yield from _lacks(row.row.on(column.on), lanes, column=column, floor=floor)
        for bar, lane in lanes.bars:
            yield bar.words(top=floor + lane * LANE, height=BAR)
        for note, lane in lanes.notes:
            yield note.drawn(top=first + (row.notes - 1 - lane) * NOTE)


def _label(row: _Row, *, top: float) -> Iterator[Element]:
    if row.is_label_over:
        name, beside = row.label
        y = top + ROOM + 14
        yield element("text", text=name, x=0, y=y, class_="b")
        yield element("text", text=beside, x=PHONE, y=y, text_anchor="end", class_="soft")
        return
    for place, text in enumerate(row.label):
        is_last = place == len(row.label) - 1
        y = top + ROOM + SIZE + place * (SIZE + 4)
        yield element("text", text=text, x=0, y=y, class_="soft" if is_last else "b")


def _lacks(day: WeekRow, lanes: Lanes, *, column: _Column, floor: float) -> Iterator[Element]:
    """What of each bar lies in hours in which its kind is short."""
    short = [each for each in day.spells if each.short]
    for use, (_, lane) in zip(day.uses, lanes.bars, strict=True):
        for spell in short:
            if use.hours.overlaps(spell.hours):
                left, right = _span_of(spell.hours, column)
                yield element(
                    "rect",
                    x=left,
                    y=floor + lane * LANE,
                    width=right - left,
                    height=BAR,
                    fill="url(#tx-lack)",
                    stroke="var(--red)",
                    stroke_width=2.4,
                )
