"""The marks that every sheet draws: the mark of each body and stand of a counted force.

count -> colours in use -> how far they are apart -> marks
"""

from collections.abc import Iterable

from paradestate.core.force import Force
from paradestate.core.mark.difference import Differences, differences_of
from paradestate.core.mark.marking import Marking, marking
from paradestate.core.mark.paint import own_colours, values_of
from paradestate.journeys.count import Count
from paradestate.journeys.memory import NOTHING, Memory
from paradestate.sheet.sight import pairs_of


def differences_among(force: Force, names: Iterable[str]) -> Differences:
    """How far apart the colours of these names are that have a value."""
    return differences_of(pairs_of(values_of(names, force.marks)))


def marking_of(counted: Count, *, memory: Memory = NOTHING) -> Marking:
    """The marks of a counted force."""
    return memory.kept(
        ("marking", counted.force.title), lambda: _made(counted), rests_on=(counted,)
    )


def _made(counted: Count) -> Marking:
    force = counted.force
    differences = differences_among(force, own_colours(force.marks))
    return marking(force, counted.made, differences=differences)
