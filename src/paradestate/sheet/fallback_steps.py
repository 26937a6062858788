"""A chart of decisions as one column in which every step is moved in under what leads to it.

It reads as a list of ifs, on a phone and where boxes have no room side by side.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from paradestate.core.sentence.fork import points_words, step_words, worth_words
from paradestate.core.sentence.wording import capital
from paradestate.core.support.fork import Branch, Fork, Node
from paradestate.sheet.fallback_boxes import depth, way_words
from paradestate.sheet.lettering import SIZE, width_of, wrapped
from paradestate.sheet.svg import Element, element

INDENT, PHONE_INDENT, NARROW = 26, 16, 480
"""How far a step is moved in; less in a narrow drawing."""
TYPE, LINE = 15, 19
NARROWEST = 170
"""Of the lines that are moved in furthest."""
GAP = 7
"""Above a branch."""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Row:
    """A line of words, moved in so often."""

    text: str
    level: int
    is_step: bool = False
    worth: str = ""
    """At the end of the line, in violet."""
    gap: int = 0


def fallback_steps(node: Node, *, width: int) -> tuple[Iterator[Element], float] | None:
    """The lines, drawn as they are taken, and how high they are together.

    None where the last would be too narrow.
    """
    indent = INDENT if width > NARROW else PHONE_INDENT
    if width - indent * depth(node) < NARROWEST:
        return None
    rows = tuple(_rows(node, level=0, width=width, indent=indent))
    tops: list[float] = []
    y = 2.0
    for row in rows:
        y += row.gap
        tops.append(y)
        y += LINE
    return _drawn(rows, tops=tops, width=width, indent=indent), y + 6


def _drawn(
    rows: tuple[_Row, ...], *, tops: list[float], width: int, indent: int
) -> Iterator[Element]:
    for row, top in zip(rows, tops, strict=True):
        yield from _line(row, y=top, width=width, indent=indent)
    yield from _rules(rows, tops=tops, indent=indent)


def _rows(node: Node, *, level: int, width: int, indent: int) -> Iterator[_Row]:
    """A step, what is left before it, and its branches, each moved in further."""
    worth = worth_words(node)
    room = width - indent * level - width_of(worth, size=TYPE) - 10
    first, *more = wrapped(step_words(node), room=room, size=TYPE)
    yield _Row(text=first, level=level, is_step=True, worth=worth)
    for text in more:
        yield _Row(text=text, level=level, is_step=True)
    if isinstance(node, Fork):
        yield _Row(text=points_words(node.points), level=level)
        for branch in node.branches:
            yield from _branch(branch, fork=node, level=level + 1, width=width, indent=indent)


def _branch(branch: Branch, *, fork: Fork, level: int, width: int, indent: int) -> Iterator[_Row]:
    words = capital(way_words(branch, asked=fork.purchase))
    for place, text in enumerate(wrapped(words, room=width - indent * level)):
        yield _Row(text=text, level=level, gap=0 if place else GAP)
    yield from _rows(branch.then, level=level, width=width, indent=indent)


def _line(row: _Row, *, y: float, width: int, indent: int) -> Iterator[Element]:
    base = y + SIZE + 1
    size = TYPE if row.is_step else None
    class_ = "b" if row.is_step else None
    x = indent * row.level
    yield element("text", text=row.text, x=x, y=base, font_size=size, class_=class_)
    if row.worth:
        yield element(
            "text",
            text=row.worth,
            x=width,
            y=base,
            font_size=TYPE,
            text_anchor="end",
            class_="pen b",
        )


def _rules(rows: tuple[_Row, ...], *, tops: list[float], indent: int) -> Iterator[Element]:
    """A line down the left of all that belongs to one branch."""
    for place, row in enumerate(rows):
        if row.gap:
            last = place
            while last + 1 < len(rows) and _belongs(rows[last + 1], to=row):
                last += 1
            x = indent * row.level - 8
            yield element(
                "path",
                d=f"M{x} {tops[place] + 2:.1f}V{tops[last] + LINE:.1f}",
                stroke="var(--rule)",
                stroke_width=2,
            )


def _belongs(row: _Row, *, to: _Row) -> bool:
    """Whether a line is of the same branch: it is moved in as far, and begins no other."""
    return row.level > to.level or (row.level == to.level and not row.gap)
