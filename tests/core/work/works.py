"""Workloads that tests are made of, from what an owner writes."""

import datetime
from dataclasses import replace

from paradestate.core.establishment import establishment
from paradestate.core.finding import Finding
from paradestate.core.on_order import OnOrder
from paradestate.core.repair import Repair
from paradestate.core.work.workload import Workload, workload
from tests.forces import HEAD, force_from

TROOP = """\
figures: {rifleman: {}, officer: {}, gun: {sort: gun}}
stands:
  section: {base: 40 x 20 mm, figures: {rifleman: 4}}
  command: {base: 30 mm disc, figures: {officer: 1, rifleman: 1}}
  gun team: {base: 40 x 40 mm, figures: {gun: 1}}
  marker: {base: 40 mm disc, printed: yes, modelled as: {rifleman: 2}}
formations:
  company: {echelon: company, parts: {command: 1, section: 2, marker: 1}}
  top:
    parts:
      - {of: command, number: 1}
      - {of: company, number: 2-4, usual: 3}
      - {of: gun team, number: 1, need: wished}
"""
WISHED = HEAD.replace("top}", "top, wished: all}")
"""The wished items are wanted too."""
MINUTES = """\
bench:
  stages: [raw, primed, painted]
  minutes: {foot: {primed: 1, painted: 4}, gun: {painted: 30}}
"""


def load_of(
    *texts: str,
    organisation: str = TROOP,
    game: str | None = None,
    head: str = HEAD,
    on_order: tuple[OnOrder, ...] = (),
    repairs: tuple[Repair, ...] = (),
) -> tuple[Workload | None, tuple[Finding, ...]]:
    """The workload of a force, and what is found."""
    force = force_from(organisation, *texts, head=head)
    force = replace(force, on_order=on_order, repairs=repairs)
    made, findings = establishment(force)
    assert made is not None
    load, more = workload(force, made, game=game)
    return load, (*findings, *more)


def sound_load(
    *texts: str,
    organisation: str = TROOP,
    game: str | None = None,
    head: str = HEAD,
    on_order: tuple[OnOrder, ...] = (),
    repairs: tuple[Repair, ...] = (),
) -> Workload:
    """The same where nothing is wrong."""
    load, findings = load_of(
        *texts,
        organisation=organisation,
        game=game,
        head=head,
        on_order=on_order,
        repairs=repairs,
    )
    assert load is not None
    assert not findings
    return load


def stands_of(load: Workload, name: str) -> list[str]:
    """The stands of a milestone."""
    (found,) = (each for each in load.milestones if each.name == name)
    return list(found.stands)


def in_repair(stand: str, *, wanted: datetime.date, note: str = "") -> Repair:
    """A stand of the troop that went back on the day before."""
    return Repair(
        entry=stand,
        force="",
        stand=stand,
        day=wanted - datetime.timedelta(days=1),
        wanted=wanted,
        left="painted",
        note=note,
    )
