"""What a carry file knows: the force, and the games that are open as they stand."""

import datetime
from pathlib import Path

from paradestate.journeys.game.carry import carry
from paradestate.journeys.game.table import table_force
from paradestate.journeys.game.table_entries import take_entries
from tests.entries import uuid
from tests.journeys.game.test_bring import opened
from tests.journeys.game.test_table_entries import GAME, played, sent, told

TODAY = datetime.date(2026, 11, 27)


def test_it_holds_the_force_and_what_was_written_of_open_games(guard: Path) -> None:
    over = {"game": uuid(901), "counter": 1, "ended": {}}
    batch = [opened(1), told(2), sent(3, kind="played", played=over)]
    take_entries(guard, today=TODAY, sent=batch)
    made = carry(guard, today=TODAY, new_id=lambda: uuid(7)).content
    assert made is not None
    assert made["force"] == table_force(guard, today=TODAY).force
    assert [each["id"] for each in made["entries"]] == [uuid(1), uuid(2)]
    assert [(each["game"], each["name"]) for each in made["games"]] == [(GAME, "evening attack")]
    assert (made["carry"], made["name"], made["made"]) == (uuid(7), guard.name, "27 November 2026")


def test_a_folder_that_can_not_be_read_gives_none(guard: Path) -> None:
    (guard / "force.yaml").write_text("format: 1\ntitle: [", encoding="utf-8")
    made = carry(guard, today=TODAY, new_id=lambda: uuid(7))
    assert made.content is None
    assert made.findings


def test_a_game_that_is_over_is_not_carried(guard: Path) -> None:
    take_entries(guard, today=TODAY, sent=[sent(1, kind="played", played=played(1, ended={}))])
    made = carry(guard, today=TODAY, new_id=lambda: uuid(7)).content
    assert made is not None
    assert (made["games"], made["entries"]) == ([], [])


def test_what_was_written_of_two_open_games_is_carried_game_by_game(guard: Path) -> None:
    other = {"game": uuid(901), "counter": 1, "opened": {"game": "raid"}}
    batch = [opened(1), sent(2, kind="played", played=other), told(3)]
    take_entries(guard, today=TODAY, sent=batch)
    made = carry(guard, today=TODAY, new_id=lambda: uuid(7)).content
    assert made is not None
    assert [each["game"] for each in made["games"]] == [GAME, uuid(901)]
    assert [each["id"] for each in made["entries"]] == [uuid(1), uuid(3), uuid(2)]
