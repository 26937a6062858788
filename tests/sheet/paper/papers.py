"""Papers that tests look at, each set only once."""

import io
from collections.abc import Callable
from dataclasses import dataclass
from functools import cache
from typing import Any, TypeAlias

from pdfplumber.pdf import PDF

from paradestate.core.paper.ground import Ground
from paradestate.core.paper.key_card import key_cards
from paradestate.core.paper.labels import labels
from paradestate.core.paper.markers import markers
from paradestate.core.paper.message_slips import message_slips
from paradestate.core.paper.paper import Draft, Heading, Paper
from paradestate.core.paper.rear_marks import rear_marks
from paradestate.core.paper.request_slips import request_slips
from paradestate.core.paper.show_labels import show_labels
from paradestate.core.paper.templates import templates
from paradestate.core.paper.tray_plans import tray_plans
from paradestate.sheet.paper.typesetting import Printed, printed
from tests.core.paper.grounds import all_wished, ground_of
from tests.core.paper.trays import lids_of
from tests.forces import force_from

MILLIMETRES_PER_POINT = 25.4 / 72
CLOSE = 0.05
EVERY: dict[str, Callable[[Ground], Draft[Any]]] = {
    "labels": labels,
    "rear marks": rear_marks,
    "templates": templates,
    "markers": markers,
    "request slips": request_slips,
    "message slips": message_slips,
    "key card": key_cards,
    "show labels": show_labels,
    "tray plans": lambda ground: tray_plans(lids_of(ground), layout=ground.layout),
}


@cache
def paper(name: str) -> Paper[Any]:
    """A paper of the example with everything that it wishes for."""
    ground = all_wished()
    shown = EVERY[name](ground).shown
    assert shown is not None
    return Paper(
        name=name,
        heading=Heading(title=name.capitalize(), force=ground.force.title, date=ground.date),
        layout=ground.layout,
        shown=shown,
    )


@cache
def made(name: str) -> Printed:
    """The same, set."""
    return printed(paper(name))


Line: TypeAlias = tuple[float, ...]
"""Left, top, right, bottom, in millimetres."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Page:
    """One page as it was read from a file."""

    size: tuple[float, float]
    lines: tuple[Line, ...]
    rims: tuple[Line, ...]
    """Of discs: the box of the inner edge of the line that is drawn around each."""

    def has_line(self, meant: Line) -> bool:
        """Whether a line is where it is meant to be."""
        return any(is_near(line, meant) for line in self.lines)


def is_near(one: Line, other: Line) -> bool:
    """Whether no number differs by more than 0.05 mm."""
    return all(abs(a - b) <= CLOSE for a, b in zip(one, other, strict=True))


def read(pdf: bytes) -> tuple[Page, ...]:
    """The pages of a file."""
    with opened(pdf) as file:
        return tuple(_page(page) for page in file.pages)


def texts(pdf: bytes) -> tuple[str, ...]:
    """What stands on the pages of a file."""
    with opened(pdf) as file:
        return tuple(page.extract_text() for page in file.pages)


def one_label(*, title: str = "Labels", force: str = "") -> Paper[Any]:
    """A paper of one label under a heading of its own."""
    ground = ground_of(
        force_from("stands: {scout: {base: 40 x 20 mm}}\nformations: {top: {parts: {scout: 1}}}\n")
    )
    about = Heading(title=title, force=force, date=ground.date)
    shown = labels(ground).shown
    return Paper(name="labels", heading=about, layout=ground.layout, shown=shown)


@cache
def pages(name: str) -> tuple[Page, ...]:
    """The pages of a paper of the example."""
    return read(made(name).pdf)


def _page(page: Any) -> Page:  # noqa: ANN401 - the library has no types
    return Page(
        size=(page.width * MILLIMETRES_PER_POINT, page.height * MILLIMETRES_PER_POINT),
        lines=tuple(_box(line) for line in page.lines),
        rims=tuple(
            _box(curve, inside=curve["linewidth"] / 2) for curve in page.curves if curve["stroke"]
        ),
    )


def _box(drawn: dict[str, Any], *, inside: float = 0) -> Line:
    sides = (
        drawn["x0"] + inside,
        drawn["top"] + inside,
        drawn["x1"] - inside,
        drawn["bottom"] - inside,
    )
    return tuple(side * MILLIMETRES_PER_POINT for side in sides)


def opened(pdf: bytes) -> PDF:
    return PDF.open(io.BytesIO(pdf))
