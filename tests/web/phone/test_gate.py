"""The gate: who isn't paired sees the page of pairing and no other."""

import asyncio
import datetime
from collections.abc import Iterator
from pathlib import Path

import pytest
from starlette.requests import Request
from starlette.responses import PlainTextResponse
from starlette.types import Message, Receive, Scope, Send

from paradestate.web.guard import HEADERS, Guard
from paradestate.web.phone import gate
from paradestate.web.phone.devices import DAYS, FILE, Devices
from paradestate.web.phone.gate import COOKIE, DEVICE, Asked, Door, Gate
from paradestate.web.phone.pairing import ATTEMPTS, Attempt, Pairing
from tests.web.asking import Asking

HOST = "192.168.7.20:8766"
URL = f"https://{HOST}"
HOSTS = frozenset({HOST, "desk.home.arpa:8766"})
INSIDE = "what only those see who are let in"


async def inside(scope: Scope, receive: Receive, send: Send) -> None:
    """The application behind: says a secret, and from which device it was asked."""
    device = Request(scope).scope.get(DEVICE)
    answer = PlainTextResponse(f"{INSIDE}: {scope['path']} from {device}")
    await answer(scope, receive, send)


def shown(asked: Asked) -> str:
    said = "not tried" if asked.attempt is None else asked.attempt.value
    return f"pairing page; word {asked.word!r}; {said}; {asked.failure}"


class Day:
    """A calendar that a test sets."""

    def __init__(self) -> None:
        self.date = datetime.date(2026, 3, 1)

    def __call__(self) -> datetime.date:
        return self.date


@pytest.fixture
def day() -> Day:
    return Day()


@pytest.fixture
def door(tmp_path: Path, day: Day) -> Door:
    return Door(
        devices=Devices(tmp_path),
        pairing=Pairing(),
        today=day,
        show=shown,
    )


@pytest.fixture
def phone(door: Door) -> Iterator[Asking]:
    with Asking(Guard(Gate(inside, door=door), hosts=HOSTS), url=URL) as asking:
        yield asking


def pair(phone: Asking, word: str, **more: str) -> int:
    return phone.post("/pair", data={"word": word, "name": "Anna's phone"}, **more).status


@pytest.mark.parametrize(
    "path",
    ["/", "/marenz", "/marenz/holdings", "/static", "/staticky", "/pair/", "/PAIR", "//pair"],
)
def test_a_stranger_is_led_to_the_page_of_pairing(phone: Asking, path: str) -> None:
    answer = phone.get(path)
    assert (answer.status, answer.header("location")) == (303, "/pair")
    assert INSIDE not in answer.text


@pytest.mark.parametrize("method", ["POST", "PUT", "DELETE", "PATCH", "OPTIONS", "TRACE", "ODD"])
def test_a_stranger_can_do_nothing(phone: Asking, method: str) -> None:
    """Not even from one of our own pages, so that it is the gate that refuses."""
    answer = phone.ask(method, "/marenz/holdings/receive", headers={"Origin": URL})
    assert (answer.status, answer.text) == (403, "This device isn't paired.\n")
    assert phone.ask(method, "/static/look.css", headers={}).status == 403


def test_a_stranger_gets_our_own_files_alone(phone: Asking) -> None:
    assert phone.get("/static/look.css").text == f"{INSIDE}: /static/look.css from None"


def test_the_page_of_pairing_takes_the_word_of_the_code_and_does_not_use_it(
    phone: Asking, door: Door
) -> None:
    word = door.pairing.begin()
    answer = phone.get(f"/pair?word={word}")
    assert answer.status == 200
    assert word in answer.text
    assert door.pairing.word == word


def test_the_word_lets_a_phone_in_and_nobody_after_it(phone: Asking, door: Door) -> None:
    word = door.pairing.begin()
    answer = phone.post("/pair", data={"word": word, "name": "Anna's phone"})
    assert (answer.status, answer.header("location")) == (303, "/")
    assert phone.get("/marenz").text == f"{INSIDE}: /marenz from Anna's phone"
    assert phone.get("/pair").header("location") == "/"
    phone.cookies.clear()
    assert pair(phone, word) == 403
    assert phone.get("/marenz").status == 303


def test_its_cookie_goes_to_nobody_else(phone: Asking, door: Door) -> None:
    answer = phone.post("/pair", data={"word": door.pairing.begin()})
    name, *rest = answer.header("set-cookie").split("; ")
    assert name.startswith(f"{COOKIE}=")
    assert {each.lower() for each in rest} == {
        "httponly",
        f"max-age={DAYS * 86400}",
        "path=/",
        "samesite=strict",
        "secure",
    }


def test_a_device_that_is_removed_is_out_at_once(phone: Asking, door: Door) -> None:
    pair(phone, door.pairing.begin())
    assert phone.get("/").status == 200
    door.devices.remove(door.devices.all()[0].key)
    assert phone.get("/").status == 303


def test_half_a_year_later_it_is_to_be_paired_again(phone: Asking, door: Door, day: Day) -> None:
    pair(phone, door.pairing.begin())
    day.date += datetime.timedelta(days=DAYS)
    assert phone.get("/").status == 200
    day.date += datetime.timedelta(days=1)
    assert phone.get("/").status == 303


def test_a_wrong_word_is_said_and_five_end_it(phone: Asking, door: Door) -> None:
    word = door.pairing.begin()
    for _ in range(ATTEMPTS):
        answer = phone.post("/pair", data={"word": "wrong"})
        assert answer.status == 403
        assert Attempt.WRONG.value in answer.text
    answer = phone.post("/pair", data={"word": word})
    assert answer.status == 403
    assert Attempt.OVER.value in answer.text
    assert answer.header("set-cookie") == ""


@pytest.mark.parametrize(
    "origin", ["", "null", "http://" + HOST, "https://192.168.7.20", "https://elsewhere.example"]
)
def test_another_page_cannot_send_the_word(phone: Asking, door: Door, origin: str) -> None:
    word = door.pairing.begin()
    assert pair(phone, word, Origin=origin) == 403
    assert door.pairing.word == word
    assert door.pairing.attempts_left == ATTEMPTS


@pytest.mark.parametrize(
    "host",
    [
        "",
        "elsewhere.example",
        "192.168.7.20",
        "192.168.7.20:8765",
        "127.0.0.1:8766",
        HOST + ".elsewhere.example",
    ],
)
def test_another_host_is_not_answered(phone: Asking, host: str, door: Door) -> None:
    pair(phone, door.pairing.begin())
    answer = phone.get("/marenz", Host=host)
    assert answer.status == 421
    assert INSIDE not in answer.text


def test_a_name_of_the_machine_is_answered_too(phone: Asking) -> None:
    assert phone.get("/pair", Host="desk.home.arpa:8766").status == 200


@pytest.mark.parametrize("path", ["/", "/pair", "/static/look.css"])
def test_every_answer_carries_the_content_policy(phone: Asking, path: str) -> None:
    answer = phone.get(path)
    assert {name: answer.header(name) for name in HEADERS} == HEADERS


@pytest.mark.parametrize("shown", ["", "x", "=", "a" * 4000, "\xe9", '"quoted"'])
def test_a_made_up_cookie_is_of_no_use(phone: Asking, shown: str, door: Door) -> None:
    door.devices.admit("another", day=door.today())
    answer = phone.get("/marenz", Cookie=f"{COOKIE}={shown}")
    assert answer.status == 303


def test_what_is_too_much_is_refused(phone: Asking, door: Door) -> None:
    word = door.pairing.begin()
    assert pair(phone, word + " " * 2048) == 413
    assert door.pairing.attempts_left == ATTEMPTS
    assert pair(phone, word) == 303


@pytest.mark.parametrize("body", [b"", b"\xff\xfe", b"&&&", b"a=1&" * 200, b"word", b"{}"])
def test_what_is_no_form_holds_no_word(phone: Asking, door: Door, body: bytes) -> None:
    door.pairing.begin()
    assert phone.ask("POST", "/pair", headers={"Origin": URL}, body=body).status == 403


def test_other_methods_are_refused_there(phone: Asking) -> None:
    assert phone.ask("PUT", "/pair", headers={"Origin": URL}).header("allow") == "GET, POST"


def test_a_list_that_cannot_be_read_lets_nobody_in_and_says_so(
    phone: Asking, door: Door, tmp_path: Path
) -> None:
    pair(phone, door.pairing.begin())
    (tmp_path / FILE).write_text("nonsense")
    answer = phone.get("/marenz")
    assert answer.status == 503
    assert "list of paired devices" in answer.text
    assert INSIDE not in answer.text


def test_what_comes_too_slowly_is_refused(door: Door, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(gate, "MOST_SECONDS", 0.05)

    async def receive() -> Message:
        await asyncio.sleep(0.02)
        return {"type": "http.request", "body": b"w", "more_body": True}

    assert asyncio.run(spoken(door, receive)) == [413]


def test_who_goes_away_in_the_middle_is_not_answered(door: Door) -> None:
    async def receive() -> Message:
        return {"type": "http.disconnect"}

    assert asyncio.run(spoken(door, receive)) == []


async def spoken(door: Door, receive: Receive) -> list[int]:
    """The statuses that a POST of the page of pairing is answered with."""
    statuses: list[int] = []

    async def send(message: Message) -> None:
        if message["type"] == "http.response.start":
            statuses.append(message["status"])

    scope = {
        "type": "http",
        "method": "POST",
        "path": "/pair",
        "scheme": "https",
        "raw_path": b"/pair",
        "query_string": b"",
        "headers": [(b"host", HOST.encode()), (b"origin", URL.encode())],
    }
    await Guard(Gate(inside, door=door), hosts=HOSTS)(scope, receive, send)
    return statuses


def test_nothing_but_http_is_spoken(door: Door) -> None:
    async def ask() -> None:
        async def never() -> Message:
            raise AssertionError

        async def nothing(_: Message) -> None:
            raise AssertionError

        await Gate(inside, door=door)({"type": "websocket"}, never, nothing)

    asyncio.run(ask())
