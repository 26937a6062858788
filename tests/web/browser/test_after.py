"""After a game in a browser: dice typed in, tapped twice, and a slip struck out."""

from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect

from paradestate.journeys.game.games import games_of
from tests.journeys.played_losses import AT, DAY, SECTIONS, out, play, with_campaign
from tests.web.server import Served, marenz, serving

pytestmark = pytest.mark.slow


@pytest.fixture(scope="module")
def played(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Served]:
    folder = with_campaign(marenz(tmp_path_factory.mktemp("after")))
    play(folder, *map(out, SECTIONS[:2]))
    with serving(folder, clock=lambda: AT) as served:
        yield served


@pytest.fixture
def sheet(browser: Browser, played: Served) -> Iterator[Page]:
    context = browser.new_context(viewport={"width": 390, "height": 800}, reduced_motion="reduce")
    page = context.new_page()
    wrong: list[str] = []
    page.on("console", lambda said: wrong.append(said.text) if said.type == "error" else None)
    page.goto(played("after"))
    yield page
    context.close()
    assert wrong == []


def lines(folder: Path) -> int:
    (record,) = games_of(folder, today=DAY).records
    return len(record.lines)


def test_dice_that_are_sent_twice_by_a_quick_thumb_are_written_once(
    sheet: Page, played: Served
) -> None:
    before = lines(played.folder)
    sheet.get_by_label("1 Platoon, 1 Section 1d6").fill("6")
    sheet.get_by_label("Seen by").fill("Bert")
    sheet.get_by_role("button", name="Write these dice down").dblclick()
    row = sheet.locator(".record li", has_text="1 Platoon, 1 Section: 6 on 1d6")
    expect(row).to_have_count(1)
    expect(sheet.get_by_role("definition").nth(1)).to_have_text("1 stand")
    sheet.reload()
    assert lines(played.folder) == before + 3
    row.locator("summary").click()
    row.get_by_label("Why").fill("another die")
    row.get_by_role("button", name="Strike out").click()
    expect(sheet.get_by_text("Struck out: another die")).to_be_visible()
    expect(sheet.get_by_label("1 Platoon, 1 Section 1d6")).to_have_value("")
