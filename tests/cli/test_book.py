"""The command `book`."""

from pathlib import Path

import pytest

from tests.cli.calling import call

STOCK = "stock: {light truck: {based: 12, assembled: 2}}\n"
CLUB = """\
club:
  boxes:
    box 9: {keeper: Ann, holds: {light truck: 6}}
  bookings:
    river game: {hours: 2026-12-03 20:00-22:00, needs: {light truck: 8}}
    hill game: {hours: 2026-12-03 20:00-22:00, needs: {light truck: 8}}
"""


@pytest.fixture
def booked(folder: Path) -> Path:
    (folder / "club.yaml").write_text(STOCK + CLUB, encoding="utf-8")
    return folder


def test_story_27_two_games_at_once(booked: Path) -> None:
    answer = call("book", booked, "--from", "2026-12-01")
    assert answer.status == 0
    assert answer.out.startswith(
        "3 December 2026: Light truck: 16 booked, 12 sound, 4 short, 20:00-22:00.\n"
        "  Moving river game to 18:00-20:00 would do it.\n"
    )
    assert "  Borrowing box 9 from Ann would do it.\n" in answer.out
    assert "club.yaml:6:5" in answer.err


def test_a_game_that_begins_as_the_other_ends(booked: Path) -> None:
    at = "hill game: {hours: 2026-12-03 "
    later = CLUB.replace(f"{at}20:00-22:00", f"{at}22:00-24:00")
    (booked / "club.yaml").write_text(STOCK + later, encoding="utf-8")
    answer = call("book", booked, "--from", "2026-12-01")
    assert answer.out.startswith("All booked games can be played.\n")


def test_for_programs(booked: Path) -> None:
    (spell,) = call("book", booked, "--from", "2026-12-01", "--json").document["spells"]
    assert spell["short"] == {"light truck": 4}
    assert spell["in_repair"] == {"light truck": 2}
    assert spell["remedies"][0] == {"booking": "river game", "from": "18:00", "until": "20:00"}
    assert spell["remedies"][-1]["box"] == "box 9"


def test_what_is_over_is_left_out_and_an_odd_day_is_refused(booked: Path) -> None:
    assert call("book", booked, "--from", "2026-12-04").out == "Nothing is booked.\n"
    assert call("book", booked, "--from", "soon").status == 1


def test_a_folder_with_a_stop_has_no_answer(folder: Path) -> None:
    (folder / "club.yaml").write_text("club: {bookings: {a: {hours: late}}}\n", encoding="utf-8")
    assert (call("book", folder).status, call("book", folder).out) == (1, "")
