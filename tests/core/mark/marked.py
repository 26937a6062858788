"""Differences that tests say themselves, and forces to be marked."""

from collections.abc import Mapping
from itertools import combinations

from paradestate.core.establishment import establishment
from paradestate.core.force import Force
from paradestate.core.mark.difference import Differences, Pair, Viewer, differences_of
from paradestate.core.mark.mark_finding import Marked
from paradestate.core.mark.marking import Marking, marking
from paradestate.core.mark.paint import at_hand, enemy_colours, own_colours, values_of
from paradestate.sheet.sight import pairs_of

TROOPS = """\
figures: {man: {}}
stands: {rifle: {base: none, figures: {man: 2}}, command: {base: none, figures: {man: 1}}}
"""


def pair(one: str, other: str, **apart: int) -> Pair:
    """Two colours, 50 apart to everybody who isn't named: `grey=3`."""
    return Pair(
        one=one,
        other=other,
        by_viewer={viewer: apart.get(viewer.name.lower(), 5_000) for viewer in Viewer},
    )


def differences(apart: Mapping[str, int]) -> Differences:
    """Colours of one letter and how far two of them are apart: `{"ab": 30}`."""
    return differences_of(pair(*names, usual=value) for names, value in apart.items())


def on_a_line(places: Mapping[str, int]) -> Differences:
    """Colours that are as far apart as their places on a line."""
    return differences_of(
        pair(one, other, usual=abs(places[one] - places[other]))
        for one, other in combinations(places, 2)
    )


def marks_of(force: Force, known: Differences | None = None) -> Marking:
    """The marks of a force."""
    made, _ = establishment(force)
    assert made is not None
    return marking(force, made) if known is None else marking(force, made, differences=known)


def marked(force: Force) -> Marked:
    """A force with its marks and every difference, as they are seen."""
    made, _ = establishment(force)
    assert made is not None
    hand = at_hand(force.marks)
    names = (*own_colours(force.marks), *enemy_colours(force), *hand)
    known = differences_of(pairs_of(values_of(names, force.marks)))
    return Marked(
        force=force,
        whole=made.formation,
        marks=marking(force, made, differences=known),
        differences=known,
        candidates=tuple(hand),
    )
