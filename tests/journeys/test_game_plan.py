"""The plan of a game written into the folder."""

import datetime
from pathlib import Path

import pytest

from paradestate.core.game import Purchase
from paradestate.journeys.check import checked
from paradestate.journeys.game_plan import PlanWritten, write_plan
from paradestate.journeys.new import new_from_example
from paradestate.text.error import EditError

NOW = datetime.datetime(2026, 3, 5, 21, 14, tzinfo=datetime.UTC)
PLAN = (
    Purchase(entry="light tanks", number=2),
    Purchase(entry="pioneers", number=1, choice="flame"),
)
GAME = "whole-day attack"


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    new_from_example(tmp_path / "marenz", name="marenz")
    return tmp_path / "marenz"


def written(folder: Path, *, plan: tuple[Purchase, ...] = PLAN, game: str = GAME) -> PlanWritten:
    return write_plan(folder, today=NOW.date(), at=NOW, game=game, plan=plan)


def test_a_plan_is_written_into_its_game_and_the_version_before_is_kept(folder: Path) -> None:
    file = folder / "supporting-troops.yaml"
    before = file.read_text()
    done = written(folder)
    assert done.file == file
    assert done.former is not None
    assert done.former.read_text() == before
    assert checked(folder, today=NOW.date()).force.games[GAME].plan == PLAN
    changed = [
        one
        for one, other in zip(before.splitlines(), file.read_text().splitlines(), strict=True)
        if one != other
    ]
    assert [line.strip().partition(":")[0] for line in changed] == [GAME]


def test_what_is_written_already_is_left_alone(folder: Path) -> None:
    written(folder)
    assert written(folder).file is None


def test_an_empty_plan_is_taken_out(folder: Path) -> None:
    before = (folder / "supporting-troops.yaml").read_text()
    written(folder)
    written(folder, plan=())
    assert (folder / "supporting-troops.yaml").read_text() == before


def test_a_game_that_is_not_there_gets_no_plan(folder: Path) -> None:
    assert written(folder, game="moonlight").file is None


def test_a_plan_that_would_be_a_stop_is_not_written(folder: Path) -> None:
    done = written(folder, plan=(Purchase(entry="elephants", number=1),))
    assert done.checked.is_stopped
    assert done.file is None


def test_a_choice_that_would_be_read_otherwise_is_not_written(folder: Path) -> None:
    with pytest.raises(EditError, match="something else"):
        written(folder, plan=(Purchase(entry="pioneers", number=1, choice=" flame"),))
