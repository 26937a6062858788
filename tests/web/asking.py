"""Requests straight to an application, byte by byte as a server would hand them over."""

import asyncio
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from types import TracebackType
from typing import Self
from urllib.parse import unquote_to_bytes, urlencode

from starlette.types import ASGIApp, Message, Scope

Headers = Iterable[tuple[bytes, bytes]]


@dataclass(frozen=True, slots=True, kw_only=True)
class Answer:
    """What was answered."""

    status: int
    headers: tuple[tuple[bytes, bytes], ...]
    body: bytes

    @property
    def text(self) -> str:
        return self.body.decode("utf-8", "replace")

    def header(self, name: str) -> str:
        """The first header of a name; empty where there is none."""
        key = name.lower().encode()
        return next((value.decode("latin-1") for each, value in self.headers if each == key), "")


class Asking:
    """Asks one application, one request after another, and keeps the cookies it is given."""

    def __init__(self, application: ASGIApp, *, url: str) -> None:
        self._application = application
        self._runner = asyncio.Runner()
        self.scheme, _, self.host = url.partition("://")
        self.cookies: dict[str, str] = {}

    def __enter__(self) -> Self:
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        traceback: TracebackType | None,
    ) -> None:
        self._runner.close()

    def get(self, target: str, **headers: str) -> Answer:
        return self.ask("GET", target, headers=headers)

    def post(self, target: str, *, data: Mapping[str, str], **headers: str) -> Answer:
        """A form sent from a page of the same host, unless `Origin` says otherwise."""
        usual = {
            "Origin": f"{self.scheme}://{self.host}",
            "Content-Type": "application/x-www-form-urlencoded",
        }
        body = urlencode(data).encode()
        return self.ask("POST", target, headers=usual | headers, body=body)

    def ask(
        self, method: str, target: str, *, headers: Mapping[str, str], body: bytes = b""
    ) -> Answer:
        """Any request, with the headers that a browser always sends."""
        usual = {"Host": self.host, "Content-Length": str(len(body))}
        if self.cookies:
            usual["Cookie"] = "; ".join(f"{name}={value}" for name, value in self.cookies.items())
        raw = [
            (name.replace("_", "-").lower().encode("latin-1"), value.encode("latin-1", "replace"))
            for name, value in (usual | dict(headers)).items()
        ]
        sent = target.partition("#")[0].encode("latin-1")
        answer = self.raw(method, sent, headers=raw, body=body)
        for name, value in answer.headers:
            if name == b"set-cookie":
                key, _, content = value.decode("latin-1").partition("=")
                self.cookies[key] = content.partition(";")[0]
        return answer

    def raw(self, method: str, target: bytes, *, headers: Headers, body: bytes) -> Answer:
        """A request of which nothing is put right."""
        path, _, query = target.partition(b"?")
        scope: Scope = {
            "type": "http",
            "asgi": {"version": "3.0", "spec_version": "2.3"},
            "http_version": "1.1",
            "method": method,
            "scheme": self.scheme,
            "path": unquote_to_bytes(path).decode("utf-8", "replace"),
            "raw_path": path,
            "query_string": query,
            "root_path": "",
            "headers": list(headers),
            "client": ("192.0.2.9", 50000),
            "server": ("127.0.0.1", 8765),
            "state": {},
        }
        return self._runner.run(_spoken(self._application, scope, body=body))


async def _spoken(application: ASGIApp, scope: Scope, *, body: bytes) -> Answer:
    sent: list[Message] = []
    is_asked = False
    answered = asyncio.Event()

    async def receive() -> Message:
        nonlocal is_asked
        if is_asked:
            await answered.wait()  # a browser stays until it has its answer
            return {"type": "http.disconnect"}
        is_asked = True
        return {"type": "http.request", "body": body, "more_body": False}

    async def send(message: Message) -> None:
        sent.append(message)
        if message["type"] == "http.response.body" and not message.get("more_body", False):
            answered.set()

    await application(scope, receive, send)
    start = next(message for message in sent if message["type"] == "http.response.start")
    parts = [message.get("body", b"") for message in sent if message["type"].endswith(".body")]
    return Answer(
        status=start["status"],
        headers=tuple((bytes(name).lower(), bytes(value)) for name, value in start["headers"]),
        body=b"".join(parts),
    )
