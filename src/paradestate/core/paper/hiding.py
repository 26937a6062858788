"""Which printed stands are hidden-movement markers, that is hide who moves: these have dummies.

The owner says that a print isn't what the opponent sees (`seen by opponent: no`, or `when
revealed`). Where he says nothing, it is what he would model as nothing but troops, on foot or
mounted: a camp, a limber or a redoubt has something else among its figures, or none. What he says
may be seen hides nobody, whatever it is modelled as.
"""

from paradestate.core.figure import Sort
from paradestate.core.force import Force
from paradestate.core.stand import Sight

TROOPS = {Sort.FOOT, Sort.MOUNTED}


def hides_who_moves(force: Force, pattern: str) -> bool:
    """Whether a kind of stand is a hidden-movement marker."""
    known = force.stands[pattern]
    if not known.printed:
        return False
    if known.seen_by_opponent is not None:
        return known.seen_by_opponent is not Sight.YES
    modelled = known.modelled_as
    return bool(modelled) and all(force.figures[kind].sort in TROOPS for kind in modelled)


def is_undecided(force: Force, pattern: str) -> bool:
    """Whether a printed stand may hide who moves or not, for all that the files say."""
    known = force.stands[pattern]
    return known.printed and known.seen_by_opponent is None and not known.modelled_as
