"""What a colour looks like to viewers who see colours otherwise, and how far two are apart then.

Red-weak, green-weak and blue-weak sight at full severity after the published matrices of Machado,
Oliveira and Fernandes, "A Physiologically-based Model for Simulation of Color Vision Deficiency"
(IEEE Transactions on Visualization and Computer Graphics 15, 2009), in linear light, clipped to
what a screen can show. Grey is the luminance of ITU-R BT.709. Differences are CIEDE2000 in CIELAB
(D65).
"""

from collections.abc import Iterable, Iterator, Mapping
from functools import lru_cache
from itertools import combinations

from coloraide import Color

from paradestate.core.mark.difference import Pair, Viewer

Row = tuple[float, float, float]
Matrix = tuple[Row, Row, Row]

MATRICES: Mapping[Viewer, Matrix] = {
    Viewer.RED_WEAK: (
        (0.152286, 1.052583, -0.204868),
        (0.114503, 0.786281, 0.099216),
        (-0.003882, -0.048116, 1.051998),
    ),
    Viewer.GREEN_WEAK: (
        (0.367322, 0.860646, -0.227968),
        (0.280085, 0.672501, 0.047413),
        (-0.011820, 0.042940, 0.968881),
    ),
    Viewer.BLUE_WEAK: (
        (1.255528, -0.076749, -0.178779),
        (-0.078411, 0.930809, 0.147602),
        (0.004733, 0.691367, 0.303900),
    ),
}
LUMINANCE: Row = (0.2126, 0.7152, 0.0722)
MOST_KEPT = 1_024
"""Colours as a viewer sees them that are kept in mind."""


@lru_cache(maxsize=MOST_KEPT)
def _seen(value: str, viewer: Viewer) -> Color:
    """The colour of six hexadecimal digits as a viewer sees it, in linear light."""
    colour = Color(f"#{value}").convert("srgb-linear")
    if viewer is Viewer.USUAL:
        return colour
    light = colour.coords()
    if viewer is Viewer.GREY:
        grey = _product(LUMINANCE, light)
        return Color("srgb-linear", [grey, grey, grey])
    return Color("srgb-linear", [min(max(_product(row, light), 0), 1) for row in MATRICES[viewer]])


def _product(row: Row, light: Iterable[float]) -> float:
    return sum(share * part for share, part in zip(row, light, strict=True))


@lru_cache(maxsize=MOST_KEPT)
def _measured(value: str, viewer: Viewer) -> Color:
    """The same in CIELAB."""
    return _seen(value, viewer).convert("lab-d65")


def seen(value: str, viewer: Viewer) -> str:
    """Six hexadecimal digits of a colour as a viewer sees it."""
    if viewer is Viewer.USUAL:
        return value
    return _seen(value, viewer).convert("srgb").to_string(hex=True).removeprefix("#").upper()


def difference(one: str, other: str, *, viewer: Viewer) -> int:
    """How far two colours are apart to a viewer, in hundredths of CIEDE2000."""
    return round(100 * apart(_measured(one, viewer), _measured(other, viewer)))


def measured_at(*coordinates: float) -> Color:
    """The colour at a lightness and two axes of CIELAB."""
    return Color("lab-d65", coordinates)


def apart(one: Color, other: Color) -> float:
    """How far two measured colours are apart by CIEDE2000."""
    return one.delta_e(other, method="2000")


def pairs_of(colours: Mapping[str, str]) -> Iterator[Pair]:
    """Every two of these colours by name, and how far they are apart to each viewer."""
    for one, other in combinations(colours, 2):
        yield Pair(
            one=one,
            other=other,
            by_viewer={
                viewer: difference(colours[one], colours[other], viewer=viewer) for viewer in Viewer
            },
        )
