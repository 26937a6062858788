"""What is asked of papers, as their address says it."""

from pathlib import Path

import pytest

from paradestate.core.finding import Level
from paradestate.web.papers.printer import Printer
from paradestate.web.papers.question import MOST_TYPED, PapersQuestion, papers_question


def asked(printer: Printer | None = None, **query: str) -> PapersQuestion:
    return filled(query, printer=printer)


def filled(query: dict[str, str], *, printer: Printer | None = None) -> PapersQuestion:
    return papers_question(query, printer=printer or Printer(), games=("attack", "defence"))


@pytest.mark.parametrize(
    ("typed", "game"), [("", "attack"), ("defence", "defence"), ("none", ""), ("nix", "nix")]
)
def test_the_first_game_is_meant_where_none_is_said(typed: str, game: str) -> None:
    assert asked(game=typed).game == game
    assert asked(game=typed).choice.game == (game or None)


def test_a_force_without_games_has_papers_too() -> None:
    assert papers_question({}, printer=Printer(), games=()).game == ""


def test_the_address_says_what_was_typed_and_what_is_added() -> None:
    question = asked(plan=" light tanks=2 ", dummies="", other="x")
    assert question.query() == "?plan=light+tanks%3D2"
    assert question.query(name="labels", number="") == "?plan=light+tanks%3D2&name=labels"
    assert asked().query() == ""
    assert len(asked(plan="x" * 9_000).typed["plan"]) == MOST_TYPED


def test_the_printer_decides_how_papers_are_laid_out() -> None:
    printer = Printer(paper="letter", across="96.8", is_corrected=True)
    question = asked(printer)
    assert question.asked.layout.size.name == "Letter"
    assert question.asked.is_corrected
    assert question.key != asked().key


def test_dummies_that_are_no_number_are_a_stop() -> None:
    (found,) = asked(dummies="many").findings
    assert "dummies" in found.message


def test_what_is_ticked_and_filled_in_of_a_game_is_asked() -> None:
    question = filled(
        {
            "revealed:medium mortars": "yes",
            "revealed:light tanks": "no",
            "reserve:platoon": "4",
            "reserve:company": "0",
            "grade:training": "recruits",
            "points": "12",
            "side": "",
        }
    )
    assert question.asked.revealed == ("medium mortars",)
    assert question.asked.reserve == {"platoon": 4}
    assert question.asked.grades == {"training": "recruits"}
    assert question.asked.points == 12
    assert question.findings == ()
    assert "reserve%3Aplatoon=4" in question.query()


@pytest.mark.parametrize(
    "field", [{"reserve:platoon": "few"}, {"points": "-1"}, {"side": "nobody"}]
)
def test_what_can_not_be_read_is_a_stop(field: dict[str, str]) -> None:
    (stop,) = filled(field).findings
    assert stop.level is Level.STOP


def test_the_other_side_is_a_force_that_is_served(tmp_path: Path) -> None:
    sides = {"ommerath": tmp_path}
    query = {"side": "ommerath"}
    question = papers_question(query, printer=Printer(), games=(), sides=sides)
    assert question.asked.other == tmp_path


def test_what_the_record_of_a_game_says_is_left_out_and_known_to_be() -> None:
    typed = {"plan": "light tanks=2", "reserve:platoon": "4", "revealed:x": "yes"}
    question = filled({"game": "of:1f0c", **typed})
    assert (question.asked.of, question.game, question.choice.game) == ("1f0c", "", None)
    assert (question.asked.plan, question.asked.reserve) == ("", {})
    assert question.has_left_out
    assert question.query() == "?game=of%3A1f0c&revealed%3Ax=yes&left=yes"
    assert filled({"game": "of:1f0c", "left": "yes"}).has_left_out
    assert question.asked.revealed == ("x",)
    assert not asked(game="of:1f0c").has_left_out
    assert not asked(game="attack", left="yes").has_left_out


def test_a_game_of_the_folder_may_be_called_like_one_that_was_written_down() -> None:
    question = papers_question({"game": "of:a"}, printer=Printer(), games=("of:a",))
    assert (question.game, question.asked.of) == ("of:a", None)
