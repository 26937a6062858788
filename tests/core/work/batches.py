"""Batches that tests are made of, with the force that they belong to."""

from paradestate.core.establishment import establishment
from paradestate.core.force import Force
from paradestate.core.work.ladder import Ladder
from paradestate.core.work.order_of_work import ladder
from paradestate.core.work.stand_work import StandWork
from paradestate.core.work.workload import workload
from tests.forces import force_from

SQUAD = """\
figures:
  rifleman: {height: 10 mm}
  officer: {height: 10 mm}
  cart: {height: 10 mm, footprint: 10 x 20 mm, sort: vehicle}
stands:
  section: {base: 40 x 20 mm, figures: {rifleman: 4}}
  command: {base: 30 mm disc, figures: {officer: 1, rifleman: 1}}
  cart: {base: none, footprint: 10 x 20 mm, figures: {cart: 1}}
formations:
  top: {parts: {command: 1, section: 2, cart: 1}}
"""
MINUTES = "bench:\n  minutes: {foot: {painted: 10}, vehicle: {painted: 10}}\n"


def climbed(*texts: str, bench: str = MINUTES, organisation: str = SQUAD) -> tuple[Ladder, Force]:
    """The ladder of the squad, with what these texts add to its bench and its files."""
    force = force_from(organisation, bench, *texts)
    made, _ = establishment(force)
    assert made is not None
    load, _ = workload(force, made)
    assert load is not None
    return ladder(load), force


def works_of(
    *texts: str, bench: str = MINUTES, organisation: str = SQUAD
) -> tuple[list[StandWork], Force]:
    """The work on its stands, and the force."""
    found, force = climbed(*texts, bench=bench, organisation=organisation)
    return [work for rung in found.rungs for work in rung.works], force
