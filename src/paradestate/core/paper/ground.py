"""What every paper is made from: the force as it is on a day, and how its sheets are laid out."""

import datetime
from collections.abc import Mapping
from dataclasses import dataclass, field

from paradestate.core.establishment import Establishment
from paradestate.core.force import Force
from paradestate.core.game import Purchase
from paradestate.core.imposition.layout import Layout
from paradestate.core.mark.marking import Marking
from paradestate.core.paper.tray_rows import TrayRow
from paradestate.core.stand import StandPattern
from paradestate.core.strength import Strength
from paradestate.core.support.reserve import Reserve
from paradestate.core.support.terms import Terms

NO_RESERVE = Reserve()


@dataclass(frozen=True, slots=True, kw_only=True)
class Ground:
    """The ground that papers stand on."""

    force: Force
    made: Establishment
    marks: Marking
    date: datetime.date
    """The day of this state."""
    layout: Layout
    game: str = ""
    """The game that the papers are for; empty for the force alone."""
    plan: tuple[Purchase, ...] = ()
    """Supporting troops that are taken for it."""
    dummies: int | None = None
    """Markers that hide nobody; None for as many as there are true ones."""
    strength: Strength | None = None
    """Which figure stands on what; None where nobody asked."""
    reserve: Reserve = NO_RESERVE
    """What is kept back in that game."""
    revealed: tuple[str, ...] = ()
    """Stands and supporting troops that the opponent has found out."""
    terms: Terms | None = None
    """What is on offer at the grades that were chosen; None where nobody chose any."""
    arranged: tuple[str, ...] = ()
    """Who is with whom, as it was told in the game, a sentence each."""
    laid: Mapping[str, TrayRow] = field(default_factory=dict)
    """Stand to where it lies, where the owner has laid the trays; else nothing."""

    def pattern(self, name: str) -> StandPattern:
        """A kind of stand; those by fixed ratio have none of their own, and no size."""
        return self.force.stands.get(name) or StandPattern(name=name, base=None)
