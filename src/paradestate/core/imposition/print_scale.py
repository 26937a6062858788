"""What a printer makes of a length, read off the 100 mm line, and the correction of it."""

from dataclasses import dataclass
from fractions import Fraction

LINE = 100
"""Millimetres of the line that stands on every page."""

ALLOWED_ERROR = Fraction(1, 200)
"""More than half a per cent is said: a label for a stand of 40 mm is out by 0.2 mm then."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PrintScale:
    """Printed millimetres for each millimetre that was laid out."""

    across: Fraction = Fraction(1)
    down: Fraction = Fraction(1)

    @property
    def is_even(self) -> bool:
        """Whether it is the same across and down, so that one number in the printer cures it."""
        return self.across == self.down

    @property
    def error(self) -> Fraction:
        """The greater of the two errors, as a share."""
        return max(abs(self.across - 1), abs(self.down - 1))

    @property
    def to_print_at(self) -> tuple[Fraction, Fraction]:
        """The shares across and down at which lengths come out right."""
        return 1 / self.across, 1 / self.down


TRUE = PrintScale()


def measured(across: Fraction, down: Fraction) -> PrintScale:
    """The scale of a printer on whose page the lines of 100 mm measure so many millimetres."""
    return PrintScale(across=across / LINE, down=down / LINE)
