"""Folders that hold what nobody meant to put there: every page answers, and says what it is."""

import os
import socket
from pathlib import Path

import pytest
from starlette.testclient import TestClient

from paradestate.journeys.new import new_from_example
from paradestate.web.application import BELOW, PAGES, application, new_site
from paradestate.web.guard import HEADERS
from paradestate.web.page_kind import Page
from tests.journeys.conftest import FERRY_GUARD, written
from tests.web.asking import Asking
from tests.web.server import serving
from tests.web.visitor import HOST, Visitor, words_of

ODD_NAMES = [
    "static",
    "start",
    "a\"b'c",
    "<script>alert(1)<script>",
    "new\nline",
    "x" * 255,
    "\N{DIVISION SLASH}etc\N{DIVISION SLASH}passwd",
    "\N{RIGHT-TO-LEFT OVERRIDE}abc",
    "%2e%2e",
    "a b+c&d=e?f#g",
    "back\\slash",
    " lead",
    "{{7*7}}",
    "a%00b",
]


@pytest.mark.parametrize("name", ODD_NAMES)
def test_a_force_is_shown_whatever_its_folder_is_called(tmp_path: Path, name: str) -> None:
    written(tmp_path / name, FERRY_GUARD)
    served = application(new_site(tmp_path, hosts=frozenset({HOST})))
    with Asking(served, url=f"http://{HOST}") as asking:
        parade = asking.get(asking.get("/").header("location"))
    assert parade.status == 200
    assert "<script>alert" not in parade.text
    assert "Ferry" in parade.text


def test_a_folder_whose_name_is_not_utf8_is_named_and_hides_no_other(tmp_path: Path) -> None:
    new_from_example(tmp_path / "marenz", name="marenz")
    written(tmp_path / os.fsdecode(b"caf\xe9"), FERRY_GUARD)
    seen = Visitor(tmp_path)
    first = seen.get("/")
    assert first.status_code == 200
    assert "caf\N{REPLACEMENT CHARACTER}' can't be shown" in words_of(first)
    assert seen.get("/forces/marenz/parade").status_code == 200


def test_a_lone_force_whose_name_is_not_utf8_is_shown(tmp_path: Path) -> None:
    folder = written(tmp_path / os.fsdecode(b"caf\xe9"), FERRY_GUARD)
    assert "Ferry" in Visitor(folder).get("/").text


@pytest.mark.parametrize("page", [*PAGES, *BELOW], ids=lambda page: page.path)
def test_every_page_answers_beside_what_is_no_file(tmp_path: Path, page: Page) -> None:
    folder = written(tmp_path / "guard", FERRY_GUARD)
    os.mkfifo(folder / "pipe.yaml")
    (folder / "loop.yaml").symlink_to("loop.yaml")
    (folder / "gone.csv").symlink_to("nowhere.csv")
    (folder / ".#force.yaml").symlink_to("somebody@desk.4711:1")
    (folder / os.fsdecode(b"caf\xe9.yaml")).write_text(FERRY_GUARD, encoding="utf-8")
    with (folder / "huge.yaml").open("wb") as file:
        file.truncate(20 * 1024**3)
    assert Visitor(folder).get(f"/forces/guard/{page.path}").status_code == 200


@pytest.mark.parametrize("name", ["pipe.yaml", "huge.yaml", "loop.yaml"])
@pytest.mark.parametrize("part", ["text", "download"])
def test_what_is_no_file_is_neither_shown_nor_waited_for(
    tmp_path: Path, name: str, part: str
) -> None:
    folder = written(tmp_path / "guard", FERRY_GUARD)
    os.mkfifo(folder / "pipe.yaml")
    (folder / "loop.yaml").symlink_to("loop.yaml")
    with (folder / "huge.yaml").open("wb") as file:
        file.truncate(20 * 1024**3)
    answer = Visitor(folder).get(f"/forces/guard/files/{part}?name={name}")
    assert answer.status_code == 503
    assert "Nothing was read" in words_of(answer)


def test_a_mistake_of_the_program_is_said_under_the_policy(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    folder = written(tmp_path / "guard", FERRY_GUARD)

    def broken(_path: Path) -> bool:
        raise ZeroDivisionError

    monkeypatch.setattr("paradestate.web.site.holds_force", broken)
    served = application(new_site(folder, hosts=frozenset({HOST})))
    client = TestClient(served, base_url=f"http://{HOST}", raise_server_exceptions=False)
    answer = client.get("/")
    assert answer.status_code == 500
    assert "made a mistake" in answer.text
    assert {name: answer.headers[name] for name in HEADERS} == HEADERS


@pytest.mark.parametrize(
    ("content_type", "status"),
    [
        ("multipart/form-data; boundary=x; charset=undefined", 400),
        ("multipart/form-data; boundary=x; charset=unicode_escape", 400),
        ("multipart/form-data; boundary=x; charset*=utf-7''a", 400),
        ("application/x-www-form-urlencoded; charset=utf-7", 400),
        ("multipart/form-data; boundary=x; charset=UTF-8", 403),
        ("multipart/form-data; boundary=x", 403),
    ],
)
def test_a_form_in_other_signs_than_ours_is_refused(
    tmp_path: Path, content_type: str, status: int
) -> None:
    written(tmp_path / "guard", FERRY_GUARD)
    served = application(new_site(tmp_path, hosts=frozenset({HOST})))
    body = b'--x\r\nContent-Disposition: form-data; name="token"\r\n\r\n\\ud800\r\n--x--\r\n'
    headers = {"Origin": f"http://{HOST}", "Content-Type": content_type}
    with Asking(served, url=f"http://{HOST}") as asking:
        answer = asking.ask("POST", "/forces/guard/files/copy", headers=headers, body=body)
    assert answer.status == status
    assert "Nothing was changed" in answer.text


def test_a_form_that_comes_too_slowly_is_not_waited_for(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    written(tmp_path / "guard", FERRY_GUARD)
    monkeypatch.setattr("paradestate.web.form.MOST_SECONDS", 0.1)
    with serving(tmp_path / "guard") as served:
        host = served.url.removeprefix("http://")
        address, _, port = host.partition(":")
        with socket.create_connection((address, int(port))) as talk:
            head = (
                "POST /forces/guard/files/copy HTTP/1.1",
                f"Host: {host}",
                f"Origin: {served.url}",
                "Content-Type: application/x-www-form-urlencoded",
                "Content-Length: 99",
                "",
                "a=",
            )
            talk.sendall("\r\n".join(head).encode())
            talk.settimeout(20)
            assert b" 408 " in talk.recv(65_536)
