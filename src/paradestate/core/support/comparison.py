"""Two versions of a list compared in one game: legal forces lost and gained, and the best ones."""

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction

from paradestate.core.certainty import NotComputed
from paradestate.core.support.chances import Chances
from paradestate.core.support.force_map import LevelForces, ValuedForce
from paradestate.core.support.terms import Terms

BEST = 20
"""So many of the best forces are looked through for an entry."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ListForces:
    """The legal forces of one version of a list in one game."""

    terms: Terms
    allowance: Chances | None
    """The points left by the dice; None where they were given."""
    at: int
    """The points left of which most is said."""
    levels: tuple[LevelForces, ...]
    """Points rising."""
    best: tuple[ValuedForce | None, ...]
    """For each level the best force, of equals one with the fewest points; None: none is legal, or
    nothing has a worth."""
    first: tuple[ValuedForce, ...]
    """The best forces with the points of which most is said, by falling worth, of equals those with
    the fewest points first."""
    is_cut: bool
    """Whether the last of them is left out another as good."""

    @property
    def points(self) -> tuple[int, ...]:
        """The points of all levels."""
        return tuple(level.points for level in self.levels)

    def among_first(self, entry: str) -> int:
        """How many of the best forces hold an entry."""
        return sum(
            any(purchase.entry == entry for purchase in force.purchases) for force in self.first
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class LevelChange:
    """What becomes of the legal forces with so many points left."""

    points: int
    old: int
    """Legal before."""
    new: int
    both: int | None
    """Legal before and after; None: it wasn't computed."""
    old_best: ValuedForce | None
    new_best: ValuedForce | None

    @property
    def lost(self) -> int | None:
        """Legal before and no longer."""
        return None if self.both is None else self.old - self.both

    @property
    def gained(self) -> int | None:
        """Legal only now."""
        return None if self.both is None else self.new - self.both

    @property
    def share_lost(self) -> Fraction | None:
        """The share of the forces legal before that no longer are."""
        return Fraction(self.lost, self.old) if self.old and self.lost is not None else None


@dataclass(frozen=True, slots=True, kw_only=True)
class ListComparison:
    """Two versions of a list in one game."""

    old: ListForces
    new: ListForces
    both: tuple[int, ...] | NotComputed
    """For each level how many forces are legal in both."""

    @property
    def levels(self) -> tuple[LevelChange, ...]:
        """Level by level, points rising."""
        both = (None,) * len(self.old.levels) if isinstance(self.both, NotComputed) else self.both
        return tuple(
            LevelChange(
                points=was.points,
                old=was.legal,
                new=now.legal,
                both=kept,
                old_best=best,
                new_best=best_now,
            )
            for was, now, kept, best, best_now in zip(
                self.old.levels, self.new.levels, both, self.old.best, self.new.best, strict=True
            )
        )

    @property
    def level(self) -> LevelChange:
        """The level of which most is said."""
        return next(each for each in self.levels if each.points == self.old.at)

    @property
    def among_first(self) -> Mapping[str, tuple[int, int]]:
        """Entry to how many of the best forces held it and now hold it, where that differs."""
        names = dict.fromkeys((*self.old.terms.offers, *self.new.terms.offers))
        counts = {name: (self.old.among_first(name), self.new.among_first(name)) for name in names}
        return {name: both for name, both in counts.items() if both[0] != both[1]}
