"""Limits to losses on the table page."""

from collections.abc import Iterator

import pytest
from playwright.sync_api import Browser, BrowserContext, expect

from tests.core.play.test_loss_count import LOSS_CASES
from tests.web.browser.table_phone import Phone
from tests.web.server import Served, marenz, serving

LIMITS = "loss limits: [{of: platoon, at: {1: shaken, all: gone}}]\n"


@pytest.fixture(scope="module")
def table(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Served]:
    folder = marenz(tmp_path_factory.mktemp("limits"))
    (folder / "limits.yaml").write_text(LIMITS, encoding="utf-8")
    with serving(folder) as server:
        yield server


@pytest.fixture
def context(browser: Browser) -> Iterator[BrowserContext]:
    with browser.new_context(viewport={"width": 320, "height": 640}) as opened:
        yield opened


def test_the_script_says_of_losses_what_the_computer_says(
    context: BrowserContext, table: Served
) -> None:
    page = context.new_page()
    page.goto(f"{table.url}/static/icon.svg")
    found = page.evaluate(
        """async (cases) => {
          const {lossCount, lossWords} = await import("/static/table/limits.js");
          return cases.map(({limit, told, asked = []}) => {
            const values = new Map(told.map(([aspect, name, all]) =>
              [JSON.stringify([aspect, name]), all]));
            const state = {
              asked: asked.map(([entry, taken]) => ({entry, taken})),
              standing: (aspect, name) =>
                ({values: values.get(JSON.stringify([aspect, name])) ?? [""]}),
            };
            return lossWords(limit, lossCount(limit, state));
          });
        }""",
        LOSS_CASES,
    )
    assert found == [case["words"] for case in LOSS_CASES]
    of_game = page.evaluate(
        """async () => {
          const {limitsOf, isOtherForce} = await import("/static/table/limits.js");
          const force = {limits: ["usual"], "limits of games": {raid: ["of the raid"]}};
          const games = [null, {game: "raid"}, {game: "attack", numbers: {company: 2}},
            {game: "attack", date: "1943"}];
          return games.map((opened) => [limitsOf(force, {opened})[0], isOtherForce({opened})]);
        }"""
    )
    assert of_game == [
        ["usual", False],
        ["of the raid", False],
        ["usual", True],
        ["usual", True],
    ]


def test_losses_stand_beside_their_limits_and_undo_takes_them_back(
    context: BrowserContext, table: Served
) -> None:
    phone = Phone(context, table)
    phone.open()
    phone.begin()
    phone.away()
    unit = phone.page.locator(".unit", has=phone.page.locator(".limit")).first
    limit = unit.locator(".limit")
    expect(limit).to_have_text("0 of 2 out, at 1 shaken")
    unit.locator(".block").first.click()
    expect(limit).to_have_text("1 of 2 out: shaken, at 2 gone")
    expect(limit).to_have_class("limit held")
    phone.undo()
    expect(limit).to_have_text("0 of 2 out, at 1 shaken")
    wide = phone.page.evaluate("document.documentElement.scrollWidth")
    assert wide <= 320
