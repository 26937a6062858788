"""Pages on paper: dark ink on white whatever the screen, and nothing that only a screen can do."""

from collections.abc import Iterator

import pytest
from playwright.sync_api import Browser, Page, expect

from tests.web.server import Served

pytestmark = pytest.mark.slow

SHEETS = (
    "parade",
    "organisation",
    "stands",
    "holdings",
    "purchases",
    "choosing",
    "next",
    "hosts?plan=machine-gun+platoon%3D2",
    "list",
    "journal",
    "bench",
    "bench/cards",
    "marks",
    "papers",
    "evening",
    "after",
)
SET = 60_000
"""Milliseconds within which all papers are set."""

MOST_OF_INK = 100
"""Each part of the colour of print, of 255."""


@pytest.fixture
def paper(browser: Browser, served: Served) -> Iterator[Page]:
    """A page of A4 with narrow margins, printed from a dark screen."""
    context = browser.new_context(
        base_url=served.url, viewport={"width": 720, "height": 1000}, color_scheme="dark"
    )
    page = context.new_page()
    page.emulate_media(media="print")
    yield page
    context.close()


@pytest.mark.parametrize("sheet", SHEETS)
def test_a_sheet_is_printed_in_ink_on_white(paper: Page, served: Served, sheet: str) -> None:
    paper.goto(served(sheet))
    expect(paper.locator("[data-setting]")).to_have_count(0, timeout=SET)
    colours = paper.locator("h1").evaluate(
        "h => [getComputedStyle(h).color, getComputedStyle(document.documentElement)"
        ".backgroundColor].map(c => c.match(/[0-9]+/g).map(Number))"
    )
    ink, ground = colours
    assert max(ink) < MOST_OF_INK
    assert ground == [255, 255, 255]
    for found in paper.locator("button, nav, footer, summary").all():
        if found.evaluate("e => e.tagName != 'SUMMARY' || !e.parentElement.open"):
            expect(found).to_be_hidden()
