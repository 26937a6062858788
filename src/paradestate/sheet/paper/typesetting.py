"""A paper as PDF at exact size. The one place that knows the typesetting library.

values -> JSON -> our template, our faces, no others -> PDF

The same paper gives the same bytes: its date is that of its heading, and nothing of this computer
is asked for. What is printed goes in as data and is never read as a template.
"""

import json
from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache
from importlib import resources
from pathlib import Path

import typst

from paradestate.core.paper.paper import Paper
from paradestate.sheet.paper.error import TypesettingError
from paradestate.sheet.paper.plain_value import Plain, plain

FOLDER = Path(str(resources.files("paradestate.sheet.paper")))
FACES = FOLDER / "font"
TEMPLATES = FOLDER / "template"

SIGN = b"Parade State"
"""Stands in every file made here, among the words about it."""

NO_PACKAGES = TEMPLATES / "no-packages"
"""Where the library would look for templates of others; it isn't there."""


@dataclass(frozen=True, slots=True, kw_only=True)
class TypeUsed:
    """How large some words came out that were fitted into a room."""

    what: str
    points: Fraction


@dataclass(frozen=True, slots=True, kw_only=True)
class Printed:
    """A paper as it is sent to a printer."""

    pdf: bytes
    pages: int
    least_type: tuple[TypeUsed, ...]
    """For each sort of words that was fitted, the smallest that any of them came out."""
    pictures: tuple[bytes, ...] = ()
    """Each page as SVG, where that was asked for."""


def told_text(paper: Paper[object]) -> str:
    """All that a template is told of a paper; where it is the same, the paper is."""
    return json.dumps(_told(paper), ensure_ascii=False, sort_keys=True)


def printed(paper: Paper[object], *, with_pictures: bool = False) -> Printed:
    """The paper as PDF, with each page as a picture where that is asked for.

    Raises TypesettingError.
    """
    template = TEMPLATES / f"{paper.name.replace(' ', '-')}.typ"
    try:
        compiler = typst.Compiler(
            input=str(template),
            root=str(TEMPLATES),
            font_paths=_faces(),
            ignore_system_fonts=True,
            sys_inputs={"paper": told_text(paper)},
            package_path=str(NO_PACKAGES),
            package_cache_path=str(NO_PACKAGES),
        )
        pdf, warnings = compiler.compile_with_warnings(format="pdf", timestamp=0)
        sizes = json.loads(compiler.query("<type-size>", field="value"))
        pages = json.loads(compiler.query("<pages>", field="value", one=True))
        pictures = _pictures(compiler) if with_pictures else ()
    except RuntimeError as error:  # which the library's own error is one of
        raise TypesettingError(f"The paper '{paper.name}' can't be set: {error}") from error
    if not isinstance(pdf, bytes):  # one document is one file
        raise TypesettingError(f"The paper '{paper.name}' isn't one file.")
    if warnings:
        raise TypesettingError(f"The paper '{paper.name}' is set with a doubt: {warnings[0]}")
    return Printed(
        pdf=pdf,
        pages=int(pages),
        least_type=_least(sizes),
        pictures=pictures,
    )


def _pictures(compiler: typst.Compiler) -> tuple[bytes, ...]:
    """Each page as SVG."""
    drawn = compiler.compile(format="svg")
    each = drawn if isinstance(drawn, list) else [drawn]
    return tuple(page for page in each if page is not None)


def is_ours(data: bytes) -> bool:
    """Whether a file is a paper that was made here."""
    return data.startswith(b"%PDF-") and SIGN in data


def _told(paper: Paper[object]) -> dict[str, Plain]:
    """All that the template gets to know."""
    layout = paper.layout
    return {
        "name": paper.name,
        "heading": plain(paper.heading),
        "size": plain(layout.size),
        "page": plain(layout.page),
        "room": plain(layout.room),
        "gutter": plain(layout.gutter),
        "bleed": plain(layout.bleed),
        "scale": plain(layout.scale),
        "shown": plain(paper.shown),
    }


def _least(sizes: list[dict[str, object]]) -> tuple[TypeUsed, ...]:
    least: dict[str, Fraction] = {}
    for size in sizes:
        what, points = str(size["what"]), Fraction(str(size["points"]))
        least[what] = min(points, least.get(what, points))
    return tuple(TypeUsed(what=what, points=points) for what, points in least.items() if what)


@lru_cache(maxsize=1)
def _faces() -> typst.Fonts:
    return typst.Fonts(
        include_system_fonts=False, include_embedded_fonts=False, font_paths=[str(FACES)]
    )
