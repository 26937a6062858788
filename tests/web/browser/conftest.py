"""A browser for the tests that look at the page as a person does."""

import shutil
from collections.abc import Iterator

import pytest
from playwright.sync_api import Browser, sync_playwright

NAMES = ("chromium", "chromium-browser", "google-chrome")
ARGUMENTS = (
    "--no-sandbox",
    "--disable-gpu",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    "--no-first-run",
)


@pytest.fixture(scope="module")
def browser() -> Iterator[Browser]:
    """A Chromium of this module alone.

    Not of the whole session: while Playwright runs, no other test of its process could start an
    event loop.
    """
    found = next(filter(None, map(shutil.which, NAMES)), None)
    assert found is not None, "no Chromium on the path: run tools/chromium"
    with sync_playwright() as playwright:
        started = playwright.chromium.launch(executable_path=found, args=list(ARGUMENTS))
        yield started
        started.close()
