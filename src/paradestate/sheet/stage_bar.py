"""A bar of numbers by stage, finished first, and the small boxes of its key."""

from collections.abc import Mapping, Sequence

from paradestate.sheet.svg import Drawing, Element, Length, drawing, element
from paradestate.sheet.texture import INK, MISSING, RULE, SHEET, Texture, texture_of

HEIGHT = 20
KEY_SIZE = (34, 18)


def stage_bar(
    numbers: Mapping[str | None, int], *, stages: Sequence[str], words: str, width: int = 700
) -> Drawing:
    """Numbers by stage, None for what is missing; the whole width is their sum."""
    total = sum(numbers.values())
    order = [*reversed(stages), None]
    boxes: list[Element] = []
    left = 1.0
    for stage in order:
        number = numbers.get(stage, 0)
        if number and total:
            wide = (width - 2) * number / total
            boxes.append(_box(left, wide=wide, texture=texture_of(stage, stages=stages)))
            left += wide
    if not boxes:
        boxes.append(_box(1, wide=width - 2, texture=MISSING))
    return drawing(boxes, size=(width, HEIGHT + 2), words=words, class_="bar")


def key_box(stage: str | None, *, stages: Sequence[str]) -> Drawing:
    """The box that shows how a stage looks."""
    wide, high = KEY_SIZE
    box = _box(1, wide=wide - 2, texture=texture_of(stage, stages=stages), high=high - 2)
    return drawing([box], size=KEY_SIZE, words=stage or "missing", class_="key-box")


def printed_box() -> Drawing:
    """The ring by which a printed marker is known, beside the boxes of the stages."""
    wide, high = KEY_SIZE
    rings = [
        element("circle", cx=wide / 2, cy=high / 2, r=radius, fill=SHEET, stroke=stroke)
        for radius, stroke in ((high / 2 - 1, INK), (high / 3 - 1, RULE))
    ]
    return drawing(rings, size=KEY_SIZE, words="printed marker", class_="key-box")


def _box(left: Length, *, wide: Length, texture: Texture, high: Length = HEIGHT) -> Element:
    return element(
        "rect",
        x=left,
        y=1,
        width=wide,
        height=high,
        fill=texture.fill,
        stroke=texture.stroke,
        stroke_dasharray=texture.dash,
        stroke_width=1.5,
    )
