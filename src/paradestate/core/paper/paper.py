"""The shape of a paper: what stands at its head and foot, and what it shows.

A paper is a module here that says what it shows as frozen values (`labels`, `templates`, ...), a
template of the same name in `sheet/paper/template`, and a line in the journey's list of papers.
Values go to the template as they are, field by field; nothing else does.
"""

import datetime
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Generic, TypeVar

from paradestate.core.finding import Finding
from paradestate.core.imposition.cut_mark import CutMark, cut_marks
from paradestate.core.imposition.frame import Frame
from paradestate.core.imposition.layout import Layout
from paradestate.core.imposition.second_side import backs, quarters
from paradestate.core.imposition.shelf import Imposition, Laid
from paradestate.core.sentence.cross_check import Tick

Shown_co = TypeVar("Shown_co", covariant=True)
Face_co = TypeVar("Face_co", covariant=True)


@dataclass(frozen=True, slots=True, kw_only=True)
class Heading:
    """What stands at the head and foot of every page."""

    title: str
    """Of the paper."""
    force: str
    """Title of the force; empty where the reader isn't to know it."""
    date: datetime.date
    """The day of the force's state that the paper shows; nothing of it is newer."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Paper(Generic[Shown_co]):
    """One paper, ready for its template."""

    name: str
    """Of the paper, its file and its template, such as `labels`."""
    heading: Heading
    layout: Layout
    shown: Shown_co


@dataclass(frozen=True, slots=True, kw_only=True)
class Draft(Generic[Shown_co]):
    """What a paper shows, or None where there is nothing to print, with what is doubtful in it."""

    shown: Shown_co | None
    findings: tuple[Finding, ...] = ()
    ticks: tuple[Tick, ...] = ()
    """Cross-checks that go with it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Placed(Generic[Face_co]):
    """A piece on its page with what is printed on it."""

    frame: Frame
    quarters: int
    """Quarter turns against the clock by which it lies turned on its page."""
    is_round: bool
    face: Face_co


@dataclass(frozen=True, slots=True, kw_only=True)
class ImposedPage(Generic[Face_co]):
    """One side of a page of pieces to be cut out."""

    pieces: tuple[Placed[Face_co], ...]
    marks: tuple[CutMark, ...]
    is_second_side: bool = False


def frames_of(shown: object) -> Iterator[Frame]:
    """The frames of every piece of a paper of pieces; none of a paper that is read."""
    pages = getattr(shown, "pages", ())
    for page in pages:
        if isinstance(page, ImposedPage):
            yield from (piece.frame for piece in page.pieces)


def pages_of(
    imposition: Imposition, faces: tuple[Face_co, ...], *, rears: tuple[Face_co, ...] = ()
) -> tuple[ImposedPage[Face_co], ...]:
    """The pages with the face of each piece; with `rears` the back of each page behind it."""
    pages = []
    for page in imposition.pages:
        pages.append(_side(page, faces, layout=imposition.layout))
        if rears:
            back = backs(page, imposition.layout)
            pages.append(_side(back, rears, layout=imposition.layout, is_second_side=True))
    return tuple(pages)


def _side(
    page: tuple[Laid, ...],
    faces: tuple[Face_co, ...],
    *,
    layout: Layout,
    is_second_side: bool = False,
) -> ImposedPage[Face_co]:
    return ImposedPage(
        pieces=tuple(
            Placed(
                frame=laid.frame,
                quarters=quarters(laid, layout) if is_second_side else int(laid.is_turned),
                is_round=laid.is_round,
                face=faces[laid.piece],
            )
            for laid in page
        ),
        marks=cut_marks(page, gutter=layout.gutter),
        is_second_side=is_second_side,
    )
