"""Trays through their page: moved, kept, put back, and what is said where they can't be."""

import json
import re
from html import unescape
from pathlib import Path

import pytest
from httpx2 import Response

from paradestate.journeys.new import new_from_example
from tests.journeys.conftest import FERRY_GUARD, written
from tests.web.visitor import Visitor, words_of

TRAYS = "/forces/marenz/trays"


@pytest.fixture(scope="module")
def shared(tmp_path_factory: pytest.TempPathFactory) -> Visitor:
    """Looks at one folder, which nothing here writes into."""
    place = tmp_path_factory.mktemp("trays")
    new_from_example(place / "marenz", name="marenz")
    return Visitor(place / "marenz")


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """A folder of its own, to be written into."""
    new_from_example(tmp_path / "marenz", name="marenz")
    return tmp_path / "marenz"


def link(page: Response, *, stand: int) -> str:
    """Where a stand of the packing list leads."""
    (found,) = re.findall(rf'id="stand-{stand}" data-stand="\d+" href="([^"#]*)', page.text)
    return unescape(found)


def mark(page: Response) -> str:
    (found,) = re.findall(r'data-of="([0-9a-f]{8})"', page.text)
    return str(found)


def test_the_sheet_opens_with_the_number_of_trays_and_how_sure_it_is(shared: Visitor) -> None:
    page = shared.get(TRAYS)
    said = words_of(page)
    assert "45 stands in 1 tray. Exact: fewer trays don't hold them." in said
    assert "Row 6, staggered by 30 mm 245.8 x 70 mm" in said
    assert "Not needed: Case 2, 300 x 200 mm inside." in said
    assert "the clear height isn't said" in said


def test_a_stand_that_is_taken_up_changes_places_or_is_told_why_not(shared: Visitor) -> None:
    up = shared.get(link(shared.get(TRAYS), stand=2))
    said = words_of(up)
    assert "No 1 Company, Company Command is taken up." in said
    assert "To Case 2" in said
    assert "Not there: Case 1 would be 210 mm deep in rows; it has 200." in said
    swapped = shared.get(link(up, stand=44))
    assert "No 1 Company, Company Command and 1 Truck have changed places." in words_of(swapped)
    assert "Keep it so" in words_of(swapped)
    beside = shared.get(TRAYS, moves="44t2", of=mark(swapped))
    assert "1 Truck is in Case 2 now." in words_of(beside)
    assert "Within: the area alone needs 1 tray" in words_of(beside)


def test_what_a_rule_forbids_is_said_and_the_rest_is_made(shared: Visitor) -> None:
    of = mark(shared.get(TRAYS))
    page = shared.get(TRAYS, moves="44-45.1-3.44-1", of=of)
    assert "Case 1 would be 214 mm deep in rows; it has 200." in words_of(page)
    assert 'data-moves="44-45"' in page.text


def test_moves_that_begin_from_another_arrangement_are_not_made(shared: Visitor) -> None:
    page = shared.get(TRAYS, moves="44-45", of="00000000")
    assert "so they weren’t made again" in words_of(page)
    assert 'data-moves=""' in page.text


def test_numbers_that_mean_nothing_are_passed_over(shared: Visitor) -> None:
    of = mark(shared.get(TRAYS))
    for moves in ("44-44", "9999-1", "1-9999", "1t99", "x", "1-2-3", "44t1"):
        assert shared.get(TRAYS, moves=moves, of=of).status_code == 200
    assert "is taken up" not in words_of(shared.get(TRAYS, stand="999"))
    assert "is taken up" not in words_of(shared.get(TRAYS, stand="²"))


def test_whoever_drags_is_told_what_forbids_each_place(shared: Visitor) -> None:
    found = json.loads(shared.get(f"{TRAYS}/rules.json", stand="1").text)
    assert found["stands"]["3"] == "Case 1 would be 214 mm deep in rows; it has 200."
    assert (found["stands"]["44"], found["trays"]) == ("", {"2": ""})
    assert json.loads(shared.get(f"{TRAYS}/rules.json").text) == {"stands": {}, "trays": {}}


def test_a_game_brings_its_plan_and_only_what_is_finished_may_be_asked_for(
    shared: Visitor,
) -> None:
    assert "45 stands in 1 tray" in words_of(shared.get(TRAYS, game="whole-day attack"))
    assert "8 stands in 1 tray" in words_of(shared.get(TRAYS, finished="yes"))
    assert shared.get(TRAYS, game="no such game").status_code == 200


def test_an_arrangement_is_kept_put_back_and_laid_anew(folder: Path) -> None:
    own = Visitor(folder)
    before = (folder / "force.yaml").read_bytes()
    moves = {"moves": "44t2", "of": mark(own.get(TRAYS))}
    own.get(TRAYS, **moves)
    page = own.post("trays/keep", moves)
    assert (page.status_code, "Laid by hand." in words_of(page)) == (200, True)
    assert "Written down." in words_of(page)
    assert "1 Truck: 0 x 0 mm" in (folder / "force.yaml").read_text(encoding="utf-8")
    former = own.hidden("former")
    assert own.post("trays/keep", moves).status_code == 409
    assert "45 stands in 1 tray" in words_of(own.get(TRAYS, anew="yes"))
    back = own.post("trays/put-back", {"former": former})
    assert "Laid by hand." not in words_of(back)
    assert (folder / "force.yaml").read_bytes() == before
    assert own.post("trays/put-back", {"former": former}).status_code == 409


def test_laid_anew_and_kept_it_is_the_tool_s_again(folder: Path) -> None:
    own = Visitor(folder)
    moves = {"moves": "44t2", "of": mark(own.get(TRAYS))}
    own.get(TRAYS, **moves)
    own.post("trays/keep", moves)
    own.get(TRAYS, anew="yes")
    own.post("trays/keep", {"anew": "yes"})
    assert "packed" not in (folder / "force.yaml").read_text(encoding="utf-8")


def test_without_trays_the_sheet_says_how_they_are_given(tmp_path: Path) -> None:
    written(tmp_path / "marenz", FERRY_GUARD)
    page = Visitor(tmp_path / "marenz").get(TRAYS)
    assert "No trays are given." in words_of(page)
    assert "inside: 300 x 200 mm" in words_of(page)


def test_a_folder_that_can_not_be_counted_says_why(tmp_path: Path) -> None:
    written(tmp_path / "marenz", "format: 1\ntitle: Odd\n")
    visitor = Visitor(tmp_path / "marenz")
    assert "raise" in words_of(visitor.get(TRAYS))
