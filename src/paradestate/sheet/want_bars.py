"""Want, have and lack of each figure kind as bars, with the packs that fill the gap below them.

One figure is one unit of length in all rows. What is there is solid, what is lacking is ruled in
red, the want is a line across, and each pack hangs below the gap as a bracket.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from paradestate.core.gap import Gap, PackFill
from paradestate.core.sentence.wording import listed, several
from paradestate.sheet.lettering import SIZE, fitted, width_of
from paradestate.sheet.svg import Drawing, Element, drawing, element, group

WIDE, MIDDLE, PHONE = 1180, 736, 358
"""Widths of the drawing, so that its letters are never much under their size."""

OVER_ROOM = 84
"""Room to the right of the longest bar for what is left over."""
NUMBERS_ROOM = 280
"""Room for want, have and lack beside a bar."""
LEAST_BRACKET = 5
"""A narrower bracket isn't seen: packs of a sort are then one bracket together."""
NAME_MARGIN = 24
"""Between a name and its bar; names are in bold, which is a little wider."""
BESIDE = 8
"""Between the last bracket and the words beside it."""
FEW_PACKS = 4
"""So many are named one by one."""
GAP_LINE, TOP = 22, 6
NAME_SIZE = 16
"""Of a name beside its bar."""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Layout:
    width: int
    left: float
    """Where bars begin."""
    unit: float
    """The length of a figure."""
    bar: int
    """The height of a bar."""
    is_above: bool
    """Whether the words stand above the bar, not beside it."""
    name: str
    """Sets the patterns of one drawing apart from those of another on the page."""

    def x(self, figures: int) -> float:
        """How far to the right so many figures reach."""
        return self.left + self.unit * figures

    @property
    def text_left(self) -> float:
        """Where the words of brackets may begin."""
        return 0 if self.is_above else self.left


def want_bars(gaps: Sequence[Gap], *, width: int = WIDE) -> Drawing | None:
    """The bars of every kind, in a drawing of that width; None where there is no kind."""
    if not gaps:
        return None
    layout = _layout(gaps, width=width)
    rows, bottom = [], float(TOP)
    for gap in gaps:
        rows.append(group(*_row(gap, layout), transform=f"translate(0 {bottom:g})"))
        bottom += _height(gap, layout)
    legend, high = _legend(layout, is_ordered=any(gap.fills for gap in gaps))
    key = group(*legend, transform=f"translate(0 {bottom:g})")
    return drawing(
        (_patterns(layout), *rows, key), size=(width, bottom + high), words=gap_words(gaps)
    )


def gap_words(gaps: Sequence[Gap]) -> str:
    """What the bars show, in a sentence."""
    lacking = [several(gap.lack, gap.kind) for gap in gaps if gap.lack]
    complete = sum(1 for gap in gaps if not gap.lack and gap.want)
    said = f"lacking are {listed(lacking)}" if lacking else "nothing is lacking"
    rest = f"; {several(complete, 'kind')} complete" if complete and lacking else ""
    return f"Want, have and lack by figure kind: {said}{rest}."


def _layout(gaps: Sequence[Gap], *, width: int) -> _Layout:
    is_above = width <= PHONE
    names = max(width_of(gap.kind, size=NAME_SIZE) for gap in gaps)
    left = 1 if is_above else min(max(names + NAME_MARGIN, 90), width * 0.22)
    room = width - left - (OVER_ROOM if is_above else NUMBERS_ROOM)
    longest = max(1, *(gap.length for gap in gaps))
    unit = min(room / longest, 24)
    return _Layout(
        width=width,
        left=left,
        unit=unit,
        bar=24 if is_above else 28,
        is_above=is_above,
        name=f"lack-{width}",
    )


def _patterns(layout: _Layout) -> Element:
    rule = element("path", d="M0 0V7", stroke="var(--red)", stroke_width=2.2)
    return element(
        "defs",
        element(
            "pattern",
            rule,
            id=layout.name,
            width=7,
            height=7,
            patternUnits="userSpaceOnUse",
            patternTransform="rotate(45)",
        ),
    )


def _height(gap: Gap, layout: _Layout) -> float:
    above = GAP_LINE if layout.is_above else 0
    return above + layout.bar + (44 if gap.fills or gap.from_others else 14)


def _row(gap: Gap, layout: _Layout) -> Iterator[Element]:
    top = GAP_LINE if layout.is_above else 0.0
    yield from _words(gap, layout, top=top)
    yield from _bar(gap, layout, top=top)
    yield from _brackets(gap, layout, top=top + layout.bar + 6)


def _words(gap: Gap, layout: _Layout, *, top: float) -> Iterator[Element]:
    if layout.is_above:
        numbers = _numbers(gap)
        x, y, anchor = float(layout.width), 14.0, "end"
        room = layout.width - width_of("".join(numbers.itertext())) - 8
        name_y = y
    else:
        x = layout.x(max(gap.want, gap.have)) + 14
        y = name_y = top + layout.bar / 2 + 5
        numbers, anchor, room = _numbers(gap), "start", layout.left - NAME_MARGIN
    size = SIZE if layout.is_above else NAME_SIZE
    name = element(
        "text",
        text=fitted(gap.kind, room=room, size=size),
        x=0,
        y=name_y,
        class_="b",
        font_size=None if layout.is_above else NAME_SIZE,
    )
    if name.text != gap.kind:
        name.append(element("title", text=gap.kind))
    yield name
    numbers.set("text-anchor", anchor)
    numbers.set("x", f"{x:g}")
    numbers.set("y", f"{y:g}")
    yield numbers


def _numbers(gap: Gap) -> Element:
    """Want, have and lack in words with their numbers; SVG keeps a single space between them."""
    if not gap.want:
        return element("text", text="not wanted", class_="soft")
    end = (
        [_span(" · lack ", class_="red"), _span(f"{gap.lack}", class_="b red")]
        if gap.lack
        else [_span(" · complete")]
    )
    return element(
        "text",
        _span("want "),
        _span(f"{gap.want}", class_="b"),
        _span(" · have "),
        _span(f"{gap.have}", class_="b"),
        *end,
    )


def _span(text: str, *, class_: str | None = None) -> Element:
    return element("tspan", text=text, class_=class_)


def _bar(gap: Gap, layout: _Layout, *, top: float) -> Iterator[Element]:
    x, unit, high = layout.x, layout.unit, layout.bar
    if gap.have:
        yield element(
            "rect", x=layout.left, y=top, width=unit * gap.have, height=high, fill="var(--ink)"
        )
    if gap.lack > 0:
        yield element(
            "rect",
            x=x(gap.have),
            y=top,
            width=unit * gap.lack,
            height=high,
            fill=f"url(#{layout.name})",
            stroke="var(--red)",
            stroke_width=1.5,
        )
    if gap.want:
        yield element(
            "path",
            d=f"M{x(gap.want):.2f} {top - 4:g}V{top + high + 4:g}",
            stroke="var(--ink)",
            stroke_width=2.2,
        )


def _brackets(gap: Gap, layout: _Layout, *, top: float) -> Iterator[Element]:
    """The packs: each with what it holds where that has room, else all of it in words."""
    beside = _beside(gap)
    ends = layout.x(gap.have + gap.bought)
    is_each = all(_has_room(fill, layout) for fill in gap.fills) and (
        not beside or ends + BESIDE + width_of(beside) <= layout.width
    )
    at = gap.have
    for fill in gap.fills:
        pieces = fill.number if fill.each * layout.unit >= LEAST_BRACKET else 1
        size = fill.each * fill.number // pieces
        for _ in range(pieces):
            yield _bracket(layout.x(at), layout.x(at + size), top=top)
            if is_each:
                middle = layout.x(at) + layout.unit * size / 2
                yield _pencilled(str(size), x=middle, y=top + 23, anchor="middle")
            at += size
    if is_each and beside:
        yield _pencilled(beside, x=ends + BESIDE, y=top + 10)
    elif not is_each:
        text = ", ".join(filter(None, (fills_words(gap.fills), beside)))
        text = fitted(text, room=layout.width - layout.text_left)
        x = max(layout.text_left, min(layout.x(gap.have), layout.width - width_of(text)))
        yield _pencilled(text, x=x, y=top + 23)


def _has_room(fill: PackFill, layout: _Layout) -> bool:
    return fill.each * layout.unit >= width_of(str(fill.each)) + 4


def fills_words(fills: Sequence[PackFill]) -> str:
    """The packs by what they hold: `4 + 4 + 4`, or where they are many `9 packs of 3`."""
    if sum(fill.number for fill in fills) <= FEW_PACKS:
        return " + ".join(f"{fill.each}" for fill in fills for _ in range(fill.number))
    return listed(f"{several(fill.number, 'pack')} of {fill.each}" for fill in fills)


def _beside(gap: Gap) -> str:
    """What isn't seen from the brackets."""
    said = []
    if gap.left_over:
        said.append(f"{gap.left_over} over")
    if gap.from_others:
        said.append(f"{gap.from_others} by other kinds")
    if gap.to_others:
        said.append(f"{gap.to_others} for other kinds")
    return ", ".join(said)


def _bracket(left: float, right: float, *, top: float) -> Element:
    return element(
        "path",
        d=f"M{left + 1:.2f} {top:g}v7H{right - 1:.2f}v-7",
        fill="none",
        stroke="var(--pencil)",
        stroke_width=1.8,
    )


def _pencilled(text: str, *, x: float, y: float, anchor: str | None = None) -> Element:
    return element("text", text=text, x=x, y=y, class_="pen", text_anchor=anchor)


def _legend(layout: _Layout, *, is_ordered: bool) -> tuple[list[Element], int]:
    """What the marks mean, as wide as the drawing allows, and how high that is."""
    solid = element("rect", x=0, y=2, width=30, height=14, fill="var(--ink)")
    ruled = element(
        "rect",
        x=0,
        y=2,
        width=30,
        height=14,
        fill=f"url(#{layout.name})",
        stroke="var(--red)",
        stroke_width=1.5,
    )
    line = element("path", d="M15 0V18", stroke="var(--ink)", stroke_width=2.2)
    marks = [(solid, "have"), (ruled, "lack"), (line, "want")]
    if is_ordered:
        marks.append((_bracket(0, 30, top=6), "a pack, and how many it holds"))
    made: list[Element] = []
    x, y = 0.0, 12
    for mark, words in marks:
        wide = 38 + width_of(words)
        if x and x + wide > layout.width:
            x, y = 0.0, y + 26
        label = element("text", text=words, x=38, y=14)
        made.append(group(mark, label, transform=f"translate({x:g} {y})"))
        x += wide + 22
    return made, y + 24
