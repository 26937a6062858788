"""A page server of this process on a free port of this machine, for as long as a block lasts."""

import socket
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from time import monotonic, sleep

import uvicorn
from starlette.types import ASGIApp

STARTED_WITHIN_SECONDS = 30


@contextmanager
def running(application: ASGIApp) -> Iterator[str]:
    """The address at which the application answers while the block lasts."""
    with socket.create_server(("127.0.0.1", 0)) as listener:
        # its own log stays silent: a line that a test doesn't ask for fails it
        config = uvicorn.Config(
            application, log_config=None, access_log=False, timeout_graceful_shutdown=1
        )
        server = uvicorn.Server(config)
        thread = threading.Thread(target=server.run, kwargs={"sockets": [listener]}, daemon=True)
        thread.start()
        try:
            _wait(server, thread=thread)
            yield f"http://127.0.0.1:{listener.getsockname()[1]}"
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
