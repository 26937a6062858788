"""Which stands a milestone takes of the widest force."""

import datetime
from dataclasses import replace
from fractions import Fraction

from paradestate.core.establishment import establishment
from paradestate.core.holdings import Holdings
from paradestate.core.work.milestone import is_beside, repairs_wanted, stand_beside
from paradestate.core.work.workload import workload
from tests.core.work.works import MINUTES, TROOP, WISHED, in_repair, sound_load, stands_of
from tests.forces import force_from

RATIO = """\
figures: {rifleman: {}}
stands: {section: {base: 40 x 20 mm, figures: {rifleman: 4}}}
formations:
  half: {men: 90}
  company: {men per figure: 30, figure: rifleman, figures per stand: 3, parts: {half: 1}}
  top: {parts: [{of: company, number: 1-2, usual: 2}]}
"""
NESTED = """\
figures: {rifleman: {}}
stands: {section: {base: 40 x 20 mm, figures: {rifleman: 1}}}
formations:
  platoon: {parts: [{of: section, number: 1-2, usual: 2}]}
  company: {parts: [{of: platoon, number: 1-2, usual: 2}]}
  scene: {parts: {section: 1}}
  top:
    parts:
      - {of: company, number: 2}
      - {of: scene, number: 1, need: wished}
"""


def test_of_like_bodies_those_with_the_least_work_left_are_taken() -> None:
    """Whatever is owned goes to the first of them, until its stands are finished."""
    stock = "stock: {rifleman: {painted: 4}, officer: {primed: 9}}\n"
    load = sound_load(MINUTES, stock)
    assert [name[0] for name in stands_of(load, "smallest legal force")[1:]] == ["1"] * 4 + [
        "2"
    ] * 4


def test_the_least_is_taken_at_every_level_and_wishes_go_with_the_bodies_that_are_taken() -> None:
    load = sound_load(MINUTES, organisation=NESTED, head=WISHED)
    assert stands_of(load, "smallest legal force") == [
        "1 Company / 1 Platoon / 1 Section",
        "2 Company / 1 Platoon / 1 Section",
    ]
    assert len(stands_of(load, "whole top")) == 8
    assert stands_of(load, "with the wished items")[-1] == "Scene / Section"


def test_stands_by_ratio_go_with_their_body() -> None:
    load = sound_load(MINUTES, organisation=RATIO)
    assert stands_of(load, "smallest legal force") == ["1 Company / Half / Stand"]
    assert len(stands_of(load, "whole top")) == 2


def test_a_stand_beside_the_force_is_numbered_and_named_after_its_pattern() -> None:
    force = force_from(TROOP)
    found = stand_beside(force.stands["marker"], number=2)
    assert (found.name, found.figures, found.printed) == ("Supporting Troops / 2 Marker", {}, True)
    assert is_beside(found)


def test_those_worked_on_by_name_are_taken_first() -> None:
    """The third company is nearer: its stands were worked on as themselves."""
    force = force_from(TROOP, MINUTES, "stock: {rifleman: {primed: 8}}\n")
    worked = {
        f"3 Company / {number} Section": Holdings(figures={"rifleman": {"primed": 4}})
        for number in (1, 2)
    }
    made, _ = establishment(force)
    assert made is not None
    load, _ = workload(replace(force, worked=worked), made)
    assert load is not None
    taken = {name[0] for name in stands_of(load, "smallest legal force")[1:]}
    assert taken == {"1", "3"}
    assert load.works["3 Company / 2 Section"].minutes == 16


def test_where_stands_are_exchanged_those_with_the_most_work_go() -> None:
    """The last company has nothing; on the first two a section is finished each."""
    games = """\
games: {raid: {allowance: 8, posture: attack, plan: [storm troops=1]}}
supporting troops: {storm troops: {cost: 3, replaces: {of: section, number: 2, with: command}}}
"""
    load = sound_load(MINUTES, games, "stock stands: {section: {painted: 2}}\n")
    left = set(stands_of(load, "whole top")) - set(stands_of(load, "raid"))
    assert left == {"2 Company / 1 Section", "2 Company / 2 Section"}


def test_repairs_are_milestones_by_the_day_on_which_they_are_wanted() -> None:
    day = datetime.date(2026, 12, 10)
    repairs = [in_repair(name, wanted=day) for name in ("b", "a", "elsewhere")]
    (found,) = repairs_wanted(repairs, stands={"a", "b"})
    assert (found.wanted, found.stands, found.weight) == (day, ("b", "a"), Fraction(2))
