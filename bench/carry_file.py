"""The carry file: first paint as a file on a slow processor, and a tab that is killed often.

`python -m bench.carry_file` takes some ten minutes; `--kills 20` is a quick look.
"""

import argparse
import random
import sys
import tempfile
from pathlib import Path
from statistics import median

from playwright.sync_api import Browser, sync_playwright

from bench.table_page import OPENINGS, PAINTED, SLOWER
from tests.journeys.game.test_table_entries import GAME
from tests.web.browser.carried_phone import CarriedPhone, Evening, brought, evening_in, told
from tests.web.browser.conftest import ARGUMENTS, chromium
from tests.web.browser.table_phone import fits


def first_paint(browser: Browser, evening: Evening) -> float:
    """Milliseconds from the start of the page until the board stands."""
    with browser.new_context(viewport={"width": 390, "height": 844}) as context:
        phone = CarriedPhone(context, evening)
        phone.open()
        phone.choose(GAME)
        found = []
        for _ in range(OPENINGS):
            phone.page.close()
            phone.page = context.new_page()
            session = context.new_cdp_session(phone.page)
            session.send("Emulation.setCPUThrottlingRate", {"rate": SLOWER})
            phone.page.goto(phone.address)
            found.append(float(phone.page.evaluate(PAINTED)))
        return median(found)


def killed(browser: Browser, evening: Evening, *, kills: int) -> tuple[int, int, int]:
    """Taps, those told, and codes; AssertionError where one is lost, doubled or out of order."""
    with browser.new_context(viewport={"width": 390, "height": 844}) as context:
        phone = CarriedPhone(context, evening)
        phone.open()
        phone.choose(GAME)
        tapped = phone.scripted(random.Random(20), kills=kills)  # noqa: S311 - the same each time
        phone.give_back()
        codes, file = phone.codes(), phone.saved()
    by_code = brought(evening, *(each.encode() for each in codes))
    by_file = brought(evening, file)
    assert by_code.is_whole
    assert (by_file.is_whole, by_file.taken) == (True, 0)
    assert fits(tapped, told(evening)), (tapped, told(evening))
    return len(tapped), len(told(evening)), len(codes)


def main() -> None:
    """Measures, and says what was found."""
    reader = argparse.ArgumentParser(description=__doc__)
    reader.add_argument("--kills", type=int, default=200)
    kills: int = reader.parse_args().kills
    with tempfile.TemporaryDirectory() as place, sync_playwright() as playwright:
        evening = evening_in(Path(place))
        browser = playwright.chromium.launch(executable_path=chromium(), args=list(ARGUMENTS))
        _say(f"weight: {evening.file.stat().st_size / 1000:.0f} kB")
        paint = first_paint(browser, evening)
        _say(f"first paint, {SLOWER} times slower: {paint:.0f} ms")
        taps, there, codes = killed(browser, evening, kills=kills)
        _say(f"{kills} kills: {taps} taps, {there} told; none acknowledged lost, none twice")
        _say(f"given back as {codes} codes, then as a file that held nothing new")
        browser.close()


def _say(words: str) -> None:
    sys.stdout.write(f"{words}\n")
    sys.stdout.flush()


if __name__ == "__main__":
    main()
