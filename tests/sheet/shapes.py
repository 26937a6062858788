"""Shapes read back out of a drawing."""

from xml.etree import ElementTree as ET

from paradestate.sheet.svg import Drawing

SVG = "{http://www.w3.org/2000/svg}"


def root_of(drawing: Drawing) -> ET.Element:
    return ET.fromstring(drawing.svg)  # noqa: S314 - made by ourselves


def shapes(drawing: Drawing, tag: str, **attributes: str) -> list[ET.Element]:
    """The elements of a drawing with a tag and these attributes, in the order they are drawn."""
    wanted = {name.replace("_", "-"): value for name, value in attributes.items()}
    return [
        found
        for found in root_of(drawing).iter()
        if found.tag.removeprefix(SVG) == tag
        and all(found.get(name) == value for name, value in wanted.items())
    ]


def words_in(drawing: Drawing) -> list[str]:
    return [found.text or "" for found in shapes(drawing, "text")]


def numbers(element: ET.Element, *names: str) -> list[float]:
    return [float(element.get(name, "nan")) for name in names]
