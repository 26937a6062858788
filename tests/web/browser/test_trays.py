"""The trays in a real browser: by dragging, by keyboard, and without JavaScript."""

import pytest
from playwright.sync_api import Browser, Page, expect

from tests.web.server import Served

pytestmark = pytest.mark.slow


def middle(page: Page, stand: int) -> tuple[float, float]:
    """Where a stand is on the drawing."""
    box = page.locator(f'.plan.desk [data-stand="{stand}"]').bounding_box()
    assert box is not None
    return box["x"] + box["width"] / 2, box["y"] + box["height"] / 2


def dragged_over(page: Page, stand: int, *, to: tuple[float, float]) -> None:
    x, y = middle(page, stand)
    page.mouse.move(x, y)
    page.mouse.down()
    with page.expect_response("**/trays/rules.json*"):
        page.mouse.move(x + 12, y + 4, steps=3)
    page.mouse.move(*to, steps=4)


def test_a_stand_is_dragged_onto_another_and_a_rule_is_shown_on_the_way(
    page: Page, served: Served
) -> None:
    page.goto(served("trays"))
    page.evaluate("window.isThere = true")
    dragged_over(page, 1, to=middle(page, 3))
    expect(page.locator("#told")).to_have_text(
        "Not there: Case 1 would be 214 mm deep in rows; it has 200."
    )
    page.mouse.move(*middle(page, 44), steps=4)
    expect(page.locator("#told")).to_have_text("Change places")
    page.mouse.up()
    expect(page.locator("#moving")).to_contain_text(
        "Battalion Command and 1 Truck have changed places."
    )
    assert page.evaluate("window.isThere"), "the page was loaded again"
    page.go_back()
    expect(page.locator("#moving")).to_contain_text("Touch a stand to move it")


def test_a_stand_is_moved_by_keyboard(page: Page, served: Served) -> None:
    page.goto(served("trays"))
    page.locator("#stand-44").press("Enter")
    expect(page.locator("#moving")).to_contain_text("1 Truck is taken up")
    page.keyboard.press("Escape")
    expect(page.locator("#leave")).to_have_count(0)
    page.locator("#stand-44").press("Enter")
    page.get_by_role("link", name="To Case 2").press("Enter")
    expect(page.locator("#moving")).to_contain_text("1 Truck is in Case 2 now")


def test_an_arrangement_is_kept_and_undone_without_javascript(
    browser: Browser, served: Served
) -> None:
    context = browser.new_context(java_script_enabled=False, viewport={"width": 320, "height": 640})
    plain = context.new_page()
    plain.goto(served("trays"))
    before = (served.folder / "force.yaml").read_bytes()
    plain.locator("#stand-44").click()
    plain.locator("#stand-45").click()
    expect(plain.locator("#moving")).to_contain_text("1 Truck and 2 Truck have changed places.")
    plain.get_by_role("button", name="Keep it so").click()
    expect(plain.locator("#moving")).to_contain_text("Written down.")
    assert (served.folder / "force.yaml").read_bytes() != before
    plain.get_by_role("button", name="Undo").click()
    assert (served.folder / "force.yaml").read_bytes() == before
    context.close()
