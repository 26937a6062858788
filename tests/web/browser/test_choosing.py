"""Choosing in a real browser: a plan put together without the page being loaded again."""

import pytest
from playwright.sync_api import Browser, Page, expect

from tests.web.server import Served

pytestmark = pytest.mark.slow

GAME = "choosing?game=whole-day+attack"


def put_together(page: Page) -> None:
    """Two light tanks, then three, then two again."""
    page.get_by_text("What may be asked for").click()
    heading = page.get_by_role("heading", name="Light tanks", exact=True)
    tanks = page.locator("li.entry").filter(has=heading)
    tanks.get_by_role("link", name="two for 9 points").click()
    expect(page.locator("#plan .tot")).to_contain_text("9 points of at the most 23")
    expect(tanks).to_be_in_viewport()
    tanks.get_by_role("link", name="More: 2 x light tanks").click()
    expect(page.locator("#plan .tot")).to_contain_text("13 points")
    tanks.get_by_role("link", name="Less: 3 x light tanks").click()
    expect(page.locator("#plan .tot")).to_contain_text("9 points")


def test_a_plan_is_put_together_where_one_stands_and_can_be_gone_back_to(
    page: Page, served: Served
) -> None:
    page.goto(served(GAME))
    page.evaluate("window.isThere = true")
    put_together(page)
    assert page.evaluate("window.isThere"), "the page was loaded again"
    page.go_back()
    expect(page.locator("#plan .tot")).to_contain_text("13 points")


def test_a_plan_is_put_together_without_javascript(browser: Browser, served: Served) -> None:
    context = browser.new_context(java_script_enabled=False)
    plain = context.new_page()
    plain.goto(served(GAME))
    put_together(plain)
    context.close()
