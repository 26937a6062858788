"""The back of a page: what lies behind what, once the page is turned about one of its edges."""

from dataclasses import replace

from paradestate.core.imposition.frame import Frame
from paradestate.core.imposition.layout import Layout, TurnEdge
from paradestate.core.imposition.shelf import Laid
from paradestate.core.outline import Millimetres


def behind(frame: Frame, layout: Layout) -> Frame:
    """The box on the second side that lies behind a box of the first.

    Turned about its long edge a page keeps what is above above; about the short one, what is on
    the left on the left.
    """
    page = layout.page
    if layout.turn is TurnEdge.LONG:
        return replace(frame, left=Millimetres(page.width - frame.right))
    return replace(frame, top=Millimetres(page.height - frame.bottom))


def quarters(laid: Laid, layout: Layout) -> int:
    """Quarter turns against the clock by which a back lies turned on the second side.

    So that a piece, once it is cut out, is upright on both sides when it is turned over sideways: a
    page that turns about its short edge brings what is upright upside down, and one that turns
    about its long edge what lies turned by a quarter.
    """
    if layout.turn is TurnEdge.LONG:
        return 3 if laid.is_turned else 0
    return 1 if laid.is_turned else 2


def backs(page: tuple[Laid, ...], layout: Layout) -> tuple[Laid, ...]:
    """The pieces of a page as they lie on its second side."""
    return tuple(replace(laid, frame=behind(laid.frame, layout)) for laid in page)
