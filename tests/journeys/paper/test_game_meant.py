"""Papers of a game that was written down: they say what the phone says."""

from pathlib import Path

import pytest

from paradestate.core.choice import Choice
from paradestate.core.finding import stops
from paradestate.core.play.event import Subject
from paradestate.journeys.game.play import end, mark, roll, take
from paradestate.journeys.new import new_from_example
from paradestate.journeys.paper.game_meant import GameMeant, game_meant
from paradestate.journeys.paper.paper_kind import Asked
from paradestate.journeys.paper.sheets import Sheets, sheets
from tests.journeys.evenings import MEMORY, TODAY, begun, pen
from tests.sheet.paper.papers import texts

PLATOON = "No 4 Company / 3 Platoon"


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A game of recruits with 6 rolled of 2d6, two things taken, and one platoon kept back.

    The plan that the folder gets afterwards is another.
    """
    made = tmp_path_factory.mktemp("played") / "marenz"
    new_from_example(made, name="marenz")
    done = begun(made, grades=("training=recruits",))
    assert done.game is not None
    roll(pen(made), "allowance", numbers=(2, 4))
    take(pen(made), "machine-gun platoon=1")
    take(pen(made), "field battery=3")
    mark(pen(made), Subject("reserve", PLATOON), value="yes")
    mark(pen(made), Subject("attached to", "machine-gun platoon"), value="No 1 Company / 1 Platoon")
    file = made / "supporting-troops.yaml"
    text = file.read_text(encoding="utf-8")
    planned = "{allowance: 18 + 2d6, posture: attack, plan: [light tanks=2]}"
    file.write_text(
        text.replace("{allowance: 18 + 2d6, posture: attack}", planned), encoding="utf-8"
    )
    return made


def meant(folder: Path, asked: Asked, *, choice: Choice | None = None) -> GameMeant:
    return game_meant(folder, today=TODAY, choice=choice or Choice(), asked=asked, memory=MEMORY)


def printed(folder: Path, name: str) -> str:
    answer: Sheets = sheets(
        folder, today=TODAY, choice=Choice(), asked=Asked(of="", only=(name,)), memory=MEMORY
    )
    (sheet,) = answer.sheets or ()
    return " ".join(" ".join(texts(sheet.printed.pdf)).split())


def test_the_record_says_the_game_what_was_taken_the_points_the_grades_and_the_reserve(
    folder: Path,
) -> None:
    """18 + 6, less 7 for the formation, and 3 more for recruits."""
    found = meant(folder, Asked(of=""))
    assert found.choice.game == "whole-day attack"
    assert [(each.entry, each.number) for each in found.plan] == [
        ("machine-gun platoon", 1),
        ("field battery", 3),
    ]
    assert found.points == 20
    assert found.terms is not None
    assert found.terms.grades["training"] == "recruits"
    assert found.reserve.formations == {"platoon": 1}
    assert stops(found.checked.findings) == ()


def test_state_board_tear_offs_and_private_sheet_are_of_what_was_taken(folder: Path) -> None:
    board = printed(folder, "state board")
    assert "machine-gun platoon" in board.casefold()
    assert "light tanks" not in board.casefold()
    assert printed(folder, "fire missions").count("Field battery") == 3
    private = printed(folder, "private sheet")
    assert "No 4 Company, 3 Platoon: in reserve." in private
    assert "Machine-gun platoon: attached to No 1 Company, 1 Platoon." in private
    assert "training: recruits" in private


def test_the_opponents_sheet_tells_nothing_of_reserve_and_arrangement(folder: Path) -> None:
    seen = printed(folder, "opponents sheet").casefold()
    assert not [word for word in ("reserve", "attached", "battery", "recruits") if word in seen]


def test_the_return_has_no_chances_of_what_has_come_already(folder: Path) -> None:
    assert "chances" not in printed(folder, "parade state")


@pytest.mark.parametrize(
    ("asked", "choice", "said"),
    [
        (Asked(of="", plan="light tanks=2"), Choice(), "Plan typed"),
        (Asked(of="", points=9, reserve={"platoon": 1}), Choice(), "Points and reserve typed"),
        (Asked(of="", grades={"training": "regular"}), Choice(game="x"), "Game and grades typed"),
    ],
)
def test_what_the_game_says_is_not_typed_beside_it(
    folder: Path, asked: Asked, choice: Choice, said: str
) -> None:
    found = meant(folder, asked, choice=choice)
    (stop,) = stops(found.checked.findings)
    assert (stop.code, found.count) == ("said-by-game", None)
    assert stop.message.startswith(said)


def test_a_game_that_is_not_written_down_is_a_stop(folder: Path, tmp_path: Path) -> None:
    (stop,) = stops(meant(folder, Asked(of="nix")).checked.findings)
    assert (stop.code, stop.message) == ("no-game", "No game has an id that begins with 'nix'.")
    new_from_example(tmp_path / "marenz", name="marenz")
    (none,) = stops(meant(tmp_path / "marenz", Asked(of="")).checked.findings)
    assert none.message == "No game is written down."


def test_with_nothing_taken_the_trays_hold_the_force_alone(tmp_path: Path) -> None:
    """Not what was planned: it wasn't bought."""
    folder = tmp_path / "marenz"
    new_from_example(folder, name="marenz")
    begun(folder)
    alone = printed(folder, "packing list")
    file = folder / "supporting-troops.yaml"
    text = file.read_text(encoding="utf-8")
    planned = "{allowance: 18 + 2d6, posture: attack, plan: [light tanks=2]}"
    file.write_text(
        text.replace("{allowance: 18 + 2d6, posture: attack}", planned), encoding="utf-8"
    )
    assert printed(folder, "packing list") == alone
    end(pen(folder), outcome="a draw")
    assert meant(folder, Asked(of="")).plan == ()
    assert stops(meant(folder, Asked(of="")).checked.findings) == ()
    gone = file.read_text(encoding="utf-8").replace("  whole-day attack:", "  other attack:")
    file.write_text(gone, encoding="utf-8")
    halted = meant(folder, Asked(of=""))
    assert halted.count is None
    assert stops(halted.checked.findings)
