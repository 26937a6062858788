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


def test_a_row_is_read_back_as_its_field_is_left_and_nothing_typed_is_touched(
    page: Page, served: Served
) -> None:
    page.goto(served("choosing/list"))
    page.get_by_label("Name in your book, row 1").fill("lancers")
    page.get_by_label("Points, row 1").fill("four")
    page.get_by_label("Lent by, row 1").fill("division")
    expect(page.locator("#says-1")).to_contain_text("'four' isn't a whole number")
    page.get_by_label("Points, row 1").fill("4")
    page.get_by_label("Each puts down, row 1").press("Tab")
    expect(page.locator("#says-1")).to_contain_text("Lancers, held at division: one costs 4 points")
    expect(page.locator("main .lead")).to_contain_text("1 row read.")
    expect(page.get_by_label("Lent by, row 1")).to_have_value("division")


def test_a_list_is_written_and_taken_back_without_javascript(
    browser: Browser, served: Served
) -> None:
    context = browser.new_context(java_script_enabled=False)
    plain = context.new_page()
    plain.goto(served("choosing/list"))
    plain.get_by_label("Name in your book, row 1").fill("lancers")
    plain.get_by_label("Points, row 1").fill("4")
    plain.get_by_label("Points, row 1").press("Enter")
    expect(plain.locator("#says-1")).to_contain_text("Lancers: one costs 4 points.")
    plain.get_by_role("button", name="Write them down").click()
    expect(plain.get_by_role("status")).to_contain_text("1 entry, into supporting-troops.yaml")
    plain.get_by_role("button", name="Undo").click()
    expect(plain.get_by_role("status")).to_contain_text("Written")
    assert "lancers" not in (served.folder / "supporting-troops.yaml").read_text()
    context.close()


def test_a_purchase_is_moved_to_the_reserve_by_keyboard(page: Page, served: Served) -> None:
    page.goto(served(f"{GAME}&plan=light+tanks%3D2"))
    page.get_by_text("Keep something in reserve").click()
    page.get_by_role("link", name="2 x light tanks: to the reserve").press("Enter")
    expect(page.locator("#plan .order")).to_contain_text("In reserve: 2 x light tanks.")
