"""Labels: one for the underside of each stand that has to be made, a millimetre inside its edge."""

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from paradestate.core.finding import Finding, Level
from paradestate.core.imposition.shelf import imposed
from paradestate.core.mark.code import Mark
from paradestate.core.outline import Outline
from paradestate.core.paper.brought import brought
from paradestate.core.paper.ground import Ground
from paradestate.core.paper.label_face import LabelFace, name_lines
from paradestate.core.paper.label_size import label_of
from paradestate.core.paper.label_tick import label_tick
from paradestate.core.paper.paper import Draft, ImposedPage, pages_of
from paradestate.core.paper.piece import Piece, too_large
from paradestate.core.place import nearest_place


@dataclass(frozen=True, slots=True, kw_only=True)
class Labels:
    """All labels on their pages."""

    pages: tuple[ImposedPage[LabelFace], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class ToLabel:
    """A stand that has to be made, and so wants a label."""

    name: str
    pattern: str
    mark: Mark | None
    rear: Mark | None


def labels(ground: Ground) -> Draft[Labels]:
    """A label for each stand whose size is known: those of the force, then those of the plan."""
    wanted = to_label(ground)
    sized = [(each, size) for each in wanted if (size := _size(ground, each)) is not None]
    pieces = [
        Piece(
            name=f"The label of {each.pattern}",
            outline=size,
            place=nearest_place(ground.force.places, ("stands", each.pattern)),
        )
        for each, size in sized
    ]
    imposition = imposed([piece.outline for piece in pieces], ground.layout)
    findings = (
        *_without_size(ground, wanted),
        *too_large(pieces, imposition.without_room, layout=ground.layout),
    )
    faces = (LabelFace(mark=each.mark, lines=name_lines(each.name)) for each, _ in sized)
    pages = pages_of(imposition, tuple(faces))
    if not pages:
        return Draft(shown=None, findings=findings)
    large = [sized[number][0].name for number in imposition.without_room]
    unsized = [each.name for each in wanted if _size(ground, each) is None]
    tick = label_tick(
        ground, labels=sum(len(page.pieces) for page in pages), left_out=(*large, *unsized)
    )
    return Draft(shown=Labels(pages=pages), findings=findings, ticks=(tick,))


def to_label(ground: Ground) -> tuple[ToLabel, ...]:
    """Every stand that has to be made: wanted and not printed, those of the plan after the rest."""
    raised = [
        ToLabel(
            name=marked.stand.name,
            pattern=marked.stand.pattern,
            mark=marked.mark,
            rear=marked.rear,
        )
        for marked in ground.marks.stands
        if marked.stand.is_wanted and not marked.stand.printed
    ]
    taken = [
        ToLabel(name=each.name, pattern=each.pattern, mark=None, rear=None)
        for each in brought(ground)
        if not ground.force.stands[each.pattern].printed
    ]
    return (*raised, *taken)


def _size(ground: Ground, stand: ToLabel) -> Outline | None:
    outline = ground.pattern(stand.pattern).outline
    return None if outline is None else label_of(outline)


def _without_size(ground: Ground, wanted: Sequence[ToLabel]) -> Iterator[Finding]:
    without = Counter(each.pattern for each in wanted if _size(ground, each) is None)
    for pattern, number in without.items():
        yield Finding(
            level=Level.WARN,
            code="label-without-size",
            message=f"{pattern}: its size isn't known, or it is too small for a label.",
            effect=f"{number} of its stands get no label.",
            hint="Give it a base, or a footprint where it has none.",
            place=nearest_place(ground.force.places, ("stands", pattern)),
        )
