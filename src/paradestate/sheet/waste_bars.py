"""Points that may be left, a bar for each number, and what of it no legal force can spend.

Where all can be spent a bar is empty; where some must be left over it is hatched, and how many
stands over it.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction

from paradestate.core.sentence.chance import chance_words
from paradestate.core.sentence.wording import several
from paradestate.core.support.chances import Chances
from paradestate.sheet.axis import with_room
from paradestate.sheet.force_frame import hatching
from paradestate.sheet.lettering import width_of
from paradestate.sheet.svg import Drawing, Element, drawing, element

WIDE, PHONE = 720, 320
TOP, BARS, FOOT = 24, 96, 46
"""Heights: over the greatest bar, of it, and under the bars."""
BROADEST = 64
CLOSE = 8
"""From here on bars stand side by side, without space between them."""
NUMBER = 16


@dataclass(frozen=True, slots=True, kw_only=True)
class WasteRow:
    """One line of the table beside the bars."""

    points: int
    chance: Fraction
    unspent: int | None
    """The fewest points that a legal force leaves; None: none is legal."""

    @property
    def words(self) -> str:
        """What must be left over, in words."""
        if self.unspent is None:
            return "nothing is legal"
        return several(self.unspent, "point") if self.unspent else "none"


def waste_rows(allowance: Chances, *, unspent: Sequence[int | None]) -> tuple[WasteRow, ...]:
    """The table beside the bars; `unspent` goes by the points of the allowance, rising."""
    return tuple(
        WasteRow(points=points, chance=allowance.of(points), unspent=left)
        for points, left in zip(allowance.counts, unspent, strict=True)
    )


def waste_bars(rows: Sequence[WasteRow], *, width: int = WIDE) -> Drawing:
    """The bars of these numbers of points, rising."""
    pitch = min(BROADEST, (width - 2) / len(rows))
    shown = (*_bars(rows, pitch=pitch, width=width), *_axis(rows, pitch=pitch, width=width))
    return drawing(shown, size=(width, TOP + BARS + FOOT), words=waste_words(rows))


def waste_words(rows: Sequence[WasteRow]) -> str:
    """What the bars show, in sentences."""
    wasted = [row for row in rows if row.unspent != 0]
    if not wasted:
        return "All points that may be left can be spent."
    first = ", ".join(
        f"{row.points} ({chance_words(row.chance)}): {row.words}" for row in wasted[:MOST_SAID]
    )
    more = f", and {len(wasted) - MOST_SAID} more" if len(wasted) > MOST_SAID else ""
    return f"Points that may be left, with what of them can't be spent: {first}{more}."


MOST_SAID = 8
"""Of more numbers of points the first are read out; the table beside has them all."""


def _bars(rows: Sequence[WasteRow], *, pitch: float, width: int) -> Iterator[Element]:
    greatest = max(row.chance for row in rows)
    floor = TOP + BARS
    is_close = pitch <= CLOSE
    yield element("defs", hatching(f"unspent-{width}"))
    for place, row in enumerate(rows):
        high = max(1.0, BARS * float(row.chance / greatest))
        broad = pitch if is_close else pitch * 0.8
        is_wasted = row.unspent != 0
        left = 1 + pitch * place + (pitch - broad) / 2
        yield element(
            "rect",
            x=left,
            y=floor - high,
            width=broad,
            height=high,
            fill=f"url(#unspent-{width})" if is_wasted else "var(--tint)",
            stroke="var(--ink)" if is_wasted else "var(--rule)",
            stroke_width=1 if is_close else 1.5,
        )
        text = "none legal" if row.unspent is None else f"{row.unspent}"
        if is_wasted and width_of(text) <= max(pitch, width_of("0")) and not is_close:
            yield element(
                "text",
                text=text,
                x=left + broad / 2,
                y=floor - high - 6,
                text_anchor="middle",
                class_="b",
            )
    yield element(
        "path",
        d=f"M0 {floor}H{1 + pitch * len(rows):.2f}",
        stroke="var(--ink)",
        stroke_width=1.5,
    )


def _axis(rows: Sequence[WasteRow], *, pitch: float, width: int) -> Iterator[Element]:
    points = [row.points for row in rows]
    room = max(width_of(f"{each}", size=NUMBER) for each in points) + 4
    for place in with_room(points, first=None, room=room, pitch=pitch):
        half = width_of(f"{points[place]}", size=NUMBER) / 2
        yield element(
            "text",
            text=f"{points[place]}",
            x=min(max(1 + pitch * (place + 0.5), half), width - half),
            y=TOP + BARS + 20,
            text_anchor="middle",
            font_size=NUMBER,
        )
    y = TOP + BARS + 41
    yield element("text", text="points left; over a bar: can't be spent", x=0, y=y, class_="soft")
