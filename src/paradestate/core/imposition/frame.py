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

    def holds(self, other: "Frame") -> bool:
        """Whether the other box lies within this one; edges may touch."""
        return (
            self.left <= other.left
            and self.top <= other.top
            and other.right <= self.right
            and other.bottom <= self.bottom
        )

    def overlaps(self, other: "Frame") -> bool:
        """Whether the two have more in common than an edge."""
        return (
            self.left < other.right
            and other.left < self.right
            and self.top < other.bottom
            and other.top < self.bottom
        )
