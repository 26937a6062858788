"""What to do now, after what was asked for and rolled this evening."""

import datetime
from collections.abc import Mapping
from fractions import Fraction
from pathlib import Path

import pytest

from paradestate.core.choice import Choice
from paradestate.core.game import Purchase
from paradestate.core.support.asked_for import taken_of
from paradestate.core.support.policy import Ask, Take
from paradestate.journeys.evening import Evening, EveningAsked, evening
from paradestate.journeys.memory import Memory
from tests.forces import EXAMPLES

MARENZ = EXAMPLES / "marenz"
TANKS = Purchase(entry="light tanks", number=2)
GUNS = Purchase(entry="anti-tank guns", number=2)
CARS = Purchase(entry="armoured cars", number=2)
FORCE = """\
format: 1
title: Test
stands: {a: {base: none}}
formations: {top: {parts: {a: 1}}}
raise: {formation: top}
games: {evening: {allowance: 12, posture: attack}}
worths: {tanks: {1: 2, 2: 9}, guns: {1: 3}, cars: {1: 2}}
supporting troops:
  guns: {cost: 3, availability: {roll: 1d6, allows: {1-3: 0, 4-6: all}}, when refused: points kept}
  tanks:
    cost: {1: 3, 2: 6}
    availability: {roll: 1d6, allows: {1-2: 0, 3-4: 1, 5-6: all}}
    when refused: points lost
  cars: {cost: 2, availability: {roll: 1d6, SHARED allows: {1-3: 0, 4-6: all}}}
"""


def begun(
    allowed: Mapping[str, int],
    *,
    folder: Path = MARENZ,
    plan: tuple[Purchase, ...] = (),
    points: int | None = 18,
) -> Evening:
    _, now = evening(
        EveningAsked(
            folder=folder,
            today=datetime.date(2026, 3, 1),
            choice=Choice(game="whole-day attack" if folder == MARENZ else None),
            grades={},
            points=points,
            allowed=allowed,
            plan=plan,
        ),
        memory=Memory(),
    )
    assert now is not None
    return now


def test_at_first_one_stands_at_the_beginning_of_the_chart() -> None:
    """Check value 3.11: ask for the tanks at 18 points, worth 154/9."""
    now = begun({})
    assert isinstance(now.step, Ask)
    assert (now.step.purchase, now.step.worth) == (TANKS, Fraction(154, 9))


def test_each_answer_leads_on_through_the_chart_to_its_end() -> None:
    """Check values 3.11: 53/6 to come after the tanks; of two guns only one is taken."""
    now = begun({"light tanks": 2})
    assert isinstance(now.step, Ask)
    assert (now.step.purchase, now.step.worth) == (GUNS, Fraction(53, 6))
    now = begun({"light tanks": 2, "anti-tank guns": 2})
    assert isinstance(now.step, Take)
    assert [each.number for each in taken_of(now.asked)] == [2, 1]
    assert begun({"light tanks": 0}).step.worth == Fraction(41, 3)


def test_whoever_asks_for_something_else_is_followed() -> None:
    """Armoured cars first: refused, the tanks are best; with 12 points left it is the guns."""
    now = begun({"armoured cars": 0}, plan=(CARS,))
    assert [each.purchase for each in now.asked] == [CARS]
    assert isinstance(now.step, Ask)
    assert now.step.purchase == TANKS
    assert now.step.worth < Fraction(154, 9)
    came = begun({"armoured cars": 2}, plan=(CARS,))
    assert isinstance(came.step, Ask)
    assert (came.step.purchase, came.step.points) == (GUNS, 12)
    came = begun({"armoured cars": 2, "anti-tank guns": 2}, plan=(CARS,))
    assert taken_of(came.asked)[0] == CARS


def test_an_answer_for_what_nobody_asked_is_not_followed() -> None:
    now = begun({"armoured cars": 0, "bicycle troop": 2, "elephants": 1}, plan=())
    assert now.not_followed == ("armoured cars", "bicycle troop", "elephants")
    assert now.asked == ()
    sure = Purchase(entry="bicycle troop", number=2)
    assert begun({"bicycle troop": 2}, plan=(sure,)).not_followed == ("bicycle troop",)


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    (tmp_path / "force.yaml").write_text(FORCE.replace("SHARED ", ""))
    return tmp_path


BOTH, ONE_CAR = Purchase(entry="tanks", number=2), Purchase(entry="cars", number=1)


def followed(folder: Path, **allowed: int) -> Evening:
    return begun(allowed, folder=folder, plan=(BOTH, ONE_CAR), points=12)


def test_points_that_were_lost_on_a_part_are_not_guessed(folder: Path) -> None:
    """What was paid for the tank that didn't come can't be told from what is on the table."""
    now = followed(folder, tanks=1)
    assert (now.not_followed, now.asked) == (("tanks",), ())
    assert followed(folder, tanks=2).not_followed == ()
    assert followed(folder, tanks=0).not_followed == ()


def test_an_answer_that_comes_before_its_request_is_followed_once_that_is_made(
    folder: Path,
) -> None:
    now = followed(folder, tanks=1, guns=0)
    assert now.not_followed == ()
    assert [each.purchase.entry for each in now.asked] == ["guns", "tanks"]
    assert now.step.points == 6


def test_entries_with_one_roll_between_them_are_left_to_the_chart(tmp_path: Path) -> None:
    (tmp_path / "force.yaml").write_text(FORCE.replace("SHARED", "shared roll: luck,"))
    assert followed(tmp_path, cars=1).not_followed == ("cars",)


def test_an_answer_that_cannot_come_is_not_followed(tmp_path: Path) -> None:
    sure = FORCE.replace("SHARED ", "").replace("{1-3: 0, 4-6: all}}, when", "{1-6: all}}, when")
    (tmp_path / "force.yaml").write_text(sure)
    now = followed(tmp_path, guns=0)
    assert now.not_followed == ("guns",)
    assert isinstance(now.step, Ask)


def test_a_force_without_worths_has_no_chart(tmp_path: Path) -> None:
    text = "\n".join(line for line in FORCE.split("\n") if not line.startswith("worths"))
    (tmp_path / "force.yaml").write_text(text.replace("SHARED ", ""))
    journey, now = evening(
        EveningAsked(
            folder=tmp_path,
            today=datetime.date(2026, 3, 1),
            choice=Choice(),
            grades={},
            points=12,
            allowed={},
            plan=(),
        )
    )
    assert now is None
    assert "worths-missing" in {found.code for found in journey.checked.findings}


def test_before_the_roll_there_is_no_chart() -> None:
    journey, now = evening(
        EveningAsked(
            folder=MARENZ,
            today=datetime.date(2026, 3, 1),
            choice=Choice(game="whole-day attack"),
            grades={},
            points=None,
            allowed={},
            plan=(),
        )
    )
    assert now is None
    assert journey.value == Fraction(32261, 1944)
