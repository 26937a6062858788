"""Papers of a game from a folder."""

import datetime
import re
import shutil
from pathlib import Path

import pytest

from paradestate.core.choice import Choice
from paradestate.core.imposition.layout import Layout
from paradestate.core.imposition.paper_size import LETTER
from paradestate.journeys.paper.every_paper import EVERY_PAPER
from paradestate.journeys.paper.paper_kind import Asked
from paradestate.journeys.paper.sheets import Sheets, sheets
from tests.forces import EXAMPLES
from tests.sheet.paper.papers import texts

ON = datetime.date(2026, 3, 5)
GAME = Choice(game="whole-day attack")
MARENZ = EXAMPLES / "marenz"
PLAN = "light tanks=2, machine-gun platoon=2, field battery=3"

OF_A_GAME = {
    "private sheet": 2,
    "opponents sheet": 1,
    "umpires sheet": 1,
    "state board": 1,
    "fire missions": 1,
    "request slips": 2,
    "decision chart": 1,
    "roll record": 1,
    "message slips": 1,
}


def made(asked: Asked, *, folder: Path = MARENZ, choice: Choice = GAME) -> Sheets:
    return sheets(folder, today=ON, choice=choice, asked=asked)


def pages(answer: Sheets) -> dict[str, int]:
    return {each.name: each.printed.pages for each in answer.sheets or ()}


def text_of(answer: Sheets) -> str:
    (sheet,) = answer.sheets or ()
    return "\n".join(texts(sheet.printed.pdf))


def codes(answer: Sheets) -> list[str]:
    return [found.code for found in answer.checked.findings if found.code != "stands-alike"]


@pytest.mark.unmeasured
def test_a_game_has_all_its_papers() -> None:
    plan = "light tanks=2, machine-gun platoon=2, field battery=3"
    answer = made(Asked(only=tuple(OF_A_GAME), plan=plan))
    assert pages(answer) == OF_A_GAME
    assert codes(answer) == []
    (tick,) = answer.ticks
    assert tick.holds


def test_without_a_game_or_plan_they_are_printed_only_when_asked_for_by_name() -> None:
    bare = Choice()
    state = made(Asked(only=("state board",)), choice=bare)
    assert pages(state) == {"state board": 1}
    kind = next(each for each in EVERY_PAPER if each.name == "message slips")
    every = made(Asked(), choice=bare)
    assert every.sheets is not None
    assert kind.name not in pages(every)
    assert pages(made(Asked(only=("decision chart",)), choice=bare)) == {}


def test_the_state_board_of_a_battalion_is_one_page_of_letter_too_with_all_its_lines() -> None:
    letter = Layout(size=LETTER)
    answer = made(Asked(only=("state board",), layout=letter, plan=PLAN))
    assert pages(answer) == {"state board": 1}
    assert codes(answer) == []
    text = text_of(answer)
    for words in ("No 4 Company, 3 Platoon", "Fire missions", "Turn", "Leaders hit"):
        assert words in text


def test_a_state_board_too_long_for_one_page_goes_on_to_another(
    tmp_path: Path,
) -> None:
    folder = copied(tmp_path)
    states = "states: [held up, out of ammunition, shaken]\n"
    (folder / "states.yaml").write_text(states, encoding="utf-8")
    (board,) = made(Asked(only=("state board",)), folder=folder).sheets or ()
    assert board.printed.pages == 2
    assert "page 2 of 2" in texts(board.printed.pdf)[1]


def test_the_chart_is_for_the_likeliest_points_or_for_those_that_were_rolled() -> None:
    """Example C of the best fall-back: at 18 points left the tanks, 17.11."""
    likeliest = text_of(made(Asked(only=("decision chart",))))
    assert "18 points left, the likeliest: worth 17.11 on average" in likeliest
    rolled = text_of(made(Asked(only=("decision chart",), points=9)))
    assert "9 points left: worth 9.61 on average" in rolled.replace("\n", " ")


def test_there_is_no_chart_where_nothing_has_a_worth(tmp_path: Path) -> None:
    folder = copied(tmp_path)
    file = folder / "supporting-troops.yaml"
    text = file.read_text(encoding="utf-8")
    file.write_text(text[: text.index("worths:")], encoding="utf-8")
    assert pages(made(Asked(only=("decision chart",)), folder=folder)) == {}


def copied(tmp_path: Path) -> Path:
    return Path(shutil.copytree(MARENZ, tmp_path / "other"))


def test_the_umpire_sees_both_sides(tmp_path: Path) -> None:
    folder = copied(tmp_path)
    file = folder / "force.yaml"
    text = file.read_text(encoding="utf-8")
    file.write_text(text.replace("Republic of Marenz", "Kingdom of Tarn"), encoding="utf-8")
    both = text_of(made(Asked(only=("umpires sheet",), other=folder)))
    assert "Republic of Marenz" in both
    assert "Kingdom of Tarn" in both
    assert "Kingdom of Tarn" not in text_of(made(Asked(only=("umpires sheet",))))
    games = folder / "supporting-troops.yaml"
    other_games = games.read_text(encoding="utf-8").replace("whole-day attack", "dawn attack")
    games.write_text(other_games, encoding="utf-8")
    assert text_of(made(Asked(only=("umpires sheet",), other=folder))).count("Whole-day") == 1


def test_a_stop_in_the_other_folder_is_told(tmp_path: Path) -> None:
    (tmp_path / "force.yaml").write_text("format: 1\n", encoding="utf-8")
    answer = made(Asked(only=("umpires sheet",), other=tmp_path))
    assert pages(answer) == {}
    assert any(found.place.file.startswith(str(tmp_path)) for found in answer.checked.findings)


def test_a_reserve_that_is_too_large_stops_all_of_them() -> None:
    answer = made(Asked(only=("private sheet",), reserve={"platoon": 5}))
    assert answer.sheets is None
    assert codes(answer) == ["reserve-too-large"]


def test_the_reserve_stands_on_the_private_sheet() -> None:
    answer = made(Asked(only=("private sheet",), reserve={"platoon": 4}))
    assert "In reserve, named: 4 platoons." in text_of(answer)


def test_the_state_board_marks_the_boxes_at_which_something_happens(tmp_path: Path) -> None:
    folder = tmp_path / "marenz"
    shutil.copytree(MARENZ, folder)
    limits = (
        "loss limits:\n"
        "  - {of: company, at: {a third: shaken, more than half: falls back}}\n"
        "  - {of: platoon, at: {all: gone}}\n"
        "  - {count: figures, at: {40%: night falls early}}\n"
    )
    (folder / "limits.yaml").write_text(limits, encoding="utf-8")
    text = text_of(made(Asked(only=("state board",)), folder=folder))
    assert text.count("shaken") == text.count("falls back") == 4
    assert text.count("2 of 2 out: gone") == 12
    assert re.search(r"at \d+ night falls early", text)


def test_the_chart_is_for_the_grades_that_were_chosen() -> None:
    """Recruits give 3 points back: 18 points left, the likeliest, are 21."""
    recruits = Asked(only=("decision chart",), grades={"training": "recruits"})
    assert "21 points left, the likeliest" in text_of(made(recruits))


@pytest.mark.parametrize(
    ("grades", "choice", "code"),
    [
        ({"training": "lions"}, GAME, "unknown-choice"),
        ({"courage": "recruits"}, GAME, "unknown-choice"),
        ({"training": "recruits"}, Choice(), "game-unsaid"),
    ],
)
def test_grades_that_are_of_no_game_stop_all_of_them(
    grades: dict[str, str], choice: Choice, code: str
) -> None:
    answer = made(Asked(only=("message slips",), grades=grades), choice=choice)
    assert answer.sheets is None
    assert codes(answer) == [code]
