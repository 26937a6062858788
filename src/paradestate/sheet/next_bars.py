"""What to get next as bars: what each candidate adds, with its cost, what adds most first.

It is filled in like the lines of an order: before each name is a box, and in the boxes of what is
best to get stands how many. A bar is solid for what adds something by itself and ruled for things
that add only together, which a bracket joins; it is dashed where it costs more than there is.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from paradestate.core.advice.gain import Gain, gains
from paradestate.core.sentence.advice import Told, near_above
from paradestate.core.sentence.wording import listed
from paradestate.sheet.lettering import fitted, width_of
from paradestate.sheet.svg import Drawing, Element, drawing, element, group

WIDE, PHONE = 720, 288
"""Widths of the drawing; the letters of the latter keep their size on the narrowest phone."""

MOST_BARS = 12
"""Bars that are drawn; all are in the table."""
MOST_PARTS = 4
"""Names of things joined that are written out."""

TOP, GAP, PART = 2, 14, 40
"""Above all, between two, and the height of a name with what it is."""
BOX, NAME = 20, 42
"""Size of the box of a number, and where names begin."""
BRACKET = 4
NAMES = 262
"""Where bars begin beside names."""
LEAST = 60
"""Length of the longest bar, at the least."""
BOLD = 1.06
"""How much wider bold letters are."""
BAR, LOW_BAR = 26, 16
"""Heights of a bar beside its name, and under it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Layout:
    told: Told
    width: int
    most: Fraction
    """The greatest gain, with what it is right to."""
    said: float = 0
    """Room beside a bar for what it adds and costs."""

    @property
    def is_under(self) -> bool:
        """Whether a bar stands under its names, not beside them."""
        return self.width <= PHONE

    @property
    def left(self) -> int:
        """Where bars begin."""
        return 2 if self.is_under else NAMES

    def length(self, gain: Fraction) -> float:
        """The length of so much."""
        beside = self.width - NAMES - self.said - 10
        room = self.width - 4 if self.is_under else max(beside, LEAST)
        return float(gain / self.most) * room

    @property
    def pattern(self) -> str:
        """Sets the pattern of one drawing apart from that of another on the page."""
        return f"joined-{self.width}"


def next_bars(told: Told, *, width: int = WIDE) -> Drawing | None:
    """The bars of all that adds something; None where nothing does."""
    every = gains(told.advice)
    if not every:
        return None
    shown = every[:MOST_BARS]
    layout = _Layout(told=told, width=width, most=max(map(_reach, shown)))
    layout = replace(layout, said=max(_said_width(gain, layout) for gain in shown))
    rows: list[Element] = []
    bottom = float(TOP)
    for gain in shown:
        rows.append(group(*_row(gain, layout), transform=f"translate(0 {bottom:g})"))
        bottom += _height(gain, layout)
    floor = [] if layout.is_under else [_floor(bottom - GAP / 2)]
    key, high = _key(shown, layout, left_out=len(every) - len(shown))
    rows.append(group(*key, transform=f"translate(0 {bottom:g})"))
    size = (width, bottom + high)
    return drawing((_patterns(layout), *floor, *rows), size=size, words=next_words(told))


def next_words(told: Told) -> str:
    """What the bars show, in a sentence."""
    said = [
        f"{told.basket(each.basket)} {'together add' if each.is_joined else 'adds'} "
        f"{adds_text(told, each)} for {told.cost(each.cost)}"
        for each in gains(told.advice)[:MOST_BARS]
    ]
    return f"What each adds: {'; '.join(said) or 'nothing'}."


def adds_text(told: Told, gain: Gain) -> str:
    """What something adds, and how sure that is: `4.58 ± 0.13`."""
    half = "" if gain.sure is None else f" ± {near_above(gain.sure)}"
    return f"{told.value(gain.gain)}{half}"


def _reach(gain: Gain) -> Fraction:
    return gain.gain + (gain.sure.plus_or_minus if gain.sure else 0)


def _height(gain: Gain, layout: _Layout) -> float:
    under = LOW_BAR + 8 if layout.is_under else 0
    return PART * min(_number_of_parts(gain), MOST_PARTS) + under + GAP


def _number_of_parts(gain: Gain) -> int:
    return sum(number > 0 for number in gain.basket)


def _row(gain: Gain, layout: _Layout) -> Iterator[Element]:
    parts = [place for place, number in enumerate(gain.basket) if number]
    high = PART * min(len(parts), MOST_PARTS)
    for line, place in enumerate(parts[:MOST_PARTS]):
        hidden = len(parts) - line if line + 1 == MOST_PARTS < len(parts) else 0
        if hidden:
            words = listed(f"{gain.basket[each]} x {_name(each, layout)}" for each in parts[line:])
            more = element("text", text=f"and {hidden} more", x=NAME, y=PART * line + 15)
            more.append(element("title", text=words))
            yield more
        else:
            yield from _part(gain, layout, place=place, line=line)
    if gain.is_joined:
        yield element(
            "path",
            d=f"M{BRACKET + 6} 1H{BRACKET}V{high - 3}H{BRACKET + 6}",
            fill="none",
            stroke="var(--ink)",
            stroke_width=1.8,
        )
    yield from _bar(gain, layout, high=high)
    yield from _said(gain, layout, high=high)


def _room(gain: Gain, layout: _Layout, *, line: int) -> tuple[float, float]:
    """Room for a name, and for what it is."""
    if not layout.is_under:
        beside = NAMES - NAME - 14
        return beside / BOLD, beside
    adds, cost = _said_texts(gain, layout) if line == 0 else ("", "")
    room = layout.width - NAME - 10
    return (room - width_of(adds) * BOLD) / BOLD, room - width_of(cost)


def _said_width(gain: Gain, layout: _Layout) -> float:
    adds, cost = _said_texts(gain, layout)
    return max(width_of(adds) * BOLD, width_of(cost))


def _name(place: int, layout: _Layout) -> str:
    return layout.told.advice.candidates[place].name


def _part(gain: Gain, layout: _Layout, *, place: int, line: int) -> Iterator[Element]:
    """A name with its box, and what it is."""
    candidate = layout.told.advice.candidates[place]
    number, top = gain.basket[place], PART * line
    name = f"{number} x {candidate.name}" if gain.is_joined else candidate.name
    for_name, for_words = _room(gain, layout, line=line)
    yield from _box(layout.told.advice.best.basket[place], top=top)
    yield _cut(name, room=for_name, y=top + 15, class_="b")
    yield _cut(candidate.words, room=for_words, y=top + 32, class_="soft")


def _cut(text: str, *, room: float, y: float, class_: str) -> Element:
    """A text as far as it has room; whole for whoever points at it."""
    made = element("text", text=fitted(text, room=room), x=NAME, y=y, class_=class_)
    if made.text != text:
        made.append(element("title", text=text))
    return made


def _box(number: int, *, top: float, left: float = NAME - BOX - 8) -> Iterator[Element]:
    """A box of the form; what is best to get is filled in."""
    yield element(
        "rect",
        x=left,
        y=top + 1,
        width=BOX,
        height=BOX,
        fill="var(--sheet)",
        stroke="var(--pencil)" if number else "var(--rule)",
        stroke_width=2.2 if number else 1.5,
    )
    if number:
        x = left + BOX / 2
        yield element(
            "text", text=f"{number}", x=x, y=top + 16, text_anchor="middle", class_="pen b"
        )


def _bar(gain: Gain, layout: _Layout, *, high: int) -> Iterator[Element]:
    top = high if layout.is_under else (high - 4 - BAR) / 2
    thick = LOW_BAR if layout.is_under else BAR
    yield _mark(gain, layout, x=layout.left, y=top, size=(max(layout.length(gain.gain), 2), thick))
    if gain.sure is not None:
        half = gain.sure.plus_or_minus
        least = layout.left + layout.length(max(gain.gain - half, Fraction(0)))
        most = layout.left + layout.length(_reach(gain))
        y = top + thick + 4
        yield element(
            "path",
            d=f"M{least:.2f} {y - 3:g}v6M{least:.2f} {y:g}H{most:.2f}M{most:.2f} {y - 3:g}v6",
            stroke="var(--ink)",
            stroke_width=1.5,
        )


def _mark(gain: Gain, layout: _Layout, *, x: float, y: float, size: tuple[float, float]) -> Element:
    """A bar with the look of its kind."""
    full = f"url(#{layout.pattern})" if gain.is_joined else "var(--ink)"
    return element(
        "rect",
        x=x,
        y=y,
        width=size[0],
        height=size[1],
        fill=full if gain.is_affordable else "none",
        stroke="var(--ink)" if gain.is_affordable else "var(--rule)",
        stroke_width=1.5,
        stroke_dasharray=None if gain.is_affordable else "4 3",
    )


def _said_texts(gain: Gain, layout: _Layout) -> tuple[str, str]:
    adds = "together add" if gain.is_joined and not layout.is_under else "adds"
    return f"{adds} {adds_text(layout.told, gain)}", f"for {layout.told.cost(gain.cost)}"


def _said(gain: Gain, layout: _Layout, *, high: int) -> Iterator[Element]:
    """What it adds and costs: at the end of its bar, or over it."""
    if layout.is_under:
        x, y, anchor = float(layout.width), 15.0, "end"
    else:
        x = layout.left + layout.length(_reach(gain)) + 10
        y, anchor = (high - 4) / 2 - 4, "start"
    for text, down, class_ in zip(_said_texts(gain, layout), (0, 17), ("b", "soft"), strict=True):
        yield element("text", text=text, x=x, y=y + down, text_anchor=anchor, class_=class_)


def _floor(bottom: float) -> Element:
    """The line on which the bars stand."""
    d = f"M{NAMES} 0V{bottom:g}"
    return element("path", d=d, stroke="var(--ink)", stroke_width=1.5)


def _patterns(layout: _Layout) -> Element:
    rule = element("path", d="M0 0V6", stroke="var(--ink)", stroke_width=2.4)
    made = element("pattern", rule, id=layout.pattern, width=6, height=6)
    made.set("patternUnits", "userSpaceOnUse")
    made.set("patternTransform", "rotate(45)")
    return element("defs", made)


def _key(shown: Sequence[Gain], layout: _Layout, *, left_out: int) -> tuple[list[Element], float]:
    """What the marks mean, those alone that are there, and how high that is."""
    made: list[Element] = []
    x, y = 0.0, 10.0
    for mark, words in _marks(shown, layout):
        wide = 38 + width_of(words)
        if x and x + wide > layout.width:
            x, y = 0.0, y + 24
        label = element("text", text=words, x=36, y=15, class_="soft")
        made.append(group(*mark, label, transform=f"translate({x:g} {y:g})"))
        x += wide + 18
    if left_out:
        y += 24
        text = f"{left_out} more are in the table."
        made.append(element("text", text=text, x=0, y=y + 15, class_="soft"))
    return made, y + 24


def _marks(shown: Sequence[Gain], layout: _Layout) -> Iterator[tuple[Sequence[Element], str]]:
    if any(layout.told.advice.best.basket):
        yield tuple(_box(1, top=-1, left=5)), "so many to get"
    for gain, words in (
        (_first(shown, is_joined=True, is_affordable=True), "only together"),
        (_first(shown, is_joined=None, is_affordable=False), "dearer than there is"),
    ):
        if gain is not None:
            yield (_mark(gain, layout, x=1, y=3, size=(28, 14)),), words
    if any(gain.sure is not None for gain in shown):
        ticks = element("path", d="M2 7v6M2 10H28M28 7v6", stroke="var(--ink)", stroke_width=1.5)
        yield (ticks,), "right to that, 19 in 20"


def _first(shown: Sequence[Gain], *, is_joined: bool | None, is_affordable: bool) -> Gain | None:
    return next(
        (
            gain
            for gain in shown
            if gain.is_affordable is is_affordable and is_joined in {None, gain.is_joined}
        ),
        None,
    )
