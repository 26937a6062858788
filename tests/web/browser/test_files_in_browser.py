"""The text of a file in a browser: what is found as one types, and words put in by key."""

from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect

from tests.web.browser.shut_out import shut_out
from tests.web.server import Served, marenz, serving

SHEETS = (
    "files",
    "files/text?name=force.yaml",
    "files/entries?sort=packs",
    "files/entry?sort=packs&name=N1&of=North",
    "files/entry?sort=names&name=company",
)

PUT_CURSOR = """(after) => {
  const text = document.getElementById("text");
  text.focus();
  const at = text.value.indexOf(after) + after.length;
  text.setSelectionRange(at, at);
}"""

CURSOR_LINE = """() => {
  const text = document.getElementById("text");
  return text.value.slice(0, text.selectionStart).split("\\n").length;
}"""

pytestmark = pytest.mark.slow


def test_a_slip_is_found_while_one_types_and_put_right_by_a_word(
    page: Page, served: Served
) -> None:
    page.goto(served("files/text?name=force.yaml"))
    page.evaluate(PUT_CURSOR, "raise:\n  formation: battalion")
    for _ in range(3):
        page.keyboard.press("Backspace")
    expect(page.locator("#beside .verdict")).to_contain_text("1 stop")
    expect(page.locator(".gutter .stop")).to_have_text("77")
    page.keyboard.press("Control+Space")
    expect(page.locator(".word:focus")).to_have_text("battalion")
    page.keyboard.press("Enter")
    expect(page.locator("#beside .verdict")).to_contain_text("Reads")
    expect(page.locator("#text")).to_be_focused()
    assert "\n  formation: battalion\n" in page.locator("#text").input_value()


def test_a_finding_leads_to_its_line(page: Page, served: Served) -> None:
    page.goto(served("files/text?name=force.yaml"))
    link = page.locator("#beside .findings a").first
    line = int((link.text_content() or "").split()[1].rstrip(","))
    link.click()
    expect(page.locator("#text")).to_be_focused()
    assert page.evaluate(CURSOR_LINE) == line


def test_a_line_more_has_a_number_more(page: Page, served: Served) -> None:
    page.goto(served("files/text?name=force.yaml"))
    before = page.locator(".gutter span").count()
    page.evaluate(PUT_CURSOR, "format: 1")
    page.keyboard.press("Enter")
    expect(page.locator(".gutter span")).to_have_count(before + 1)


def test_the_text_is_saved_as_it_was_typed(page: Page, served: Served) -> None:
    page.goto(served("files/text?name=force.yaml"))
    page.evaluate(PUT_CURSOR, "title: Republic")
    page.keyboard.type(" and People")
    page.get_by_role("button", name="Save", exact=True).click()
    expect(page.locator(".written")).to_contain_text("Written: force.yaml")
    text = (served.folder / "force.yaml").read_text(encoding="utf-8")
    assert "title: Republic and People of Marenz" in text


@pytest.mark.parametrize("sheet", SHEETS)
def test_nobody_is_shut_out_and_nothing_is_wider_than_the_screen(
    browser: Browser, served: Served, sheet: str
) -> None:
    opened = browser.new_context().new_page()
    opened.goto(served(sheet))
    for width in (320, 768, 1280):
        opened.set_viewport_size({"width": width, "height": 800})
        opened.emulate_media(color_scheme="light" if width == 1280 else "dark")
        assert opened.evaluate("document.documentElement.scrollWidth") <= width
        assert shut_out(opened) == []
    opened.context.close()


@pytest.mark.parametrize("width", [1280, 320])
def test_the_six_questions_shut_nobody_out(browser: Browser, tmp_path: Path, width: int) -> None:
    marenz(tmp_path)
    context = browser.new_context(viewport={"width": width, "height": 800})
    opened = context.new_page()
    with serving(tmp_path) as served:
        for address in ("/start", "/start/made?force=marenz"):
            opened.goto(served.url + address)
            assert opened.evaluate("document.documentElement.scrollWidth") <= width
            assert shut_out(opened) == []
    context.close()


def test_a_sheet_that_is_reached_by_a_link_has_its_look_and_its_script(
    browser: Browser, served: Served
) -> None:
    """Where there is a script, a link exchanges the body of the page and nothing else."""
    context = browser.new_context(viewport={"width": 1280, "height": 900})
    opened = context.new_page()
    opened.goto(served("parade"))
    opened.get_by_role("navigation", name="Sheets").get_by_role("link", name="Files").click()
    opened.get_by_role("link", name="force.yaml", exact=True).click()
    expect(opened.locator(".writing")).to_have_css("display", "grid")
    expect(opened.locator("html")).to_have_class("js")
    context.close()
