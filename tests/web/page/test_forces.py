"""The first page of a folder that holds several forces."""

from pathlib import Path

from paradestate.journeys.new import new_from_example
from tests.journeys.conftest import FERRY_GUARD, written
from tests.web.visitor import Visitor, words_of


def test_forces_are_listed_by_their_titles_and_lead_to_their_parades(tmp_path: Path) -> None:
    new_from_example(tmp_path / "marenz", name="marenz")
    written(tmp_path / "guard", FERRY_GUARD)
    page = Visitor(tmp_path).get("/")
    assert "Republic of Marenz, Field Battalion, Frontier War" in words_of(page)
    assert 'href="/forces/guard/parade"' in page.text


def test_a_force_that_says_nothing_of_itself_is_listed_by_its_folder(tmp_path: Path) -> None:
    written(tmp_path / "guard", FERRY_GUARD)
    written(tmp_path / "broken", "format: 1\n[")
    page = Visitor(tmp_path).get("/")
    assert page.status_code == 200
    assert "broken" in words_of(page)
