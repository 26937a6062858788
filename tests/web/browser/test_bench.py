"""The bench on a phone: an evening in two taps, undone after closing, and without JavaScript."""

from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect

from tests.web.server import Served

pytestmark = pytest.mark.slow


def test_an_evening_is_written_down_in_two_taps_and_undone_after_closing(
    browser: Browser, page: Page, served: Served
) -> None:
    page.set_viewport_size({"width": 390, "height": 800})
    page.goto(served("holdings/log?kind=received"))
    page.get_by_label("rifleman").fill("80")
    page.get_by_role("button", name="Write it down").click()
    expect(page.locator("main")).to_contain_text("received 80 riflemen")
    page.goto(served("bench"))
    page.evaluate("window.isThere = true")
    ladder = page.locator(".ladder .phone svg")
    before = ladder.inner_html()
    page.locator("#now select").select_option("6")
    page.get_by_role("button", name="Now assembled").first.click()
    expect(page.locator("#written")).to_contain_text("24 riflemen from in packet to assembled")
    expect(page.locator("#undo")).to_be_in_viewport()
    assert page.evaluate("window.isThere"), "the page was loaded again"
    assert ladder.inner_html() != before
    page.goto(served("parade"))
    expect(page.locator(".ground .phone").first).to_be_visible()
    assert page.get_by_role("link", name="assembled").count() == 6
    context = browser.new_context(java_script_enabled=False, viewport={"width": 320, "height": 640})
    later = context.new_page()
    later.goto(served("bench"))
    later.locator("#undo").click()
    expect(later.locator("#written")).to_contain_text("Undone: moved 24 riflemen")
    expect(later.locator("#written")).to_be_in_viewport()
    context.close()


def test_a_batch_further_down_is_written_down_where_it_stands(page: Page, served: Served) -> None:
    page.goto(served("holdings/log?kind=received"))
    page.get_by_label("mortar crew").fill("12")
    page.get_by_role("button", name="Write it down").click()
    expect(page.locator("main")).to_contain_text("received 12 mortar crews")
    page.goto(served("bench"))
    row = page.locator(".batches > li", has_text="No 3 Company, Light Mortar Section")
    row.locator("summary").press("Enter")
    row.get_by_label("Minutes").fill("20")
    row.get_by_role("button", name="Now assembled").press("Enter")
    expect(page.locator("#written")).to_contain_text("session of 20 minutes, 6 mortar crews")
    expect(page.locator("#undo")).to_be_in_viewport()


def test_game_nights_make_the_sheet_no_wider_than_the_phone(
    page: Page, served: Served, tmp_path: Path
) -> None:
    with (tmp_path / "marenz" / "force.yaml").open("a", encoding="utf-8") as file:
        file.write("  playable: [{name: an evening at the club, numbers: {company: 3}}]\n")
        file.write("aim: {game nights: [every week from 2026-03-05]}\n")
    page.set_viewport_size({"width": 320, "height": 640})
    page.goto(served("bench"))
    expect(page.get_by_role("heading", name="Ready by game night")).to_be_attached()
    assert page.evaluate("document.documentElement.scrollWidth") <= 320
