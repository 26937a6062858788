"""The list in a real browser: a price changed by keyboard, with and without JavaScript."""

from threading import Event

import pytest
from playwright.sync_api import Browser, Page, expect

from paradestate.web.page import proof
from paradestate.web.proof import answer
from tests.web.server import Served

pytestmark = pytest.mark.slow

LIST = "list?game=whole-day+attack&points=10"


def change_a_price(page: Page) -> None:
    """From the table to the slip of an entry, and there another price."""
    page.get_by_role("link", name="Anti-tank guns").first.press("Enter")
    box = page.get_by_label("Points of one")
    expect(box).to_have_value("4")
    box.fill("5")
    box.press("Enter")
    expect(page.locator("#what-if")).to_contain_text("Raising 1 x anti-tank guns from 4 to 5")
    expect(page.get_by_label("Points of one")).to_have_value("5")


def test_a_price_is_changed_by_keyboard_where_one_stands(page: Page, served: Served) -> None:
    page.goto(served(LIST))
    page.evaluate("window.isThere = true")
    change_a_price(page)
    page.locator("#what-if .values").get_by_role("link", name="3", exact=True).press("Enter")
    expect(page.locator("#what-if")).to_contain_text("Lowering 1 x anti-tank guns from 4 to 3")
    page.get_by_role("link", name="As it is", exact=True).press("Enter")
    expect(page.get_by_label("Points of one")).to_have_value("4")
    assert page.evaluate("window.isThere"), "the page was loaded again"


def test_a_price_is_changed_without_javascript(browser: Browser, served: Served) -> None:
    context = browser.new_context(java_script_enabled=False)
    plain = context.new_page()
    plain.goto(served(LIST))
    change_a_price(plain)
    context.close()


def test_what_takes_long_comes_by_itself(
    page: Page, served: Served, monkeypatch: pytest.MonkeyPatch
) -> None:
    go, whole = Event(), answer.answered

    def waiting(*given: object, **asked: object) -> object:
        go.wait(60)
        return whole(*given, **asked)  # type: ignore[arg-type] # handed on as they are

    monkeypatch.setattr(proof, "answered", waiting)
    monkeypatch.setattr(proof, "AT_ONCE", 0.01)
    page.goto(served(LIST))
    expect(page.get_by_role("heading", name="The list is being proved")).to_be_visible()
    expect(page.locator("#at-work")).to_be_visible()
    go.set()
    expect(page.get_by_role("heading", name="To look at")).to_be_visible()
    expect(page.get_by_role("heading", name="The list is being proved")).to_have_count(0)
