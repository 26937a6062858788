"""Serving: the listener of this computer alone, and beside it, where asked for, that of phones."""

import socket
from collections.abc import Callable, Iterator
from contextlib import ExitStack
from dataclasses import replace
from pathlib import Path

from paradestate.text.private_file import state_folder
from paradestate.web.application import application, local_time, new_site, site_of_phone
from paradestate.web.listening import LOOPBACK, Listener, bound, listen
from paradestate.web.phone.addresses import AddressError, Named, named_address, only_address
from paradestate.web.phone.listener import PhoneListener, phone_listener
from paradestate.web.site import Site

__all__ = ["AddressError", "Named", "phone_address", "serve"]

HTTP_PORT = 80
"""The port that a browser leaves out (RFC 9110, 4.2.1)."""

Told = Callable[[str], object]


def phone_address(name: str) -> Named:
    """The address of this machine of that name; without a name the only one in its network.

    Raises AddressError where it is none of this machine's, or where there are several.
    """
    return named_address(name) if name else only_address()


def serve(
    folder: Path,
    *,
    port: int,
    told: Told,
    phone: Named | None = None,
    ready: Callable[[str], object] = lambda _: None,
) -> None:
    """Serves a folder until Ctrl-C, with `phone` at that address too, to paired devices.

    `ready` gets the address of the first page once it is answered.

    Raises FileError where the port can't be had, or the certificate can't be read or written.
    """
    with ExitStack() as sockets:
        own = sockets.enter_context(bound(LOOPBACK, port))
        first = f"http://{LOOPBACK}:{own.getsockname()[1]}/"
        site = new_site(folder, hosts=loopback_hosts(own.getsockname()[1]))
        beside: tuple[Listener, ...] = ()
        if phone is not None:
            others = sockets.enter_context(bound(str(phone.address), port))
            site, beside = _with_phone(site, named=phone, others=others, told=told)

        def answering() -> None:
            told(f"Open {first} in a browser of this computer. Ctrl-C ends.")
            ready(first)

        own_listener = Listener(application=application(site), bound=own)
        listen((own_listener, *beside), ready=answering)
    told("Ended.")


def _with_phone(
    site: Site, *, named: Named, others: socket.socket, told: Told
) -> tuple[Site, tuple[Listener]]:
    """The site that shows its listener for phones, and that listener."""
    port = others.getsockname()[1]
    phone = phone_listener(named, port=port, folder=state_folder(), now=local_time())
    for line in _words(phone):
        told(line)
    listener = Listener(
        application=application(site_of_phone(site, listener=phone)),
        bound=others,
        certificate=phone.certificate.path,
    )
    return replace(site, phone=phone), (listener,)


def _words(phone: PhoneListener) -> Iterator[str]:
    """What it means that phones are let in."""
    yield f"Phones are answered at {phone.url}"
    yield f"  {phone.reach}"
    yield "  Whoever isn't paired sees the page of pairing alone; a paired device may do everything"
    yield "  that can be done on these pages, and what it writes stands in this journal."
    if phone.certificate.why_new:
        yield f"  A new certificate was made: {phone.certificate.why_new}."
    yield "  Its SHA-256 fingerprint, to compare with what the phone's browser shows:"
    for row in phone.fingerprint_rows:
        yield f"    {row}"
    yield "  To let a phone in, open the page “On a phone” on this computer."


def loopback_hosts(port: int) -> frozenset[str]:
    """What a browser of this computer may call it."""
    names = (LOOPBACK, "localhost")
    return frozenset(names if port == HTTP_PORT else (f"{name}:{port}" for name in names))
