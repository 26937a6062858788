"""Grounds that tests of papers stand on."""

import datetime
from dataclasses import replace
from functools import cache

from paradestate.core.establishment import establishment
from paradestate.core.force import Force, Wishes
from paradestate.core.game import Purchase
from paradestate.core.imposition.layout import Layout
from paradestate.core.mark.marking import marking
from paradestate.core.paper.ground import Ground
from tests.forces import force_from, marenz

TODAY = datetime.date(2026, 3, 5)


def ground_of(
    force: Force,
    *,
    plan: tuple[Purchase, ...] = (),
    layout: Layout | None = None,
    dummies: int | None = None,
) -> Ground:
    made, _ = establishment(force)
    assert made is not None
    return Ground(
        force=force,
        made=made,
        marks=marking(force, made),
        date=TODAY,
        layout=layout or Layout(),
        plan=plan,
        dummies=dummies,
    )


@cache
def battalion() -> Ground:
    """That of the bundled example."""
    return ground_of(marenz())


def with_plan(*purchases: tuple[str, int]) -> Ground:
    """The example's with supporting troops."""
    plan = tuple(Purchase(entry=entry, number=number) for entry, number in purchases)
    return replace(battalion(), plan=plan)


@cache
def all_wished() -> Ground:
    """The example's with everything that it wishes for."""
    force = marenz()
    assert force.raise_ is not None
    return ground_of(replace(force, raise_=replace(force.raise_, wished=Wishes.ALL)))


SMALL = """\
figures: {rifleman: {footprint: 6 mm}, scout: {}}
stands:
  rifle section: {base: 40 x 20 mm, figures: {rifleman: 4}, shows: [rifleman]}
  huge scene: {base: 300 x 290 mm, figures: {rifleman: 1}}
  scouts: {base: 2 x 20 mm, figures: {scout: 1}}
  crowd: {base: 20 x 20 mm, figures: {rifleman: 9}}
formations:
  top: {parts: {rifle section: 2, huge scene: 1, scouts: 1, crowd: 1}}
"""


@cache
def small() -> Ground:
    """A few stands with something amiss."""
    return ground_of(force_from(SMALL))
