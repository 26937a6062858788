"""The odds of a plan in a folder."""

import datetime
from fractions import Fraction
from pathlib import Path

import pytest

from paradestate.core.choice import Choice
from paradestate.journeys.odds import OddsJourney, odds
from tests.forces import EXAMPLES

TODAY = datetime.date(2026, 3, 1)
FORCE = """\
format: 1
title: Test
stands: {a: {base: none}}
formations: {top: {parts: {a: 1}}}
raise: {formation: top}
games: {evening: {allowance: 4 + 1d6, posture: attack, plan: [guns=1]}}
supporting troops:
  guns:
    cost: 8
    availability: {roll: 1d6, allows: {1-2: 0, 3 or more: all}}
    when refused: points kept
"""


def asked(folder: Path, plan: str, *, points: int | None = None) -> OddsJourney:
    choice = Choice(game="whole-day attack") if folder.parent == EXAMPLES else Choice()
    return odds(folder, today=TODAY, choice=choice, grades={}, plan=plan, points=points)


def test_the_plan_of_the_example() -> None:
    answer = asked(
        EXAMPLES / "marenz", "light tanks=2, tank squadron commander=1, machine-gun platoon=2"
    )
    assert answer.odds is not None
    assert answer.odds.together == Fraction(13, 27)


def test_points_that_were_rolled_are_known() -> None:
    answer = asked(EXAMPLES / "marenz", "light tanks=2", points=8)
    assert answer.odds is not None
    assert (answer.odds.affordable, answer.odds.available) == (0, Fraction(2, 3))


def test_without_a_plan_it_is_that_of_the_game(tmp_path: Path) -> None:
    (tmp_path / "force.yaml").write_text(FORCE)
    answer = asked(tmp_path, " ")
    assert answer.odds is not None
    assert answer.odds.together == Fraction(1, 2) * Fraction(2, 3)


@pytest.mark.parametrize(
    ("plan", "code"),
    [
        ("light tanks", "not-a-purchase"),
        ("light tanks=1", "number-not-priced"),
        ("field works for a company=1", "not-in-force"),
        ("pioneers(smoke)=1", "choice-unknown"),
    ],
)
def test_what_cannot_be_had_has_no_odds(plan: str, code: str) -> None:
    answer = asked(EXAMPLES / "marenz", plan)
    assert answer.odds is None
    assert code in [finding.code for finding in answer.checked.findings]


def test_a_game_that_is_not_said_is_a_stop(tmp_path: Path) -> None:
    (tmp_path / "force.yaml").write_text("format: 1\n")
    assert asked(tmp_path, "").odds is None
