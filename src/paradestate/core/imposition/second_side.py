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


def backs(page: tuple[Laid, ...], layout: Layout) -> tuple[Laid, ...]:
    """The pieces of a page as they lie on its second side."""
    return tuple(replace(laid, frame=behind(laid.frame, layout)) for laid in page)
