"""Words at upright lines that mark places along an axis, so that they run into each other least."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import permutations

from paradestate.sheet.lettering import SIZE, width_of
from paradestate.sheet.svg import Element, element

ROW, LINE = 44, 19
"""Heights of the words of one line, and of a line of words."""
BESIDE = 8
CLEAR = 3


@dataclass(frozen=True, slots=True, kw_only=True)
class Label:
    """A line and its two lines of words."""

    x: float
    """Of the line."""
    left: float
    """Where its words begin."""
    texts: tuple[str, str]

    @property
    def right(self) -> float:
        """Where its words end."""
        return self.left + max(map(width_of, self.texts))

    @property
    def is_over(self) -> bool:
        """Whether the words lie over the line instead of beside it."""
        return self.left < self.x < self.right


def label(texts: tuple[str, str], *, x: float, width: int) -> Label:
    """The words right of the line, left of it, or where neither has room over it."""
    wide = max(map(width_of, texts))
    if x + BESIDE + wide <= width:
        return Label(x=x, left=x + BESIDE, texts=texts)
    return Label(x=x, left=max(min(x - BESIDE, width) - wide, 0), texts=texts)


def arranged(labels: Sequence[Label]) -> Sequence[Label]:
    """The labels from top to bottom, so that as few lines as can be run through words.

    Every order is tried: there should be few.
    """
    return min(permutations(labels), key=_crossings)


def _crossings(labels: Sequence[Label]) -> int:
    return sum(
        lower.left - CLEAR < upper.x < lower.right + CLEAR
        for row, upper in enumerate(labels)
        for lower in labels[row + 1 :]
    )


def drawn_label(each: Label, *, row: int, floor: float) -> Iterator[Element]:
    """The line down to the floor and its words, so many rows from the top."""
    top = ROW * row + 2
    begins = top + LINE * 2 + 3 if each.is_over else top
    yield element(
        "path",
        d=f"M{each.x:.2f} {begins}V{floor + 8:.2f}",
        stroke="var(--pencil)",
        stroke_width=3,
    )
    is_left = not each.is_over and each.left < each.x
    for place, text in enumerate(each.texts):
        yield element(
            "text",
            text=text,
            x=each.right if is_left else each.left,
            y=top + LINE * place + SIZE,
            text_anchor="end" if is_left else None,
            class_="pen b halo",
        )
