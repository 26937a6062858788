"""Rear marks: what a stand's own side sees of it, stuck on behind its figures."""

from collections.abc import Iterator
from dataclasses import dataclass

from paradestate.core.finding import Finding, Level
from paradestate.core.imposition.shelf import imposed
from paradestate.core.mark.code import Mark
from paradestate.core.outline import Rectangle, millimetres
from paradestate.core.paper.ground import Ground
from paradestate.core.paper.labels import to_label
from paradestate.core.paper.paper import Draft, ImposedPage, pages_of
from paradestate.core.place import nearest_place
from paradestate.core.sentence.wording import several

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
    findings = tuple(_without_mark(ground))
    return Draft(shown=RearMarks(pages=pages) if pages else None, findings=findings)


def _without_mark(ground: Ground) -> Iterator[Finding]:
    """Stands of companies that colours are named for, and that bear none."""
    without = [
        each.unit.formation
        for each in ground.marks.stands
        if each.mark is None and each.stand.is_wanted and not each.stand.printed
    ]
    if not without or not ground.marks.colours:
        return
    yield Finding(
        level=Level.WARN,
        code="stands-without-mark",
        message=f"{several(len(without), 'stand')} of companies bear no mark: there are too few "
        "colours, or too few signs.",
        effect="Their labels show the name alone, and they have no rear mark.",
        hint="The command 'marks' says what would help.",
        place=nearest_place(ground.force.places, ("marks",)),
    )
