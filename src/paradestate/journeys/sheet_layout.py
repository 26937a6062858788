"""How sheets are laid out, from what was typed."""

from dataclasses import replace
from fractions import Fraction

from paradestate.core.finding import Finding
from paradestate.core.imposition.layout import Layout
from paradestate.core.imposition.paper_size import SIZES, Stock
from paradestate.core.imposition.print_scale import TRUE, PrintScale, measured
from paradestate.journeys.choosing import typed_finding
from paradestate.text.number import read_positive
from paradestate.text.slip import Slip

LEAST, MOST = 50, 200
"""Millimetres that a line of 100 may measure; anything else is a slip of the pen."""


def layout_of(*, paper: str = Stock.A4, scale: str = "") -> tuple[Layout, tuple[Finding, ...]]:
    """The layout, and a stop for each text that can't be read."""
    read = _scale(scale)
    slips = (typed_finding(read),) if isinstance(read, Slip) else ()
    known = TRUE if isinstance(read, Slip) else read
    return Layout(size=SIZES[Stock(paper)], scale=known), slips


def _scale(text: str) -> PrintScale | Slip:
    if not text:
        return TRUE
    across, comma, down = text.partition(",")
    read = [_line(each) for each in (across, down if comma else across)]
    for each in read:
        if isinstance(each, Slip):
            return each
    first, second = (each for each in read if isinstance(each, Fraction))
    return measured(first, second)


def _line(text: str) -> Fraction | Slip:
    hint = "Write what the lines measure, in millimetres: 96.8, or across and down: 96.8,97.2."
    read = read_positive(text.strip().removesuffix("mm").strip())
    if isinstance(read, Slip):
        return replace(read, hint=hint)
    if not LEAST <= read <= MOST:
        return Slip(
            code="line-not-100",
            message=f"A line of 100 mm doesn't come out {text.strip()} mm long.",
            hint=hint,
        )
    return read
