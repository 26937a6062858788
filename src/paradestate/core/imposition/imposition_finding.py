"""What is doubtful in how a sheet is laid out, and in what the printer makes of it."""

from collections.abc import Iterable, Iterator
from fractions import Fraction

from paradestate.core.choice import CHOSEN_HERE
from paradestate.core.finding import Finding, Level
from paradestate.core.imposition.frame import Frame
from paradestate.core.imposition.layout import Layout
from paradestate.core.imposition.paper_size import PaperSize
from paradestate.core.imposition.print_scale import ALLOWED_ERROR, LINE, PrintScale
from paradestate.core.imposition.type_size import least_type_size, points, reading_distance
from paradestate.core.outline import Millimetres, decimal_text
from paradestate.core.sentence.wording import capital

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


def loaded_findings(
    name: str, frames: Iterable[Frame], *, layout: Layout, loaded: PaperSize
) -> Iterator[Finding]:
    """Row 65: pieces that another paper than the one laid out for would cut off.

    A page is printed from its upper left corner; the rim is out of the printer's reach.
    """
    right, bottom = loaded.width - layout.rim, loaded.height - layout.rim
    cut = [frame for frame in frames if frame.right > right or frame.bottom > bottom]
    if not cut:
        return
    lower = any(frame.bottom > bottom for frame in cut)
    edge = "the last row" if lower else "the right edge"
    yield Finding(
        level=Level.WARN,
        code="other-paper",
        message=f"{name}: sheets are laid out for {layout.size.name}; the printer offers "
        f"{loaded.name}: {edge} would be cut.",
        effect=f"{len(cut)} of them {'comes' if len(cut) == 1 else 'come'} out incomplete, or all "
        "too small where the printer fits the page to its paper.",
        hint=f"Lay them out for it: --paper {loaded.name.lower()}.",
        place=CHOSEN_HERE,
    )


def type_findings(what: str, size: Millimetres, *, distance: Millimetres) -> Iterator[Finding]:
    """Row 67: words that came out smaller than can be read with ease from where they are read."""
    least = least_type_size(distance)
    if int(points(size) * TENTHS) >= int(points(least) * TENTHS):
        return
    yield Finding(
        level=Level.WARN,
        code="type-too-small",
        message=f"{capital(what)} would be {rounded(points(size))} pt, some of them. "
        f"Least readable at {decimal_text(distance / 10)} cm is about {round(points(least))} pt.",
        effect="They can be read from nearer by only.",
        hint="Give shorter names ('called'), or say from where they are read: "
        f"--read-from '{int(reading_distance(size) // 10)} cm'.",
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
