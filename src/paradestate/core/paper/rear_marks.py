"""Rear marks: what a stand's own side sees of it, stuck on behind its figures."""

from dataclasses import dataclass

from paradestate.core.imposition.shelf import imposed
from paradestate.core.mark.code import Mark
from paradestate.core.outline import Rectangle, millimetres
from paradestate.core.paper.ground import Ground
from paradestate.core.paper.labels import to_label
from paradestate.core.paper.paper import Draft, ImposedPage, pages_of

SIZE = Rectangle(width=millimetres(10), depth=millimetres(5))
"""Of a rear mark (common practice, no source)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class RearMark:
    """The mark of one stand."""

    mark: Mark


@dataclass(frozen=True, slots=True, kw_only=True)
class RearMarks:
    """All rear marks on their pages, in the order of the stands."""

    pages: tuple[ImposedPage[RearMark], ...]


def rear_marks(ground: Ground) -> Draft[RearMarks]:
    """One for each stand that has to be made and whose unit is marked."""
    faces = tuple(
        RearMark(mark=each.rear)
        for each in to_label(ground)
        if each.rear is not None and each.rear.colour
    )
    pages = pages_of(imposed([SIZE] * len(faces), ground.layout), faces)
    return Draft(shown=RearMarks(pages=pages) if pages else None)
