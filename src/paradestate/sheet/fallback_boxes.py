"""A chart of decisions as boxes from left to right, joined by lines.

Requests stand in heavy boxes, what is bought at the end in light ones, what is still to come in
violet. Over a box stands what leads to it.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from paradestate.core.game import Purchase
from paradestate.core.sentence.chance import chance_words
from paradestate.core.sentence.fork import branch_words, points_words, step_words, worth_words
from paradestate.core.support.fork import Branch, Fork, Node
from paradestate.sheet.lettering import SIZE, width_of, wrapped
from paradestate.sheet.svg import Element, element

BETWEEN, APART = 26, 12
"""Space between two columns, and between two boxes of one."""
NARROWEST, BROADEST = 136, 300
"""Of a box."""
LAST = 1.5
"""How many times as broad as a request a box of the last column is, where it needs to be."""
TYPE, LINE, INSET = 15, 18, 9
BRANCH_LINE = 17
MOST_LINES = 4


@dataclass(frozen=True, slots=True, kw_only=True)
class _Box:
    """A step with its place."""

    node: Node
    left: float
    wide: float
    top: float
    """Of the box; what leads to it stands above."""
    above: tuple[str, ...]
    lines: tuple[str, ...]
    bottom: float
    """Of all that belongs to it."""
    is_beside: bool
    """Whether the worth has room at the end of the last line."""
    then: tuple["_Box", ...] = ()

    @property
    def high(self) -> float:
        """Of the box."""
        more = isinstance(self.node, Fork) + (not self.is_beside)
        return 2 * INSET + LINE * (len(self.lines) + more) - 4

    @property
    def middle(self) -> float:
        """Where lines come in and go out."""
        return self.top + self.high / 2


def fallback_boxes(node: Node, *, width: int) -> tuple[Iterator[Element], float] | None:
    """The boxes, drawn as they are taken, and how high they are together; None: too narrow."""
    levels = 1 + depth(node)
    wide = min((width - 2 - BETWEEN * (levels - 1)) / (levels - 1 + LAST), BROADEST)
    if wide < NARROWEST:
        return None
    first = _placed(node, above=(), at=(1, 1), frame=_Frame(width=width, request=wide))
    return _drawn(first), first.bottom - APART + 2


@dataclass(frozen=True, slots=True, kw_only=True)
class _Frame:
    width: int
    request: float
    """How wide the box of a request is."""

    def wide(self, node: Node, *, left: float) -> float:
        """How wide its box is; where nothing follows it has all the room to the right."""
        return self.request if isinstance(node, Fork) else min(self.width - 1 - left, BROADEST)


def depth(node: Node) -> int:
    """Requests one after the other, at most."""
    if not isinstance(node, Fork):
        return 0
    return 1 + max(depth(branch.then) for branch in node.branches)


def _placed(node: Node, *, above: tuple[str, ...], at: tuple[float, float], frame: _Frame) -> _Box:
    """A step and all that follow it, with the left and top of the room that they have."""
    left, top = at
    then: list[_Box] = []
    right, below = left + frame.request + BETWEEN, top
    for branch, asked in _branches(node):
        wide = frame.wide(branch.then, left=right)
        words = wrapped(way_words(branch, asked=asked), room=wide, most=MOST_LINES)
        box = _placed(branch.then, above=words, at=(right, below), frame=frame)
        then.append(box)
        below = box.bottom
    alone = _alone(node, above=above, at=at, frame=frame)
    if not then:
        return alone
    middle = (then[0].middle + then[-1].middle) / 2
    held = max(alone.top, middle - alone.high / 2)
    bottom = max(below, held + alone.high + APART)
    return replace(alone, top=held, bottom=bottom, then=tuple(then))


def _branches(node: Node) -> Iterator[tuple[Branch, Purchase]]:
    """Its branches with what they were asked for."""
    if isinstance(node, Fork):
        for branch in node.branches:
            yield branch, node.purchase


def _alone(node: Node, *, above: tuple[str, ...], at: tuple[float, float], frame: _Frame) -> _Box:
    """A step as far up as it may stand, without those that follow."""
    left, top = at[0], at[1] + BRANCH_LINE * len(above) + 3 * bool(above)
    wide = frame.wide(node, left=left)
    room = wide - 2 * INSET
    lines = wrapped(step_words(node), room=room, size=TYPE, most=MOST_LINES)
    both = width_of(f"{lines[-1]}  {worth_words(node)}", size=TYPE)
    box = _Box(
        node=node,
        left=left,
        wide=wide,
        top=top,
        above=above,
        lines=lines,
        bottom=0,
        is_beside=not isinstance(node, Fork) and both <= room,
    )
    return replace(box, bottom=top + box.high + APART)


def _drawn(box: _Box) -> Iterator[Element]:
    yield from _lines_out(box)
    yield from _frame(box)
    yield from _words(box)
    for each in box.then:
        yield from _drawn(each)


def _lines_out(box: _Box) -> Iterator[Element]:
    """One line that divides to every box that follows."""
    right = box.left + box.wide
    for each in box.then:
        yield element(
            "path",
            d=f"M{right:.1f} {box.middle:.1f}h9V{each.middle:.1f}H{each.left:.1f}",
            fill="none",
            stroke="var(--ink)",
            stroke_width=1.6,
        )


def _frame(box: _Box) -> Iterator[Element]:
    is_request = isinstance(box.node, Fork)
    yield element(
        "rect",
        x=box.left,
        y=box.top,
        width=box.wide,
        height=box.high,
        fill="var(--sheet)",
        stroke="var(--ink)" if is_request else "var(--rule)",
        stroke_width=2.4 if is_request else 1.4,
    )


def _words(box: _Box) -> Iterator[Element]:
    for row, text in enumerate(box.above):
        y = box.top - 6 - BRANCH_LINE * (len(box.above) - 1 - row)
        yield element("text", text=text, x=box.left, y=y, class_="halo")
    x, y = box.left + INSET, box.top + INSET + SIZE - 2
    for text in box.lines:
        yield element("text", text=text, x=x, y=y, font_size=TYPE, class_="b")
        y += LINE
    if isinstance(box.node, Fork):
        yield element("text", text=points_words(box.node.points), x=x, y=y)
        y += LINE
    yield element(
        "text",
        text=worth_words(box.node),
        x=box.left + box.wide - INSET if box.is_beside else x,
        y=y - LINE if box.is_beside else y,
        font_size=TYPE,
        text_anchor="end" if box.is_beside else None,
        class_="pen b",
    )


def way_words(branch: Branch, *, asked: Purchase) -> str:
    """What leads on, with its chance: `refused (1/3)`."""
    said = branch_words(branch, asked=asked)
    chance = chance_words(branch.chance).partition(",")[0]
    return said if branch.chance == 1 else f"{said} ({chance})"
