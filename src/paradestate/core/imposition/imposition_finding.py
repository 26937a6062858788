"""What is doubtful in how a sheet is laid out, and in what the printer makes of it."""

from collections.abc import Iterator
from fractions import Fraction

from paradestate.core.choice import CHOSEN_HERE
from paradestate.core.finding import Finding, Level
from paradestate.core.imposition.layout import Layout
from paradestate.core.imposition.print_scale import ALLOWED_ERROR, LINE, PrintScale
from paradestate.core.outline import Millimetres, decimal_text

TENTHS = 10


def scale_findings(scale: PrintScale, *, is_made_good: bool = False) -> Iterator[Finding]:
    """Row 64: what the printer makes of 100 mm, and at how many per cent it comes out right."""
    if scale.error <= ALLOWED_ERROR:
        return
    across, down = scale.to_print_at
    if scale.is_even:
        measures = f"The {LINE} mm line measures {decimal_text(scale.across * LINE)}."
        cure = f"Print at {per_cent(across)} or turn off fitting"
    else:
        measures = (
            f"The {LINE} mm line across measures {decimal_text(scale.across * LINE)}, "
            f"the one down {decimal_text(scale.down * LINE)}."
        )
        cure = f"Print at {per_cent(across)} across and {per_cent(down)} down or turn off fitting"
    out = Fraction(40) * scale.error
    yield Finding(
        level=Level.REMARK if is_made_good else Level.WARN,
        code="printed-size-wrong",
        message=measures,
        effect="These sheets are drawn larger or smaller to make that good: print them as before."
        if is_made_good
        else f"What is laid out 40 mm wide comes out {rounded(out)} mm wrong.",
        hint="Measure the lines on a page of these again."
        if is_made_good
        else f"{cure}; or have the sheets corrected with --correct.",
        place=CHOSEN_HERE,
    )


def register_findings(layout: Layout) -> Iterator[Finding]:
    """Row 66: a bleed that is less than how far the second side may lie off the first."""
    if layout.bleed >= layout.shift:
        return
    yield Finding(
        level=Level.WARN,
        code="bleed-too-small",
        message=f"Bleed {_mm(layout.bleed)}, printer shift about {_mm(layout.shift)}.",
        effect="The underside marks may show a white edge.",
        hint=f"Set the bleed to {_mm(layout.shift)}, and the gutter to twice that.",
        place=CHOSEN_HERE,
    )


def per_cent(share: Fraction) -> str:
    """A share in per cent, to a tenth."""
    return f"{rounded(share * 100)}%"


def rounded(number: Fraction) -> str:
    """To a tenth, halves away from nought; numbers here are none below it."""
    tenths = int(number * TENTHS * 2 + 1) // 2
    return decimal_text(Fraction(tenths, TENTHS))


def _mm(length: Millimetres) -> str:
    return f"{decimal_text(length)} mm"
