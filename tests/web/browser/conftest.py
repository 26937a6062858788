"""A browser, a page server on this machine, and a page between them that minds its errors."""

import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect, sync_playwright

from tests.web.server import Served, marenz, serving

# A machine that has much else to do shows things late, and a test must not fail for that: as long
# as Playwright waits for all else.
expect.set_options(timeout=30_000)

NAMES = ("chromium", "chromium-browser", "google-chrome")
ARGUMENTS = (
    "--no-sandbox",
    "--disable-gpu",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    "--no-first-run",
)


def chromium() -> str:
    """The path of a browser on this computer."""
    found = next(filter(None, map(shutil.which, NAMES)), None)
    assert found is not None, "no Chromium on the path: run tools/chromium"
    return found


@pytest.fixture(scope="module")
def browser() -> Iterator[Browser]:
    """A Chromium of this module alone.

    Not of the whole session: while Playwright runs, no other test of its process could start an
    event loop.
    """
    with sync_playwright() as playwright:
        started = playwright.chromium.launch(executable_path=chromium(), args=list(ARGUMENTS))
        yield started
        started.close()


@pytest.fixture
def served(tmp_path: Path) -> Iterator[Served]:
    """The example force of Marenz, served on a free port of this machine."""
    with serving(marenz(tmp_path)) as server:
        yield server


@pytest.fixture
def page(browser: Browser, served: Served) -> Iterator[Page]:
    """A page at 1280 px whose relative addresses are the server's; it fails on a console error."""
    context = browser.new_context(
        base_url=served.url, viewport={"width": 1280, "height": 900}, reduced_motion="reduce"
    )
    opened = context.new_page()
    wrong: list[str] = []
    opened.on("console", lambda said: wrong.append(said.text) if said.type == "error" else None)
    opened.on("pageerror", lambda error: wrong.append(str(error)))
    yield opened
    context.close()
    assert wrong == []
