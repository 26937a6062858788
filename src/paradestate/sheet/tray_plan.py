"""A tray from above, to scale: every stand where it lies, with its number on the packing list.

Units are millimetres. All trays of a page are drawn into one width, so that each is true to every
other; rows have their labels at the left. Drawn from the value that the lid is printed from.
"""

from collections.abc import Callable, Collection, Iterator, Mapping
from dataclasses import dataclass

from paradestate.core.tray.lid import Lid, LidRow, LidStand
from paradestate.sheet.colour import sign_on
from paradestate.sheet.mark_plate import signs_on_stand
from paradestate.sheet.svg import Drawing, Element, drawing, element, group, link
from paradestate.sheet.texture import INK, RULE, SHEET

DESK, PHONE = 640, 320
"""About how many pixels wide it is on the screen, for the size of its type."""

TYPE_PIXELS = 15
MARK_ROOM = 0.8
"""Width that a mark needs beside a number, in widths of the number."""

MARGIN, NARROW_MARGIN = 3.6, 1.7
"""At the left of a tray, in sizes of type."""

BREADTH = 0.62
"""Width of a digit over the size of its type, with some air."""


@dataclass(frozen=True, slots=True, kw_only=True)
class TrayLook:
    """What all trays of a page share, and what a stand leads to."""

    width: float
    """Millimetres across the widest tray."""
    pixels: int = DESK
    address: Callable[[LidStand], str]
    """Where a stand leads; empty where it leads nowhere."""
    words: Callable[[LidStand], str]
    """What is read out for it."""
    keys: Mapping[str, int]
    """Stand to the number by which a page knows it."""
    chosen: str = ""
    barred: Collection[str] = ()
    """Stands that a rule keeps from changing places with the chosen one."""

    @property
    def label(self) -> str:
        """Before the number of a row."""
        return "Row " if self.pixels == DESK else ""

    @property
    def margin(self) -> float:
        """Room at the left for the labels of rows."""
        return self.size * self._sizes

    @property
    def size(self) -> float:
        """Size of type in millimetres of the drawing."""
        return TYPE_PIXELS * self.width / (self.pixels - self._sizes * TYPE_PIXELS)

    @property
    def _sizes(self) -> float:
        """The room at the left in sizes of type."""
        return MARGIN if self.label else NARROW_MARGIN


def tray_drawing(lid: Lid, *, look: TrayLook) -> Drawing:
    """The tray with its rows."""
    width, depth = float(lid.width), float(lid.depth)
    wall = element(
        "rect",
        class_="tray-wall",
        width=width,
        height=depth,
        fill=SHEET,
        stroke=INK,
        stroke_width=2,
        vector_effect="non-scaling-stroke",
    )
    rows = [part for row in lid.rows for part in _row(row, look=look)]
    inner = group(wall, *rows, transform=f"translate({look.margin:.2f} 1)")
    words = f"{lid.tray} from above, {len(lid.stands)} stands in {len(lid.rows)} rows"
    return drawing(
        [inner],
        size=(look.margin + look.width + 1, depth + 2),
        words=words,
        class_="drawing tray-plan",
        is_group=True,
    )


def _row(row: LidRow, *, look: TrayLook) -> Iterator[Element]:
    middle = float(row.starts + row.ends) / 2
    yield element(
        "text",
        text=f"{look.label}{row.number}",
        x=-look.size * 0.5,
        y=middle + look.size * 0.35,
        font_size=look.size,
        text_anchor="end",
        class_="soft",
    )
    for stand in row.stands:
        yield _stand(stand, look=look)


def _stand(stand: LidStand, *, look: TrayLook) -> Element:
    parts = (_body(stand, look=look), *_inside(stand, look=look))
    where = f"translate({float(stand.across):.2f} {float(stand.deep):.2f})"
    is_chosen = stand.name == look.chosen
    is_barred = stand.name in look.barred
    state = " chosen" if is_chosen else " barred" if is_barred else ""
    address = look.address(stand)
    if address:
        made = link(*parts, href=address, words=look.words(stand), class_=f"stand{state}")
    else:
        made = group(*parts, class_=f"stand{state}", role="img", aria_label=look.words(stand))
    made.set("transform", where)
    made.set("data-stand", str(look.keys[stand.name]))
    if is_chosen:
        made.set("aria-current", "true")
    return made


def _body(stand: LidStand, *, look: TrayLook) -> Element:
    width, depth = float(stand.width), float(stand.depth)
    ground = _ground(stand)
    fill = f"#{ground}" if ground else SHEET
    if stand.name in look.barred:
        fill = "url(#tx-barred)"
    if stand.is_round:
        made = element("circle", cx=width / 2, cy=depth / 2, r=width / 2 - 0.4)
    else:
        made = element("rect", x=0.4, y=0.4, width=width - 0.8, height=depth - 0.8)
    made.set("class", "body")
    made.set("fill", fill)
    made.set("stroke", INK)
    made.set("vector-effect", "non-scaling-stroke")
    return made


def _inside(stand: LidStand, *, look: TrayLook) -> Iterator[Element]:
    """The number on the packing list, behind the mark where there is room for both."""
    width, depth = float(stand.width), float(stand.depth)
    ground = "" if stand.name in look.barred else _ground(stand)
    mark = stand.mark if ground and not stand.is_round else None
    text = str(stand.number)
    size = min(look.size, width * 0.9 / (BREADTH * len(text)), depth * 0.8)
    number = size * BREADTH * len(text)
    room = width - number - size * 0.7
    if mark is not None and room >= MARK_ROOM * number:
        yield signs_on_stand(mark, size=(room, depth))
        left = room + size * 0.1
    else:
        left = (width - number) / 2
    yield element(
        "text",
        text=text,
        x=left + number / 2,
        y=depth / 2 + size * 0.36,
        font_size=size,
        text_anchor="middle",
        fill=sign_on(ground) if ground else INK,
        class_="b",
    )


def _ground(stand: LidStand) -> str:
    """The colour of its mark; empty without one."""
    return "" if stand.mark is None else stand.mark.value


def barred_pattern() -> Drawing:
    """The rules across a stand that may not change places; stands once on a page."""
    line = element("path", d="M0 0H6", stroke=RULE, stroke_width=1.4)
    made = element(
        "pattern",
        line,
        id="tx-barred",
        width=6,
        height=4,
        patternUnits="userSpaceOnUse",
        patternTransform="rotate(-45)",
    )
    return drawing(
        [element("defs", made)], size=(1, 1), words="textures", class_="vh", is_hidden=True
    )
