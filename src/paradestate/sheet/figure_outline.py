"""The outline of a figure, to be cut out or tried with the paint itself; one for each sort.

Nobody's uniform: the parts that every figure has, as lines that hold no colour.
"""

from collections.abc import Iterator, Mapping

from paradestate.core.figure import Sort
from paradestate.sheet.svg import Drawing, Element, drawing, element

INK = "var(--ink)"
SIZE = (120, 180)

FOOT = (
    # headgear, face, neck
    "M46 34C46 18 74 18 74 34L78 36H42Z",
    "M48 36C48 50 53 56 60 56S72 50 72 36",
    # coat with its sleeves, belt, opening
    "M53 55L38 62L30 104L40 107L44 88V116H76V88L80 107L90 104L82 62L67 55",
    "M44 92H76M60 58V92M44 99H76",
    # hands
    "M30 104C28 112 37 114 40 107M90 104C92 112 83 114 80 107",
    # trousers, boots, ground
    "M44 116L46 150H57L60 124L63 150H74L76 116",
    "M46 150V160H38V166H57V150M74 150V160H82V166H63V150",
)
MOUNTED = (
    "M53 22C53 10 71 10 71 22L74 24H50Z",
    "M55 24C55 33 58 37 62 37S69 33 69 24",
    "M56 36L47 42L42 64L50 66L52 58V76H72V56L86 62L88 55L76 44L68 36",
    "M52 70H72M54 76L50 102L58 104L68 80M58 104L50 104V110H62L60 102",
    # horse: head and neck, body, legs, tail
    "M72 76C84 72 88 62 92 46L98 42L101 48L114 66L109 73L99 67C97 80 98 88 92 98",
    "M52 76C34 72 18 78 18 98C20 112 40 110 56 108C72 110 86 110 92 98",
    "M20 104L16 132L20 158H28L26 134L36 110M44 110L42 134L46 158H38L35 134",
    "M80 108L78 134L74 158H82L86 134L90 104M92 100L98 128L94 158H102L105 128L98 92",
    "M18 90C8 94 8 112 11 124",
)
GUN = (
    "M24 98L112 84L113 92L28 110Z",
    "M56 78L82 70L86 112H56Z",
    "M64 112A26 26 0 1 1 63.9 112M64 126A12 12 0 1 1 63.9 126",
    "M44 118L8 152L14 158L52 128",
)
VEHICLE = (
    "M12 86H70V60H92L104 86H110V118H12Z",
    "M75 66H89L97 86H75ZM12 100H110",
    "M32 106A14 14 0 1 1 31.9 106M88 106A14 14 0 1 1 87.9 106",
    "M32 114A6 6 0 1 1 31.9 114M88 114A6 6 0 1 1 87.9 114",
)
SCENERY = (
    "M18 156V84L60 50L102 84V156Z",
    "M8 92L60 48L112 92",
    "M50 156V118H70V156M28 98H42V114H28ZM78 98H92V114H78Z",
)
LINES: Mapping[Sort, tuple[str, ...]] = {
    Sort.FOOT: FOOT,
    Sort.MOUNTED: MOUNTED,
    Sort.GUN: GUN,
    Sort.VEHICLE: VEHICLE,
    Sort.SCENERY: SCENERY,
}
"""Paths of each sort, from the top down."""


def figure_outline(sort: Sort, *, kind: str) -> Drawing:
    """The outline of a kind of figure."""
    words = f"Outline of a figure for {kind}, to try the colours on."
    return drawing(_lines(sort), size=SIZE, words=words, class_="outline")


def _lines(sort: Sort) -> Iterator[Element]:
    for path in LINES[sort]:
        yield element("path", d=path, fill="none", stroke=INK, stroke_width=1.6)
    wide, high = SIZE
    yield element(
        "path",
        d=f"M12 {high - 12}H{wide - 12}",
        stroke="var(--rule)",
        stroke_width=1.2,
        stroke_dasharray="4 3",
    )
