"""A day of one kind: what all games have booked, hour by hour, against the line of what is sound.

Games stand on each other as high as they need figures. What lies over the line is dashed where
another kind stands in, and hatched in red where it is short.
"""

import datetime
from collections.abc import Iterator
from dataclasses import dataclass, replace

from paradestate.core.club.booking import clock
from paradestate.core.club.week import KindSpell, Use, WeekRow
from paradestate.core.promise import weekday_words
from paradestate.core.sentence.club_week import kind_words
from paradestate.core.sentence.wording import capital
from paradestate.sheet.club_bar import NOTE, Lanes
from paradestate.sheet.lettering import SIZE, fitted, width_of
from paradestate.sheet.svg import Drawing, Element, drawing, element

WIDTH = 358
HIGH, MOST_UNIT = 168, 16
"""Of the greatest sum, and of one figure at the most."""
LEFT, RIGHT = 26, 82
"""Before the first hour, and room for words at the line of what is sound."""
TOP, FOOT = 8, 30
LETTERS = 18
"""Height that words need."""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Frame:
    first: int
    last: int
    unit: float
    """Height of a figure."""
    top: float
    most: int
    """Figures that have room."""

    @property
    def floor(self) -> float:
        return self.top + self.unit * self.most

    def x(self, minutes: int) -> float:
        return LEFT + (WIDTH - LEFT - RIGHT) * (minutes - self.first) / (self.last - self.first)

    def y(self, number: int) -> float:
        return self.floor - self.unit * number


def booked_hours(row: WeekRow, day: datetime.date) -> Drawing:
    """The sums of a kind on a day on which some of it is booked."""
    own = row.on(day)
    most = max(1, *(max(each.booked, each.to_give_out) for each in own.spells))
    frame = _Frame(
        first=min(each.hours.start for each in own.spells),
        last=max(each.hours.end for each in own.spells),
        unit=min(MOST_UNIT, HIGH / most),
        top=TOP,
        most=most,
    )
    lanes = Lanes().with_told(own.spells, x=frame.x, room=(0, WIDTH))
    frame = replace(frame, top=TOP + lanes.of_notes * NOTE)
    blocks = _blocks(own)
    shown = [
        *(_drawn(each, frame) for each in blocks),
        *(piece for each in own.spells for piece in _over(each, frame=frame)),
        *_line(own, frame),
        *(piece for each in blocks for piece in _name(each, own, frame=frame)),
        *(each.drawn(top=(lanes.of_notes - 1 - lane) * NOTE) for each, lane in lanes.notes),
        *_hours(own, frame),
    ]
    return drawing(shown, size=(WIDTH, frame.floor + FOOT), words=hours_words(own, day))


def hours_words(row: WeekRow, day: datetime.date) -> str:
    """What it shows, in sentences."""
    said = " ".join(f"{capital(kind_words(row.name, each))}." for each in row.on(day).spells)
    return f"{weekday_words(day)}: {said}"


@dataclass(frozen=True, slots=True, kw_only=True)
class _Block:
    """A game for as long as it stands on the same others."""

    use: Use
    below: int
    start: int
    end: int

    @property
    def number(self) -> int:
        return self.use.number or 0


def _blocks(row: WeekRow) -> tuple[_Block, ...]:
    """Games on each other in every spell, the first one lowest; what stays in its place is one."""
    made: list[_Block] = []
    for spell in row.spells:
        below = 0
        for use in row.in_hours(spell.hours):
            block = _Block(use=use, below=below, start=spell.hours.start, end=spell.hours.end)
            before = next((each for each in made if _goes_on(each, block)), None)
            if before is not None:
                made.remove(before)
                block = replace(block, start=before.start)
            made.append(block)
            below += block.number
    return tuple(made)


def _goes_on(before: _Block, block: _Block) -> bool:
    is_there = (before.use, before.below) == (block.use, block.below)
    return is_there and before.end == block.start


def _drawn(block: _Block, frame: _Frame) -> Element:
    return element(
        "rect",
        x=frame.x(block.start),
        y=frame.y(block.below + block.number),
        width=frame.x(block.end) - frame.x(block.start),
        height=frame.unit * block.number,
        fill="var(--sheet)",
        stroke="var(--ink)",
        stroke_width=1.5,
    )


def _name(block: _Block, row: WeekRow, *, frame: _Frame) -> Iterator[Element]:
    """The game in its block, clear of the lines of what is sound; none where it has no room."""
    left, high = frame.x(block.start), frame.unit * block.number
    text = fitted(f"{block.use.game} {block.number}", room=frame.x(block.end) - left - 12)
    if high < LETTERS or len(text) <= 1:
        return
    middle, foot = frame.y(block.below) - high / 2, frame.y(block.below)
    lines = [frame.y(each.to_give_out) for each in row.spells]
    places = (middle, foot - LETTERS * 0.6, foot - high + LETTERS * 0.6)
    clear = (at for at in places if all(abs(at - line) > LETTERS * 0.6 for line in lines))
    y = next(clear, middle) + SIZE * 0.36
    yield element("text", text=text, x=left + 6, y=y, class_="halo")


def _over(spell: KindSpell, *, frame: _Frame) -> Iterator[Element]:
    """What of the sum lies over the line: stand-ins first, and what is short over them."""
    left, right = frame.x(spell.hours.start), frame.x(spell.hours.end)
    number = sum(each.number for each in spell.stand_ins)
    for top, many, fill, stroke, dash in (
        (spell.booked - spell.short, number, "none", "var(--ink)", "3 2.6"),
        (spell.booked, spell.short, "url(#tx-lack)", "var(--red)", None),
    ):
        if many:
            yield element(
                "rect",
                x=left,
                y=frame.y(top),
                width=right - left,
                height=frame.unit * many,
                fill=fill,
                stroke=stroke,
                stroke_width=2.4,
                stroke_dasharray=dash,
            )


def _line(row: WeekRow, frame: _Frame) -> Iterator[Element]:
    """What can be given out, as a heavy line that steps where a box comes or goes."""
    path = ""
    for spell in row.spells:
        y = frame.y(spell.to_give_out)
        start = f"M{frame.x(spell.hours.start) - 8:.2f} {y:.2f}" if not path else f"V{y:.2f}"
        path += f"{start}H{frame.x(spell.hours.end):.2f}"
    yield element("path", d=f"{path}h8", fill="none", stroke="var(--ink)", stroke_width=4)
    last = row.spells[-1]
    y = frame.y(last.to_give_out) + SIZE * 0.36
    text = f"{last.to_give_out} to give" if last.kept else f"{last.sound} sound"
    yield element("text", text=text, x=WIDTH, y=y, text_anchor="end", class_="b halo")


def _hours(row: WeekRow, frame: _Frame) -> Iterator[Element]:
    """The ground line, and the times at which a game begins or ends, as far as they have room."""
    yield element(
        "path",
        d=f"M{frame.x(frame.first):.2f} {frame.floor:.2f}H{frame.x(frame.last):.2f}",
        stroke="var(--ink)",
        stroke_width=1.5,
    )
    free = 0.0
    for at in sorted({at for each in row.spells for at in (each.hours.start, each.hours.end)}):
        half = width_of("00:00") / 2
        if frame.x(at) - half >= free:
            yield element(
                "text",
                text=clock(at),
                x=frame.x(at),
                y=frame.floor + 20,
                text_anchor="middle",
                class_="soft",
            )
            free = frame.x(at) + half + 6
