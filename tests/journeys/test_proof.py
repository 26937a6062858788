"""The proof of the list of a folder."""

import datetime
from pathlib import Path

import pytest

from paradestate.chance.force import diagram
from paradestate.core.choice import Choice
from paradestate.core.support.proof import InBest, ListProof, Reach
from paradestate.journeys.memory import Memory
from paradestate.journeys.proof import proof_of_list
from tests.forces import EXAMPLES

TODAY = datetime.date(2026, 3, 1)
ATTACK = Choice(game="whole-day attack")


def proved(folder: Path, *, game: str | None = None, points: int | None = None) -> ListProof:
    answer = proof_of_list(folder, today=TODAY, choice=Choice(game=game), grades={}, points=points)
    assert answer.proof is not None
    return answer.proof


def test_all_games_of_the_example_are_looked_at() -> None:
    found = proved(EXAMPLES / "marenz")
    assert [game.terms.game.name for game in found.games] == [
        "evening attack",
        "evening defence",
        "whole-day attack",
        "whole-day defence",
    ]
    assert found.never_taken == ("anti-tank rifles",)
    assert found.always(InBest.EVERY) == ()
    assert "field battery" in found.worthless


def test_one_game_with_so_many_points() -> None:
    """Section 3.12 of the computations: 3,809 legal forces."""
    (game,) = proved(EXAMPLES / "marenz", game="whole-day attack", points=18).games
    assert game.allowance is None
    assert [level.legal for level in game.levels] == [3809]


def test_a_list_that_needs_what_isn_t_there(tmp_path: Path) -> None:
    (tmp_path / "force.yaml").write_text(
        "format: 1\ntitle: T\nformations: {top: {parts: {a: 1}}}\nstands: {a: {base: none}}\n"
        "raise: {formation: top}\ngames: {raid: {allowance: 3, posture: attack}}\n"
        "supporting troops: {gun: {cost: 2, needs: [horse]}, horse: {cost: 2}}\n"
    )
    (game,) = proved(tmp_path).games
    assert game.entries[0].reach is Reach.NEVER_AFFORDABLE


def test_a_stop_in_the_folder_prevents_the_proof(tmp_path: Path) -> None:
    (tmp_path / "force.yaml").write_text("format: 1\ntitle: T\n")
    answer = proof_of_list(tmp_path, today=TODAY, choice=Choice(), grades={})
    assert answer.proof is None
    assert [each.code for each in answer.checked.findings] == ["missing-word"]


def test_a_folder_without_a_game_has_nothing_to_prove(tmp_path: Path) -> None:
    (tmp_path / "force.yaml").write_text(
        "format: 1\ntitle: T\nformations: {top: {parts: {a: 1}}}\nstands: {a: {base: none}}\n"
        "raise: {formation: top}\n"
    )
    answer = proof_of_list(tmp_path, today=TODAY, choice=Choice(), grades={})
    assert [each.code for each in answer.checked.findings] == ["game-unsaid"]


def test_a_game_that_is_too_large_is_said_by_name(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(diagram, "MOST_STEPS", 0)
    found = proved(EXAMPLES / "marenz", game="whole-day attack")
    assert found.games == ()
    assert list(found.refused) == ["whole-day attack"]


def test_what_was_proved_is_kept_while_nothing_changes() -> None:
    memory = Memory()
    first, second = (
        proof_of_list(
            EXAMPLES / "marenz", today=TODAY, choice=ATTACK, grades={}, points=5, memory=memory
        )
        for _ in range(2)
    )
    assert first.proof is second.proof
