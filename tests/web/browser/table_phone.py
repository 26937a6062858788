"""A phone with the table page, in a context of a browser: what it is tapped, and how it dies."""

import random
from collections.abc import Sequence
from contextlib import suppress
from dataclasses import dataclass, replace
from typing import Any

from playwright.sync_api import BrowserContext, Error, Locator, Page, expect

from tests.web.server import Served


@dataclass(frozen=True, slots=True, kw_only=True)
class Tapped:
    """What was tapped, in order, and whether the page showed it as taken."""

    name: str
    value: str
    is_acknowledged: bool


class Phone:
    """One phone; its storage is that of its context."""

    def __init__(self, context: BrowserContext, served: Served) -> None:
        self.context = context
        self.address = served("table")
        self.page: Page = context.new_page()

    def open(self) -> None:
        """Opens the page where it reaches its computer, until all is kept."""
        self.page.goto(self.address)
        self.page.evaluate("navigator.serviceWorker.ready.then(() => true)")
        expect(self.page.get_by_text("Begin one")).to_be_visible()

    def begin(self) -> str:
        """Begins a game; its UUID."""
        self.page.locator("[data-key^='begin']").first.click()
        expect(self.page.locator(".block").first).to_be_visible()
        expect(self.page.locator("#kept")).to_contain_text("All is with the computer")
        return self.game()

    def choose(self, game: str) -> None:
        """Takes part in a game that another phone began."""
        self.page.locator(f"[data-key='open {game}']").click()
        expect(self.page.locator(".block").first).to_be_visible()

    def away(self) -> None:
        """No signal from now on."""
        self.context.set_offline(True)

    def home(self) -> None:
        """The signal is back: waits until nothing is left to be brought."""
        self.context.set_offline(False)
        self.page.evaluate("dispatchEvent(new Event('online'))")
        expect(self.page.locator("#kept")).to_contain_text("All is with the computer")
        self.page.evaluate("dispatchEvent(new Event('online'))")
        self.page.wait_for_timeout(600)
        expect(self.page.locator("#kept")).to_contain_text("All is with the computer")

    def reopen(self) -> None:
        """The tab is closed and another one opened."""
        self.page.close()
        self.page = self.context.new_page()
        self.page.goto(self.address)
        expect(self.page.locator(".block").first).to_be_visible()

    def kill(self) -> None:
        """The tab's process dies at once, with whatever it was doing."""
        with suppress(Error):  # it says nothing any more, as it should
            self.page.goto("chrome://crash", timeout=2000)
        old, self.page = self.page, self.context.new_page()
        old.close()
        self.page.goto(self.address)
        expect(self.page.locator(".block").first).to_be_visible()

    def blocks(self) -> list[str]:
        """Keys of the stands."""
        return [
            str(each.get_attribute("data-key")) for each in self.page.locator(".block").all()[:12]
        ]

    def block(self, key: str) -> Locator:
        return self.page.locator(f'[data-key="{key}"]')

    def toggle(self, key: str) -> None:
        """Taps a stand, and waits until it shows that this was taken."""
        was = self.block(key).get_attribute("aria-pressed")
        self.block(key).click()
        expect(self.block(key)).to_have_attribute(
            "aria-pressed", "false" if was == "true" else "true"
        )

    def undo(self) -> None:
        self.page.locator("[data-key=undo]").click()

    def note(self, text: str) -> None:
        """Notes something of the game, and waits until the log shows it."""
        self.page.locator("[data-key='view log']").click()
        self.page.get_by_label("To be remembered of this game").fill(text)
        self.page.get_by_role("button", name="Keep the note").click()
        expect(self.page.locator(".log")).to_contain_text(text)

    def missions(self, number: int) -> None:
        """The first battery gets so many missions."""
        self.page.locator("[data-key='view fire']").click()
        for at in range(number):
            self.page.locator("[data-key^='more ']").first.click()
            expect(self.page.locator(".tear")).to_have_count(at + 1)

    def fire(self, mission: int) -> None:
        """Fires the missions of the first battery up to this one."""
        self.page.locator("[data-key='view fire']").click()
        tear = self.page.locator(".tear").nth(mission - 1)
        tear.click()
        expect(tear).to_have_attribute("aria-pressed", "true")

    def game(self) -> str:
        return str(self.page.evaluate(KEPT, ["about", "game"]))

    def kept(self, game: str) -> list[dict[str, Any]]:
        """What the phone has of a game."""
        every: list[dict[str, Any]] = self.page.evaluate(KEPT, ["entries", ""])
        return [each for each in every if each["says"].get("played", {}).get("game") == game]

    def scripted(self, chance: random.Random, *, kills: int) -> list[Tapped]:
        """A game of taps in which the tab is killed so often, some of the time while it writes."""
        tapped: list[Tapped] = []
        keys = self.blocks()
        for _ in range(kills):
            if chance.random() < 0.5:
                self.away()
            else:
                self.context.set_offline(False)
            for _ in range(chance.randint(0, 2)):
                key = chance.choice(keys)
                tapped.append(self._shown(key, self._tap(key)))
            key = chance.choice(keys)
            tapped.append(self._tap(key))
            self.page.wait_for_timeout(chance.choice((0, 0, 5, 20, 60)))
            self.kill()
        return tapped

    def _tap(self, key: str) -> Tapped:
        """Taps a stand; what it showed and the tap are one, so that nothing is drawn between."""
        was_out = self.page.evaluate(TAPPED, key)
        value = "" if was_out else "out"
        return Tapped(name=key.removeprefix("out "), value=value, is_acknowledged=False)

    def _shown(self, key: str, tap: Tapped) -> Tapped:
        """Waits until a tap is shown as taken."""
        shown = "true" if tap.value else "false"
        expect(self.block(key)).to_have_attribute("aria-pressed", shown)
        return replace(tap, is_acknowledged=True)


def fits(tapped: Sequence[Tapped], told: Sequence[tuple[str, str]]) -> bool:
    """Whether what was told is what was tapped in that order, but for taps nobody saw taken.

    Places of what is told so far, after each tap: an acknowledged one has to be the next told.
    """
    places = {0}
    for tap in tapped:
        taken = {at + 1 for at in places if told[at : at + 1] == [(tap.name, tap.value)]}
        places = taken if tap.is_acknowledged else places | taken
    return len(told) in places


TAPPED = """(key) => {
  const block = document.querySelector(`[data-key="${key}"]`);
  const wasOut = block.getAttribute("aria-pressed") === "true";
  block.click();
  return wasOut;
}"""

KEPT = """([store, key]) => new Promise((resolve, reject) => {
  const name = `table ${document.body.dataset.force}`;
  const asked = indexedDB.open(name);
  asked.onerror = () => reject(asked.error);
  asked.onsuccess = () => {
    const kept = asked.result.transaction(store).objectStore(store);
    const read = key ? kept.get(key) : kept.getAll();
    read.onsuccess = () => { asked.result.close(); resolve(read.result); };
  };
})"""
