"""The table page's own addresses: what a phone installs, is given, and brings back."""

import json
import re
import sqlite3
from contextlib import closing
from pathlib import Path
from typing import Any

import pytest
from httpx2 import Response

from paradestate.web.table.files import ICONS, STATIC, static
from tests.entries import uuid
from tests.web.server import marenz
from tests.web.visitor import Visitor

GAME = uuid(900)


@pytest.fixture
def visitor(tmp_path: Path) -> Visitor:
    return Visitor(marenz(tmp_path))


def told(number: int, value: str = "out") -> dict[str, Any]:
    event = {"subject": ["out", "1 Section"], "value": value}
    says = {
        "kind": "played",
        "on": "2026-11-27",
        "written": "2026-11-27T20:15:00Z",
        "played": {"game": GAME, "device": "phone", "counter": number, "told": event},
    }
    return {"id": uuid(number), "says": says}


def given(visitor: Visitor, *, after: str = "") -> dict[str, Any]:
    said: dict[str, Any] = visitor.get("table/entries.json", game=GAME, after=after).json()
    return said


def brought(visitor: Visitor, text: str) -> Response:
    token = given(visitor)["token"]
    address = f"/forces/{visitor.force}/table/take"
    return visitor.client.post(address, data={"token": token, "entries": text})


def test_a_batch_is_taken_once_and_given_to_whoever_lacks_it(visitor: Visitor) -> None:
    first = given(visitor)
    batch = json.dumps([told(1), told(2)])
    answers = brought(visitor, batch).json()["answers"]
    assert answers == [{"id": uuid(each), "receipt": "taken", "why": ""} for each in (1, 2)]
    again = brought(visitor, batch).json()["answers"]
    assert [each["receipt"] for each in again] == ["there", "there"]
    said = given(visitor, after=first["cursor"])
    assert said["entries"] == [told(1), told(2)]
    assert given(visitor, after=said["cursor"])["entries"] == []
    (game,) = said["games"]
    assert game == {"game": GAME, "name": "", "on": "2026-11-27", "ended": False, "by": ""}
    assert (said["device"], said["now"][:10]) == ("", "2026-03-05")


def test_a_played_line_that_was_altered_is_named_on_the_next_opening(tmp_path: Path) -> None:
    folder = marenz(tmp_path)
    first = Visitor(folder)
    opening = told(3)
    opening["says"]["played"] = {"game": GAME, "device": "Ann's phone", "opened": {"game": "raid"}}
    brought(first, json.dumps([told(1), told(2), opening]))
    said = given(first)
    assert (said["doubts"], said["games"][0]["by"]) == ([], "Ann's phone")
    with closing(sqlite3.connect(tmp_path / "marenz" / "journal.sqlite")) as journal, journal:
        journal.execute("UPDATE entry SET text = replace(text, '1 Section', '2 Section')")
    one, other = given(Visitor(folder))["doubts"]
    assert (uuid(1) in one, uuid(2) in other, "digests don't agree" in one) == (True, True, True)
    with closing(sqlite3.connect(tmp_path / "marenz" / "journal.sqlite")) as journal, journal:
        journal.execute("UPDATE entry SET text = replace(text, 'raid', 'siege')")
    assert given(Visitor(folder))["doubts"][2:] == ["And 1 more line."]
    # it is named and nothing is lost: the phone still gets all, and brings what it has
    assert len(given(Visitor(folder))["entries"]) == 3


def test_without_a_token_of_this_run_nothing_is_taken(visitor: Visitor) -> None:
    address = f"/forces/{visitor.force}/table/take"
    given(visitor)
    answer = visitor.client.post(address, data={"entries": json.dumps([told(1)])})
    assert answer.status_code == 403
    assert given(visitor)["entries"] == []


@pytest.mark.parametrize("text", ["", "{", "{}", "null", "[" * 9000, json.dumps([1] * 501)])
def test_what_is_no_list_of_entries_is_refused_whole(visitor: Visitor, text: str) -> None:
    answer = brought(visitor, text)
    assert answer.status_code == 400
    assert "Nothing was written" in answer.text


def test_a_folder_that_can_not_be_read_is_told_as_such(visitor: Visitor, tmp_path: Path) -> None:
    token = given(visitor)["token"]
    (tmp_path / "marenz" / "force.yaml").write_text("format: 1\ntitle: [", encoding="utf-8")
    address = f"/forces/{visitor.force}/table"
    for answer in (
        visitor.client.get(f"{address}/entries.json"),
        visitor.client.get(f"{address}/force.json"),
        visitor.client.post(f"{address}/take", data={"token": token, "entries": "[]"}),
    ):
        assert answer.status_code == 409
        assert answer.json()["stops"]


def test_the_worker_keeps_files_that_are_there_and_a_page_that_names_nobody_s_secret(
    visitor: Visitor,
) -> None:
    answer = visitor.client.get(f"/forces/{visitor.force}/table/worker.js")
    assert answer.headers["service-worker-allowed"] == f"/forces/{visitor.force}/table"
    assert answer.headers["content-type"].startswith("text/javascript")
    found = re.match(r"const KEPT = (\{.*\});\n", answer.text)
    assert found is not None
    kept = json.loads(found[1])
    for path in (*kept["files"], *(f"/static/{name}" for name in ICONS.values())):
        assert visitor.client.get(path).status_code == 200, path
    page = visitor.client.get(kept["page"])
    assert 'name="token"' not in page.text
    # it is kept under the digest of these very bytes, so no request may change them
    assert page.text == visitor.client.get(kept["page"]).text


def test_every_module_of_the_page_is_kept() -> None:
    text = b"".join(static(name) for name in STATIC if name.endswith(".js")).decode()
    named = set(re.findall(r'from "\./(\w+)\.js"', text)) | {"table"}
    kept = {name.removeprefix("table/").removesuffix(".js") for name in STATIC if ".js" in name}
    assert named == kept


def test_the_manifest_has_what_a_home_screen_asks_for(visitor: Visitor) -> None:
    said = visitor.client.get(f"/forces/{visitor.force}/table/manifest.webmanifest").json()
    assert said["display"] == "standalone"
    assert said["start_url"] == said["scope"] == f"/forces/{visitor.force}/table"
    assert [each["sizes"] for each in said["icons"]] == ["192x192", "512x512"]


def test_all_of_the_page_together_is_below_two_hundred_kilobytes(visitor: Visitor) -> None:
    page = visitor.client.get(f"/forces/{visitor.force}/table").content
    force = visitor.client.get(f"/forces/{visitor.force}/table/force.json").content
    weight = len(page) + len(force) + sum(len(static(name)) for name in STATIC)
    weight += len(static("table/worker.js"))
    assert weight < 200_000, weight
