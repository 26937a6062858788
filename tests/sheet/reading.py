"""What a drawing says, taken out of it again."""

from xml.etree import ElementTree as ET

from paradestate.sheet.svg import Drawing


def root_of(drawing: Drawing) -> ET.Element:
    """The drawing as a tree."""
    return ET.fromstring(drawing.svg)  # noqa: S314 - our own


def texts_of(drawing: Drawing) -> list[str]:
    """Every text that is seen in it."""
    return [text_of(each) for each in root_of(drawing).iter("text")]


def text_of(element: ET.Element) -> str:
    """What is seen of a text: its own and that of its spans, and no title."""
    return (element.text or "") + "".join(span.text or "" for span in element.iter("tspan"))
