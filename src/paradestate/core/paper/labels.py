"""Labels: one for the underside of each stand that has to be made, a millimetre inside its edge."""

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass

from paradestate.core.finding import Finding, Level
from paradestate.core.imposition.shelf import imposed
from paradestate.core.outline import Outline, outline_text
from paradestate.core.paper.ground import Ground
from paradestate.core.paper.label_size import label_of
from paradestate.core.paper.mark_face import MarkFace, mark_faces
from paradestate.core.paper.paper import Draft, ImposedPage, pages_of
from paradestate.core.place import nearest_place
from paradestate.core.unfolding import Stand


@dataclass(frozen=True, slots=True, kw_only=True)
class LabelSize:
    """So many labels of one size."""

    size: str
    number: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Labels:
    """All labels on their pages."""

    pages: tuple[ImposedPage[MarkFace], ...]
    sizes: tuple[LabelSize, ...]
    labelled: int
    """Labels on these pages."""
    stands: int
    """Stands to be labelled, counted apart from the labels."""


def labels(ground: Ground) -> Draft[Labels]:
    """A label for each wanted stand whose size is known."""
    faces = mark_faces(ground)
    wanted = [stand for stand in ground.made.stands if stand.is_wanted and not stand.printed]
    sized = [(stand, size) for stand in wanted if (size := _size(ground, stand)) is not None]
    if not sized:
        return Draft(shown=None, findings=tuple(_without_size(ground, wanted)))
    imposition = imposed([size for _, size in sized], ground.layout)
    pages = pages_of(imposition, tuple(faces[stand.name] for stand, _ in sized))
    numbers = Counter(size for _, size in sized)
    return Draft(
        shown=Labels(
            pages=pages,
            sizes=tuple(
                LabelSize(size=outline_text(size), number=number)
                for size, number in numbers.items()
            ),
            labelled=sum(len(page.pieces) for page in pages),
            stands=len(wanted),
        ),
        findings=tuple(_without_size(ground, wanted)),
    )


def _size(ground: Ground, stand: Stand) -> Outline | None:
    pattern = ground.force.stands.get(stand.pattern)
    outline = pattern.outline if pattern is not None else None
    return None if outline is None else label_of(outline)


def _without_size(ground: Ground, wanted: list[Stand]) -> Iterator[Finding]:
    without = Counter(stand.pattern for stand in wanted if _size(ground, stand) is None)
    for pattern, number in without.items():
        yield Finding(
            level=Level.WARN,
            code="label-without-size",
            message=f"{pattern}: its size isn't known, or it is too small for a label.",
            effect=f"{number} of its stands get no label.",
            hint="Give it a base, or a footprint where it has none.",
            place=nearest_place(ground.force.places, ("stands", pattern)),
        )
