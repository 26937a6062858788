"""The terms of a game in a folder."""

import datetime
from pathlib import Path

from paradestate.core.choice import Choice
from paradestate.journeys.choosing import grades_of, plan_of
from paradestate.journeys.terms import game_terms
from tests.forces import EXAMPLES

TODAY = datetime.date(2026, 3, 1)
ONE_GAME = """\
format: 1
title: Test
stands: {a: {base: none}}
formations: {top: {parts: {a: 1}}}
raise: {formation: top}
games: {evening: {allowance: 12, posture: attack}}
"""


def codes(folder: Path, *, game: str | None = None) -> list[str]:
    answer = game_terms(folder, today=TODAY, choice=Choice(game=game), grades={})
    assert answer.terms is None
    return [finding.code for finding in answer.checked.findings]


def test_the_example_in_an_attack() -> None:
    grades, _ = grades_of(["training=recruits"])
    answer = game_terms(
        EXAMPLES / "marenz", today=TODAY, choice=Choice(game="whole-day attack"), grades=grades
    )
    assert answer.terms is not None
    assert answer.count is not None
    assert answer.terms.taken_off == 4


def test_the_only_game_needs_no_word(tmp_path: Path) -> None:
    (tmp_path / "force.yaml").write_text(ONE_GAME)
    answer = game_terms(tmp_path, today=TODAY, choice=Choice(), grades={})
    assert answer.terms is not None
    assert answer.terms.game.name == "evening"


def test_of_several_games_one_has_to_be_chosen(tmp_path: Path) -> None:
    assert "game-unsaid" in codes(EXAMPLES / "marenz")
    (tmp_path / "force.yaml").write_text(ONE_GAME.partition("games")[0])
    assert codes(tmp_path) == ["game-unsaid"]


def test_what_stops_the_count_stops_the_terms(tmp_path: Path) -> None:
    assert "unknown-choice" in codes(EXAMPLES / "marenz", game="moonlight")
    (tmp_path / "force.yaml").write_text("format: 1\n")
    assert codes(tmp_path, game="evening")


def test_a_plan_that_cannot_be_read_is_a_stop() -> None:
    assert plan_of("  ", entries=()) == ((), ())
    plan, findings = plan_of("guns", entries=())
    assert plan == ()
    assert [finding.code for finding in findings] == ["not-a-purchase"]
