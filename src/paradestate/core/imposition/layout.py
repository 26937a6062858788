"""How a sheet is laid out: its paper, the rim left free, gutter, bleed, and what is corrected."""

from dataclasses import dataclass
from enum import StrEnum

from paradestate.core.imposition.frame import Frame
from paradestate.core.imposition.paper_size import A4, PaperSize
from paradestate.core.imposition.print_scale import TRUE, PrintScale
from paradestate.core.outline import Millimetres, millimetres

USUAL_RIM = millimetres(8)
"""What is left free along each edge of the page (common practice, no source)."""

USUAL_GUTTER = millimetres(2)
"""Between two pieces (common practice, no source)."""

USUAL_BLEED = millimetres(1)
"""How far a ground of colour runs over the cut: half the gutter, so that no two meet."""

USUAL_SHIFT = millimetres(1)
"""How far the second side may lie off the first on a home printer (common practice, no source)."""


class TurnEdge(StrEnum):
    """The edge about which the page is turned for its second side."""

    LONG = "long"
    SHORT = "short"


@dataclass(frozen=True, slots=True, kw_only=True)
class Layout:
    """What holds for every page of a paper."""

    size: PaperSize = A4
    rim: Millimetres = USUAL_RIM
    gutter: Millimetres = USUAL_GUTTER
    bleed: Millimetres = USUAL_BLEED
    shift: Millimetres = USUAL_SHIFT
    turn: TurnEdge = TurnEdge.LONG
    scale: PrintScale = TRUE
    """What the printer makes of a length, which the sheet makes good."""

    @property
    def page(self) -> Frame:
        """What is seen of the page once it is printed, in millimetres as they come out.

        A printer that makes everything smaller shows the whole page on less paper; one that makes
        it greater shows less of it.
        """
        width = min(self.size.width, Millimetres(self.size.width * self.scale.across))
        height = min(self.size.height, Millimetres(self.size.height * self.scale.down))
        nought = millimetres(0)
        return Frame(left=nought, top=nought, width=width, height=height)

    @property
    def room(self) -> Frame:
        """The part of it on which pieces lie."""
        return self.page.grown(Millimetres(-self.rim))
