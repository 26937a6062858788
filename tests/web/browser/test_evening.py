"""An evening on a phone: pressed twice, written once, and the points left are in sight."""

from pathlib import Path

import pytest
from playwright.sync_api import Browser, expect

from paradestate.journeys.game.games import games_of
from tests.journeys.conftest import written
from tests.web.grounds import NOW
from tests.web.page.test_evening import OWN
from tests.web.server import serving

pytestmark = pytest.mark.slow


def test_a_button_that_is_pressed_twice_writes_once_and_shows_the_points(
    browser: Browser, tmp_path: Path
) -> None:
    folder = written(tmp_path / "own", OWN)
    with serving(folder) as served:
        page = browser.new_page(viewport={"width": 320, "height": 640})
        page.goto(served("evening"))
        page.get_by_label("Against").fill("Ommerath")
        page.get_by_role("button", name="Both sides agree").dblclick()
        expect(page.locator(".written")).to_be_visible()
        page.wait_for_load_state("networkidle")
        page.locator("#face-1").fill("6")
        page.locator("#face-2").fill("2")
        page.get_by_role("button", name="Write the roll down").first.dblclick()
        expect(page.locator(".left")).to_have_text("20 points left")
        expect(page.locator(".left")).to_be_in_viewport()
        expect(page.locator("#face-1")).to_have_value("")
        page.close()
    (record,) = games_of(folder, today=NOW.date()).records
    assert [type(each.event).__name__ for each in record.lines] == ["Opened", "Rolled"]
