"""Listeners of one process: they begin together, and end together within a second.

sockets bound -> servers begun -> ready -> a signal -> no new requests -> those at work ended
"""

import asyncio
import errno
import logging
import multiprocessing
import os
import signal
import socket
import ssl
import sys
import threading
from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass
from ipaddress import ip_address
from pathlib import Path

import uvicorn
from starlette.types import ASGIApp

from paradestate.text.error import FileError
from paradestate.web.connection import Connection

LOOPBACK = "127.0.0.1"

GRACE_SECONDS = 0.4
"""For requests at work to end, once it is to end."""
LAST_SECONDS = 0.9
"""Then what is still at work, such as a search, is cut off: whatever is written is whole or not."""
MOST_CONNECTIONS = 64
"""At a time, for each listener: who keeps more of them busy hinders nobody at the other one."""

NOT_NEWS = (
    "Invalid HTTP request received",
    "Exceeded concurrency limit",
    "Unsupported upgrade request",
    "No supported WebSocket library",
    "Cancel %s running task(s)",
)
"""What the server would say on the terminal of what others send, and of an end that is wanted."""

SIGNALS = (signal.SIGINT, signal.SIGTERM)


@dataclass(frozen=True, slots=True, kw_only=True)
class Listener:
    """An application at a socket, over TLS where there is a certificate."""

    application: ASGIApp
    bound: socket.socket
    certificate: Path | None = None
    """With its key."""


def bound(address: str, port: int) -> socket.socket:
    """A socket that listens at this address and port alone.

    Raises FileError where the port is taken, or may not be used by this user.
    """
    family = socket.AF_INET6 if ip_address(address).version == 6 else socket.AF_INET  # noqa: PLR2004
    try:
        made = socket.create_server((address, port), family=family)
    except OSError as error:
        raise FileError(_why(error, address=address, port=port)) from error
    # The event loop has small answers sent at once only where a socket says that it is of TCP:
    # else each waits for the other side to confirm what came before, some 40 ms.
    return socket.socket(family, socket.SOCK_STREAM, socket.IPPROTO_TCP, fileno=made.detach())


def _why(error: OSError, *, address: str, port: int) -> str:
    where = f"{address}, port {port}"
    match error.errno:
        case errno.EADDRINUSE:
            return (
                f"Port {port} of {address} is taken by another program, perhaps by this one in "
                f"another window. Nothing was started. Name another port: --port {port + 10}"
            )
        case errno.EACCES:
            return f"{where}: you may not use this port. Name one above 1023, such as --port 8765."
        case errno.EADDRNOTAVAIL:
            return f"{where}: this computer doesn't have that address any more."
        case _:
            return f"{where}: {error.strerror}. Nothing was started."


def listen(listeners: Sequence[Listener], *, ready: Callable[[], object]) -> None:
    """Answers requests until the process is told to end (Ctrl-C, or SIGTERM).

    The first listener's application is told when it begins and ends; the others' are taken to be
    that one behind something. `ready` is called once all of them answer.
    """
    log = logging.getLogger("uvicorn.error")
    log.addFilter(_is_news)
    logging.getLogger("python_multipart").setLevel(logging.ERROR)  # likewise, of forms
    try:
        asyncio.run(_listen(listeners, ready=ready))
    finally:
        log.removeFilter(_is_news)


def _is_news(record: logging.LogRecord) -> bool:
    _, error, _ = record.exc_info or (None, None, None)
    return not str(record.msg).startswith(NOT_NEWS) and not isinstance(
        error, asyncio.CancelledError
    )


async def _listen(listeners: Sequence[Listener], *, ready: Callable[[], object]) -> None:
    servers = [_Server(_config(each, is_first=place == 0)) for place, each in enumerate(listeners)]

    def end() -> None:
        _cut_off_later()
        for server in servers:
            server.should_exit = True

    with _told_to_end(end):
        async with asyncio.TaskGroup() as group:
            for server, each in zip(servers, listeners, strict=True):
                group.create_task(server.serve(sockets=[each.bound]))
            for server in servers:
                await server.begun.wait()
            ready()


def _config(listener: Listener, *, is_first: bool) -> uvicorn.Config:
    return uvicorn.Config(
        listener.application,
        http=Connection,
        ws="none",
        lifespan="auto" if is_first else "off",
        log_config=None,
        access_log=False,
        proxy_headers=False,  # what a request says of its origin is never believed
        server_header=False,
        limit_concurrency=MOST_CONNECTIONS,
        timeout_graceful_shutdown=GRACE_SECONDS,  # type: ignore[arg-type]  # waited for as it is
        ssl_certfile=listener.certificate,
        ssl_context_factory=_tls if listener.certificate else None,
    )


def _tls(config: uvicorn.Config, default: Callable[[], ssl.SSLContext]) -> ssl.SSLContext:
    del config  # the usual context knows the certificate
    context = default()
    context.minimum_version = ssl.TLSVersion.TLSv1_2
    return context


class _Server(uvicorn.Server):
    """A server that says when it has begun, and leaves signals to whoever runs several."""

    def __init__(self, config: uvicorn.Config) -> None:
        super().__init__(config)
        self.begun = asyncio.Event()

    async def startup(self, sockets: list[socket.socket] | None = None) -> None:
        """Begins."""
        await super().startup(sockets)
        self.begun.set()

    @contextmanager
    def capture_signals(self) -> Iterator[None]:
        """Captures none."""
        yield


@contextmanager
def _told_to_end(end: Callable[[], None]) -> Iterator[None]:
    """Has signals end it; only the main thread may do so, and elsewhere nothing is done."""
    if threading.current_thread() is not threading.main_thread():
        yield
        return
    before = {each: signal.signal(each, lambda *_: end()) for each in SIGNALS}
    try:
        yield
    finally:
        for each, handler in before.items():
            signal.signal(each, handler)


def _cut_off_later() -> None:
    """Ends the process where a thread, such as that of a search, doesn't let it end by itself."""
    timer = threading.Timer(LAST_SECONDS, _cut_off)
    timer.daemon = True
    timer.start()


def _cut_off() -> None:
    for child in multiprocessing.active_children():
        child.kill()
    sys.stdout.flush()
    sys.stderr.flush()
    os._exit(0)
