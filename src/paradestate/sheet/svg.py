"""SVG elements, and a drawing with the words that say what it shows.

Colours and widths are presentation attributes, never `style`, so that a strict content policy
lets them through; a colour that follows light and dark is `var(--ink)` and the like. Everything is
escaped by the standard library.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction
from typing import TypeAlias
from xml.etree import ElementTree as ET

Element: TypeAlias = ET.Element

Length: TypeAlias = int | float | Fraction
"""In the units of the drawing: millimetres for what is to scale, else about a pixel."""

PLACES = 2
"""Decimals of a length."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Drawing:
    """A picture ready for a page."""

    svg: str
    words: str
    """What it shows, in a sentence; the picture carries it for whoever can't see it."""


def length_text(length: Length) -> str:
    """A length with at most two decimals, none of them an idle nought."""
    return f"{float(length):.{PLACES}f}".rstrip("0").rstrip(".")


def element(
    tag: str, *children: Element, text: str = "", **attributes: str | Length | None
) -> Element:
    """An element; `stroke_width=2` becomes `stroke-width="2"`, `class_` is `class`.

    An attribute that is None is left out.
    """
    made = ET.Element(tag)
    for name, value in attributes.items():
        if value is not None:
            key = name.rstrip("_").replace("_", "-")
            made.set(key, value if isinstance(value, str) else length_text(value))
    made.text = text or None
    made.extend(children)
    return made


def group(*children: Element, **attributes: str | Length | None) -> Element:
    """Elements taken together."""
    return element("g", *children, text="", **attributes)


def link(*children: Element, href: str, words: str, class_: str = "") -> Element:
    """Elements that lead somewhere, with the words that are read out for them."""
    made = element("a", *children, href=href)
    if class_:
        made.set("class", class_)
    made.set("aria-label", words)
    return made


def drawing(
    elements: Iterable[Element],
    *,
    size: tuple[Length, Length],
    words: str,
    class_: str = "drawing",
    is_group: bool = False,
    is_hidden: bool = False,
    in_millimetres: bool = False,
) -> Drawing:
    """A drawing of a width and height in its own units, as wide as the page gives it room.

    With `is_group` it holds links and is read out as a group, else as one picture; with `is_hidden`
    it isn't read out. With `in_millimetres` its units are those of paper, and it asks for just that
    size.
    """
    width, height = map(length_text, size)
    root = element("svg", *elements, class_=class_)
    root.set("viewBox", f"0 0 {width} {height}")
    if in_millimetres:
        root.set("width", f"{width}mm")
        root.set("height", f"{height}mm")
    if is_hidden:
        root.set("aria-hidden", "true")
    else:
        root.set("role", "group" if is_group else "img")
        root.set("aria-label", words)
    return Drawing(svg=ET.tostring(root, encoding="unicode"), words=words)
