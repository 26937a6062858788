"""A whole evening on a phone, the middle of it with no signal; and the same typed in from paper."""

from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect

from tests.cli.calling import call
from tests.journeys.played_losses import with_campaign
from tests.web.browser.table_phone import Phone
from tests.web.server import Served, marenz, serving

pytestmark = pytest.mark.slow

GAME = "whole-day attack"
WITNESS = "Bert"
PLATOON = "No 1 Company / 1 Platoon"
FIRST, SECOND = (f"{PLATOON} / {number} Section" for number in (1, 2))
OTHER = "No 1 Company / 2 Platoon / 1 Section"


@pytest.fixture
def served(tmp_path: Path) -> Iterator[Served]:
    with serving(with_campaign(marenz(tmp_path))) as server:
        yield server


def test_an_evening_on_a_phone_and_the_same_from_paper(
    browser: Browser, served: Served, tmp_path: Path
) -> None:
    with browser.new_context(viewport={"width": 390, "height": 844}) as context:
        phone = Phone(context, served)
        _terms_and_rolls(phone.page, served)
        phone.page.locator("#now").get_by_role("link", name="At the table").click()
        phone.page.get_by_role("button", name=f"{GAME}, ").click()
        expect(phone.page.locator(".block").first).to_be_visible()
        phone.page.evaluate("navigator.serviceWorker.ready.then(() => true)")
        phone.home()
        phone.away()
        _middle_with_no_signal(phone)
        phone.home()
        phone.page.locator("[data-key='view log']").click()
        phone.page.get_by_role("button", name="The game is over").click()
        expect(phone.page.get_by_text("This game is over.")).to_be_visible()
        phone.home()
        _losses(phone.page, served)
    on_paper = with_campaign(marenz(tmp_path / "paper"))
    _typed_in(on_paper)
    came = _came_of(served.folder)
    assert came == _came_of(on_paper)
    assert came["points_left"] == 15
    assert came["fates"] == {FIRST: "recovered", SECOND: "lost"}


def _terms_and_rolls(page: Page, served: Served) -> None:
    page.goto(served("evening"))
    page.get_by_label("Game").select_option(GAME)
    page.get_by_label("Against").fill("Ommerath")
    page.get_by_role("button", name="Both sides agree: begin").click()
    now = page.locator("#now-head")
    for advice, faces in (
        ("Roll the allowance", (6, 2)),
        ("Ask for 2 x light tanks", (3,)),
        ("Ask for 2 x anti-tank guns", (7,)),
    ):
        expect(now).to_contain_text(advice)
        page.get_by_label("Seen by").first.fill(WITNESS)
        for number, face in enumerate(faces, start=1):
            expect(page.locator(f"#face-{number}")).to_have_value("")
            page.locator(f"#face-{number}").fill(str(face))
        page.get_by_role("button", name="Write the roll down").click()
    expect(now).to_contain_text("Anti-tank guns: take it")
    page.locator(".takes").get_by_role("button").first.click()
    expect(page.locator(".left")).to_have_text("15 points left")


def _middle_with_no_signal(phone: Phone) -> None:
    """Three stands are told out, one of them by mistake; the tab dies on the way."""
    phone.reopen()
    phone.toggle(f"out {FIRST}")
    phone.kill()
    expect(phone.block(f"out {FIRST}")).to_have_attribute("aria-pressed", "true")
    phone.toggle(f"out {OTHER}")
    phone.undo()
    expect(phone.block(f"out {OTHER}")).to_have_attribute("aria-pressed", "false")
    phone.toggle(f"out {SECOND}")


def _losses(page: Page, served: Served) -> None:
    page.goto(served("after"))
    for section, face in (("1 Section", 4), ("2 Section", 1)):
        page.get_by_label(f"1 Platoon, {section} 1d6").fill(str(face))
    page.get_by_label("Seen by").fill(WITNESS)
    page.get_by_role("button", name="Write these dice down").click()
    expect(page.locator(".record li", has_text="1 Platoon, 2 Section: lost")).to_have_count(1)


def _typed_in(folder: Path) -> None:
    """What stands on the roll record and the ticked state board, typed in the next day."""
    for words in (
        ("play", folder, "start", "--game", GAME, "--opponent", "Ommerath"),
        ("play", folder, "roll", "allowance", 6, 2, "--witness", WITNESS),
        ("play", folder, "roll", "light tanks=2", 3, "--witness", WITNESS),
        ("play", folder, "roll", "anti-tank guns=2", 7, "--witness", WITNESS),
        ("play", folder, "take", "anti-tank guns=1"),
        ("play", folder, "mark", "out", FIRST, "out"),
        ("play", folder, "mark", "out", SECOND, "out"),
        ("play", folder, "end"),
        ("losses", folder, "rolled", FIRST, 4, "--witness", WITNESS),
        ("losses", folder, "rolled", SECOND, 1, "--witness", WITNESS),
    ):
        assert call(*words).status == 0, words


def _came_of(folder: Path) -> dict[str, object]:
    """The points, what was taken and refused, who was out, and what the next game finds."""
    state = call("play", folder, "--json").document["state"]
    after = call("losses", folder, "--json").document
    board = {(each["aspect"], each["name"]): each["values"] for each in state["board"]}
    return {
        **{word: state[word] for word in ("game", "opponent", "points_left", "bought", "refused")},
        "is over": not state["is_open"],
        "told": {told: values for told, values in board.items() if values != [""]},
        "fates": {each["stand"]: each["fate"] for each in after["casualties"]},
        **{word: after[word] for word in ("to_roll", "odds", "next_strength", "flow")},
    }
