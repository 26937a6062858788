"""Where papers are used, and whose eyes they are for: who may see what leaves its owner's hands."""

from enum import StrEnum


class Purpose(StrEnum):
    """Where a paper is used."""

    BENCH = "at the bench"
    STANDS = "on the stands"
    TRAY = "in the tray"
    TONIGHT = "for tonight"
    CLUB = "for the club"


class Eyes(StrEnum):
    """Whose eyes a paper is for."""

    OWNER = "private"
    VISITORS = "for visitors"
    """It names what stands there, and so isn't for an opponent before the game."""
    ANYBODY = "may be handed over"
    """Made from a list of what may be seen."""
