"""Who may ask, from which page, and how much may be sent."""

from pathlib import Path

import pytest
from starlette.testclient import TestClient

from paradestate.journeys.new import new_from_example
from paradestate.web.application import application, new_site
from paradestate.web.guard import HEADERS, LONGEST_ADDRESS, MOST_BYTES
from paradestate.web.token import is_token, token_for
from tests.web.visitor import HOST

PARADE = "/forces/marenz/parade"
OWN = f"http://{HOST}"


@pytest.fixture
def client(tmp_path: Path) -> TestClient:
    new_from_example(tmp_path / "marenz", name="marenz")
    site = new_site(tmp_path / "marenz", hosts=frozenset({HOST}))
    return TestClient(application(site), base_url=OWN)


@pytest.mark.parametrize("host", ["elsewhere.example", "127.0.0.1", f"{HOST}.example", ""])
def test_only_its_own_name_is_answered(client: TestClient, host: str) -> None:
    assert client.get(PARADE, headers={"host": host}).status_code == 421


@pytest.mark.parametrize(
    "origin", ["http://elsewhere.example", "null", f"https://{HOST}", "http://127.0.0.1:1"]
)
def test_only_its_own_pages_may_change_something(client: TestClient, origin: str) -> None:
    answer = client.post(f"{PARADE}/undo", headers={"origin": origin})
    assert answer.status_code == 403
    assert "Nothing was changed" in answer.text


def test_without_an_origin_nothing_is_changed(client: TestClient) -> None:
    assert client.post(f"{PARADE}/undo").status_code == 403


def test_without_a_token_nothing_is_changed(client: TestClient) -> None:
    answer = client.post(f"{PARADE}/undo", headers={"origin": OWN})
    assert answer.status_code == 403
    assert "load the page anew" in answer.text


def test_every_answer_carries_the_policy(client: TestClient) -> None:
    for path in (PARADE, "/static/look.css", "/nowhere", "/forces/nobody/parade"):
        headers = client.get(path).headers
        assert HEADERS.items() <= dict(headers).items(), path
    assert "unsafe" not in HEADERS["content-security-policy"]


def test_no_page_holds_a_script_or_a_style(client: TestClient) -> None:
    page = client.get(PARADE).text
    assert "<style" not in page
    assert " style=" not in page
    assert " onclick=" not in page
    assert page.count("<script") == page.count("<script src=")


def test_what_is_too_long_is_refused(client: TestClient) -> None:
    assert client.get(f"{PARADE}?stand={'x' * LONGEST_ADDRESS}").status_code == 414
    body = b"x" * (MOST_BYTES + 1)
    answer = client.post(f"{PARADE}/undo", content=body, headers={"origin": OWN})
    assert answer.status_code == 413


def test_what_does_not_say_its_length_is_counted(client: TestClient) -> None:
    def pieces() -> object:
        for _ in range(MOST_BYTES // 65_536 + 2):
            yield b"x" * 65_536

    answer = client.post(
        f"{PARADE}/undo",
        content=pieces(),  # type: ignore[arg-type]  # an iterator of bytes
        headers={"origin": OWN, "content-type": "application/x-www-form-urlencoded"},
    )
    assert answer.status_code == 413


def test_a_token_is_good_for_its_cookie_and_its_run() -> None:
    token = token_for("cookie", secret=b"secret")
    assert is_token(token, cookie="cookie", secret=b"secret")
    assert token != token_for("cookie", secret=b"secret")
    assert not is_token(token, cookie="other", secret=b"secret")
    assert not is_token(token, cookie="cookie", secret=b"other")
    assert not is_token("", cookie="cookie", secret=b"secret")
    assert not is_token(token_for("", secret=b"secret"), cookie="", secret=b"secret")
