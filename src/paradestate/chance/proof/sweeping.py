"""One question of a sweep, answered by whoever is free: a plain function of frozen values."""

from dataclasses import dataclass
from fractions import Fraction

from paradestate.chance.proof.what_if import what_if
from paradestate.core.certainty import NotComputed
from paradestate.core.support.amendment import misfits
from paradestate.core.support.comparison import ListComparison, ListForces
from paradestate.core.support.sweep import SweepQuestion, SweepRow


@dataclass(frozen=True, slots=True, kw_only=True)
class Sweeper:
    """Knows the lists as they are, game by game; goes once to every worker."""

    games: tuple[ListForces, ...]

    def __call__(self, question: SweepQuestion) -> SweepRow | NotComputed:
        """What one change comes to; not computed where it doesn't fit the list, with the reason."""
        old = self.games[question.game]
        unfit = [
            f"{each.amendment.entry}: {each.reason}"
            for each in misfits(old.terms, question.amendments)
        ]
        if unfit:
            return NotComputed(reason="; ".join(unfit))
        found = what_if(old, question.amendments)
        return found if isinstance(found, NotComputed) else _row(found, question)


def _row(found: ListComparison, question: SweepQuestion) -> SweepRow:
    level = found.level
    entries = dict.fromkeys(each.entry for each in question.amendments)
    return SweepRow(
        old=level.old,
        new=level.new,
        lost=level.lost,
        gained=level.gained,
        best=level.new_best,
        mean_best=_mean_best(found.new),
        held=tuple((entry, found.new.among_first(entry)) for entry in entries),
        listed=len(found.new.first),
    )


def _mean_best(forces: ListForces) -> Fraction | None:
    """The mean worth of the best force over the dice; None where some roll leaves none."""
    total = Fraction(0)
    for level, best in zip(forces.levels, forces.best, strict=True):
        chance = Fraction(1) if forces.allowance is None else forces.allowance.of(level.points)
        if best is None and chance:
            return None
        total += chance * best.worth if best else 0
    return total
