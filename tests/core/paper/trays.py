"""Trays that papers are made of."""

from functools import cache

from paradestate.core.paper.ground import Ground
from paradestate.core.strength import strength
from paradestate.core.tray.content import cases, content
from paradestate.core.tray.lid import Lid, lids, marks_of
from paradestate.core.tray.plan import laid_out
from tests.core.paper.grounds import battalion


def lids_of(ground: Ground) -> tuple[Lid, ...]:
    """The trays of a force as they are laid out."""
    force, made = ground.force, ground.made
    held = content(force, made, strength=strength(force, made))
    plan = laid_out(cases(force.trays), held.things)
    return tuple(lids(plan.trays, marks=marks_of(ground.marks)))


@cache
def battalion_lids() -> tuple[Lid, ...]:
    """Those of the bundled example: one tray of 300 x 200 mm."""
    return lids_of(battalion())
