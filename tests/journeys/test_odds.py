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


def test_points_that_never_suffice_are_odds_and_no_stop() -> None:
    answer = asked(EXAMPLES / "marenz", "light tanks=3, medium mortars=4, lorries for a company=1")
    assert answer.odds is not None
    assert (answer.odds.cost, answer.odds.together) == (26, Fraction(0))


def test_points_that_were_rolled_are_known() -> None:
    answer = asked(EXAMPLES / "marenz", "light tanks=2", points=8)
    assert answer.odds is not None
    assert (answer.odds.affordable, answer.odds.available) == (Fraction(0), Fraction(2, 3))


def test_without_a_plan_it_is_that_of_the_game(tmp_path: Path) -> None:
    (tmp_path / "force.yaml").write_text(FORCE)
    answer = asked(tmp_path, " ")
    assert answer.odds is not None
    assert answer.odds.together == Fraction(1, 2) * Fraction(2, 3)


def test_a_plan_in_the_folder_is_judged_where_it_stands(tmp_path: Path) -> None:
    """One gun for every troop: two are planned, and only one troop is raised this time."""
    text = FORCE.replace(
        "{top: {parts: {a: 1}}}",
        "{top: {parts: [{of: troop, number: 1-2, usual: 2}]}, troop: {parts: {a: 1}}}",
    ).replace("[guns=1]", "[guns=1, guns=1]")
    text = text.replace("cost: 8", "cost: 5")
    (tmp_path / "force.yaml").write_text(text + "    limit: {most: 1, for every: 1, of: troop}\n")
    assert asked(tmp_path, "").odds is not None
    choice = Choice(numbers={"troop": 1})
    answer = odds(tmp_path, today=TODAY, choice=choice, grades={})
    assert answer.odds is None
    (stop,) = [each for each in answer.checked.findings if each.code == "over-limit"]
    assert (Path(stop.place.file).name, stop.place.line) == ("force.yaml", 6)
    assert stop.effect == "It has no odds."


@pytest.mark.parametrize(
    ("plan", "code"),
    [
        ("light tanks", "not-a-purchase"),
        ("light tanks=1", "number-not-priced"),
        ("field works for a company=1", "not-in-force"),
        ("pioneers(smoke)=1", "choice-unknown"),
        ("pioneers=1", "choice-missing"),
        ("tank squadron commander=1", "need-missing"),
        ("armoured cars=2, bicycle troop=2", "barred-pair"),
        ("machine-gun platoon=1, " * 2 + "machine-gun platoon=1", "over-limit"),
    ],
)
def test_a_plan_that_is_never_legal_has_no_odds(plan: str, code: str) -> None:
    answer = asked(EXAMPLES / "marenz", plan)
    assert answer.odds is None
    assert code in [finding.code for finding in answer.checked.findings]


def test_a_game_that_is_not_said_is_a_stop(tmp_path: Path) -> None:
    (tmp_path / "force.yaml").write_text("format: 1\n")
    assert asked(tmp_path, "").odds is None


def test_ways_out_that_would_not_be_told_are_not_looked_for(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "force.yaml").write_text(FORCE, encoding="utf-8")
    monkeypatch.delattr("paradestate.journeys.odds.judged")
    answer = asked(tmp_path, "guns=1", points=1)
    assert answer.odds is not None
    assert answer.odds.together == Fraction(0)
