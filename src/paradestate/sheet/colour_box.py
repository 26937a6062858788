"""A small box of one colour, beside its name in a list."""

from paradestate.sheet.svg import Drawing, drawing, element


def colour_box(value: str) -> Drawing:
    """The box of six hexadecimal digits, with an edge of ink; the name beside it says which."""
    box = element(
        "rect",
        x=1,
        y=1,
        width=24,
        height=18,
        fill=f"#{value}",
        stroke="var(--ink)",
        stroke_width=1.5,
    )
    return drawing([box], size=(26, 20), words="", class_="colour-box", is_hidden=True)
