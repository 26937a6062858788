"""How crowded the stands of a force are, and the footprints of their figures."""

from collections.abc import Iterable, Mapping
from fractions import Fraction

from paradestate.core.figure import FigureKind
from paradestate.core.fit import crowding
from paradestate.core.outline import Outline
from paradestate.core.stand import StandPattern


def footprints_of(
    stand: StandPattern, *, figures: Mapping[str, FigureKind]
) -> Mapping[Outline, int] | None:
    """Footprint to how many figures of the stand have it; None where one isn't known."""
    found: dict[Outline, int] = {}
    for kind, number in stand.figures.items():
        figure = figures.get(kind)
        if figure is None or figure.footprint is None:
            return None
        found[figure.footprint] = found.get(figure.footprint, 0) + number
    return found


def crowding_of(
    stands: Mapping[str, StandPattern],
    *,
    figures: Mapping[str, FigureKind],
    patterns: Iterable[str],
) -> Mapping[str, Fraction]:
    """Pattern to the share of its base that figures cover, where both are known."""
    shares: dict[str, Fraction] = {}
    for name in patterns:
        stand = stands.get(name)
        if stand is None or stand.base is None:
            continue
        footprints = footprints_of(stand, figures=figures)
        if footprints:
            shares[name] = crowding(stand.base, footprints)
    return shares
