"""Legal forces by points before and after a change, as two lines of steps.

What was legal and no longer is lies hatched between them, what is legal only now is dotted. Where
both are at one number of points, each has half of its breadth. How large their shares are stands in
strips below.
"""

from collections.abc import Iterator, Sequence
from fractions import Fraction

from paradestate.core.sentence.chance import hundredths_words
from paradestate.core.sentence.wording import listed, several
from paradestate.core.support.comparison import LevelChange
from paradestate.sheet.force_frame import (
    AXIS,
    BETWEEN,
    MOST_LINEAR,
    STEPS,
    STRIP_HEIGHT,
    TOP,
    WIDE,
    ForceFrame,
    Strip,
    dotting,
    drawn_strip,
    force_frame,
    hatching,
    numbers,
    points_axis,
    scale,
)
from paradestate.sheet.long_number import number_words
from paradestate.sheet.svg import Drawing, Element, drawing, element

FLOOR = TOP + STEPS
BEFORE, NOW = 2.4, 2.6
"""Breadths of the two lines."""
DASH = "6 4"
MOST_TIMES, MOST_WRITTEN = 50, 10_000_000
"""As many times the forces of the lowest level, and so many at the most, go on a plain scale."""
KEY = (34, 18)
"""Size of a piece of the key."""


def list_change_map(
    levels: Sequence[LevelChange], *, marked: int, width: int = WIDE
) -> Drawing | None:
    """The map of these levels, points rising, with one of them marked; None without a level."""
    if not levels:
        return None
    points = [level.points for level in levels]
    greatest = max(max(level.old, level.new) for level in levels)
    frame = force_frame(points, greatest=greatest, width=width, most_linear=_most_linear(levels))
    strips = tuple(_strips(frame, levels))
    shown = (
        *scale(frame),
        *_filled(frame, levels),
        *_lines(frame, levels, marked=marked),
        *points_axis(frame, marked=marked),
        *(
            piece
            for strip, pattern in strips
            for piece in drawn_strip(frame, strip, pattern=pattern, marked=marked)
        ),
    )
    high = FLOOR + AXIS + STRIP_HEIGHT * len(strips)
    return drawing(shown, size=(width, high), words=change_map_words(levels, marked=marked))


def _most_linear(levels: Sequence[LevelChange]) -> int:
    """Up to how many forces the scale is a plain one: on one by tens a change is hardly seen."""
    least = min((level.old for level in levels if level.old), default=1)
    return max(MOST_LINEAR, min(least * MOST_TIMES, MOST_WRITTEN))


def change_map_words(levels: Sequence[LevelChange], *, marked: int) -> str:
    """What the map shows, in a sentence: its ends and the level that is marked."""
    ends = (levels[0], levels[-1])
    told = [level for level in levels if level in ends or level.points == marked]
    return f"Legal forces by points, before and now: {'; '.join(map(_level_words, told))}."


def _level_words(level: LevelChange) -> str:
    said = f"{number_words(level.old)} and now {number_words(level.new)}"
    more = [
        f"{number_words(number)} {word}"
        for number, word in ((level.lost, "lost"), (level.gained, "gained"))
        if number
    ]
    after = f", {listed(more)}" if more else ""
    return f"{said} at {several(level.points, 'point')}{after}"


def change_key() -> tuple[tuple[Drawing, str], ...]:
    """Each way in which the map is drawn, with what it means."""
    wide, high = KEY
    line = f"M0 {high / 2:.1f}H{wide}"
    before = element(
        "path", d=line, stroke="var(--ink)", stroke_width=BEFORE, stroke_dasharray=DASH
    )
    now = element("path", d=line, stroke="var(--pencil)", stroke_width=NOW)
    return (
        (_piece(before), "before"),
        (_piece(now), "now, with its numbers"),
        (_piece(_patch(hatching("key-lost"))), "lost"),
        (_piece(_patch(dotting("key-gained"))), "gained"),
    )


def _piece(shown: Element) -> Drawing:
    return drawing([shown], size=KEY, words="", class_="key-box", is_hidden=True)


def _patch(pattern: Element) -> Element:
    """A box filled with a pattern."""
    wide, high = KEY
    box = element(
        "rect",
        x=0.75,
        y=0.75,
        width=wide - 1.5,
        height=high - 1.5,
        fill=f"url(#{pattern.get('id')})",
        stroke="var(--ink)",
        stroke_width=1.5,
    )
    return element("g", element("defs", pattern), box)


def _filled(frame: ForceFrame, levels: Sequence[LevelChange]) -> Iterator[Element]:
    """What stays legal as a quiet ground, and on it what is lost and gained."""
    lost, gained = hatching(f"lost-{frame.width}"), dotting(f"gained-{frame.width}")
    yield element("defs", lost, gained)
    stays = [frame.y(_stays(level)) for level in levels]
    yield element("path", d=frame.outline(stays, floor=FLOOR), fill="var(--tint)")
    for place, level in enumerate(levels):
        half = frame.pitch / 2 if level.lost and level.gained else 0
        for number, pattern, left in ((level.lost, lost, 0.0), (level.gained, gained, half)):
            if number:
                top = frame.y(_stays(level) + number)
                yield element(
                    "rect",
                    x=frame.x(place) + left,
                    y=top,
                    width=frame.pitch - half,
                    height=stays[place] - top,
                    fill=f"url(#{pattern.get('id')})",
                )


def _stays(level: LevelChange) -> int:
    """Legal before and now; where that wasn't computed, at the most."""
    return min(level.old, level.new) if level.both is None else level.both


def _lines(frame: ForceFrame, levels: Sequence[LevelChange], *, marked: int) -> Iterator[Element]:
    """Before dashed and in ink, now solid and in pencil, with the numbers of now."""
    before = [frame.y(level.old) for level in levels]
    now = [frame.y(level.new) for level in levels]
    for tops, colour, thick, dash in (
        (now, "var(--pencil)", NOW, None),
        (before, "var(--ink)", BEFORE, DASH),
    ):
        yield element(
            "path",
            d=frame.steps(tops),
            fill="none",
            stroke=colour,
            stroke_width=thick,
            stroke_dasharray=dash,
        )
    highest = [min(pair) for pair in zip(before, now, strict=True)]
    told = [level.new for level in levels]
    yield from numbers(frame, told=told, tops=highest, marked=marked)


def _strips(frame: ForceFrame, levels: Sequence[LevelChange]) -> Iterator[tuple[Strip, Element]]:
    """A strip for what is lost and one for what is gained, where there is any."""
    top = FLOOR + AXIS + BETWEEN
    if any(level.lost for level in levels):
        yield (
            Strip(
                shares=[level.share_lost for level in levels],
                caption="of 100 legal before so many are lost",
                top=top,
            ),
            hatching(f"lost-share-{frame.width}"),
        )
        top += STRIP_HEIGHT
    if any(level.gained for level in levels):
        yield (
            Strip(
                shares=[share_gained(level) for level in levels],
                caption="of 100 legal now so many are new",
                top=top,
            ),
            dotting(f"gained-share-{frame.width}"),
        )


def share_gained(level: LevelChange) -> Fraction | None:
    """The share of the forces legal now that weren't before."""
    if level.gained is None or not level.new:
        return None
    return Fraction(level.gained, level.new)


def share_words(share: Fraction | None) -> str:
    """A share of the table beside the map."""
    return "-" if share is None else hundredths_words(share)
