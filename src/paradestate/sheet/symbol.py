"""Symbols of units after the practice of APP-6: frame, arm, size mark, staff of a headquarters.

Drawn by our own lines after what is published of APP-6 and MIL-STD-2525, a public standard, from
memory of it: frame of 3 by 2; arms as lines that touch the frame (infantry, anti-tank,
reconnaissance, signal, supply, headquarters) or signs in its middle (armour, artillery, mortar,
engineer); size marks above the frame; a staff at the lower left for a headquarters; a broken frame
for what isn't there yet. Tables that tell squads from sections give a section two dots; where a
force has no squads its sections are what others call squads, and have one.

Imports core values and the plate of marks only.
"""

from collections.abc import Collection, Mapping
from dataclasses import dataclass

from paradestate.core.formation import Arm, Echelon
from paradestate.core.mark.code import Mark
from paradestate.sheet.mark_plate import plate_elements, plate_of
from paradestate.sheet.svg import Drawing, Element, drawing, element, group

WIDTH, HEIGHT = 54, 36
"""Of the frame, in the units of the drawing."""

ABOVE = 13
"""What size marks need above the frame."""

BELOW = 12
"""What the staff of a headquarters needs below it."""

PLATE = 37
"""What the plate of its mark needs to the right of the frame."""

PLATE_SCALE = 0.7

NO_PLATE = 14
"""Room to the right where no plate is drawn."""

LINE, HEAVY = 1.7, 2.6

_ACROSS = "M0 0L54 36M0 36L54 0"
_ARMS: Mapping[Arm, tuple[str, str]] = {
    # Lines of the sign, and what of it is filled.
    Arm.INFANTRY: (_ACROSS, ""),
    Arm.ARMOUR: ("M18 10H36A8 8 0 0 1 36 26H18A8 8 0 0 1 18 10Z", ""),
    Arm.ARTILLERY: ("", "M27 12.6A5.4 5.4 0 0 1 27 23.4A5.4 5.4 0 0 1 27 12.6Z"),
    Arm.MORTAR: (
        "M27 22V7M22 12.4L27 6.6L32 12.4M27 22A3.6 3.6 0 0 1 27 29.2A3.6 3.6 0 0 1 27 22Z",
        "",
    ),
    Arm.ANTI_TANK: ("M0 36L27 1L54 36", ""),
    Arm.RECONNAISSANCE: ("M0 36L54 0", ""),
    Arm.ENGINEER: ("M14 25V11H40V25M27 11V25", ""),
    Arm.SIGNAL: ("M0 0L27 22V14L54 36", ""),
    Arm.HEADQUARTERS: ("M0 11H54", ""),
    Arm.SUPPLY: ("M0 25H54", ""),
}

_DOTS: Mapping[Echelon, int] = {Echelon.SQUAD: 1, Echelon.SECTION: 1, Echelon.PLATOON: 3}
_BARS: Mapping[Echelon, int] = {Echelon.COMPANY: 1, Echelon.BATTALION: 2, Echelon.REGIMENT: 3}


@dataclass(frozen=True, slots=True, kw_only=True)
class Symbol:
    """What one symbol shows."""

    arm: Arm | None = None
    """None: an empty frame, a unit of no arm in particular."""
    echelon: Echelon | None = None
    dots: int | None = None
    """Of a section or squad, where its echelon alone doesn't say."""
    is_missing: bool = False
    """Nothing of it is there: the frame is broken."""
    is_heavy: bool = False
    """It is the one that is opened, or the whole."""
    mark: Mark | None = None
    """Drawn as a plate to the right of the frame."""

    @property
    def words(self) -> str:
        """What it shows: `infantry company`."""
        known = [str(word) for word in (self.arm, self.echelon) if word is not None]
        return " ".join(known) or "unit"


def dots_of(echelon: Echelon | None, *, beside: Collection[Echelon | None]) -> int | None:
    """Dots of a section: two in a force that has squads as well."""
    is_between = echelon is Echelon.SECTION and Echelon.SQUAD in beside
    return 2 if is_between else None


def symbol(shown: Symbol, *, left: float, top: float) -> Element:
    """The symbol with the upper left corner of its frame at a point."""
    width = HEAVY if shown.is_heavy else LINE
    frame = element(
        "rect",
        width=WIDTH,
        height=HEIGHT,
        fill="var(--sheet)",
        stroke="var(--rule)" if shown.is_missing else "var(--ink)",
        stroke_width=width,
        stroke_dasharray="5 3.5" if shown.is_missing else None,
    )
    return group(
        frame,
        *_arm(shown.arm),
        *(() if shown.mark is None else (_plate(shown.mark),)),
        *size_mark(shown.echelon, dots=shown.dots, middle=WIDTH / 2, foot=-4),
        transform=f"translate({left:g} {top:g})",
    )


def _plate(mark: Mark) -> Element:
    """The plate of a mark, on a level with the foot of the frame."""
    plate = plate_of(mark)
    top = HEIGHT - plate.height * PLATE_SCALE
    return group(
        *plate_elements(plate),
        transform=f"translate({WIDTH + 5} {top:g}) scale({PLATE_SCALE})",
    )


def _arm(arm: Arm | None) -> tuple[Element, ...]:
    if arm is None:
        return ()
    lines, solid = _ARMS[arm]
    drawn = []
    if lines:
        drawn.append(_line(lines, width=LINE))
    if solid:
        drawn.append(element("path", d=solid, fill="var(--ink)"))
    if arm is Arm.HEADQUARTERS:
        drawn.append(_line(f"M0 {HEIGHT}V{HEIGHT + BELOW}", width=LINE))
    return tuple(drawn)


def size_mark(
    echelon: Echelon | None, *, middle: float, foot: float, dots: int | None = None
) -> tuple[Element, ...]:
    """The mark of a size, 9 units high, standing on `foot` about `middle`."""
    high = foot - 9
    if echelon is None:
        return ()
    if echelon in _DOTS:
        return _dots(dots or _DOTS[echelon], middle=middle, level=foot - 3.5)
    if echelon in _BARS:
        number = _BARS[echelon]
        places = [middle + 7 * (each - (number - 1) / 2) for each in range(number)]
        bars = "".join(f"M{place:g} {high:g}V{foot:g}" for place in places)
        return (_line(bars, width=2.2),)
    if echelon is Echelon.BRIGADE:
        left, right = middle - 4.5, middle + 4.5
        cross = f"M{left:g} {high:g}L{right:g} {foot:g}M{left:g} {foot:g}L{right:g} {high:g}"
        return (_line(cross, width=2.2),)
    ring = element(
        "circle",
        cx=middle,
        cy=foot - 4.5,
        r=3.6,
        fill="none",
        stroke="var(--ink)",
        stroke_width=1.5,
    )
    stroke = f"M{middle - 4.6:g} {foot:g}L{middle + 4.6:g} {high:g}"
    return (ring, _line(stroke, width=1.5))


def _dots(number: int, *, middle: float, level: float) -> tuple[Element, ...]:
    return tuple(
        element(
            "circle",
            cx=middle + 10 * (each - (number - 1) / 2),
            cy=level,
            r=3,
            fill="var(--ink)",
        )
        for each in range(number)
    )


def _line(path: str, *, width: float) -> Element:
    return element("path", d=path, fill="none", stroke="var(--ink)", stroke_width=width)


def plated(mark: Mark | None) -> Mark | None:
    """The mark beside a symbol: that of a company; a plain plate would tell nothing here."""
    return mark if mark is not None and mark.colour else None


def symbol_drawing(shown: Symbol, *, words: str = "", has_plates: bool = True) -> Drawing:
    """The symbol alone, for a list or a key; with room for a plate where others have one."""
    room = PLATE if has_plates else NO_PLATE
    return drawing(
        [symbol(shown, left=3, top=ABOVE + 2)],
        size=(WIDTH + room + 8, ABOVE + HEIGHT + BELOW + 4),
        words=words or shown.words,
        class_="symbol",
    )


def mark_drawing(echelon: Echelon, *, dots: int | None = None) -> Drawing:
    """A size mark alone, for a key."""
    return drawing(
        size_mark(echelon, dots=dots, middle=18, foot=14),
        size=(36, 18),
        words=f"mark of a {echelon}",
        class_="mark",
    )
