"""Serving: a socket of this machine alone, and the application behind it."""

import socket
from collections.abc import Callable
from pathlib import Path

import uvicorn

from paradestate.text.error import FileError
from paradestate.web.application import application, new_site

LOOPBACK = "127.0.0.1"

END_SECONDS = 1
"""How long answers under way are waited for when the program ends."""


def serve(folder: Path, *, port: int, told: Callable[[str], object]) -> None:
    """Serves a folder until Ctrl-C. Raises FileError where the port can't be had."""
    listening = bound(LOOPBACK, port=port)
    port = listening.getsockname()[1]
    site = new_site(folder, hosts=loopback_hosts(port))
    told(f"Open http://{LOOPBACK}:{port}/ in a browser of this computer. Ctrl-C ends.")
    config = uvicorn.Config(
        application(site),
        log_level="warning",
        server_header=False,
        date_header=False,
        timeout_graceful_shutdown=END_SECONDS,
    )
    uvicorn.Server(config).run(sockets=[listening])


def bound(address: str, *, port: int) -> socket.socket:
    """A socket that listens there. Raises FileError where it can't."""
    listening = socket.socket(socket.AF_INET, socket.SOCK_STREAM)
    listening.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
    try:
        listening.bind((address, port))
    except OSError as error:
        listening.close()
        raise FileError(
            f"Port {port} of {address} can't be had: {error.strerror}. Perhaps this program runs "
            "already; else choose another one with --port."
        ) from error
    return listening


def loopback_hosts(port: int) -> frozenset[str]:
    """What a browser of this computer may call it."""
    return frozenset(f"{name}:{port}" for name in (LOOPBACK, "localhost"))
