"""A box on a page: where something lies, from the page's left and upper edges."""

from dataclasses import dataclass

from paradestate.core.outline import Millimetres


@dataclass(frozen=True, slots=True, kw_only=True)
class Frame:
    """A box in millimetres of the printed page."""

    left: Millimetres
    top: Millimetres
    width: Millimetres
    height: Millimetres

    @property
    def right(self) -> Millimetres:
        """From the page's left edge."""
        return Millimetres(self.left + self.width)

    @property
    def bottom(self) -> Millimetres:
        """From the page's upper edge."""
        return Millimetres(self.top + self.height)

    def grown(self, by: Millimetres) -> "Frame":
        """The same box with so much more on every side."""
        return Frame(
            left=Millimetres(self.left - by),
            top=Millimetres(self.top - by),
            width=Millimetres(self.width + 2 * by),
            height=Millimetres(self.height + 2 * by),
        )
