"""What to get next in a real browser: on a phone with one thumb, and with the keyboard alone."""

from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect

from tests.chance.next.examples import OSK
from tests.cli.test_next import QUAY
from tests.forces import HEAD
from tests.web.server import Served, serving

pytestmark = pytest.mark.slow

WAIT = 30_000
"""Milliseconds for a search on a busy machine."""
LETTERS = 13
"""Pixels that a letter of the bars is high, at the least, on the narrowest phone."""


@pytest.fixture(scope="module")
def osk(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Served]:
    """The example of section 3.13 of the computations; nothing here changes it."""
    folder: Path = tmp_path_factory.mktemp("next") / "osk"
    folder.mkdir()
    for name, text in {"force": HEAD, "points": OSK, "prices": QUAY}.items():
        (folder / f"{name}.yaml").write_text(text, encoding="utf-8")
    with serving(folder) as server:
        yield server


@pytest.fixture
def phone(browser: Browser) -> Iterator[Page]:
    context = browser.new_context(viewport={"width": 320, "height": 640})
    yield context.new_page()
    context.close()


def test_at_a_show_stall_money_is_put_in_and_the_bars_can_be_read(phone: Page, osk: Served) -> None:
    phone.goto(osk("next"))
    phone.get_by_label("How much money").fill("20")
    phone.get_by_role("button", name="Show it").click()
    expect(phone.locator(".lead")).to_contain_text("One Quay/gun adds 4 for £8.00", timeout=WAIT)
    drawing = phone.get_by_role("img", name="What each adds: 1 x Quay/gun adds 4 for £8.00")
    expect(drawing).to_be_visible()
    heights = drawing.locator("text").evaluate_all(
        "all => all.map(e => parseFloat(getComputedStyle(e).fontSize)"
        " * e.ownerSVGElement.getScreenCTM().a)"
    )
    assert min(heights) >= LETTERS


def test_of_money_and_hours_only_what_counts_is_asked_for(phone: Page, osk: Served) -> None:
    phone.goto(osk("next?money=20"))
    expect(phone.get_by_label("How many hours")).to_be_hidden()
    phone.get_by_label("Hours at the bench").check()
    expect(phone.get_by_label("How much money")).to_be_hidden()
    phone.get_by_label("How many hours").fill("1")
    phone.get_by_label("How many hours").press("Enter")
    heading = phone.get_by_role("heading", name="What to finish")
    expect(heading).to_be_visible(timeout=WAIT)


def test_one_is_had_anyway_by_keyboard_without_javascript(browser: Browser, osk: Served) -> None:
    context = browser.new_context(java_script_enabled=False)
    plain = context.new_page()
    plain.goto(osk("next?money=20"))
    plain.get_by_text("All of them as a table").press("Enter")
    plain.get_by_role("link", name="have one of Quay/tank").press("Enter")
    expect(plain.locator("#anyway")).to_contain_text("the price of the fun is 0.33", timeout=WAIT)
    context.close()
