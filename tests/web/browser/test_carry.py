"""A carry file, opened as a file with the network off: it keeps, and gives back, every tap once."""

import random
import shutil
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser, Page, expect

from paradestate.core.play.game_record import GameRecord
from tests.journeys.game.test_table_entries import GAME
from tests.web.browser.carried_phone import (
    CarriedPhone,
    Evening,
    brought,
    evening_in,
    record_of,
    told,
)
from tests.web.browser.shut_out import shut_out
from tests.web.browser.table_phone import fits

KILLS = 2


@pytest.fixture(scope="module")
def made(tmp_path_factory: pytest.TempPathFactory) -> Evening:
    return evening_in(tmp_path_factory.mktemp("carry"))


@pytest.fixture
def evening(made: Evening, tmp_path: Path) -> Evening:
    """The same file, and a folder of this test alone."""
    folder = tmp_path / made.folder.name
    shutil.copytree(made.folder, folder)
    return Evening(folder=folder, file=made.file)


@pytest.fixture
def phone(browser: Browser, evening: Evening) -> Iterator[CarriedPhone]:
    with browser.new_context(viewport={"width": 320, "height": 640}) as context:
        made = CarriedPhone(context, evening)
        yield made
        assert made.wrong == []


def out_on(page: Page) -> set[str]:
    """Names of the stands that the page shows as out."""
    keys = page.locator(".block[aria-pressed=true]")
    return {str(each.get_attribute("data-key")).removeprefix("out ") for each in keys.all()}


def out_in(record: GameRecord) -> set[str]:
    """Names of the stands that the journal says are out, of those that the page shows."""
    return {
        subject.name
        for subject, standing in record.board.items()
        if subject.aspect == "out" and "out" in standing.values and " / " in subject.name
    }


def test_what_is_tapped_stays_is_given_back_both_ways_and_arrives_once(
    phone: CarriedPhone, evening: Evening
) -> None:
    phone.open()
    expect(phone.page.locator("#kept")).to_contain_text("Opened here for the first time")
    phone.choose(GAME)
    keys = phone.blocks()[:8]
    for key in keys:
        phone.toggle(key)
    phone.undo()
    expect(phone.block(keys[-1])).to_have_attribute("aria-pressed", "false")
    before = out_on(phone.page)
    phone.reopen()
    expect(phone.page.locator("#kept")).to_have_text("9 entries kept on this phone.")
    assert out_on(phone.page) == before == {key.removeprefix("out ") for key in keys[:-1]}
    phone.give_back()
    codes, file = phone.codes(), phone.saved()
    assert len(codes) > 1
    first = brought(evening, "\n".join(reversed(codes[1:])).encode())
    assert first.findings[0].code == "given-back-missing"
    second = brought(evening, codes[0].encode(), *(each.encode() for each in codes))
    assert (second.is_whole, (first.taken or 0) + (second.taken or 0)) == (True, 9)
    third = brought(evening, file)
    assert (third.is_whole, third.taken, third.there) == (True, 0, 9)
    assert out_in(record_of(evening)) == before
    expect(phone.page.locator("#kept")).to_contain_text("none of them since they were given back")


def test_no_acknowledged_tap_is_lost_or_doubled_when_it_is_killed_at_random(
    phone: CarriedPhone, evening: Evening
) -> None:
    phone.open()
    phone.choose(GAME)
    tapped = phone.scripted(random.Random(83), kills=KILLS)  # noqa: S311 - the same each time
    shown = out_on(phone.page)
    phone.give_back()
    assert brought(evening, phone.saved()).is_whole
    assert fits(tapped, told(evening)), (tapped, told(evening))
    assert out_in(record_of(evening)) == shown


def test_two_phones_with_one_file_give_back_into_one_game_and_take_in_from_each_other(
    browser: Browser, evening: Evening
) -> None:
    with browser.new_context() as one, browser.new_context() as other:
        mine, his = CarriedPhone(one, evening), CarriedPhone(other, evening)
        for phone in (mine, his):
            phone.open()
            phone.choose(GAME)
        first, second = mine.blocks()[:2]
        mine.toggle(first)
        his.toggle(second)
        his.note("too dark")
        his.give_back()
        file = his.saved()
        mine.give_back()
        junk = {"name": "junk.txt", "mimeType": "text/plain", "buffer": b'{"id":"x","says":{}}\n'}
        back: Any = [{"name": "his.txt", "mimeType": "text/plain", "buffer": file}, junk]
        mine.page.locator("#take").set_input_files(back)
        mine.page.locator("[data-key=take-in]").click()
        status = mine.page.locator("p[role=status]:not(#kept)")
        expect(status).to_contain_text("Taken in: 2 new entries. junk.txt, line 1 isn't an entry")
        mine.page.locator("[data-key=back]").click()
        assert out_on(mine.page) == {first.removeprefix("out "), second.removeprefix("out ")}
        mine.give_back()
        done = brought(evening, mine.saved(), file)
        assert (done.is_whole, done.taken, done.there) == (True, 3, 0)


def test_where_the_browser_keeps_nothing_it_says_so_and_still_gives_back(
    phone: CarriedPhone, evening: Evening
) -> None:
    phone.context.add_init_script(
        "Object.defineProperty(window, 'indexedDB', {get() { throw new Error('refused'); }});"
        "delete window.CompressionStream;"
        "navigator.canShare = ({files}) => files.length === 1;"
        "navigator.share = async ({files}) => { window.shared = await files[0].text(); };"
    )
    phone.open()
    expect(phone.page.locator("#kept")).to_contain_text("This browser keeps nothing")
    phone.choose(GAME)
    phone.toggle(phone.blocks()[0])
    expect(phone.page.locator("#kept.red")).to_contain_text("1 entry would be lost")
    phone.give_back()
    (code,) = phone.codes()
    file = phone.saved()
    done = brought(evening, code.encode(), file)
    assert (done.is_whole, done.taken) == (True, 1)
    phone.page.locator("[data-key=send]").click()
    expect(phone.page.get_by_text("Sent.")).to_be_visible()
    assert phone.page.evaluate("shared").encode() == file


def test_it_is_large_to_touch_and_reads_well(phone: CarriedPhone) -> None:
    phone.open()
    phone.choose(GAME)
    phone.toggle(phone.blocks()[0])
    phone.give_back()
    for view in ("ways", "codes"):
        if view == "codes":
            phone.page.locator("[data-key=codes]").click()
            expect(phone.page.locator("svg.qr")).to_be_visible()
        small = phone.page.evaluate(
            "[...document.querySelectorAll('button,input,summary')]"
            ".map((e) => e.getBoundingClientRect())"
            ".filter((r) => r.width < 44 || r.height < 44).length"
        )
        wide = phone.page.evaluate("document.documentElement.scrollWidth")
        assert (small, wide <= 320) == (0, True), view
        assert shut_out(phone.page) == [], view
