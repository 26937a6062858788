"""A sweep: many changes of a list, each with what it does to the legal forces of one game."""

from dataclasses import dataclass
from fractions import Fraction

from paradestate.core.certainty import NotComputed
from paradestate.core.support.amendment import Amendment
from paradestate.core.support.force_map import ValuedForce


@dataclass(frozen=True, slots=True, kw_only=True)
class SweepQuestion:
    """One change of one list in one game."""

    game: int
    """The place of the list and game among all that are swept."""
    amendments: tuple[Amendment, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class SweepRow:
    """What one change comes to, with the points of which most is said."""

    old: int
    """Legal forces of the list as it is."""
    new: int
    lost: int | None
    """Legal before and no longer; None: it wasn't computed."""
    gained: int | None
    best: ValuedForce | None
    """The best force after the change; None: none is legal, or nothing has a worth."""
    mean_best: Fraction | None
    """The worth of the best force after the change, on average over the dice; of points that were
    given it is that of `best`."""
    held: tuple[tuple[str, int], ...]
    """Each entry that is amended, with how many of the best forces hold it then."""
    listed: int
    """How many best forces were looked through for that."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Swept:
    """A question with its answer."""

    question: SweepQuestion
    row: SweepRow | NotComputed
