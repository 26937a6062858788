"""Things and trays for tests, and the check that nothing lies where it may not, in plain words."""

from collections.abc import Iterable, Sequence
from fractions import Fraction
from itertools import combinations
from math import dist

from hypothesis import HealthCheck
from hypothesis import strategies as st

from paradestate.core.outline import Disc, Rectangle, millimetres
from paradestate.core.tray.laid import LaidTray
from paradestate.core.tray.thing import Case, Lying, Piece, Thing

SLOW = [HealthCheck.too_slow]
"""What a busy machine may be at drawing cases, which is no fault of theirs."""


def thing(name: str, *size: float | str, company: str = "", **known: str) -> Thing:
    """A rectangle of two sides or a disc of one: `thing("a", 40, 20)`."""
    sides = [millimetres(Fraction(str(side))) for side in size]
    outline = (
        Disc(diameter=sides[0]) if len(sides) == 1 else Rectangle(width=sides[0], depth=sides[1])
    )
    height = known.get("height")
    return Thing(
        name=name,
        pattern=known.get("pattern", "x".join(map(str, size))),
        outline=outline,
        height=None if height is None else millimetres(height),
        company=company,
        platoon=known.get("platoon", ""),
    )


def alike(number: int, *size: int, company: str = "", start: str = "s") -> list[Thing]:
    """So many things of one size."""
    return [thing(f"{start}{at}", *size, company=company) for at in range(number)]


def case(
    name: str = "case",
    *,
    inside: tuple[int, int] = (300, 200),
    gap: int = 2,
    height: int | None = None,
) -> Case:
    """A tray; 300 x 200 mm with gaps of 2 mm, as the example has it, when nothing else is said."""
    width, depth = inside
    return Case(
        name=name,
        kind=name.rpartition(" ")[0] or name,
        inside=Rectangle(width=millimetres(width), depth=millimetres(depth)),
        height=None if height is None else millimetres(height),
        gap=millimetres(gap),
    )


def lies(
    of: Thing, *, across: Fraction | float, deep: Fraction | float, is_turned: bool = False
) -> Lying:
    """A thing in a place."""
    return Lying(
        thing=of,
        across=Fraction(str(across)),
        deep=Fraction(str(deep)),
        is_turned=is_turned,
    )


def pieces(sizes: Iterable[tuple[int, int]], *, is_round: bool = False) -> list[Piece]:
    """Pieces of those sizes, numbered."""
    return [
        Piece(number=at, pattern=f"{width}x{depth}", width=width, depth=depth, is_round=is_round)
        for at, (width, depth) in enumerate(sizes)
    ]


def battalion() -> list[Thing]:
    """The example's battalion of 1943 with its hidden-movement markers, as 3.18 lays it."""
    made = [thing("command", 40)]
    for at in range(1, 5):
        company = f"No {at}"
        made.append(thing(f"{company} / command", 30, company=company))
        made += [
            thing(f"{company} / {each}", 40, 20, company=company, platoon=f"{company} {each // 2}")
            for each in range(7)
        ]
        made += [
            thing(f"{company} / marker {each}", 40, company=company, pattern="marker")
            for each in range(2)
        ]
    made += [thing(f"observer {at}", 30, pattern="observer") for at in range(2)]
    return made + [thing(f"truck {at}", 15, 34) for at in range(2)]


def squares_are_clear(trays: Sequence[LaidTray]) -> bool:
    """Whether all things are inside and apart, said over again with floating numbers.

    Rectangles by their sides, discs by the distance of their centres, both by corners.
    """
    return all(_inside(tray, each) for tray in trays for each in tray.lying) and all(
        _apart(one, other, gap=float(tray.case.gap))
        for tray in trays
        for one, other in combinations(tray.lying, 2)
    )


def _inside(tray: LaidTray, each: Lying) -> bool:
    end, rear = each.across + each.width, each.deep + each.depth
    inside = tray.case.inside
    return min(each.across, each.deep) >= 0 and end <= inside.width and rear <= inside.depth


def _apart(one: Lying, other: Lying, *, gap: float) -> bool:
    """The nearest points of two outlines, at least the gap apart."""
    across = max(
        float(far.across - near.across - near.width) for near, far in ((one, other), (other, one))
    )
    deep = max(
        float(far.deep - near.deep - near.depth) for near, far in ((one, other), (other, one))
    )
    if one.thing.is_round and other.thing.is_round:
        centres = [
            (float(each.across + each.width / 2), float(each.deep + each.depth / 2))
            for each in (one, other)
        ]
        apart = dist(*centres)
        return apart >= float(one.width + other.width) / 2 + gap - 1e-9
    return max(across, deep) >= gap - 1e-9


@st.composite
def contents(draw: st.DrawFn) -> list[Thing]:
    """A few companies of rectangles and discs, some with heights."""
    made: list[Thing] = []
    for company in range(draw(st.integers(1, 3))):
        for at in range(draw(st.integers(1, 6))):
            sides = draw(st.lists(st.integers(5, 60), min_size=1, max_size=2))
            height = draw(st.sampled_from([None, "10", "50"]))
            known = {} if height is None else {"height": height}
            name = f"{company} / {at}"
            made.append(thing(name, *sides, company=f"c{company}" if company else "", **known))
    return made
