"""The forms for common changes: each shows the lines that it would change before it writes them."""

from pathlib import Path

import pytest

from paradestate.text.former import former_versions
from tests.journeys.conftest import FERRY_GUARD, written
from tests.web.visitor import Visitor, words_of

FILES = "/forces/guard/files"
BOAT: dict[str, str | list[str]] = {"sort": "figures", "name": "boat", "of": ""}
SORT = "field-2"
"""Height, footprint and sort are the first fields of a figure kind."""


@pytest.fixture
def guard(tmp_path: Path) -> Path:
    return written(tmp_path / "guard", FERRY_GUARD)


@pytest.fixture
def owner(guard: Path) -> Visitor:
    """Somebody who has the form of the boat before them."""
    shown = Visitor(guard)
    assert shown.get(f"{FILES}/entry?sort=figures&name=boat").status_code == 200
    return shown


def text(folder: Path) -> str:
    return (folder / "force.yaml").read_text(encoding="utf-8")


def look(owner: Visitor, fields: dict[str, str | list[str]]) -> dict[str, str | list[str]]:
    """The fields to write with, after looking at what would change."""
    owner.post(f"{FILES}/entry", {**fields, "step": "look"})
    return {
        **fields,
        "step": "write",
        "mark": owner.hidden("mark"),
        "shown": owner.hidden("shown"),
    }


@pytest.mark.parametrize("sort", ["figures", "stands", "stock", "sources", "packs", "names"])
def test_every_sort_has_its_list(owner: Visitor, sort: str) -> None:
    assert owner.get(f"{FILES}/entries?sort={sort}").status_code == 200


def test_a_form_is_filled_in_as_the_file_says_it(owner: Visitor) -> None:
    page = owner.get(f"{FILES}/entry?sort=figures&name=boat")
    assert "<option selected>vehicle</option>" in page.text
    assert "force.yaml" in words_of(page)


def test_nothing_is_written_before_it_was_looked_at(owner: Visitor, guard: Path) -> None:
    fields = {**BOAT, SORT: "scenery"}
    page = owner.post(f"{FILES}/entry", {**fields, "step": "look"})
    assert "goes boat: {sort: vehicle}" in words_of(page)
    assert "comes boat: {sort: scenery}" in words_of(page)
    owner.post(f"{FILES}/entry", {**fields, "step": "write", "shown": "", "mark": ""})
    assert text(guard) == FERRY_GUARD


def test_what_was_looked_at_is_written_and_can_be_undone(owner: Visitor, guard: Path) -> None:
    page = owner.post(f"{FILES}/entry", look(owner, {**BOAT, SORT: "scenery"}))
    assert "Written: boat, into force.yaml" in words_of(page)
    assert text(guard) == FERRY_GUARD.replace("sort: vehicle", "sort: scenery")
    owner.post(
        f"{FILES}/put-back", {name: owner.hidden(name) for name in ("name", "version", "mark")}
    )
    assert text(guard) == FERRY_GUARD
    assert len(former_versions(guard / "force.yaml")) == 2


def test_what_was_changed_after_looking_is_looked_at_again(owner: Visitor, guard: Path) -> None:
    fields = look(owner, {**BOAT, SORT: "scenery"})
    page = owner.post(f"{FILES}/entry", {**fields, SORT: "gun"})
    assert "comes boat: {sort: gun}" in words_of(page)
    assert text(guard) == FERRY_GUARD


def test_a_file_that_was_written_meanwhile_is_looked_at_again(owner: Visitor, guard: Path) -> None:
    fields = look(owner, {**BOAT, SORT: "scenery"})
    other = FERRY_GUARD.replace("Ferry", "River")
    (guard / "force.yaml").write_text(other, encoding="utf-8")
    owner.post(f"{FILES}/entry", fields)
    assert text(guard) == other


def test_with_a_stop_it_says_so_and_is_written_only_all_the_same(
    owner: Visitor, guard: Path
) -> None:
    fields = look(owner, {**BOAT, SORT: "vehicle", "field-0": "tall"})
    assert owner.hidden("sure") == "yes"
    page = owner.post(f"{FILES}/entry", fields)
    assert page.status_code == 422
    assert "Stop:" in words_of(page)
    assert text(guard) == FERRY_GUARD
    owner.post(f"{FILES}/entry", {**fields, "sure": "yes"})
    assert "height: tall" in text(guard)


def test_what_was_filled_in_as_it_was_changes_nothing(owner: Visitor, guard: Path) -> None:
    page = owner.post(f"{FILES}/entry", {**BOAT, SORT: "vehicle", "step": "look"})
    assert "Nothing would change" in words_of(page)
    owner.post(f"{FILES}/entry", look(owner, {**BOAT, SORT: "vehicle"}))
    assert text(guard) == FERRY_GUARD
    assert former_versions(guard / "force.yaml") == ()


def test_a_source_and_its_pack_are_added(owner: Visitor, guard: Path) -> None:
    assert "Write a source down first" in words_of(owner.get(f"{FILES}/entries?sort=packs"))
    owner.get(f"{FILES}/entry?sort=sources&name=North&new=yes")
    source: dict[str, str | list[str]] = {
        "sort": "sources",
        "name": "North",
        "of": "",
        "field-0": "GBP",
        "field-1-key": ["0", "40", ""],
        "field-1-value": ["3.50", "0", ""],
    }
    owner.post(f"{FILES}/entry", look(owner, source))
    owner.get(f"{FILES}/entry?sort=packs&of=North&name=N1&new=yes")
    pack: dict[str, str | list[str]] = {
        "sort": "packs",
        "name": "N1",
        "of": "North",
        "field-1": "8.00",
        "field-2-key": ["boat", "", ""],
        "field-2-value": ["1", "", ""],
    }
    owner.post(f"{FILES}/entry", look(owner, pack))
    assert "N1: {price: 8.00, holds: {boat: 1}}" in text(guard)
    assert "N1" in words_of(owner.get(f"{FILES}/entries?sort=packs"))


def test_names_are_written_one_a_line(owner: Visitor, guard: Path) -> None:
    owner.get(f"{FILES}/entry?sort=names&name=rifle+section&new=yes")
    fields: dict[str, str | list[str]] = {
        "sort": "names",
        "name": "rifle section",
        "of": "",
        "field-0": "Red\r\n\r\nBlue",
    }
    owner.post(f"{FILES}/entry", look(owner, fields))
    assert "raise: {formation: guard, names: {rifle section: [Red, Blue]}}" in text(guard)


@pytest.mark.parametrize("name", ["", "x" * 101, "a%0Ab"])
def test_no_entry_is_begun_under_a_name_that_cannot_be(owner: Visitor, name: str) -> None:
    answer = owner.get(f"{FILES}/entry?sort=stands&new=yes&name={name}")
    assert answer.status_code == 422
    fields: dict[str, str | list[str]] = {"sort": "stands", "name": name.replace("%0A", "\n")}
    assert owner.post(f"{FILES}/entry", {**fields, "step": "look"}).status_code == 422


def test_an_entry_that_is_there_is_not_begun_again(owner: Visitor) -> None:
    answer = owner.get(f"{FILES}/entry?sort=stands&new=yes&name=boat")
    assert answer.status_code == 422
    assert "is there already" in words_of(answer)


@pytest.mark.parametrize("part", ["entries", "entry"])
def test_a_sort_that_is_none_is_not_found(owner: Visitor, part: str) -> None:
    assert owner.get(f"{FILES}/{part}?sort=secrets&name=x").status_code == 404


def test_hostile_names_are_shown_as_text(owner: Visitor) -> None:
    page = owner.get(f"{FILES}/entry?sort=stands&new=yes&name=%3Cscript%3Ealert(1)%3C/script%3E")
    assert page.status_code == 200
    assert "<script>alert" not in page.text


def test_what_a_form_cannot_change_is_said(owner: Visitor, guard: Path) -> None:
    (guard / "stock.csv").write_text("figure,painted\nboat,1\n", encoding="utf-8")
    answer = owner.get(f"{FILES}/entry?sort=stock&name=boat")
    assert answer.status_code == 409
    assert "stands in the spreadsheet stock.csv" in words_of(answer)


def test_a_source_leads_to_its_packs_and_a_pack_to_the_order(owner: Visitor) -> None:
    assert "A source is where you buy" in words_of(owner.get(f"{FILES}/entries?sort=sources"))
    begun = owner.get(f"{FILES}/entry?sort=sources&new=yes&name=Corner")
    assert "Carriage needed" in words_of(begun)
    shop: dict[str, str | list[str]] = {"sort": "sources", "name": "Corner", "field-0": "GBP"}
    shop |= {"field-1-key": "0", "field-1-value": "2"}
    page = owner.post(f"{FILES}/entry", look(owner, shop))
    assert "Written: Corner, into" in words_of(page)
    assert "files/entries?sort=packs&amp;of=Corner" in page.text
    assert "<option selected>Corner" in owner.get(f"{FILES}/entries?sort=packs&of=Corner").text
    pack: dict[str, str | list[str]] = {"sort": "packs", "name": "C1", "of": "Corner"}
    pack |= {"field-1": "3", "field-2-key": "boat", "field-2-value": "1"}
    page = owner.post(f"{FILES}/entry", look(owner, pack))
    assert "See the cheapest order" in words_of(page)


def test_a_file_that_is_saved_as_it_is_is_said_to_be_so(owner: Visitor) -> None:
    owner.get(f"{FILES}/text?name=force.yaml")
    fields = {"name": "force.yaml", "mark": owner.hidden("mark"), "text": FERRY_GUARD}
    assert "holds just that already: nothing was written" in words_of(
        owner.post(f"{FILES}/save", fields)
    )
    assert "<script>" not in owner.get(f"{FILES}?unchanged=<script>").text
