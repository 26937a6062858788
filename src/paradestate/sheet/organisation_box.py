"""One box of the organisation chart: a body with its symbol, or stands of one kind.

Imports core values and drawing only; where boxes lie is the chart's business.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from textwrap import wrap

from paradestate.core.branch import Branch, Fill, Group
from paradestate.core.outline import Disc, Outline
from paradestate.core.sentence.branch import (
    fill_words,
    group_title,
    group_words,
    inside_words,
    lack_words,
    numbers_words,
)
from paradestate.core.sentence.mark import mark_words
from paradestate.sheet.svg import Drawing, Element, drawing, element, group, link
from paradestate.sheet.symbol import HEIGHT, WIDTH, Symbol, symbol
from paradestate.sheet.texture import texture_of

FRAME_TOP = 27
"""From the line above a box to its frame: room for the size mark."""

FIRST_LINE = FRAME_TOP + HEIGHT + 24
LEADING = 18
BAR_WIDTH, BAR_HEIGHT = 100, 7
MOST_LINES = 3
"""Of a name; the rest is cut, and the link still says it whole."""

MOST_OUTLINES = 4
"""Stands that are drawn one by one; of more one is drawn."""

LACKING, WISHED, PRINTED = "?lacking", "?wished", "?printed"
"""What stands in place of a stage, in letters that no stage has."""

WIDEST_LETTER = 8.2
"""Units to a letter, a little more than the bold letters of the page take on the average."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Line:
    """A line of text under a symbol."""

    text: str
    class_: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Box:
    """What is drawn of one body or of one kind of stands."""

    name: str
    """Of the body; empty for stands."""
    words: str
    """Everything that it says, for whoever can't see it."""
    lines: tuple[Line, ...]
    shown: Symbol | None
    """None for stands."""
    outlines: tuple[tuple[Outline | None, str], ...]
    """Outline of each stand drawn, and its stage; else `LACKING`, `WISHED` or `PRINTED`."""
    colour: str
    """Of the company they belong to; six hexadecimal digits, or empty."""
    bar: tuple[int, int] | None
    """Finished, and of how many."""
    address: str
    """Where a tap leads: a body is opened or folded, stands say how many they are and why.

    Empty where it leads nowhere.
    """
    is_opened: bool

    @property
    def is_folding(self) -> bool:
        """Whether a tap opens or folds something."""
        return bool(self.address) and self.shown is not None

    @property
    def height(self) -> int:
        """From the line above it to its lowest mark."""
        text = FIRST_LINE + LEADING * (len(self.lines) - 1)
        bar = BAR_HEIGHT + 9 if self.bar else 0
        return text + bar + (18 if self.is_folding else 6)


@dataclass(frozen=True, slots=True, kw_only=True)
class Place:
    """Where stands stand."""

    colour: str
    """Six hexadecimal digits of their company's, or empty."""
    address: str
    """Of the chain behind their number; empty where there is none."""


def letters_in(width: float) -> int:
    """Letters that a line of that width surely holds."""
    return max(int(width / WIDEST_LETTER), 8)


def body_box(branch: Branch, *, shown: Symbol, width: float, address: str, is_opened: bool) -> Box:
    """The box of a body."""
    wished = _wished(branch)
    told = [numbers_words(branch), wished, fill_words(branch.fill)]
    do = "Fold it" if is_opened else f"Open it: {inside_words(branch)}"
    marked = "" if shown.mark is None else mark_words(shown.mark)
    words = [branch.label, shown.words, marked, *told, lack_words(branch.fill)]
    return Box(
        name=branch.name,
        words=_sentence(words, do=do if address else ""),
        lines=(
            *_name_lines(branch.label, width=width),
            *_lines(told, width=width, class_="soft"),
        ),
        shown=shown,
        outlines=(),
        colour="" if shown.mark is None else shown.mark.value,
        bar=(branch.fill.finished, branch.fill.number) if branch.fill.number else None,
        address=address,
        is_opened=is_opened,
    )


def _wished(branch: Branch) -> str:
    if not branch.wishes:
        return ""
    return "wished" if branch.is_wanted else "wished, not counted"


def stands_box(stands: Group, *, outline: Outline | None, width: float, place: Place) -> Box:
    """The box of the stands of one kind that stand in one body."""
    title, told, lack = group_title(stands), group_words(stands), lack_words(stands.fill)
    return Box(
        name="",
        words=_sentence([title, *told, lack], do="How many, and why" if place.address else ""),
        lines=(
            *_name_lines(title, width=width),
            *_lines(told, width=width, class_="soft"),
            *(Line(text=part, class_="red") for part in wrap(lack, letters_in(width) + 2)),
        ),
        shown=None,
        outlines=tuple((outline, state) for state in _states(stands)),
        colour=place.colour,
        bar=None,
        address=place.address,
        is_opened=False,
    )


def _states(stands: Group) -> tuple[str, ...]:
    """States of the stands drawn, the furthest first."""
    fill = stands.fill
    if fill.number:
        stages = [stage for stage, number in fill.by_stage.items() for _ in range(number)]
        states = [*reversed(stages), *[LACKING] * fill.short]
    else:
        states = [WISHED if stands.wishes else PRINTED] * stands.number
    return tuple(states if len(states) <= MOST_OUTLINES else states[:1])


def _sentence(words: Sequence[str], *, do: str) -> str:
    told = ", ".join(word for word in words if word)
    return f"{told}. {do}." if do else f"{told}."


def _name_lines(name: str, *, width: float) -> Iterator[Line]:
    wrapped = wrap(
        name, letters_in(width), max_lines=MOST_LINES, placeholder="…", break_on_hyphens=True
    )
    for text in wrapped:
        yield Line(text=text, class_="b")


def _lines(texts: Sequence[str], *, width: float, class_: str) -> Iterator[Line]:
    for text in texts:
        for part in _parts(text, most=letters_in(width) + 2):
            yield Line(text=part, class_=class_)


def _parts(text: str, *, most: int) -> list[str]:
    """The text in lines, parted at its commas first."""
    if len(text) <= most:
        return [text] if text else []
    return [line for part in text.split(", ") for line in wrap(part, most)]


@dataclass(frozen=True, slots=True, kw_only=True)
class Manner:
    """How stands are drawn, on the whole chart alike."""

    scale: Fraction
    """Units to a millimetre."""
    stages: Sequence[str]


def drawn_box(box: Box, *, middle: float, top: float, manner: Manner) -> Element:
    """The box under a point of the line above it."""
    left = middle - WIDTH / 2
    if box.shown is None:
        drawn = list(_outlines(box, middle=middle, top=top + FRAME_TOP, manner=manner))
    else:
        drawn = [symbol(box.shown, left=left, top=top + FRAME_TOP)]
    level = top + FIRST_LINE
    for line in box.lines:
        drawn.append(
            element(
                "text", x=middle, y=level, text_anchor="middle", class_=line.class_, text=line.text
            )
        )
        level += LEADING
    level -= LEADING
    if box.bar is not None:
        drawn.extend(_bar(box.bar, left=middle - BAR_WIDTH / 2, top=level + 9))
        level += BAR_HEIGHT + 9
    if not box.address:
        return group(*drawn)
    if box.is_folding:
        drawn.append(_chevron(middle=middle, top=level + 8, is_opened=box.is_opened))
    field = element(
        "rect",
        x=middle - 66,
        y=top + 10,
        width=132,
        height=box.height - 8,
        fill="transparent",
        class_="field",
    )
    return link(field, *drawn, href=box.address, words=box.words, class_="box")


def fill_bar(fill: Fill) -> Drawing:
    """The bar alone, for a list."""
    bar = (fill.finished, fill.number)
    size = (BAR_WIDTH + 2, BAR_HEIGHT + 2)
    return drawing(_bar(bar, left=1, top=1), size=size, words=fill_words(fill), class_="fill-bar")


def _bar(bar: tuple[int, int], *, left: float, top: float) -> Iterator[Element]:
    done, number = bar
    edge = {"fill": "none", "stroke": "var(--rule)"}
    yield element(
        "rect", x=left, y=top, width=BAR_WIDTH, height=BAR_HEIGHT, stroke_width=1.2, **edge
    )
    if done:
        filled = Fraction(done, number) * BAR_WIDTH
        yield element("rect", x=left, y=top, width=filled, height=BAR_HEIGHT, fill="var(--ink)")


def _chevron(*, middle: float, top: float, is_opened: bool) -> Element:
    """Points down where more can be opened, up where it can be folded."""
    tip, ends = (top, top + 6) if is_opened else (top + 6, top)
    return element(
        "path",
        d=f"M{middle - 7:g} {ends:g}L{middle:g} {tip:g}L{middle + 7:g} {ends:g}",
        fill="none",
        stroke="var(--pencil)",
        stroke_width=2.2,
    )


def size_of(outline: Outline | None) -> tuple[Fraction, Fraction]:
    """Width and depth in millimetres; of a stand whose outline isn't known a small square."""
    if outline is None:
        return Fraction(20), Fraction(20)
    if isinstance(outline, Disc):
        return Fraction(outline.diameter), Fraction(outline.diameter)
    return Fraction(outline.width), Fraction(outline.depth)


def _outlines(box: Box, *, middle: float, top: float, manner: Manner) -> Iterator[Element]:
    gap = 6
    widths = [float(size_of(outline)[0] * manner.scale) for outline, _ in box.outlines]
    left = middle - (sum(widths) + gap * (len(widths) - 1)) / 2
    for (outline, state), width in zip(box.outlines, widths, strict=True):
        depth = float(size_of(outline)[1] * manner.scale)
        look = _look(state, colour=box.colour, stages=manner.stages)
        level = top + (HEIGHT - depth) / 2
        if isinstance(outline, Disc):
            yield element("circle", cx=left + width / 2, cy=top + HEIGHT / 2, r=width / 2, **look)
        else:
            yield element("rect", x=left, y=level, width=width, height=depth, **look)
        left += width + gap


def _look(state: str, *, colour: str, stages: Sequence[str]) -> Mapping[str, str]:
    """A finished stand has its company's colour and a heavy edge; others have their texture."""
    if state == WISHED:
        return _edged("none", stroke="var(--rule)", dash="1.5 3")
    if state == PRINTED:
        return _edged("var(--sheet)", stroke="var(--ink)")
    texture = texture_of(state, stages=stages)
    if texture.is_solid:
        fill = f"#{colour}" if colour else texture.fill
        return {**_edged(fill, stroke=texture.stroke), "stroke-width": "2.4"}
    return _edged(texture.fill, stroke=texture.stroke, dash=texture.dash)


def _edged(fill: str, *, stroke: str, dash: str | None = None) -> Mapping[str, str]:
    broken = {"stroke-dasharray": dash} if dash else {}
    return {"fill": fill, "stroke": stroke, "stroke-width": "1.5", **broken}
