"""Listeners of one process: they begin together, and end together within a second."""

import asyncio
import datetime
import errno
import http.client
import ipaddress
import os
import signal
import socket
import ssl
import subprocess
import sys
import threading
import time
import warnings
from collections.abc import Iterator
from contextlib import closing, contextmanager

import pytest

from paradestate.text.error import FileError
from paradestate.web.listening import LOOPBACK, bound
from paradestate.web.phone.addresses import Named
from paradestate.web.phone.certificate import Certificate, certificate

SAID_WITHIN_SECONDS = 60
SPOKEN_WRONGLY = (http.client.HTTPException, ssl.SSLError, ConnectionError)

PROGRAM = """
import sys, time
from pathlib import Path
from anyio.to_thread import run_sync
from starlette.requests import Request
from starlette.responses import PlainTextResponse
from paradestate.web.listening import Listener, bound, listen

async def application(scope, receive, send):
    if scope["type"] == "lifespan":
        while (message := await receive())["type"] == "lifespan.startup":
            print("begins", flush=True)
            await send({"type": "lifespan.startup.complete"})
        print("ends", flush=True)
        return await send({"type": "lifespan.shutdown.complete"})
    if scope["path"] == "/search":
        print("searching", flush=True)
        await run_sync(time.sleep, 60)
    scheme, client = scope["scheme"], scope["client"][0]
    await PlainTextResponse(f"{scheme} {client}")(scope, receive, send)

plain, private = bound("127.0.0.1", 0), bound("127.0.0.1", 0)
ports = plain.getsockname()[1], private.getsockname()[1]
listen(
    [
        Listener(application=application, bound=plain),
        Listener(application=application, bound=private, certificate=Path(sys.argv[1])),
    ],
    ready=lambda: print(*ports, flush=True),
)
print("stopped", flush=True)
"""


@pytest.fixture(scope="module")
def made(tmp_path_factory: pytest.TempPathFactory) -> Certificate:
    named = Named(address=ipaddress.ip_address(LOOPBACK), name=LOOPBACK)
    now = datetime.datetime.now(datetime.UTC)
    return certificate(named, folder=tmp_path_factory.mktemp("state"), now=now)


@contextmanager
def running(made: Certificate) -> Iterator[tuple[subprocess.Popen[str], int, int]]:
    """The process, and the ports of its plain listener and the one over TLS."""
    with subprocess.Popen(
        [sys.executable, "-c", PROGRAM, made.path],
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        text=True,
    ) as process:
        try:
            assert line(process) == "begins"
            plain, private = map(int, line(process).split())
            yield process, plain, private
        finally:
            process.kill()


def line(process: subprocess.Popen[str]) -> str:
    """What it says next; nothing where it says nothing for too long."""
    assert process.stdout is not None
    watch = threading.Timer(SAID_WITHIN_SECONDS, process.kill)
    watch.start()
    try:
        return process.stdout.readline().strip()
    finally:
        watch.cancel()


def trusting(made: Certificate) -> ssl.SSLContext:
    return ssl.create_default_context(cadata=made.authority)


def plainly(port: int) -> closing[http.client.HTTPConnection]:
    return closing(http.client.HTTPConnection(LOOPBACK, port, timeout=SAID_WITHIN_SECONDS))


def over_tls(port: int, context: ssl.SSLContext) -> closing[http.client.HTTPSConnection]:
    connection = http.client.HTTPSConnection(
        LOOPBACK, port, context=context, timeout=SAID_WITHIN_SECONDS
    )
    return closing(connection)


def asked(connection: http.client.HTTPConnection, path: str = "/", **headers: str) -> str:
    connection.request("GET", path, headers=headers)
    answer = connection.getresponse()
    assert answer.getheader("server") is None
    return answer.read().decode()


@pytest.mark.slow
@pytest.mark.parametrize("told", [signal.SIGINT, signal.SIGTERM])
def test_both_answer_and_both_end(made: Certificate, told: signal.Signals) -> None:
    with running(made) as (process, plain, private):
        with plainly(plain) as connection, over_tls(private, trusting(made)) as safe:
            assert asked(connection) == f"http {LOOPBACK}"
            assert asked(safe) == f"https {LOOPBACK}"
            process.send_signal(told)  # while both are still connected
            said, complaints = process.communicate(timeout=10)
        assert (process.returncode, said, complaints) == (0, "ends\nstopped\n", "")


@pytest.mark.slow
def test_it_ends_within_a_second_although_a_search_goes_on(made: Certificate) -> None:
    with running(made) as (process, plain, _):
        with plainly(plain) as connection:
            connection.request("GET", "/search")
            assert line(process) == "searching"
            before = time.monotonic()
            process.send_signal(signal.SIGINT)
            _, complaints = process.communicate(timeout=10)
        assert complaints == ""
        assert time.monotonic() - before < 1.5  # a second, and some for a busy machine
        assert process.returncode == 0


@pytest.mark.slow
def test_what_a_request_says_of_its_origin_is_not_believed(made: Certificate) -> None:
    with running(made) as (_, plain, _):
        said = {"X-Forwarded-Proto": "https", "X-Forwarded-For": "203.0.113.9"}
        with plainly(plain) as connection:
            assert asked(connection, **said) == f"http {LOOPBACK}"


@pytest.mark.slow
def test_old_and_plain_speech_is_refused_over_tls(made: Certificate) -> None:
    with running(made) as (_, _, private):
        with plainly(private) as connection, pytest.raises(SPOKEN_WRONGLY):
            asked(connection)
        context = trusting(made)
        context.set_ciphers("ALL:@SECLEVEL=0")
        with warnings.catch_warnings(action="ignore"):  # that this is old is the point
            context.minimum_version = ssl.TLSVersion.TLSv1
            context.maximum_version = ssl.TLSVersion.TLSv1_1
        with over_tls(private, context) as connection, pytest.raises(SPOKEN_WRONGLY):
            asked(connection)


def test_a_port_that_is_taken_is_said() -> None:
    with bound(LOOPBACK, 0) as taken:
        port = taken.getsockname()[1]
        with pytest.raises(FileError, match=f"Port {port} .* is taken .*--port {port + 10}"):
            bound(LOOPBACK, port)


@pytest.mark.parametrize(
    ("number", "words"),
    [
        (errno.EACCES, "you may not use this port"),
        (errno.EADDRNOTAVAIL, "doesn't have that address any more"),
        (errno.EMFILE, os.strerror(errno.EMFILE)),
    ],
)
def test_another_reason_is_said_too(
    number: int, words: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    def refused(*_: object, **__: object) -> socket.socket:
        raise OSError(number, os.strerror(number))

    monkeypatch.setattr(socket, "create_server", refused)
    with pytest.raises(FileError, match=words):
        bound(LOOPBACK, 80)


def test_an_address_of_the_sixth_version_is_listened_at_too() -> None:
    with bound("::1", 0) as made:
        assert made.family == socket.AF_INET6


def test_answers_are_sent_at_once_and_wait_for_no_confirmation() -> None:
    """The event loop looks at the protocol before it sets TCP_NODELAY on a connection."""

    async def is_without_delay() -> bool:
        begun = asyncio.Event()
        found: list[int] = []

        def taken(_: asyncio.StreamReader, writer: asyncio.StreamWriter) -> None:
            connection = writer.get_extra_info("socket")
            found.append(connection.getsockopt(socket.IPPROTO_TCP, socket.TCP_NODELAY))
            writer.close()
            begun.set()

        server = await asyncio.start_server(taken, sock=bound(LOOPBACK, 0))
        async with server:
            port = server.sockets[0].getsockname()[1]
            _, writer = await asyncio.open_connection(LOOPBACK, port)
            await begun.wait()
            writer.close()
        return bool(found[0])

    assert asyncio.run(is_without_delay())
