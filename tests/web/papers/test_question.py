"""What is asked of papers, as their address says it."""

import pytest

from paradestate.web.papers.printer import Printer
from paradestate.web.papers.question import MOST_TYPED, PapersQuestion, papers_question


def asked(printer: Printer | None = None, **query: str) -> PapersQuestion:
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
