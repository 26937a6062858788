"""The stands in a browser: on every width, for everybody, and in full size on paper."""

import pytest
from playwright.sync_api import Page

from paradestate.sheet.stand_plan import PAPER_LINE, RIM
from tests.web.browser.shut_out import SCHEMES, shut_out
from tests.web.server import Served

MILLIMETRE = 96 / 25.4
"""Pixels of a page for one millimetre of paper, by CSS Values and Units (level 4)."""

OPEN_ALL = "document.querySelectorAll('details').forEach(each => each.open = true)"
WIDER_THAN_THE_SCREEN = "document.documentElement.scrollWidth > window.innerWidth"


@pytest.mark.slow
@pytest.mark.parametrize("width", [320, 1280])
@pytest.mark.parametrize("path", ["stands", "stands?pattern=observer", "stands/full-size"])
def test_it_fits_every_screen_and_keeps_nobody_out(
    page: Page, served: Served, *, path: str, width: int
) -> None:
    page.set_viewport_size({"width": width, "height": 900})
    page.goto(served(path))
    page.evaluate(OPEN_ALL)
    for scheme in SCHEMES:
        page.emulate_media(color_scheme=scheme)
        assert not page.evaluate(WIDER_THAN_THE_SCREEN)
        assert shut_out(page) == []


@pytest.mark.slow
def test_on_paper_a_stand_of_40_mm_is_40_mm_wide(page: Page, served: Served) -> None:
    page.set_viewport_size({"width": 680, "height": 900})
    page.emulate_media(media="print")
    page.goto(served("stands/full-size?pattern=rifle section"))
    box = page.locator("figure .full-size rect").first.bounding_box()
    assert box is not None
    rim = PAPER_LINE * RIM  # half of it lies without
    assert box["width"] == pytest.approx((40 + rim) * MILLIMETRE, abs=0.05)
    ruler = page.locator(".paper-line svg").bounding_box()
    assert ruler is not None
    assert ruler["width"] == pytest.approx(101 * MILLIMETRE, abs=0.5)


@pytest.mark.slow
def test_another_company_is_chosen_without_leaving_the_page(page: Page, served: Served) -> None:
    page.goto(served("stands"))
    page.get_by_label("Which of them").select_option("No 3 Company")
    page.get_by_role("button", name="Show", exact=True).click()
    page.get_by_text("No 3 Company: 3 platoons in line cover 340 mm").wait_for()


@pytest.mark.slow
def test_from_a_kind_one_comes_to_its_first_stand_on_the_parade(page: Page, served: Served) -> None:
    page.goto(served("stands"))
    page.get_by_role("link", name="Observer", exact=True).first.click()
    page.get_by_role("heading", name="Where its figures stand").wait_for()
    page.get_by_role("link", name="See it on the parade").click()
    page.get_by_role("heading", name="1 Observer").wait_for()
