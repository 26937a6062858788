"""The sheet of the organisation in a browser."""

from playwright.sync_api import Browser, Page, expect

from tests.web.browser.shut_out import shut_out
from tests.web.server import Served

TOUCHED = ".tree summary, .tree a, .opt, .amend button, .amend .btn, main details > summary"
PROPOSED = "organisation?number+company=3&open=No+2+Company"


def test_it_fits_and_axe_finds_nothing(page: Page, served: Served) -> None:
    page.goto(served(PROPOSED))
    for width in (320, 768, 1280):
        page.set_viewport_size({"width": width, "height": 900})
        page.emulate_media(color_scheme="dark" if width == 768 else "light")
        assert page.evaluate("document.documentElement.scrollWidth") == width
        assert page.locator(".chart-wide").is_visible() == (width == 1280)
        assert page.locator(".chart-tree").is_visible() == (width < 1280)
        assert shut_out(page) == []


def test_what_is_tapped_is_large_enough_for_a_thumb(page: Page, served: Served) -> None:
    page.set_viewport_size({"width": 320, "height": 900})
    page.goto(served(PROPOSED))
    heights = {
        box["height"]
        for each in page.locator(TOUCHED).all()
        if each.is_visible() and (box := each.bounding_box()) is not None
    }
    assert heights
    assert min(heights) >= 44


def test_a_pick_shows_what_follows_and_is_accepted_and_taken_back(
    page: Page, served: Served
) -> None:
    page.goto(served("organisation"))
    page.get_by_role("radio", name="3", exact=True).check(force=True)
    expect(page.locator("#amendment h2")).to_have_text("Three companies instead of four")
    expect(page.get_by_role("row", name="Foot figures 123 94")).to_be_visible()
    page.get_by_role("button", name="Accept the amendment").click()
    expect(page.locator(".done h2")).to_have_text("Written into force.yaml")
    assert "{company: 3}" in (served.folder / "force.yaml").read_text(encoding="utf-8")
    page.get_by_role("button", name="Take it back").click()
    expect(page.locator(".done h2")).to_have_text("force.yaml is as it was before")
    assert "{company: 4}" in (served.folder / "force.yaml").read_text(encoding="utf-8")


def test_the_same_without_javascript(browser: Browser, served: Served) -> None:
    with browser.new_context(java_script_enabled=False) as context:
        page = context.new_page()
        page.goto(served("organisation"))
        page.get_by_role("radio", name="3", exact=True).check(force=True)
        page.get_by_role("button", name="Show what follows").click()
        expect(page.locator("#amendment h2")).to_have_text("Three companies instead of four")
        page.get_by_role("button", name="Accept the amendment").click()
        expect(page.locator(".done h2")).to_have_text("Written into force.yaml")


def test_a_body_is_opened_with_the_keyboard(page: Page, served: Served) -> None:
    page.goto(served("organisation"))
    page.get_by_role("link", name="No 3 Company, infantry company").focus()
    page.keyboard.press("Enter")
    expect(page.get_by_role("group", name="opened: No 3 Company")).to_be_visible()
    page.get_by_role("link", name="2 Platoon, infantry platoon").focus()
    page.keyboard.press("Enter")
    expect(page.get_by_role("link", name="2 rifle sections, 20 men")).to_be_visible()
