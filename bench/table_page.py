"""The table page: first paint with no signal on a slow processor, and a tab that is killed often.

`python -m bench.table_page` takes some ten minutes; `--kills 20` is a quick look.
"""

import argparse
import datetime
import random
import sys
import tempfile
from pathlib import Path
from statistics import median

from playwright.sync_api import Browser, sync_playwright

from paradestate.core.journal_entry import JournalEntry
from paradestate.core.play.event import Told
from paradestate.journeys.game.table_entries import lacking
from tests.web.browser.conftest import ARGUMENTS, chromium
from tests.web.browser.table_phone import Phone, fits
from tests.web.server import Served, marenz, serving

SLOWER = 4
"""Times slower than this computer's processor."""
OPENINGS = 5
PAINTED = """() => new Promise((resolve) => {
  const seen = () => document.querySelector(".block")
    ? requestAnimationFrame(() => resolve(performance.now())) : requestAnimationFrame(seen);
  seen();
})"""


def first_paint(browser: Browser, served: Served) -> float:
    """Milliseconds from the start of the page until the board stands, with no signal."""
    with browser.new_context(viewport={"width": 390, "height": 844}) as context:
        phone = Phone(context, served)
        phone.open()
        phone.begin()
        phone.away()
        found = []
        for _ in range(OPENINGS):
            phone.page.close()
            phone.page = context.new_page()
            session = context.new_cdp_session(phone.page)
            session.send("Emulation.setCPUThrottlingRate", {"rate": SLOWER})
            phone.page.goto(phone.address)
            found.append(float(phone.page.evaluate(PAINTED)))
        return median(found)


def killed(browser: Browser, served: Served, *, kills: int) -> tuple[int, int]:
    """Taps, and those told; raises AssertionError where one is lost, doubled or out of order."""
    with browser.new_context(viewport={"width": 390, "height": 844}) as context:
        phone = Phone(context, served)
        phone.open()
        game = phone.begin()
        tapped = phone.scripted(random.Random(20), kills=kills)  # noqa: S311 - the same each time
        phone.home()
    told = _told(served, game)
    assert fits(tapped, told), (tapped, told)
    return len(tapped), len(told)


def _told(served: Served, game: str) -> list[tuple[str, str]]:
    today = datetime.datetime.now(tz=datetime.UTC).date()
    entries = lacking(served.folder, today=today, game=game, after="").entries
    found = [
        (each.played.event.subject.name, each.played.event.value)
        for each in sorted(entries, key=_counter)
        if each.played is not None and isinstance(each.played.event, Told)
    ]
    assert len({each.id for each in entries}) == len(entries)
    return found


def _counter(entry: JournalEntry) -> int:
    return 0 if entry.played is None else entry.played.counter


def main() -> None:
    """Measures, and says what was found."""
    reader = argparse.ArgumentParser(description=__doc__)
    reader.add_argument("--kills", type=int, default=200)
    kills: int = reader.parse_args().kills
    with (
        tempfile.TemporaryDirectory() as place,
        serving(marenz(Path(place))) as served,
        sync_playwright() as playwright,
    ):
        browser = playwright.chromium.launch(executable_path=chromium(), args=list(ARGUMENTS))
        paint = first_paint(browser, served)
        _say(f"first paint with no signal, {SLOWER} times slower: {paint:.0f} ms")
        taps, told = killed(browser, served, kills=kills)
        _say(f"{kills} kills: {taps} taps, {told} told; none acknowledged lost, none twice")
        browser.close()


def _say(words: str) -> None:
    sys.stdout.write(f"{words}\n")
    sys.stdout.flush()


if __name__ == "__main__":
    main()
