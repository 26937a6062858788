"""The page that gives a carry file out and brings home what it gave back."""

import json
import re
from pathlib import Path

import pytest

from tests.journeys.game.test_bring import given
from tests.journeys.game.test_table_entries import strike, told
from tests.text.test_given_back import code
from tests.web.server import marenz
from tests.web.visitor import Visitor, words_of

MOST_BYTES = 200_000


@pytest.fixture
def visitor(tmp_path: Path) -> Visitor:
    return Visitor(marenz(tmp_path))


def test_the_file_is_of_its_own_each_time_and_light(visitor: Visitor) -> None:
    first, second = (visitor.get("carry/evening.html") for _ in range(2))
    assert len(first.content) < MOST_BYTES, len(first.content)
    name = f"{visitor.force}-2026-03-05.html"
    assert first.headers["content-disposition"] == f"attachment; filename*=UTF-8''{name}"
    ids = {re.findall(r'"carry":"([0-9a-f-]{36})"', each.text)[0] for each in (first, second)}
    assert len(ids) == 2


def test_files_of_two_phones_and_codes_are_brought_home_once(
    visitor: Visitor, tmp_path: Path
) -> None:
    folder = tmp_path / "marenz"
    visitor.get("carry")
    head = json.dumps({"given back": 1, "force": "marenz"})
    files = {
        "one": ("mine.txt", given(folder, told(1)).data),
        "other": ("his.txt", given(folder, told(2, "")).data),
    }
    fields: dict[str, str | list[str]] = {"pasted": code(1, head, json.dumps(strike(3, 1)), of=1)}
    first = visitor.post("carry/take", fields, files=files)
    assert (first.status_code, "3 entries taken" in words_of(first)) == (200, True)
    again = visitor.post("carry/take", fields, files=files)
    assert "Nothing new, 3 had come before" in words_of(again)
    assert (
        len(
            visitor.get("table/entries.json", game=told(1)["says"]["played"]["game"]).json()[
                "entries"
            ]
        )
        == 3
    )


def test_what_lacks_is_told_and_what_was_pasted_stays_to_be_put_right(visitor: Visitor) -> None:
    visitor.get("carry")
    head = json.dumps({"given back": 1, "force": "marenz"})
    answer = visitor.post("carry/take", {"pasted": code(2, head, json.dumps(told(1)))})
    assert answer.status_code == 422
    words = words_of(answer)
    assert "1 entry taken" in words
    assert "Of the 3 codes (0A1B2C3D) 1 and 3 didn't come." in words
    assert "what was pasted:1:1" in words
    assert "PS1/0A1B2C3D/2/3/" in answer.text


def test_of_what_is_no_entry_it_is_not_said_that_anything_came(visitor: Visitor) -> None:
    visitor.get("carry")
    answer = visitor.post("carry/take", {"pasted": "a shopping list"})
    words = words_of(answer)
    assert (answer.status_code, "Nothing came None of it is in the journal" in words) == (422, True)
    assert "What came is" not in words


def test_nothing_chosen_is_told(visitor: Visitor) -> None:
    visitor.get("carry")
    answer = visitor.post("carry/take", {"pasted": " "})
    assert (answer.status_code, "Choose a file, or paste" in words_of(answer)) == (422, True)


def test_a_folder_that_can_not_be_read_is_told_as_such(visitor: Visitor, tmp_path: Path) -> None:
    visitor.get("carry")
    (tmp_path / "marenz" / "force.yaml").write_text("format: 1\ntitle: [", encoding="utf-8")
    page = visitor.get("carry/evening.html")
    assert "content-disposition" not in page.headers
    assert "A stop prevents the answer" in page.text
    answer = visitor.post("carry/take", {"pasted": "PS1"})
    assert (answer.status_code, "taken" in words_of(answer)) == (422, False)
