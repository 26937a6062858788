"""What a drawing says, taken out of it again."""

from itertools import combinations
from xml.etree import ElementTree as ET

from paradestate.sheet.lettering import width_of
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


def texts_outside(drawing: Drawing) -> list[str]:
    """Texts that run out of the drawing on the left or on the right."""
    width = float(root_of(drawing).get("viewBox", "").split(" ")[2])
    texts = root_of(drawing).iter("text")
    return [text_of(each) for each in texts if _left(each) < -0.1 or _right(each) > width + 0.1]


def texts_on_others(drawing: Drawing) -> list[tuple[str, str]]:
    """Pairs of texts that lie on each other; those of a group move with it and aren't looked at."""
    return [
        (text_of(one), text_of(other))
        for one, other in combinations(root_of(drawing).findall("text"), 2)
        if _left(one) < _right(other)
        and _left(other) < _right(one)
        and abs(_number(one, "y") - _number(other, "y")) < LINE
    ]


LINE = 12
"""Letters of two lines that are less apart touch."""


def _left(text: ET.Element) -> float:
    share = {"middle": 0.5, "end": 1}.get(text.get("text-anchor", ""), 0)
    return _number(text, "x") - share * _wide(text)


def _right(text: ET.Element) -> float:
    return _left(text) + _wide(text)


def _wide(text: ET.Element) -> float:
    return width_of(text_of(text), size=float(text.get("font-size", "14")))


def _number(text: ET.Element, name: str) -> float:
    return float(text.get(name, "nan"))
