"""When each milestone is reached, beside the same work done kind by kind: the gain at a glance."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction

from paradestate.core.sentence.wording import capital, hours_words
from paradestate.sheet.lettering import fitted, width_of
from paradestate.sheet.svg import Drawing, Element, drawing, element

WIDE, PHONE = 560, 358
BAR, ROW, NAME, APART = 18, 26, 22, 14
LABEL = 98
"""Breadth of what stands before a bar."""
HERE, BY_KIND = "as ordered", "kind by kind"


@dataclass(frozen=True, slots=True, kw_only=True)
class MilestoneBar:
    """A milestone with its two times, in minutes from now."""

    name: str
    here: Fraction
    by_kind: Fraction
    week: str = ""
    """The weeks of both in words; empty where the owner gives no week."""
    week_by_kind: str = ""


def milestone_bars(bars: Sequence[MilestoneBar], *, width: int = WIDE) -> Drawing | None:
    """Two bars for each milestone; None where nothing is left to do."""
    longest = max((max(bar.here, bar.by_kind) for bar in bars), default=Fraction(0))
    if not longest:
        return None
    high = len(bars) * (NAME + 2 * ROW + APART)
    shown = [
        each
        for place, bar in enumerate(bars)
        for each in _pair(bar, top=place * (NAME + 2 * ROW + APART), longest=longest, width=width)
    ]
    return drawing(shown, size=(width, high), words=bars_words(bars))


def bars_words(bars: Sequence[MilestoneBar]) -> str:
    """What the bars show, in a sentence."""
    said = "; ".join(
        f"{bar.name} after {hours_words(bar.here)} {HERE}, {hours_words(bar.by_kind)} {BY_KIND}"
        for bar in bars
    )
    return f"Work until each milestone: {said}."


def _pair(bar: MilestoneBar, *, top: float, longest: Fraction, width: int) -> Iterator[Element]:
    name = fitted(capital(bar.name), room=width)
    yield element("text", text=name, x=0, y=top + 15, class_="b")
    rows = (
        (HERE, bar.here, bar.week, "var(--ink)"),
        (BY_KIND, bar.by_kind, bar.week_by_kind, "none"),
    )
    texts = [_told(minutes, week) for _, minutes, week, _ in rows]
    room = width - LABEL - max(map(width_of, texts)) - 10
    for place, (label, minutes, _, fill) in enumerate(rows):
        y = top + NAME + ROW * place
        long = float(room * minutes / longest)
        yield element("text", text=label, x=0, y=y + 14, class_="soft")
        yield element(
            "rect",
            x=LABEL,
            y=y,
            width=long,
            height=BAR,
            fill=fill,
            stroke="var(--ink)",
            stroke_width=1.5,
        )
        yield element("text", text=texts[place], x=LABEL + long + 8, y=y + 14, class_="b")


def _told(minutes: Fraction, week: str) -> str:
    told = hours_words(minutes)
    return f"{told}, {week}" if week and minutes else told
