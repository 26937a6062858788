"""Numbers of many digits: written out as long as they are read, else by their power of ten."""

from paradestate.sheet.svg import Element, element

MOST_DIGITS = 15
"""A number with more is told to two figures."""
THOUSANDS = 10_000
"""Of a scale, numbers up to this are written out."""
SUPERSCRIPT = 13


def number_words(value: int) -> str:
    """A whole number in a sentence: `3,809`, `about 2.6 times 10 to the 20`."""
    if len(str(value)) <= MOST_DIGITS:
        return f"{value:,}"
    figures, power = _figures(value)
    return f"about {figures} times 10 to the {power}"


def number(value: int) -> Element:
    """A whole number in a drawing, its power of ten set high."""
    if len(str(value)) <= MOST_DIGITS:
        return element("text", text=f"{value:,}")
    figures, power = _figures(value)
    return _raised(f"about {figures} × 10", power=power)


def mark(value: int) -> Element:
    """A power of ten, or a smaller number, at a line of a scale."""
    if value <= THOUSANDS:
        return element("text", text=f"{value:,}")
    return _raised("10", power=_figures(value)[1])


def placed(text: Element, *, x: float, y: float, class_: str) -> Element:
    """A number that ends here."""
    text.attrib |= {"x": f"{x:.1f}", "y": f"{y:.1f}", "text-anchor": "end", "class": class_}
    return text


def text_of(text: Element) -> str:
    """All of its digits, to see how much room they take."""
    return "".join(text.itertext())


def _raised(text: str, *, power: int) -> Element:
    return element(
        "text", element("tspan", text=f"{power}", dy=-5, font_size=SUPERSCRIPT), text=text
    )


def _figures(value: int) -> tuple[str, int]:
    """The first two figures, rounded down, and the power of ten by which they are multiplied."""
    text = str(value)
    return f"{text[0]}.{text[1]}", len(text) - 1
