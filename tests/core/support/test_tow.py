"""Guns that nothing tows."""

import pytest

from paradestate.core.establishment import establishment
from paradestate.core.finding import Finding, Level
from paradestate.core.force import Force
from paradestate.core.game import Purchase
from paradestate.core.support.judge_finding import Known
from paradestate.core.support.room import Fielded
from paradestate.core.support.tow import needs_tow, tow_findings
from tests.forces import force_from, marenz

FIGURES = (
    "figures: {man: {footprint: 6 mm}, horse: {footprint: 6 mm, sort: mounted},"
    " cannon: {footprint: 9 mm, sort: gun}, lorry: {footprint: 16 x 42 mm, sort: vehicle}}"
)
STANDS = (
    "stands: {gun: {base: 40 x 40 mm, figures: {cannon: 1, man: 3}},"
    " fixed: {base: 40 x 40 mm, figures: {cannon: 1}, stays: yes},"
    " team: {base: 60 x 40 mm, figures: {cannon: 1, horse: 4}},"
    " card: {base: 40 x 40 mm, printed: yes, modelled as: {cannon: 1}},"
    " section: {base: 40 x 20 mm, figures: {man: 4}},"
    " lorry: {base: none, footprint: 16 x 42 mm, figures: {lorry: 1}, carries: 2}}"
)
ENTRIES = """
supporting troops:
  guns: {cost: {1: 2, 2: 3}, each: {gun: 1}}
  towed: {cost: {1: 2}, each: {gun: 1, lorry: 1}}
  with teams: {cost: {1: 2}, each: {gun: 1}, needs for each: {teams: 1}}
  teams: {cost: {1: 1}}
  lorries: {cost: {1: 2}, each: {lorry: 1}, limit: {most: 1, of: battery}}
  carts: {cost: {1: 2}, each: {lorry: 1}, attach: {to: battery}}
"""
QUIET = "formations: {top: {parts: {section: 1}}, battery: {parts: {section: 1}}}"


def said(force: Force, *plan: tuple[str, int]) -> list[Finding]:
    made, _ = establishment(force)
    assert made is not None
    purchases = tuple(Purchase(entry=name, number=number) for name, number in plan)
    fielded = Fielded(force=force, made=made, plan=purchases)
    return list(tow_findings(fielded, known=Known()))


def army(formations: str = QUIET) -> Force:
    return force_from(FIGURES, STANDS, formations, ENTRIES)


def test_guns_of_the_plan_that_nothing_tows_stay() -> None:
    (finding,) = said(army(), ("guns", 2), ("guns", 1))
    assert (finding.level, finding.code) == (Level.REMARK, "gun-without-tow")
    assert finding.message == "Guns: nothing tows 3 guns."
    assert finding.effect == "They stay where they start."
    (one,) = said(army(), ("guns", 1))
    assert one.effect == "It stays where it starts."


@pytest.mark.parametrize("entry", ["towed", "with teams", "lorries"])
def test_what_has_its_tow_or_its_teams_is_left_alone(entry: str) -> None:
    assert said(army(), (entry, 1)) == []


def test_guns_that_must_be_there_are_named_by_formation() -> None:
    batteries = "formations: {top: {parts: {battery: 2}}, battery: {parts: {gun: 3, section: 1}}}"
    (finding,) = said(army(batteries))
    assert finding.message == "Battery: nothing tows 6 guns."
    assert said(army(batteries), ("lorries", 1)) == []
    assert said(army(batteries), ("carts", 1)) == []
    towed = "formations: {top: {parts: {battery: 2}}, battery: {parts: {gun: 2, lorry: 1}}}"
    assert said(army(towed)) == []


def test_only_a_gun_on_its_own_needs_a_tow() -> None:
    force = army()
    names = (*force.stands, "man stand")
    assert [name for name in names if needs_tow(force, name)] == ["gun"]


def test_a_purchase_brings_its_guns_beside_what_needs_no_tow() -> None:
    entries = "supporting troops: {guns: {cost: {1: 2}, each: {gun: 1, section: 2, fixed: 1}}}"
    (finding,) = said(force_from(FIGURES, STANDS, QUIET, entries), ("guns", 1))
    assert finding.message == "Guns: nothing tows 1 gun."


def test_the_guns_of_the_example_have_their_trucks() -> None:
    assert said(marenz(), ("anti-tank guns", 3)) == []
