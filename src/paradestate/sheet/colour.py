"""Colours of the owner's marks, and what can be read on them."""

_BRIGHT = 0.1917
"""Relative luminance above which #111 reads better than white: (L + 0.05)^2 = 1.05 x 0.0556.

From the contrast ratio of WCAG 2.2; 0.0056 is the luminance of #111. So no ratio is below 4.3.
"""


def sign_on(colour: str) -> str:
    """Black or white, whichever can be read better on a colour of six hexadecimal digits."""
    return "#111" if luminance(colour) > _BRIGHT else "#fff"


def luminance(colour: str) -> float:
    """Relative luminance of six sRGB hexadecimal digits, 0 to 1 (WCAG 2.2)."""
    red, green, blue = (_linear(int(colour[at : at + 2], 16) / 255) for at in (0, 2, 4))
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def _linear(part: float) -> float:
    return part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4  # noqa: PLR2004
