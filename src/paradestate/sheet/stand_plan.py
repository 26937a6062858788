"""One stand from above, to scale: its base, its figures on their places, its measures.

Two sorts are made of the same parts: one as wide as a page gives it room, in units of about a
pixel, and one in full size for paper, in millimetres. The front is at the top.
"""

from collections.abc import Iterable, Iterator, Mapping
from string import ascii_lowercase

from paradestate.core.outline import Disc, Millimetres, Outline, decimal_text, outline_text
from paradestate.core.sentence.wording import counted
from paradestate.core.spot import Spot, depth_of, width_of
from paradestate.core.stand_account import FigurePlaced, StandAccount
from paradestate.sheet.measure import (
    HAIR,
    INK,
    RED,
    SHEET,
    TINT,
    Pen,
    measure_across,
    measure_down,
    point,
    scale_line,
)
from paradestate.sheet.svg import Drawing, Element, drawing, element, group

PAGE_TYPE, PAPER_TYPE = 14, 3.4
"""Size of type: pixels of a page, millimetres of paper."""

PAGE_LINE, PAPER_LINE = 1.4, 0.2
"""Breadth of a line in the same units: fine on paper, since a stand is cut out along it."""

RIM, FRONT = 1.4, 3
"""Breadths of a line that the rim of a stand has, and its front."""

SCALE_LINE = 50
"""Millimetres."""

GREATEST_SCALE = 13
"""Pixels to a millimetre."""

_ABOVE, _LEFT, _RIGHT, _BELOW = 1.8, 0.2, 5, 2.4
"""What is kept free around the base, in sizes of type."""

_WORDS_OUTSIDE = 11
"""Sizes of type that the words take which say for how many no place was found."""


def page_scale(outlines: Iterable[Outline], *, width: float) -> float:
    """The greatest scale at which each of these has room on drawings of one width.

    Units for one millimetre. The scale line has to have room as well, and none is drawn deeper
    than the drawing is wide.
    """
    room = width - (_LEFT + _RIGHT) * PAGE_TYPE
    longest = float(SCALE_LINE)
    for outline in outlines:
        longest = max(longest, float(width_of(outline)), float(depth_of(outline)) * room / width)
    return min(room / longest, GREATEST_SCALE)


def stand_plan(account: StandAccount, *, width: float, scale: float) -> Drawing | None:
    """The stand on a drawing of a width, at a scale; None where no size is given.

    A stand that is too wide for that scale is drawn at its own.
    """
    outline = account.stand.outline
    if outline is None:
        return None
    pen = Pen(
        scale=min(scale, page_scale([outline], width=width)), type_size=PAGE_TYPE, line=PAGE_LINE
    )
    elements, height = _plan(account, outline, pen=pen)
    line = height + 1.6 * PAGE_TYPE
    elements.extend(scale_line(pen, at=(_LEFT * PAGE_TYPE, line), millimetres=SCALE_LINE))
    return drawing(elements, size=(width, line + 1.5 * PAGE_TYPE), words=plan_words(account))


def full_size_plan(account: StandAccount) -> Drawing | None:
    """The stand at one millimetre of paper for each of its own; None where no size is given."""
    outline = account.stand.outline
    if outline is None:
        return None
    pen = Pen(scale=1, type_size=PAPER_TYPE, line=PAPER_LINE)
    elements, height = _plan(account, outline, pen=pen)
    width = float(width_of(outline)) + (_LEFT + _RIGHT) * PAPER_TYPE
    if account.without_place:
        width = max(width, _WORDS_OUTSIDE * PAPER_TYPE)
    return drawing(
        elements,
        size=(width, height),
        words=plan_words(account),
        class_="full-size",
        in_millimetres=True,
    )


def full_size_line(millimetres: int = 100) -> Drawing:
    """A line of so many millimetres of paper, to be measured."""
    pen = Pen(scale=1, type_size=PAPER_TYPE, line=PAPER_LINE)
    return drawing(
        scale_line(pen, at=(0.5, PAPER_TYPE), millimetres=millimetres),
        size=(millimetres + 1, 2.5 * PAPER_TYPE),
        words=f"A line of {millimetres} mm, with a tick at every 10.",
        class_="full-size",
        in_millimetres=True,
    )


def plan_words(account: StandAccount) -> str:
    """What the drawing shows, in a sentence."""
    stand = account.stand
    sort = "model without a base" if stand.base is None else "stand"
    said = f"{stand.name} from above, a {sort} of {outline_text(stand.outline)}"
    if account.placed:
        held: dict[str, int] = {}
        for figure in account.placed:
            held[figure.kind] = held.get(figure.kind, 0) + 1
        said += f", with {counted(held)} on their places"
    if account.without_place:
        said += f"; no place was found for {counted(account.without_place)}"
    return f"{said}. Its front is at the top."


def letters_of(account: StandAccount) -> Mapping[str, str]:
    """Kind to the letter that stands for it on the drawing, where there are several kinds."""
    kinds = tuple(account.stand.modelled)
    return dict(zip(kinds, ascii_lowercase, strict=False)) if len(kinds) > 1 else {}


def _plan(account: StandAccount, outline: Outline, *, pen: Pen) -> tuple[list[Element], float]:
    """The stand with its measures, and how deep that is."""
    size = pen.type_size
    corner = _LEFT * size, _ABOVE * size
    width, depth = (float(side) * pen.scale for side in (width_of(outline), depth_of(outline)))
    right, below = corner[0] + width + size, corner[1] + depth + size
    elements = [
        *_base(account, outline, corner=corner, pen=pen),
        *_front(outline, corner=corner, pen=pen),
        *(_figure(account, figure, corner=corner, pen=pen) for figure in account.placed),
        measure_across(pen, at=(corner[0], below), length=width),
        _words_across(outline, left=corner[0], width=width, below=below, pen=pen),
    ]
    if not isinstance(outline, Disc):
        middle = corner[1] + depth / 2 + size / 3
        elements.append(measure_down(pen, at=(right, corner[1]), length=depth))
        elements.append(pen.text(_mm(depth_of(outline)), at=(right + 0.6 * size, middle)))
    height = corner[1] + depth + _BELOW * size
    if account.without_place:
        outside, more = _outside(account, outline, top=height + 0.9 * size, pen=pen)
        elements.extend(outside)
        height += 0.9 * size + more
    return elements, height


def _mm(length: Millimetres) -> str:
    return f"{decimal_text(length)} mm"


def _words_across(
    outline: Outline, *, left: float, width: float, below: float, pen: Pen
) -> Element:
    """The width under its measure: in the middle, or from its left where that is too short."""
    size, said = pen.type_size, _mm(width_of(outline))
    words = f"{said} disc" if isinstance(outline, Disc) else said
    if width < len(words) * size / 2:
        return pen.text(words, at=(left, below + 1.3 * size))
    return pen.text(words, at=(left + width / 2, below + 1.3 * size), anchor="middle")


def _base(
    account: StandAccount, outline: Outline, *, corner: tuple[float, float], pen: Pen
) -> Iterator[Element]:
    """The rim, and within it the line that figures keep to."""
    is_model = account.stand.base is None
    size = float(width_of(outline)) * pen.scale, float(depth_of(outline)) * pen.scale
    is_round = isinstance(outline, Disc)
    fill = TINT if is_model else SHEET
    yield _shape(corner, size, is_round=is_round, fill=fill, stroke_width=pen.line * RIM)
    edge = float(account.stand.edge) * pen.scale
    if account.placed and 0 < 2 * edge < min(size):
        yield _shape(
            (corner[0] + edge, corner[1] + edge),
            (size[0] - 2 * edge, size[1] - 2 * edge),
            is_round=is_round,
            stroke=HAIR,
            stroke_width=pen.line * 0.8,
            dashes=pen.line * 2,
        )


def _shape(
    corner: tuple[float, float],
    size: tuple[float, float],
    *,
    is_round: bool,
    stroke_width: float,
    fill: str = "none",
    stroke: str = INK,
    dashes: float = 0,
) -> Element:
    """A disc or a rectangle in its box."""
    dasharray = f"{dashes:.2f} {dashes:.2f}" if dashes else None
    if is_round:
        radius = size[0] / 2
        return element(
            "circle",
            cx=corner[0] + radius,
            cy=corner[1] + radius,
            r=radius,
            fill=fill,
            stroke=stroke,
            stroke_width=stroke_width,
            stroke_dasharray=dasharray,
        )
    return element(
        "rect",
        x=corner[0],
        y=corner[1],
        width=size[0],
        height=size[1],
        fill=fill,
        stroke=stroke,
        stroke_width=stroke_width,
        stroke_dasharray=dasharray,
    )


def _front(outline: Outline, *, corner: tuple[float, float], pen: Pen) -> Iterator[Element]:
    """A heavy line along the front, within the rim; an arrow from it, and the word."""
    x, y = corner
    width, size = float(width_of(outline)) * pen.scale, pen.type_size
    inwards = pen.line * (FRONT - RIM) / 2
    if isinstance(outline, Disc):
        middle, radius = width / 2, max(width / 2 - inwards, 0)
        side, deep = radius / 2, middle - radius * 3**0.5 / 2  # the front sixth: 30 degrees a side
        path = f"M{point(x + middle - side, y + deep)}A{radius:.2f} {radius:.2f} 0 0 1 "
        path += point(x + middle + side, y + deep)
    else:
        path = f"M{point(x, y + inwards)}h{width:.2f}"
    yield pen.stroke(path, breadth=FRONT)
    tip = x + width / 2
    arrow = f"M{point(tip, y - 1.1 * size)}l{0.45 * size:.2f} {0.65 * size:.2f}h-{0.9 * size:.2f}z"
    yield element("path", d=arrow, fill=INK)
    yield pen.text("front", at=(tip + 0.8 * size, y - 0.5 * size))


def _figure(
    account: StandAccount, figure: FigurePlaced, *, corner: tuple[float, float], pen: Pen
) -> Element:
    spot = figure.spot
    at = corner[0] + float(spot.left) * pen.scale, corner[1] + float(spot.front) * pen.scale
    size = float(spot.width) * pen.scale, float(spot.depth) * pen.scale
    parts = [
        _shape(at, size, is_round=_is_round(spot), fill=TINT, stroke_width=pen.line),
        *_sign(account, figure.kind, at=at, size=size, pen=pen),
    ]
    return group(*parts)


def _is_round(spot: Spot) -> bool:
    return isinstance(spot.outline, Disc)


def _sign(
    account: StandAccount,
    kind: str,
    *,
    at: tuple[float, float],
    size: tuple[float, float],
    pen: Pen,
) -> Iterator[Element]:
    """A solid disc within a telltale; a letter where kinds have to be told apart."""
    middle = at[0] + size[0] / 2, at[1] + size[1] / 2
    letter = letters_of(account).get(kind, "")
    is_telltale = kind in account.stand.shows
    has_room = min(size) >= pen.type_size
    if is_telltale:
        radius = min(size) * (0.4 if letter and has_room else 0.25)
        yield element("circle", cx=middle[0], cy=middle[1], r=radius, fill=INK)
    if letter and has_room:
        height = middle[1] + pen.type_size * 0.33
        made = pen.text(letter, at=(middle[0], height), anchor="middle")
        if is_telltale:
            made.set("fill", SHEET)
        yield made


def _outside(
    account: StandAccount, outline: Outline, *, top: float, pen: Pen
) -> tuple[list[Element], float]:
    """Figures for which no place was found, as many as the stand is wide, and how deep that is."""
    size = pen.type_size
    width = float(width_of(outline)) * pen.scale + (_LEFT + _RIGHT) * size
    elements: list[Element] = []
    x, deepest = _LEFT * size, 0.0
    for kind, number in account.without_place.items():
        footprint = account.footprints[kind]
        across, deep = (
            float(side) * pen.scale for side in (width_of(footprint), depth_of(footprint))
        )
        for _ in range(min(number, int((width - x) // (across + 0.4 * size)))):
            is_round = isinstance(footprint, Disc)
            box = (x, top), (across, deep)
            elements.append(
                _shape(
                    *box,
                    is_round=is_round,
                    stroke=RED,
                    stroke_width=pen.line * 1.4,
                    dashes=2 * pen.line,
                )
            )
            x += across + 0.4 * size
            deepest = max(deepest, deep)
    below = top + deepest + (1.2 if deepest else 0.8) * size
    number = sum(account.without_place.values())
    elements.append(pen.text(f"no place found for {number}", at=(_LEFT * size, below)))
    return elements, below + 0.4 * size - top
