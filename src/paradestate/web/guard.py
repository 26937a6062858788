"""What stands before every request: who may ask, how much may be sent, what an answer may do.

The Host header is checked so that no name on the network leads here (DNS rebinding), the Origin of
everything that changes something so that no other page asks for it, and the length of what is sent.
"""

from starlette.datastructures import Headers, MutableHeaders
from starlette.responses import PlainTextResponse
from starlette.types import ASGIApp, Message, Receive, Scope, Send

MOST_BYTES = 6 * 1024 * 1024
"""Of the body of one request."""

LONGEST_ADDRESS = 8_000
"""Characters of path and query."""

READING = frozenset({"GET", "HEAD"})

POLICY = (
    "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; font-src 'self'; "
    "connect-src 'self'; manifest-src 'self'; form-action 'self'; base-uri 'none'; "
    "frame-ancestors 'none'"
)
"""Content policy: nothing from elsewhere, no script or style that stands in a page."""

HEADERS = {
    "content-security-policy": POLICY,
    "x-content-type-options": "nosniff",
    "referrer-policy": "same-origin",
    "cross-origin-opener-policy": "same-origin",
    "cross-origin-resource-policy": "same-origin",
    "permissions-policy": "camera=(), geolocation=(), microphone=()",
}


class TooMuchSentError(Exception):
    """The body of a request is longer than is taken."""


class Guard:
    """Lets through what may be asked, and puts the policy on every answer."""

    def __init__(self, app: ASGIApp, *, hosts: frozenset[str]) -> None:
        self._app = app
        self._hosts = hosts

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """One request."""
        if scope["type"] != "http":
            await self._app(scope, receive, send)
            return
        answer = _with_headers(send)
        refusal = self._refusal(scope)
        if refusal is not None:
            await refusal(scope, receive, answer)
            return
        try:
            await self._app(scope, _bounded(receive), answer)
        except TooMuchSentError:
            await too_much()(scope, receive, answer)

    def _refusal(self, scope: Scope) -> PlainTextResponse | None:
        headers = Headers(scope=scope)
        host = headers.get("host", "")
        if host not in self._hosts:
            return PlainTextResponse("This name isn't served here.\n", status_code=421)
        if len(scope.get("raw_path", b"")) + len(scope["query_string"]) > LONGEST_ADDRESS:
            return PlainTextResponse("The address is too long.\n", status_code=414)
        is_change = scope["method"] not in READING
        if is_change and headers.get("origin") != f"{scope['scheme']}://{host}":
            return PlainTextResponse(
                "Only the pages served here may ask for that. Nothing was changed.\n",
                status_code=403,
            )
        length = headers.get("content-length", "0")
        # by its figures first: Python refuses to read thousands of them as a number
        is_long = not length.isdecimal() or len(length) > len(str(MOST_BYTES))
        if is_long or int(length) > MOST_BYTES:
            return too_much()
        return None


def too_much() -> PlainTextResponse:
    """The answer to what is too long."""
    return PlainTextResponse(
        f"At most {MOST_BYTES // 1024 // 1024} MB can be sent at once. Nothing was changed.\n",
        status_code=413,
    )


def _bounded(receive: Receive) -> Receive:
    taken = 0

    async def bounded() -> Message:
        nonlocal taken
        message = await receive()
        taken += len(message.get("body", b""))
        if taken > MOST_BYTES:
            raise TooMuchSentError
        return message

    return bounded


def _with_headers(send: Send) -> Send:
    async def sent(message: Message) -> None:
        if message["type"] == "http.response.start":
            headers = MutableHeaders(scope=message)
            for name, value in HEADERS.items():
                headers[name] = value
            # What has a tag, as fonts and style have, is asked for again only whether it changed.
            headers.setdefault("cache-control", "no-cache" if "etag" in headers else "no-store")
        await send(message)

    return sent
