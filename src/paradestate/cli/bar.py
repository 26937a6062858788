"""A bar in a table of the terminal, as long as its column has room for."""

from dataclasses import dataclass
from fractions import Fraction

from rich.console import Console, ConsoleOptions, RenderResult
from rich.measure import Measurement
from rich.text import Text

LONGEST, SHORTEST = 24, 4
"""Characters of a whole bar: where there is room, and where there is hardly any."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Bar:
    """A bar; all those of one column are drawn to the same measure."""

    share: Fraction
    """Its length as a share of the longest of its column."""
    letters: str
    """The letter of its first part, then that of the rest."""
    first: Fraction = Fraction(1)
    """The first part as a share of it."""

    def __rich_measure__(self, console: Console, options: ConsoleOptions) -> Measurement:
        """The room that it takes: as much as there is, within bounds."""
        return Measurement(SHORTEST, LONGEST)

    def __rich_console__(self, console: Console, options: ConsoleOptions) -> RenderResult:
        """Whatever there is has a character at least."""
        room = min(options.max_width, LONGEST)
        whole = max(round(room * self.share), 1) if self.share else 0
        part = -(-whole * self.first.numerator // self.first.denominator)
        yield Text(self.letters[0] * part + self.letters[-1] * (whole - part))
