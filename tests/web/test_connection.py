"""Connections that ask nothing, or take no answer, are ended; those in use are left alone."""

import socket
from collections.abc import Iterator
from contextlib import closing
from http.client import HTTPConnection
from time import monotonic, sleep

import pytest
from starlette.types import Receive, Scope, Send

from paradestate.web import connection
from paradestate.web.connection import Connection
from tests.web.server import running

HEAD = b"GET /%s HTTP/1.1\r\nHost: here\r\n\r\n"
HUGE = 1_000_000
SOON, LATER = 0.1, 0.4
"""Seconds, in the place of the real ones."""


async def _application(scope: Scope, _receive: Receive, send: Send) -> None:
    if scope["type"] != "http":
        return
    await send({"type": "http.response.start", "status": 200, "headers": []})
    parts = 100 if scope["path"] == "/huge" else 1
    for left in reversed(range(parts)):
        body = b"x" * (HUGE if parts > 1 else 1)
        await send({"type": "http.response.body", "body": body, "more_body": left > 0})


@pytest.fixture
def place(monkeypatch: pytest.MonkeyPatch) -> Iterator[tuple[str, int]]:
    monkeypatch.setattr(connection, "HEAD_SECONDS", SOON)
    monkeypatch.setattr(connection, "ANSWER_SECONDS", LATER)
    with running(lambda _: _application, http=Connection) as url:
        host, _, port = url.removeprefix("http://").partition(":")
        yield host, int(port)


def ended(talk: socket.socket) -> bytes:
    """What came until the other side ended it."""
    talk.settimeout(20)
    came = b""
    while part := talk.recv(65_536):
        came += part
    return came


@pytest.mark.parametrize("begun", [b"", b"GET / HT", HEAD % b"" + b"GET"])
def test_who_says_nothing_more_is_not_waited_for(place: tuple[str, int], begun: bytes) -> None:
    with socket.create_connection(place) as talk:
        talk.sendall(begun)
        assert ended(talk).count(b"200 OK") == begun.count(b"\r\n\r\n")


def test_who_goes_on_asking_is_left_alone(place: tuple[str, int]) -> None:
    until = monotonic() + 3 * LATER
    with closing(HTTPConnection(*place)) as talk:
        talk.connect()
        first = talk.sock
        while monotonic() < until:
            talk.request("GET", "/")
            assert talk.getresponse().read() == b"x"
            assert talk.sock is first
            sleep(SOON / 4)


def test_who_does_not_take_an_answer_is_cut_off(place: tuple[str, int]) -> None:
    with socket.create_connection(place) as talk:
        talk.sendall(HEAD % b"huge")
        sleep(4 * LATER)
        assert _taken(talk) < 100 * HUGE


def _taken(talk: socket.socket) -> int:
    """How much comes before it is cut off."""
    talk.settimeout(20)
    came = 0
    try:
        while part := talk.recv(65_536):
            came += len(part)
    except ConnectionError:
        pass
    return came
