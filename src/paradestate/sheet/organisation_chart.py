"""The organisation as a chart: rows of boxes, each under the body that it belongs to.

The path that is opened goes down one row for each body on it; what doesn't fit beside the others
goes on in another line of the row, never smaller. Lines of one row hang from a rail at the left;
what an opened body holds hangs from a rail at the right, so that no line crosses a box.

Imports core values and drawing only.
"""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from paradestate.core.branch import Branch, Group
from paradestate.core.formation import Echelon
from paradestate.core.sentence.branch import fill_words, numbers_words
from paradestate.core.stand import StandPattern
from paradestate.sheet.organisation_box import (
    Box,
    Manner,
    Place,
    body_box,
    drawn_box,
    size_of,
    stands_box,
)
from paradestate.sheet.svg import Drawing, Element, drawing, element
from paradestate.sheet.symbol import HEIGHT, WIDTH, Symbol, dots_of, plated

WIDE = 1184
MARGIN = 28
"""At both sides, for the rails."""

NARROWEST, WIDEST = 140, 190
"""Of a column, in units of about a pixel."""

MOST_SCALE = Fraction(9, 10)
"""Units to a millimetre of a stand, at most."""

ROW_GAP = 26

MOST_PARTS = 60
"""Boxes under one body; of more those beside the opened one are shown."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Chart:
    """What the chart shows besides the tree itself."""

    path: tuple[Branch, ...]
    """From the root down to the body that is opened last."""
    patterns: Mapping[str, StandPattern]
    stages: Sequence[str]
    address: Callable[[str], str]
    """Where a tap leads that opens the body of a name; of the empty name, to all folded."""
    chain: Callable[[str], str]
    """Where the chain behind the number of a pattern stands; empty where it has none."""
    echelons: frozenset[Echelon | None]
    """All that the force has."""


def parts_of(above: Branch, path: Sequence[Branch]) -> tuple[tuple[Branch | Group, ...], int]:
    """What is shown under a body, and how much of it is left out."""
    parts: tuple[Branch | Group, ...] = (*above.branches, *above.groups)
    if len(parts) <= MOST_PARTS:
        return parts, 0
    opened = (place for place, part in enumerate(parts) if any(part is each for each in path))
    middle = next(opened, 0)
    begins = max(0, min(middle - MOST_PARTS // 2, len(parts) - MOST_PARTS))
    return parts[begins : begins + MOST_PARTS], len(parts) - MOST_PARTS


def left_out_words(number: int) -> str:
    """That not all is shown; nothing where it is."""
    return f"{number} more are left out: those beside the opened one are shown." if number else ""


def symbol_of(branch: Branch, chart: Chart, *, is_heavy: bool) -> Symbol:
    """The symbol of a body; its frame is broken where no stand of it has all its figures."""
    return Symbol(
        arm=branch.arm,
        echelon=branch.echelon,
        dots=dots_of(branch.echelon, beside=chart.echelons),
        is_missing=bool(branch.fill.number) and not branch.fill.whole,
        is_heavy=is_heavy,
        mark=plated(branch.mark),
    )


def organisation_chart(root: Branch, chart: Chart) -> Drawing:
    """The chart, 1184 units wide and as high as it needs."""
    laying = _Laying(chart)
    laying.top(root)
    for branch in chart.path:
        if branch.branches or branch.groups:
            laying.row(branch)
    words = ", ".join(
        word for word in (root.label, numbers_words(root), fill_words(root.fill)) if word
    )
    opened = f"; opened: {chart.path[-1].name}" if chart.path[-1].name else ""
    return drawing(
        laying.elements(),
        size=(WIDE, laying.level),
        words=f"Organisation: {words}{opened}",
        class_="drawing chart",
        is_group=True,
    )


class _Laying:
    """Lays row under row and keeps where the next one hangs."""

    def __init__(self, chart: Chart) -> None:
        self.chart = chart
        self.manner = Manner(scale=_scale(chart), stages=chart.stages)
        self.level = 0.0
        self.hook = (WIDE / 2, 0.0)
        """The point under the opened box from which the next row hangs."""
        self.is_straight = True
        """Whether nothing lies between that point and the next row."""
        self.rails: list[str] = []
        self.boxes: list[Element] = []

    def elements(self) -> list[Element]:
        """Lines first, so that boxes lie on them."""
        rails = element(
            "path", d="".join(self.rails), fill="none", stroke="var(--ink)", stroke_width=1.5
        )
        return [*([rails] if self.rails else []), *self.boxes]

    def top(self, root: Branch) -> None:
        """The root alone."""
        shown = symbol_of(root, self.chart, is_heavy=True)
        box = body_box(root, shown=shown, width=WIDE, address="", is_opened=False)
        self.boxes.append(drawn_box(box, middle=WIDE / 2, top=-8, manner=self.manner))
        self.level = box.height - 4
        self.hook = (WIDE / 2, self.level)

    def row(self, above: Branch) -> None:
        """What a body holds, in as many lines as it takes."""
        parts, left_out = parts_of(above, self.chart.path)
        most = int((WIDE - 2 * MARGIN) // NARROWEST)
        lines = -(-len(parts) // most)
        each = -(-len(parts) // lines)
        column = min((WIDE - 2 * MARGIN) / each, WIDEST)
        self._rail_down()
        hook, starts = self.hook, []
        for number in range(lines):
            some = parts[number * each : (number + 1) * each]
            self.is_straight = False
            starts.append(self._line(some, column=column, about=hook[0], above=above))
            self.level += ROW_GAP if number < lines - 1 else 0
        self._left_rail(starts, hook=hook)
        if left_out:
            self._say(left_out_words(left_out))

    def _say(self, words: str) -> None:
        """A line of text under a row."""
        self.level += 18
        self.boxes.append(element("text", x=MARGIN, y=self.level, class_="soft", text=words))
        self.level += 6
        self.is_straight = False

    def _rail_down(self) -> None:
        """From the opened box to the level of the next row, round what lies between."""
        x, y = self.hook
        bus = self.level + ROW_GAP
        if not self.is_straight:
            side = WIDE - 8
            self.rails.append(f"M{x:g} {y:g}V{y + 10:g}H{side}V{bus - 12:g}H{x:g}V{bus:g}")
        else:
            self.rails.append(f"M{x:g} {y:g}V{bus:g}")
        self.level = bus
        self.hook = (x, bus)

    def _line(
        self, parts: Sequence[Branch | Group], *, column: float, about: float, above: Branch
    ) -> tuple[float, float, float]:
        """One line of a row; returns its level and where its boxes begin and end."""
        span = column * len(parts)
        left = min(max(about - span / 2, MARGIN), WIDE - MARGIN - span)
        bus, lowest = self.level, self.level
        middles = [left + column * (place + 0.5) for place in range(len(parts))]
        opened: tuple[float, float] | None = None
        for part, middle in zip(parts, middles, strict=True):
            box = self._box(part, width=column - 12, above=above)
            has_mark = box.shown is not None and box.shown.echelon is not None
            self.rails.append(f"M{middle:g} {bus:g}V{bus + self._stem(box, has_mark=has_mark):g}")
            self.boxes.append(drawn_box(box, middle=middle, top=bus, manner=self.manner))
            lowest = max(lowest, bus + box.height)
            if box.is_opened:
                opened = (middle, bus + box.height)
        if opened is not None:
            self.hook, self.is_straight = opened, True
        self.level = lowest
        return bus, middles[0], middles[-1]

    def _stem(self, box: Box, *, has_mark: bool) -> float:
        """How far the line comes down to a box."""
        if has_mark:
            return 9
        if box.shown is not None:
            return 27
        depth = max(float(size_of(outline)[1] * self.manner.scale) for outline, _ in box.outlines)
        return 27 + (HEIGHT - depth) / 2

    def _box(self, part: Branch | Group, *, width: float, above: Branch) -> Box:
        chart = self.chart
        if isinstance(part, Group):
            pattern = chart.patterns.get(part.pattern)
            place = Place(
                colour="" if above.mark is None else above.mark.value,
                address="" if part.wishes else chart.chain(part.pattern),
            )
            outline = pattern.outline if pattern else None
            return stands_box(part, outline=outline, width=width, place=place)
        is_opened = any(part is each for each in chart.path)
        has_more = bool(part.branches or part.groups)
        leads_to = above.name if is_opened else part.name
        return body_box(
            part,
            shown=symbol_of(part, chart, is_heavy=is_opened),
            width=width,
            address=chart.address(leads_to) if has_more else "",
            is_opened=is_opened,
        )

    def _left_rail(
        self, lines: Sequence[tuple[float, float, float]], *, hook: tuple[float, float]
    ) -> None:
        """Joins the lines of a row."""
        x, _ = hook
        for number, (bus, first, last) in enumerate(lines):
            left = min(first, x) if number == 0 else 8.0
            right = max(last, x) if number == 0 else last
            self.rails.append(f"M{left:g} {bus:g}H{right:g}")
        if len(lines) > 1:
            top, bottom = lines[0][0], lines[-1][0]
            self.rails.append(f"M8 {top:g}V{bottom:g}M8 {top:g}H{lines[0][1]:g}")


def _scale(chart: Chart) -> Fraction:
    """Units to a millimetre, one for the whole chart, so that the largest stand fits a frame."""
    scale = MOST_SCALE
    for branch in chart.path:
        for stands in branch.groups:
            pattern = chart.patterns.get(stands.pattern)
            width, depth = size_of(pattern.outline if pattern else None)
            scale = min(scale, WIDTH / width, HEIGHT / depth)
    return scale
