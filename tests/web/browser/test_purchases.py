"""The page of purchases in a real browser: how far a search is as it goes on, and its end."""

import re
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect

from bench.price_lists import dense
from tests.web.purchasing import folder_of
from tests.web.server import Served, marenz, serving

pytestmark = pytest.mark.slow

LONG = 90_000
"""Milliseconds: a busy machine takes its time."""


@pytest.fixture
def served(tmp_path: Path) -> Iterator[Served]:
    """A force whose cheapest order takes half a minute to be proved."""
    with serving(folder_of(dense(12, packs=90, seed=1), tmp_path / "long")) as server:
        yield server


@pytest.fixture
def example(page: Page, tmp_path: Path) -> Iterator[Served]:
    """The example force; the page leaves it before it is served no more."""
    with serving(marenz(tmp_path)) as server:
        yield server
        page.goto("about:blank")


def money(text: str) -> float:
    """The amount in a text: `£48.50`."""
    found = re.search(r"£([\d.]+)", text)
    assert found is not None
    return float(found[1])


def test_the_best_and_the_bound_come_nearer_before_ones_eyes(page: Page, served: Served) -> None:
    page.goto(served("purchases"))
    best, bound_ = page.locator("[data-told=best]"), page.locator("[data-told=bound]")
    expect(best).to_contain_text("£", timeout=LONG)
    expect(bound_).to_contain_text("£", timeout=LONG)
    first, time = money(best.inner_text()), page.locator("[data-told=time]").inner_text()
    expect(page.locator("[data-told=time]")).not_to_have_text(time, timeout=LONG)
    assert money(bound_.inner_text()) <= money(best.inner_text()) <= first


def test_stopped_half_way_the_best_is_kept(page: Page, served: Served) -> None:
    page.goto(served("purchases?limit=40"))
    expect(page.locator("[data-told=best]")).to_contain_text("£", timeout=LONG)
    page.get_by_role("button", name="Stop and keep the best").click()
    expect(page.locator(".lead")).to_contain_text("The best found costs £", timeout=LONG)
    expect(page.locator("#slips .slip").first).to_be_visible()
    expect(page.locator("#months")).to_be_visible()


def test_at_its_end_the_page_shows_the_order_by_itself(page: Page, served: Served) -> None:
    page.goto(served("purchases?seconds=3"))
    expect(page.locator("#slips .slip").first).to_be_visible(timeout=LONG)
    expect(page.locator("[data-progress]")).to_have_count(0)


def test_come_to_from_another_sheet_it_shows_how_far_it_is_as_well(
    page: Page, served: Served
) -> None:
    page.goto(served("parade"))
    page.get_by_role("link", name="Purchases").first.click()
    time = page.locator("[data-told=time]")
    before = time.inner_text()
    expect(time).not_to_have_text(before, timeout=LONG)
    page.get_by_role("button", name="Stop and keep the best").click()
    expect(page.locator("#slips .slip").first).to_be_visible(timeout=LONG)


def test_without_javascript_the_page_looks_again_by_itself(
    browser: Browser, served: Served
) -> None:
    context = browser.new_context(java_script_enabled=False)
    plain = context.new_page()
    plain.goto(served("purchases?seconds=4"))
    expect(plain.locator("#slips .slip").first).to_be_visible(timeout=LONG)
    context.close()


def test_nothing_is_wider_than_the_screen(page: Page, example: Served) -> None:
    page.goto(example("purchases?limit=30"))
    expect(page.locator("#slips .slip").first).to_be_visible(timeout=LONG)
    for width in (320, 768, 1280):
        page.set_viewport_size({"width": width, "height": 800})
        assert page.evaluate("document.documentElement.scrollWidth") == width


def test_choosing_a_step_keeps_the_rest_of_the_question(page: Page, example: Served) -> None:
    page.goto(example("purchases"))
    page.get_by_label("Order this instead").fill("rifleman=50, mortar crew=9, officer=4")
    page.get_by_label("Money a month").fill("30")
    page.get_by_role("button", name="Look for it").click()
    expect(page.locator(".lead")).to_contain_text("No order below £48.50", timeout=LONG)
    page.get_by_role("link", name="choose B").click()
    expect(page.locator("#slips .slip h3")).to_have_text("To North")
    expect(page.locator("#months")).to_contain_text("1 parcel for £50.00")
    expect(page.get_by_label("Order this instead")).to_have_value(re.compile("rifleman=50"))


def test_an_aim_written_down_can_be_undone_once_its_order_is_found(
    page: Page, example: Served
) -> None:
    page.goto(example("purchases"))
    page.get_by_label("May be spent in a month").fill("30")
    page.get_by_role("button", name="Write it down").click()
    expect(page.locator("#months")).to_contain_text("with £30.00 a month", timeout=LONG)
    expect(page.get_by_text("The aim is written into force.yaml.")).to_be_visible()
    page.get_by_role("button", name="Undo").click()
    expect(page.get_by_text("The aim is what it was before.")).to_be_visible(timeout=LONG)
    expect(page.locator("#slips .slip").first).to_be_visible(timeout=LONG)
    expect(page.get_by_label("May be spent in a month")).to_have_value("")


def test_who_is_filling_in_a_form_is_not_interrupted_by_the_end_of_a_search(
    page: Page, served: Served
) -> None:
    page.goto(served("purchases?seconds=3"))
    page.get_by_label("Order this instead").fill("kind 1=5")
    offer = page.get_by_role("link", name="show the order")
    expect(offer).to_be_visible(timeout=LONG)
    expect(page.get_by_label("Order this instead")).to_have_value("kind 1=5")
    offer.click()
    expect(page.locator("#slips .slip").first).to_be_visible(timeout=LONG)
