"""Boxes and sizes that tests of sheets are made of."""

from paradestate.core.imposition.frame import Frame
from paradestate.core.outline import Disc, Outline, Rectangle, millimetres


def frame(*, left: int | str, top: int | str, width: int | str, height: int | str) -> Frame:
    return Frame(
        left=millimetres(left),
        top=millimetres(top),
        width=millimetres(width),
        height=millimetres(height),
    )


def holds(outer: Frame, inner: Frame) -> bool:
    """Whether one box lies within another; edges may touch."""
    return (
        outer.left <= inner.left
        and outer.top <= inner.top
        and inner.right <= outer.right
        and inner.bottom <= outer.bottom
    )


def overlap(one: Frame, other: Frame) -> bool:
    """Whether two boxes have more in common than an edge."""
    return (
        one.left < other.right
        and other.left < one.right
        and one.top < other.bottom
        and other.top < one.bottom
    )


def rectangle(width: int | str, depth: int | str) -> Rectangle:
    return Rectangle(width=millimetres(width), depth=millimetres(depth))


def disc(diameter: int | str) -> Disc:
    return Disc(diameter=millimetres(diameter))


MARENZ: tuple[Outline, ...] = (
    *[rectangle(38, 18)] * 28,
    *[disc(28)] * 6,
    disc(38),
    *[rectangle(13, 32)] * 2,
)
"""The labels of the battalion of the bundled example."""
