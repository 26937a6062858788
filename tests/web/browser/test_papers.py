"""Papers in a real browser: set while one looks on, taken away, handed over, with a thumb too."""

from threading import Event

import pytest
from playwright.sync_api import Browser, Page, expect

from paradestate.journeys.paper.one_paper import one_paper
from paradestate.web.page import papers
from tests.web.server import Served

pytestmark = pytest.mark.slow

SET = 30_000
"""Milliseconds in which all papers are set."""


def test_papers_come_by_themselves_as_they_are_set(
    page: Page, served: Served, monkeypatch: pytest.MonkeyPatch
) -> None:
    go, whole = Event(), one_paper

    def waiting(*given: object, **asked: object) -> object:
        go.wait(60)
        return whole(*given, **asked)  # type: ignore[arg-type] # handed on as they are

    monkeypatch.setattr(papers, "one_paper", waiting)
    monkeypatch.setattr(papers, "AT_ONCE", 0.01)
    page.goto(served("papers"))
    expect(page.get_by_role("heading", name="The papers are being set")).to_be_visible()
    page.evaluate("window.isThere = true")
    go.set()
    expect(page.locator("[data-setting]")).to_have_count(0, timeout=SET)
    expect(page.get_by_role("link", name="All of them (zip)")).to_be_visible()
    expect(page.get_by_alt_text("Labels, page 1 of 1, shown small", exact=True)).to_be_visible()
    assert page.evaluate("window.isThere"), "the page was loaded again"


def test_a_printer_is_measured_and_a_paper_taken_without_javascript(
    browser: Browser, served: Served
) -> None:
    context = browser.new_context(java_script_enabled=False, accept_downloads=True)
    plain = context.new_page()
    plain.goto(served("papers"))
    plain.get_by_label("100 mm across measure").fill("96.8")
    plain.get_by_label("Draw the sheets").check()
    plain.get_by_role("button", name="Remember it").press("Enter")
    expect(plain.get_by_label("100 mm across measure")).to_have_value("96.8")
    all_of_them = plain.get_by_role("link", name="All of them (zip)")
    expect(all_of_them).to_be_visible(timeout=SET)
    with plain.expect_download() as taken:
        all_of_them.click()
    assert taken.value.suggested_filename == "marenz-papers.zip"
    plain.goto(served("papers"))
    expect(plain.get_by_label("Draw the sheets")).to_be_checked()
    context.close()


def test_a_phone_that_is_handed_over_shows_the_paper_alone(
    browser: Browser, served: Served
) -> None:
    context = browser.new_context(viewport={"width": 390, "height": 800})
    phone = context.new_page()
    phone.goto(served("papers"))
    phone.get_by_role("link", name="Hand it over").click(timeout=SET)
    expect(phone.get_by_role("heading", name="Opponent's sheet")).to_be_visible()
    shown = phone.get_by_alt_text("Opponent's sheet, page 1 of 1")
    expect(shown).to_be_visible()
    box = shown.bounding_box()
    assert box is not None
    assert 300 < box["width"] <= 390
    assert phone.get_by_role("link").count() == 1
    context.close()
