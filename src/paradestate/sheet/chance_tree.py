"""What may turn up of a plan: bands as thick as their chance, from the points to the last roll.

At the end of each band stands what it puts on the table, with its chance.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from paradestate.core.sentence.chance import chance_words, hundredths_words
from paradestate.core.support.turnout import PlanOdds
from paradestate.sheet.lettering import SIZE, width_of, wrapped
from paradestate.sheet.svg import Drawing, Element, drawing, element
from paradestate.sheet.turnout_tree import Ending, Way, turnout_tree

WIDE, PHONE = 720, 320
NARROW = 480
"""Up to this width most of it is for words."""
MOST_LEAVES = 8
MOST_TOLD = 4
"""Ends that the sentence tells."""
THICK = 160
"""Of a band that is certain."""
TRUNK, APART, BEND, TOP = 8, 12, 40, 4
NARROWEST, BROADEST = 56, 170
"""A column of bands that has room for words, and the broadest."""
LEAF, LINE = 16, 18
"""Size of a chance at an end, and the height of a line of words."""
MARGIN, MOST_LINES = 6, 4
FILLS = {
    Ending.WHOLE: "var(--ink)",
    Ending.PART: "var(--sheet)",
    Ending.FOLDED: "var(--sheet)",
    Ending.SHORT: "none",
    None: "var(--tint)",
}


def chance_tree(odds: PlanOdds, *, width: int = WIDE) -> Drawing:
    """The tree of what may turn up; small branches are folded together."""
    tree = turnout_tree(odds, most=MOST_LEAVES)
    shown_tree = tree if tree.ways else Way(chance=tree.chance, came="", ways=(tree,))
    frame = _frame(shown_tree, width=width)
    spots = tuple(_spots(shown_tree, frame, level=0, top=TOP))
    shown = (
        *(piece for spot in spots for piece in _bands(spot, frame)),
        *(_bar(spot, frame) for spot in spots if spot.ways),
        *(piece for spot in spots if not spot.ways for piece in _leaf(spot, frame)),
    )
    high = max(spot.bottom for spot in spots)
    return drawing(shown, size=(width, high), words=tree_words(tree))


def tree_words(tree: Way) -> str:
    """What the tree shows, in a sentence."""
    leaves = sorted(tree.leaves(), key=lambda each: -each.chance)
    told = [
        f"{leaf.words[:1].lower()}{leaf.words[1:]}: {chance_words(leaf.chance)}"
        for leaf in leaves[:MOST_TOLD]
    ]
    if len(leaves) > MOST_TOLD:
        rest = sum((leaf.chance for leaf in leaves[MOST_TOLD:]), start=0 * leaves[0].chance)
        told.append(f"otherwise: {chance_words(rest)}")
    return f"What may turn up: {'; '.join(told)}."


@dataclass(frozen=True, slots=True, kw_only=True)
class _Frame:
    width: int
    column: float
    """Breadth of a band from one roll to the next."""

    def x(self, level: int) -> float:
        """Where the bands of a level end; the trunk is level 0."""
        return TRUNK + self.column * level

    @property
    def bend(self) -> float:
        """How far a band runs before it is level."""
        return min(BEND, self.column / 2)

    def room(self, level: int) -> float:
        """For the words at an end."""
        return self.width - self.x(level) - 10


def _frame(tree: Way, *, width: int) -> _Frame:
    words = width * (0.34 if width > NARROW else 0.55)
    column = (width - words - TRUNK) / tree.depth
    return _Frame(width=width, column=min(column, BROADEST))


@dataclass(frozen=True, slots=True, kw_only=True)
class _Spot:
    """A branch with its place."""

    way: Way
    level: int
    middle: float
    bottom: float
    """Of all that belongs to it."""
    lines: tuple[str, ...] = ()
    """Of the words at an end."""
    ways: tuple["_Spot", ...] = ()

    @property
    def thick(self) -> float:
        """As thick as its chance."""
        return THICK * float(self.way.chance)


def _spots(way: Way, frame: _Frame, *, level: int, top: float) -> Iterator[_Spot]:
    """The branch and all under it, those under it first, each below the one before."""
    if not way.ways:
        yield _end(way, frame, level=level, top=top)
        return
    below: list[_Spot] = []
    bottom = top
    for each in way.ways:
        *inner, last = _spots(each, frame, level=level + 1, top=bottom)
        yield from inner
        yield last
        below.append(last)
        bottom = last.bottom
    half = THICK * float(way.chance) / 2
    middle = (below[0].middle + below[-1].middle) / 2
    held = max(min(middle, bottom - half), top + half)
    yield _Spot(way=way, level=level, middle=held, bottom=bottom, ways=tuple(below))


def _end(way: Way, frame: _Frame, *, level: int, top: float) -> _Spot:
    lines = wrapped(way.words, room=frame.room(level), most=MOST_LINES)
    high = max(THICK * float(way.chance), LINE * (len(lines) + 1) + 2)
    return _Spot(
        way=way, level=level, middle=top + high / 2, bottom=top + high + APART, lines=lines
    )


def _bands(spot: _Spot, frame: _Frame) -> Iterator[Element]:
    """From the bar of a branch to those that it divides into."""
    begins = spot.middle - spot.thick / 2
    for each in spot.ways:
        yield _band(each, frame, begins=begins)
        yield from _told(each, frame, parent=spot)
        begins += each.thick


def _band(spot: _Spot, frame: _Frame, *, begins: float) -> Element:
    left, right = frame.x(spot.level - 1), frame.x(spot.level)
    bend = left + frame.bend
    half = (left + bend) / 2
    top, bottom = spot.middle - spot.thick / 2, spot.middle + spot.thick / 2
    ends = begins + spot.thick
    is_short = spot.way.ending is Ending.SHORT
    return element(
        "path",
        d=f"M{left:.1f} {begins:.1f}C{half:.1f} {begins:.1f} {half:.1f} {top:.1f} {bend:.1f} "
        f"{top:.1f}H{right:.1f}V{bottom:.1f}H{bend:.1f}C{half:.1f} {bottom:.1f} {half:.1f} "
        f"{ends:.1f} {left:.1f} {ends:.1f}Z",
        fill=FILLS[spot.way.ending],
        stroke="var(--rule)" if is_short else "var(--ink)",
        stroke_width=1.5,
        stroke_dasharray="4 3" if is_short else None,
    )


def _told(spot: _Spot, frame: _Frame, *, parent: _Spot) -> Iterator[Element]:
    """What a band settles and its share of the branch before, where there is room for them."""
    share = chance_words(spot.way.chance / parent.way.chance).partition(",")[0]
    room = frame.column - frame.bend / 2 - TRUNK / 2
    both = [text for text in (spot.way.came, share) if text]
    texts = next((some for some in (both, [share]) if _fits(some, spot, room=room)), [])
    if spot.way.chance == 1 or frame.column < NARROWEST:
        return
    middle = frame.x(spot.level) - TRUNK / 2 - room / 2
    first = spot.middle - LINE * (len(texts) - 1) / 2 + SIZE * 0.36
    for row, text in enumerate(texts):
        yield element(
            "text",
            text=text,
            x=middle,
            y=first + LINE * row,
            text_anchor="middle",
            class_="b" if text == share else None,
            fill="var(--paper)" if spot.way.ending is Ending.WHOLE else None,
        )


def _fits(texts: Sequence[str], spot: _Spot, *, room: float) -> bool:
    return max(map(width_of, texts)) + MARGIN <= room and LINE * len(texts) <= spot.thick - 2


def _bar(spot: _Spot, frame: _Frame) -> Element:
    """Where a branch divides."""
    return element(
        "rect",
        x=frame.x(spot.level) - (TRUNK if spot.level == 0 else TRUNK / 2),
        y=spot.middle - spot.thick / 2,
        width=TRUNK,
        height=max(spot.thick, 1.5),
        fill="var(--ink)",
    )


def _leaf(spot: _Spot, frame: _Frame) -> Iterator[Element]:
    """The chance of an end, and under it what it puts on the table."""
    x = frame.x(spot.level) + 10
    first = spot.middle - LINE * len(spot.lines) / 2 + LEAF * 0.36
    chance = chance_words(spot.way.chance)
    if width_of(chance, size=LEAF) > frame.room(spot.level):
        chance = hundredths_words(spot.way.chance)
    yield element("text", text=chance, x=x, y=first, font_size=LEAF, class_="b")
    for row, line in enumerate(spot.lines, start=1):
        yield element("text", text=line, x=x, y=first + LINE * row)
