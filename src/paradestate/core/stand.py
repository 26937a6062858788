"""Stand patterns: what is put down on the table and moved as one piece."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import StrEnum

from paradestate.core.number import NumberRange
from paradestate.core.outline import Millimetres, Outline, millimetres


class Sight(StrEnum):
    """Whether the opponent's sheet may name it."""

    YES = "yes"
    NO = "no"
    WHEN_REVEALED = "when revealed"


USUAL_MARGIN = millimetres(1)
"""Edge and gap for the fit of figures where the owner gives none (common practice, no source)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class StandPattern:
    """The definition of one kind of stand."""

    name: str
    base: Outline | None
    """None: a model without a base, whose `footprint` is its outline."""
    footprint: Outline | None = None
    edge: Millimetres = USUAL_MARGIN
    gap: Millimetres = USUAL_MARGIN
    height: Millimetres | None = None
    men: NumberRange | None = None
    """Real men that it stands for."""
    figures: Mapping[str, int] = field(default_factory=dict)
    printed: bool = False
    """A printed marker suffices."""
    modelled_as: Mapping[str, int] = field(default_factory=dict)
    """Figures of the wished, modelled version of a printed stand."""
    shows: tuple[str, ...] = ()
    """Telltales: the figure kinds by which this kind of stand is known."""
    must_not_show: tuple[str, ...] = ()
    carries: int = 0
    """How many stands ride on it."""
    stays: bool = False
    """It stays where it starts: a gun that needs no tow."""
    called: str = ""
    seen_by_opponent: Sight | None = None
    """None where the owner says nothing: it may be seen."""
    by_hand: str = ""

    @property
    def modelled(self) -> Mapping[str, int]:
        """The figures on it; of a printed stand those of its modelled version."""
        return self.figures or self.modelled_as

    @property
    def outline(self) -> Outline | None:
        """What it covers on the table: its base, or its footprint where it has none."""
        return self.base if self.base is not None else self.footprint
