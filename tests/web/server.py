"""A page server of this process on a free port of this machine, for as long as a block lasts."""

import asyncio
import threading
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from time import monotonic, sleep
from typing import Literal
from urllib.parse import quote

import uvicorn
from starlette.types import ASGIApp

from paradestate.journeys.new import new_from_example
from paradestate.web.application import application, local_time, new_site
from paradestate.web.listening import LOOPBACK, bound
from paradestate.web.serving import loopback_hosts
from paradestate.web.site import Clock

STARTED_WITHIN_SECONDS = 30


@dataclass(frozen=True, slots=True, kw_only=True)
class Served:
    """Where a force is served, and from which folder."""

    url: str
    """Such as http://127.0.0.1:40123, without a slash at its end."""
    folder: Path
    """The force's own folder, a copy that a test may change."""

    def __call__(self, path: str) -> str:
        """The whole address of a page of this force: `served("holdings")`."""
        return f"{self.url}/forces/{quote(self.folder.name, safe='')}/{path}"


def marenz(place: Path) -> Path:
    """A copy of the example force in a folder `marenz` of this place."""
    folder = place / "marenz"
    new_from_example(folder, name="marenz")
    return folder


@contextmanager
def serving(folder: Path, *, clock: Clock = local_time) -> Iterator[Served]:
    """A force served while the block lasts."""

    def made(port: int) -> ASGIApp:
        return application(new_site(folder, hosts=loopback_hosts(port), clock=clock))

    with running(made) as url:
        yield Served(url=url, folder=folder)


@contextmanager
def running(
    made: Callable[[int], ASGIApp],
    *,
    certificate: Path | None = None,
    http: type[asyncio.Protocol] | Literal["auto"] = "auto",
) -> Iterator[str]:
    """The address at which an application made for a port answers while the block lasts.

    With a certificate, which is to be there once the application is made, over TLS.
    """
    with bound(LOOPBACK, 0) as listener:
        port = listener.getsockname()[1]
        # its own log stays silent: a line that a test doesn't ask for fails it
        config = uvicorn.Config(
            made(port),
            http=http,
            log_config=None,
            access_log=False,
            timeout_graceful_shutdown=1,
            ssl_certfile=certificate,
        )
        server = uvicorn.Server(config)
        thread = threading.Thread(target=server.run, kwargs={"sockets": [listener]}, daemon=True)
        thread.start()
        try:
            _wait(server, thread=thread)
            yield f"{'http' if certificate is None else 'https'}://{LOOPBACK}:{port}"
        finally:
            server.should_exit = True
            thread.join(timeout=STARTED_WITHIN_SECONDS)
    assert not thread.is_alive(), "the server didn't end"


def _wait(server: uvicorn.Server, *, thread: threading.Thread) -> None:
    until = monotonic() + STARTED_WITHIN_SECONDS
    while not server.started:
        assert thread.is_alive(), "the server ended before it began"
        assert monotonic() < until, "the server didn't start"
        sleep(0.01)
