"""The table page as a phone has it: over TLS, paired, and trusting this computer's authority."""

import base64
import hashlib
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

import pytest
from cryptography import x509
from cryptography.hazmat.primitives.serialization import Encoding, PublicFormat
from playwright.sync_api import BrowserContext, expect, sync_playwright
from starlette.types import ASGIApp

from paradestate.web.application import application, local_time, new_site, site_of_phone
from paradestate.web.listening import LOOPBACK
from paradestate.web.phone.addresses import named_address
from paradestate.web.phone.gate import COOKIE
from paradestate.web.phone.listener import PhoneListener, phone_listener
from tests.web.browser.conftest import ARGUMENTS, chromium
from tests.web.browser.table_phone import Phone
from tests.web.server import Served, marenz, running


@dataclass(frozen=True, slots=True, kw_only=True)
class Paired:
    """A phone's browser that trusts the authority, and where its computer is."""

    context: BrowserContext
    served: Served
    listener: PhoneListener


@pytest.fixture
def paired(tmp_path: Path) -> Iterator[Paired]:
    folder, state = marenz(tmp_path), tmp_path / "state"
    site = new_site(folder, hosts=frozenset())
    listeners: list[PhoneListener] = []

    def made(port: int) -> ASGIApp:
        named = named_address(LOOPBACK)
        listeners.append(phone_listener(named, port=port, folder=state, now=local_time()))
        return application(site_of_phone(site, listener=listeners[0]))

    with (
        running(made, certificate=state / "certificate-127.0.0.1.pem") as url,
        sync_playwright() as playwright,
    ):
        trusted = f"--ignore-certificate-errors-spki-list={_key(listeners[0])}"
        browser = playwright.chromium.launch(executable_path=chromium(), args=[*ARGUMENTS, trusted])
        with browser.new_context(viewport={"width": 390, "height": 800}) as context:
            served = Served(url=url, folder=folder)
            yield Paired(context=context, served=served, listener=listeners[0])
        browser.close()


def _key(listener: PhoneListener) -> str:
    """The digest of the authority's key, as the browser is told of whom to trust."""
    authority = x509.load_der_x509_certificate(listener.certificate.authority)
    plain = authority.public_key().public_bytes(Encoding.DER, PublicFormat.SubjectPublicKeyInfo)
    return base64.b64encode(hashlib.sha256(plain).digest()).decode()


@pytest.mark.slow
def test_nothing_of_it_is_reached_unpaired_and_a_paired_phone_keeps_it(paired: Paired) -> None:
    context, listener, served = paired.context, paired.listener, paired.served
    stranger = context.new_page()
    for path in ("", "/worker.js", "/manifest.webmanifest", "/force.json", "/entries.json"):
        stranger.goto(served(f"table{path}"))
        assert stranger.url.endswith("/pair"), path
    stranger.goto(f"{served.url}/authority.crt")
    assert stranger.url.endswith("/pair")
    taken = "(address) => fetch(address, {method: 'POST'}).then((answer) => answer.status)"
    assert stranger.evaluate(taken, served("table/take")) == 403

    secret = listener.devices.admit("Anna's phone", day=local_time().date())
    context.add_cookies([{"name": COOKIE, "value": secret, "url": served.url, "secure": True}])
    given = "() => fetch('/authority.crt').then((a) => a.bytes()).then((all) => [...all])"
    assert bytes(stranger.evaluate(given)) == listener.certificate.authority
    phone = Phone(context, served)
    phone.open()
    phone.begin()
    phone.away()
    phone.reopen()
    key = phone.blocks()[0]
    phone.toggle(key)
    phone.home()
    (last,) = [
        each["says"]["played"]["device"]
        for each in phone.kept(phone.game())
        if "told" in each["says"]["played"]
    ]
    assert last.startswith("Anna's phone ")

    for device in listener.devices.all():
        listener.devices.remove(device.key)
    phone.toggle(key)
    expect(phone.page.locator("#kept")).to_contain_text("isn't let in any more: pair it again")
    expect(phone.page.locator("#kept")).to_contain_text("1 entry kept here")
    assert len(phone.kept(phone.game())) == 3
