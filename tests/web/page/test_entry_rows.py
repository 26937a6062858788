"""A list typed in through its page: said back, written, taken back, and nothing lost."""

from collections.abc import Mapping
from pathlib import Path

import pytest
from httpx2 import Response

from paradestate.journeys.check import checked
from paradestate.journeys.new import new_from_example
from tests.web.visitor import NOW, Visitor, forms_of, words_of

LIST = "choosing/list"
FILE = "supporting-troops.yaml"
LANCERS = {"entry:1": "lancers", "cost:1": "1: 3, 2: 5", "most:1": "2"}


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    new_from_example(tmp_path / "marenz", name="marenz")
    return tmp_path / "marenz"


@pytest.fixture
def player(folder: Path) -> Visitor:
    return Visitor(folder)


def send(player: Visitor, filled: Mapping[str, str], *, step: str) -> Response:
    """The form with these fields filled in, sent by one of its buttons."""
    (form,) = [each for each in forms_of(player.get(LIST)) if each.action.endswith(LIST)]
    assert set(filled) <= set(form.fields)
    return player.post(LIST, {**form.fields, **filled, "step": step})


def test_rows_are_read_back_beside_them_and_nothing_is_written(
    player: Visitor, folder: Path
) -> None:
    before = (folder / FILE).read_bytes()
    page = send(player, LANCERS, step="look")
    said = words_of(page)
    assert page.status_code == 200
    assert "1 row read. Proof it against your book, then write it down." in said
    assert "Lancers: one costs 3 points, two 5. Two in the force." in said
    assert 'name="entry:1" value="lancers"' in page.text
    assert (folder / FILE).read_bytes() == before


def test_a_row_with_a_stop_keeps_all_that_was_typed(player: Visitor, folder: Path) -> None:
    before = (folder / FILE).read_bytes()
    filled = {**LANCERS, "entry:2": "<b>hussars", "cost:2": "four"}
    page = send(player, filled, step="write")
    said = words_of(page)
    assert page.status_code == 422
    assert "1 row can’t be read yet." in said
    assert "Stop: <b>hussars, cost: 'four' isn't a whole number." in said
    (form,) = [each for each in forms_of(page) if each.action.endswith(LIST)]
    assert {name: form.fields[name] for name in LANCERS} == LANCERS
    assert (form.fields["entry:2"], form.fields["cost:2"]) == ("<b>hussars", "four")
    assert (folder / FILE).read_bytes() == before


def test_rows_are_written_and_can_be_taken_back(player: Visitor, folder: Path) -> None:
    before = (folder / FILE).read_bytes()
    filled = {**LANCERS, "entry:3": "hussars", "cost:3": "4"}
    page = send(player, filled, step="write")
    said = words_of(page)
    assert f"Written: 2 entries, into {FILE}. What was there is kept." in said
    assert "Written down 15" in said
    troops = checked(folder, today=NOW.date()).force.supporting_troops
    assert troops["lancers"].cost == {1: 3, 2: 5}
    player.fill(page, "files/put-back")
    assert (folder / FILE).read_bytes() == before


def test_more_rows_are_added_under_those_that_were_typed(player: Visitor) -> None:
    page = send(player, LANCERS, step="more")
    assert 'name="entry:1" value="lancers"' in page.text
    assert 'name="entry:12"' in page.text
    assert 'name="entry:13"' not in page.text


def test_what_no_program_can_write_is_said_with_the_rows(player: Visitor) -> None:
    filled = {"entry:1": "x" * 2000, "cost:1": "4"}
    page = send(player, filled, step="write")
    assert page.status_code == 422
    assert "Nothing was written." in words_of(page)
    assert f'value="{"x" * 2000}"' in page.text


def test_files_of_a_newer_format_are_only_read(player: Visitor, folder: Path) -> None:
    text = (folder / "force.yaml").read_text()
    (folder / "force.yaml").write_text(text.replace("format: 1", "format: 2", 1))
    page = send(player, LANCERS, step="write")
    assert page.status_code == 422
    assert "of a newer format, which this program only reads" in words_of(page)


def test_a_stop_of_the_files_is_said_above_the_rows(player: Visitor, folder: Path) -> None:
    (folder / "more.yaml").write_text("stands: {lancer: {base: wide}}\n")
    said = words_of(player.get(LIST))
    assert "Stop: lancer, base:" in said
    assert "more.yaml:1:25" in said


def test_the_sheet_leads_to_it_and_so_does_a_force_without_supporting_troops(
    player: Visitor, folder: Path
) -> None:
    assert "Type more in from your own book" in words_of(player.get("choosing"))
    (folder / FILE).unlink()
    page = player.get("choosing")
    assert "Type a list in" in words_of(page)
    page = send(player, LANCERS, step="write")
    assert "Written: 1 entry, into force.yaml." in words_of(page)
