"""The gate of the phone's listener: whoever isn't paired sees the page of pairing and no other.

request -> a paired device? -> the application, or the page of pairing

It stands right behind the guard, which has seen to the host, the origin and the length of a
request, and before everything else, so that nothing is reached by whoever isn't let in.
"""

import asyncio
import datetime
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from urllib.parse import parse_qs

from anyio.to_thread import run_sync
from starlette.requests import ClientDisconnect, Request
from starlette.responses import PlainTextResponse, RedirectResponse, Response
from starlette.types import ASGIApp, Receive, Scope, Send

from paradestate.text.error import FileError
from paradestate.web.phone.devices import DAYS, Devices
from paradestate.web.phone.pairing import Attempt, Pairing

COOKIE = "__Host-paradestate-device"
"""Browsers take a name that begins so only over TLS, from this very host and for all its pages."""
DEVICE = "paradestate.device"
"""Where the scope of a request says from which device it comes; the computer's own has none."""

PAIR = "/pair"
OPEN = ("/static/",)
"""Our own files, which hold nothing of anybody's."""

MOST_BYTES = 2048
"""Of what is typed to pair."""
MOST_SECONDS = 10.0
"""For it to come in."""

DAY_SECONDS = 86_400


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """What the page of pairing is to show."""

    word: str = ""
    """As it was typed or came with the QR code."""
    attempt: Attempt | None = None
    """What became of it; None where it wasn't tried yet."""
    failure: str = ""
    """Why nobody could be let in, where this computer failed."""

    @property
    def status(self) -> int:
        """The HTTP status that says the same."""
        if self.failure:
            return 503
        return 200 if self.attempt is None else 403


@dataclass(frozen=True, slots=True, kw_only=True)
class Door:
    """Who is let in, and where."""

    devices: Devices
    pairing: Pairing
    today: Callable[[], datetime.date]
    show: Callable[[Asked], str]
    """The page of pairing."""


class Gate:
    """An application that lets paired devices through to another one."""

    def __init__(self, app: ASGIApp, *, door: Door) -> None:
        self._application = app
        self._door = door

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Answers, or lets the application answer."""
        if scope["type"] != "http":  # nothing else is spoken here
            return
        request = Request(scope, receive)
        try:
            answer = await self._answer(request)
        except FileError as error:
            answer = self._page(Asked(failure=str(error)))
        except ClientDisconnect:
            return
        await (answer or self._application)(scope, receive, send)

    async def _answer(self, request: Request) -> Response | None:
        """What is said at the gate; None where the application may answer."""
        path, is_read = request.scope["path"], request.method in {"GET", "HEAD"}
        secret = request.cookies.get(COOKIE, "")
        device = await run_sync(self._known, secret) if secret else None
        if device is not None:
            request.scope[DEVICE] = device
            return RedirectResponse("/", status_code=303) if path == PAIR else None
        if is_read and path.startswith(OPEN):
            return None
        if path != PAIR:
            if is_read:
                return RedirectResponse(PAIR, status_code=303)
            return _plain(403, "This device isn't paired.")
        if is_read:
            return self._page(Asked(word=request.query_params.get("word", "")))
        return await self._paired(request)

    def _known(self, secret: str) -> str | None:
        device = self._door.devices.known(secret, day=self._door.today())
        return None if device is None else device.name

    async def _paired(self, request: Request) -> Response:
        """Lets a device in for good, if it brings the word."""
        if request.method != "POST":
            return _plain(405, "Nothing but GET and POST is answered here.", Allow="GET, POST")
        body = await _body(request)
        if body is None:
            return _plain(413, "That is too much, or came too slowly.")
        typed = _typed(body)
        attempt = self._door.pairing.attempt(typed.get("word", ""))
        if attempt is not Attempt.RIGHT:
            return self._page(Asked(attempt=attempt))
        secret = await run_sync(self._admitted, typed.get("name", ""))
        answer = RedirectResponse("/", status_code=303)
        answer.set_cookie(
            COOKIE,
            secret,
            max_age=DAYS * DAY_SECONDS,
            secure=True,
            httponly=True,
            samesite="strict",
        )
        return answer

    def _admitted(self, name: str) -> str:
        return self._door.devices.admit(name, day=self._door.today())

    def _page(self, asked: Asked) -> Response:
        return Response(self._door.show(asked), status_code=asked.status, media_type="text/html")


async def _body(request: Request) -> bytes | None:
    """What is sent; None where it is too much or takes too long."""
    try:
        async with asyncio.timeout(MOST_SECONDS):
            return await _bounded(request)
    except TimeoutError:
        return None


async def _bounded(request: Request) -> bytes | None:
    parts = bytearray()
    async for part in request.stream():
        parts += part
        if len(parts) > MOST_BYTES:
            return None
    return bytes(parts)


def _typed(body: bytes) -> Mapping[str, str]:
    try:
        fields = parse_qs(body.decode("utf-8", "replace"), max_num_fields=10)
    except ValueError:
        return {}
    return {name: values[0] for name, values in fields.items()}


def _plain(status: int, words: str, **headers: str) -> Response:
    return PlainTextResponse(words + "\n", status_code=status, headers=headers)
