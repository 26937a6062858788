"""Legal forces by points, as steps, and under them the share that can be fielded, hatched."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from paradestate.core.sentence.chance import hundredths_words
from paradestate.core.sentence.wording import listed, several
from paradestate.core.support.force_map import LevelForces
from paradestate.sheet.force_frame import (
    AXIS,
    BETWEEN,
    STEPS,
    STRIP_HEIGHT,
    TOP,
    WIDE,
    ForceFrame,
    Strip,
    drawn_strip,
    force_frame,
    hatching,
    numbers,
    points_axis,
    scale,
)
from paradestate.sheet.long_number import number_words
from paradestate.sheet.svg import Drawing, Element, drawing, element


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
    points = [row.points for row in rows]
    frame = force_frame(points, greatest=max(row.legal for row in rows), width=width)
    shown = (
        *scale(frame),
        *_steps(frame, rows, marked=marked),
        *points_axis(frame, marked=marked),
        *(_fielded(frame, rows, marked=marked) if fieldable is not None else ()),
    )
    high = TOP + STEPS + AXIS + (STRIP_HEIGHT if fieldable is not None else 0)
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


def _steps(frame: ForceFrame, rows: Sequence[ForceRow], *, marked: int | None) -> Iterator[Element]:
    """The steps with their numbers, and the violet top of the one that is marked."""
    tops = [frame.y(row.legal) for row in rows]
    yield element(
        "path",
        d=frame.outline(tops, floor=TOP + STEPS),
        fill="var(--tint)",
        stroke="var(--ink)",
        stroke_width=2,
    )
    yield from numbers(frame, told=[row.legal for row in rows], tops=tops, marked=marked)
    for place, row in enumerate(rows):
        if row.points == marked:
            yield element(
                "path",
                d=f"M{frame.x(place):.1f} {tops[place]:.1f}H{frame.x(place + 1):.1f}",
                stroke="var(--pencil)",
                stroke_width=5,
            )


def _fielded(
    frame: ForceFrame, rows: Sequence[ForceRow], *, marked: int | None
) -> Iterator[Element]:
    """The share of each level that can be fielded."""
    strip = Strip(
        shares=[row.share for row in rows],
        caption="of 100 legal forces so many can be fielded",
        top=TOP + STEPS + AXIS + BETWEEN,
    )
    pattern = hatching(f"fielded-{frame.width}")
    yield from drawn_strip(frame, strip, pattern=pattern, marked=marked)
