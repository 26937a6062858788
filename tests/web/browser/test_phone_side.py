"""A phone is paired over TLS in a real browser, and names in a force never become programs."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from pathlib import Path
from urllib.parse import urlencode

import pytest
from playwright.sync_api import Browser, Dialog, Page, expect
from starlette.types import ASGIApp

from paradestate.web.application import (
    BELOW,
    PAGES,
    application,
    local_time,
    new_site,
    site_of_phone,
)
from paradestate.web.listening import LOOPBACK
from paradestate.web.phone.addresses import named_address
from paradestate.web.phone.gate import COOKIE
from paradestate.web.phone.listener import PhoneListener, phone_listener
from paradestate.web.serving import loopback_hosts
from tests.web.server import marenz, running, serving

EVIL = "<script>alert(1)</script><img src=x onerror=alert(2)>"


@dataclass(frozen=True, slots=True, kw_only=True)
class Two:
    """The addresses of the computer's own pages and of the phone's."""

    own: str
    phone: str


@pytest.fixture
def two(tmp_path: Path) -> Iterator[Two]:
    site = new_site(marenz(tmp_path), hosts=frozenset())
    named, state = named_address(LOOPBACK), tmp_path / "state"
    made: list[PhoneListener] = []

    def of_phone(port: int) -> ASGIApp:
        made.append(phone_listener(named, port=port, folder=state, now=local_time()))
        return application(site_of_phone(site, listener=made[0]))

    def of_computer(port: int) -> ASGIApp:
        return application(replace(site, hosts=loopback_hosts(port), phone=made[0]))

    certificate = state / "certificate-127.0.0.1.pem"
    with running(of_phone, certificate=certificate) as phone, running(of_computer) as own:
        yield Two(own=own, phone=phone)


@pytest.fixture
def computer(browser: Browser, two: Two) -> Iterator[Page]:
    with browser.new_context(base_url=two.own) as context:
        yield context.new_page()


@pytest.fixture
def phone(browser: Browser, two: Two) -> Iterator[Page]:
    """The warning about the certificate is clicked away, as its owner does."""
    with browser.new_context(
        base_url=two.phone,
        ignore_https_errors=True,
        viewport={"width": 390, "height": 800},
        has_touch=True,
    ) as context:
        yield context.new_page()


@pytest.mark.slow
def test_a_phone_is_paired_and_put_out_again(computer: Page, phone: Page) -> None:
    phone.goto("/forces/marenz/parade")
    expect(phone.get_by_role("heading", level=1)).to_have_text("Pair this device")
    computer.goto("/phone")
    computer.get_by_role("button", name="Show a word").click()
    word = computer.locator(".word").inner_text()
    phone.goto(f"/pair?word={word}")
    phone.get_by_label("What shall the computer call this device?").fill("Anna's phone")
    phone.get_by_role("button", name="Let this device in").click()
    expect(phone.get_by_role("heading", level=1)).to_have_text("Parade state")
    expect(computer.locator("#came")).to_contain_text("No word is good now")
    computer.goto("/phone")
    expect(computer.get_by_role("row", name="Anna's phone")).to_be_visible()
    computer.get_by_role("button", name="Remove Anna's phone").click()
    expect(computer.get_by_text("None is paired.")).to_be_visible()
    phone.goto("/forces/marenz/parade")
    expect(phone.get_by_role("heading", level=1)).to_have_text("Pair this device")


@pytest.mark.slow
def test_the_cookie_of_a_device_is_kept_from_scripts(computer: Page, phone: Page) -> None:
    computer.goto("/phone")
    computer.get_by_role("button", name="Show a word").click()
    word = computer.locator(".word").inner_text()
    phone.goto("/pair")
    phone.get_by_label("Pairing word").fill(word.upper().replace("-", " "))
    phone.get_by_role("button").click()
    expect(phone.get_by_role("heading", level=1)).to_have_text("Parade state")
    assert phone.evaluate("document.cookie") == ""
    kept = {each["name"]: each for each in phone.context.cookies()}
    assert set(kept) == {COOKIE, "parade-state"}
    for each in kept.values():
        assert (each["secure"], each["httpOnly"], each["sameSite"]) == (True, True, "Strict")


@pytest.mark.slow
def test_a_name_that_looks_like_a_program_is_never_run(browser: Browser, tmp_path: Path) -> None:
    """In a force's title, a company's name, a device's name, and in what is asked for."""
    folder = marenz(tmp_path)
    force = folder / "force.yaml"
    text = force.read_text()
    title = next(line for line in text.splitlines() if line.startswith("title:"))
    force.write_text(
        text.replace(title, f"title: '{EVIL}'").replace("called: Platoon", f"called: '{EVIL}'")
    )
    with serving(folder) as served, browser.new_context(base_url=served.url) as context:
        page = context.new_page()
        seen: list[str] = []

        def dismissed(dialog: Dialog) -> None:
            seen.append(dialog.message)
            dialog.dismiss()

        page.on("dialog", dismissed)
        page.on("console", lambda said: seen.append(said.text) if said.type == "error" else None)
        page.on("pageerror", lambda error: seen.append(str(error)))
        for path in (each.path for each in (*PAGES, *BELOW)):
            page.goto(served(path))
            page.goto(served(f"{path}?{urlencode({'stand': EVIL, 'file': EVIL, 'on': EVIL})}"))
        assert [each for each in seen if "status of 4" not in each] == []
        page.goto(served("parade"))
        assert EVIL in page.locator("main").inner_text()
