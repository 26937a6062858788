"""The board of hosts in a real browser: by dragging, by keyboard, and without JavaScript."""

import pytest
from playwright.sync_api import Browser, Page, expect

from tests.web.server import Served

pytestmark = pytest.mark.slow

PLAN = "hosts?game=whole-day+attack&plan=machine-gun+platoon%3D2,+pioneers(flame)%3D1"


def test_a_section_is_dragged_to_a_host_and_the_way_back_is_the_browsers(
    page: Page, served: Served
) -> None:
    page.goto(served(PLAN))
    page.evaluate("window.isThere = true")
    tag, goal = page.locator("#section-1"), page.locator("#spot-6")
    full = page.locator("#spot-2")
    tag.hover()
    page.mouse.down()
    full.hover()
    full.hover()
    expect(full.locator(".told")).to_have_text(
        "Not here: it has room for 1 section, and machine-gun platoon 2 is there."
    )
    expect(goal.locator(".told")).to_have_text("worth as much")
    page.mouse.up()
    expect(full.locator(".told")).to_be_hidden()
    expect(page.locator("#spot-1 .tag")).to_have_count(1)
    tag.drag_to(goal)
    expect(goal.locator(".tag")).to_contain_text("machine-gun platoon 1")
    expect(page.locator("#moving")).to_contain_text("is with No 2 Company, 3 Platoon now")
    assert page.evaluate("window.isThere"), "the page was loaded again"
    page.go_back()
    expect(page.locator("#spot-1 .tag")).to_contain_text("machine-gun platoon 1")
    expect(goal.locator(".tag")).to_have_count(0)


def test_a_section_is_moved_by_keyboard_and_keeps_the_focus(page: Page, served: Served) -> None:
    page.goto(served(PLAN))
    page.locator("#section-3").press("Enter")
    expect(page.locator("#moving")).to_contain_text("Pioneers with flame, with No 1 Company")
    expect(page.locator("#section-3")).to_be_focused()
    page.keyboard.press("Escape")
    expect(page.locator("#leave")).to_have_count(0)
    page.locator("#section-3").press("Enter")
    page.get_by_role("link", name="Here: worth as much (No 4 Company, 2 Platoon)").press("Enter")
    expect(page.locator("#spot-11 .tag")).to_contain_text("pioneers with flame")
    expect(page.locator("#section-3")).to_be_focused()
    page.get_by_role("link", name="Back to the best").press("Enter")
    expect(page.locator("#spot-3 .tag")).to_contain_text("pioneers with flame")


def test_worths_and_moves_need_no_javascript(browser: Browser, served: Served) -> None:
    context = browser.new_context(java_script_enabled=False, viewport={"width": 320, "height": 640})
    plain = context.new_page()
    plain.goto(served(PLAN))
    plain.get_by_text("What places are worth to you").click()
    plain.get_by_label("Pioneers with flame, No 4 Company, 2 Platoon").fill("5")
    plain.get_by_role("button", name="Put the worths in").click()
    expect(plain.locator("main .lead")).to_contain_text("Worth 7. Exact")
    plain.locator("#section-3").click()
    expect(plain.locator("#section-3")).to_be_in_viewport()
    plain.locator("#way-13").click()
    expect(plain.locator("main .lead")).to_contain_text("Worth 2, 5 less than the best.")
    context.close()
