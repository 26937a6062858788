"""The club in a browser: the drawing that fits, one press, on paper."""

import datetime
from collections.abc import Iterator

import pytest
from playwright.sync_api import Browser, expect

from tests.web.grounds import CLUB
from tests.web.server import Served, marenz, serving

pytestmark = pytest.mark.slow

NOW = datetime.datetime(2026, 3, 1, 19, 30, tzinfo=datetime.UTC)
STOCK = "stock: {rifleman: {based: 27}}\n"


@pytest.fixture(scope="module")
def club(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Served]:
    folder = marenz(tmp_path_factory.mktemp("club"))
    (folder / "club.yaml").write_text(STOCK + CLUB, encoding="utf-8")
    with serving(folder, clock=lambda: NOW) as served:
        yield served


def test_a_desk_a_tablet_a_phone_and_paper_each_have_one_drawing_of_a_week(
    browser: Browser, club: Served
) -> None:
    page = browser.new_page()
    page.goto(club("club?from=2026-03-05"))
    week = page.locator("#week-2026-03-02")
    drawings = {name: week.locator(f":scope > .{name}") for name in ("desk", "paper", "phone")}
    for width, medium, shown in (
        (1280, "screen", "desk"),
        (900, "screen", "paper"),
        (390, "screen", "phone"),
        (720, "print", "paper"),
    ):
        page.set_viewport_size({"width": width, "height": 900})
        page.emulate_media(media="print" if medium == "print" else "screen")
        seen = [name for name, drawing in drawings.items() if drawing.is_visible()]
        assert (width, medium, seen) == (width, medium, [shown])
    expect(page.get_by_role("button", name="Move river game to 18:00-20:00")).to_be_visible()
    page.close()


def test_one_press_moves_a_game_and_one_puts_it_back(browser: Browser, club: Served) -> None:
    """Without JavaScript it is tried by the tests of its page."""
    page = browser.new_page()
    wrong: list[str] = []
    page.on("console", lambda said: wrong.append(said.text) if said.type == "error" else None)
    page.goto(club("club?from=2026-03-05"))
    page.get_by_role("button", name="Move river game").click()
    expect(page.get_by_role("status")).to_contain_text("Written into club.yaml")
    expect(page.locator(".lead")).to_contain_text("All games that are booked")
    page.get_by_role("button", name="Put the version before back").click()
    expect(page.get_by_role("status")).to_contain_text("stands again in club.yaml")
    expect(page.locator(".slip.stop")).to_have_count(1)
    assert wrong == []
    page.close()
