"""The whole way of a newcomer by the page alone: from nothing to a first order and its parcel.

Done twice, with JavaScript and without it; each step is found by what a person reads.
"""

import re
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect

from tests.web.server import Served, serving

pytestmark = pytest.mark.slow

SOURCE = """
sources:
  Corner shop:
    currency: GBP
    carriage: {0: 2.00}
    packs:
      B1: {name: infantry box, price: 18.00, holds: {rifleman: 32, officer: 4}}
      P1: {name: riflemen, price: 5.00, holds: {rifleman: 8}}
"""


@pytest.fixture
def served(tmp_path: Path) -> Iterator[Served]:
    """A folder in which nothing is yet."""
    with serving(tmp_path / "forces") as server:
        yield server


@pytest.fixture(params=[True, False], ids=["with JavaScript", "without JavaScript"])
def page(browser: Browser, served: Served, request: pytest.FixtureRequest) -> Iterator[Page]:
    context = browser.new_context(
        base_url=served.url,
        viewport={"width": 390, "height": 800},
        java_script_enabled=request.param,
    )
    yield context.new_page()
    context.close()


def test_from_nothing_to_a_parcel_that_is_booked_in(page: Page, served: Served) -> None:
    page.goto("/")
    page.get_by_label("What shall the force be called?").fill("River Guard")
    page.get_by_label("What is in your box?").fill("one box: 16 riflemen")
    page.get_by_role("button", name="Raise it").click()
    expect(page.locator("h1")).to_have_text("River Guard")
    expect(page.locator("main")).to_contain_text("Still wanted")

    force = served.folder / "river-guard" / "force.yaml"
    assert "River Guard" in force.read_text(encoding="utf-8")
    page.goto("/forces/river-guard/files")
    page.get_by_label("Name").first.fill("prices.yaml")
    page.get_by_role("button", name="Begin").click()
    page.get_by_label("Text of prices.yaml").fill(SOURCE)
    page.get_by_role("button", name="Save").first.click()
    expect(page.locator("main")).to_contain_text("Written: prices.yaml")

    page.goto("/forces/river-guard/purchases")
    expect(page.locator(".lead")).to_contain_text(re.compile("No order below £.*proven"))
    total = re.search(r"below (£[\d.]+)", page.locator(".lead").inner_text())
    assert total is not None
    page.get_by_role("link", name=re.compile("[Rr]eceive")).first.click()
    page.get_by_role("button", name="Book it in").click()
    expect(page.locator("main")).to_contain_text("Booked in")

    page.goto("/forces/river-guard/purchases")
    expect(page.locator("main")).to_contain_text("Nothing is lacking")
    page.goto("/forces/river-guard/parade")
    expect(page.locator(".lead")).to_contain_text("all their figures are there")


def test_a_stand_is_brought_on_and_that_taken_back(page: Page, served: Served) -> None:
    page.goto("/start")
    page.get_by_label("What shall the force be called?").fill("River Guard")
    page.get_by_label("What is in your box?").fill("one box: 36 riflemen, 1 officer")
    page.get_by_role("button", name="Raise it").click()
    expect(page.locator("h1")).to_have_text("River Guard")
    page.goto("/forces/river-guard/parade")
    page.locator("a.stand:visible").nth(1).click()
    chit = page.locator(".chit")
    expect(chit.get_by_role("row", name="Stage")).to_contain_text("in packet")
    chit.get_by_role("button", name="Now assembled").click()
    expect(chit.get_by_role("row", name="Stage")).to_contain_text("assembled")
    expect(chit).to_be_in_viewport()
    expect(page.locator(".stand.chosen:visible")).to_be_in_viewport()
    chit.get_by_role("button", name="Now undercoated").click()
    expect(chit.get_by_role("row", name="Stage")).to_contain_text("undercoated")
    chit.get_by_role("button", name="Undo").click()
    expect(chit.get_by_role("row", name="Stage")).to_contain_text("assembled")
    expect(chit).to_contain_text("Undone: moved 4 riflemen from assembled to undercoated")
    expect(page.locator(".stand.chosen:visible")).to_be_in_viewport()
    assert (served.folder / "journal.sqlite").is_file()
