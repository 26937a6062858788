"""What of a page keeps somebody out, by axe: names, roles, contrast, order of headings."""

from typing import Literal

from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Page

SCHEMES: tuple[Literal["light", "dark"], ...] = ("light", "dark")
"""A page is looked at in each."""

# What passes isn't asked for: to list it takes as long as to look.
_BROKEN_ALONE = {"resultTypes": ["violations"]}


def shut_out(page: Page) -> list[tuple[str, list[str]]]:
    """Each rule of axe that is broken, with the elements that break it."""
    found = Axe().run(page, options=_BROKEN_ALONE).response["violations"]
    return [(each["id"], [node["html"] for node in each["nodes"]]) for each in found]
