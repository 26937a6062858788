"""The table page in a browser: no signal, tabs that are killed, two phones that disagree."""

import datetime
import random
from collections.abc import Iterator

import pytest
from playwright.sync_api import Browser, BrowserContext, expect

from paradestate.core.game import Purchase
from paradestate.core.journal_entry import EntryKind, JournalEntry
from paradestate.core.play.brought import brought_stands
from paradestate.core.play.event import Ended, Noted, Told
from paradestate.core.play.game_record import game_records
from paradestate.journeys.game.table import table_force
from paradestate.journeys.game.table_entries import lacking
from tests.core.play.test_board_cases import CASES
from tests.forces import marenz as forces_marenz
from tests.web.browser.shut_out import SCHEMES, shut_out
from tests.web.browser.table_phone import Phone, fits
from tests.web.server import Served, marenz, serving

KILLS = 10
TODAY = datetime.date(2026, 11, 27)


@pytest.fixture(scope="module")
def table(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Served]:
    with serving(marenz(tmp_path_factory.mktemp("table"))) as server:
        yield server


@pytest.fixture
def context(browser: Browser) -> Iterator[BrowserContext]:
    with browser.new_context(viewport={"width": 320, "height": 640}) as opened:
        yield opened


def written(served: Served, game: str) -> tuple[JournalEntry, ...]:
    today = datetime.datetime.now(tz=datetime.UTC).date()
    return lacking(served.folder, today=today, game=game, after="").entries


def _event(entry: JournalEntry) -> object:
    return None if entry.played is None else entry.played.event


def test_the_script_finds_the_same_board_as_the_computer(
    context: BrowserContext, table: Served
) -> None:
    page = context.new_page()
    page.goto(f"{table.url}/static/icon.svg")
    found = page.evaluate(
        """async (cases) => {
          const {board, tellings} = await import("/static/table/board.js");
          return cases.map(({entries, strikes = []}) => {
            const told = entries.map(([id, aspect, name, value, over]) => ({id, says: {
              kind: "played", played: {told: {subject: [aspect, name], value, over}}}}));
            const struck = strikes.map(([id, one]) => ({id, says: {
              kind: "struck-out", "struck out": one}}));
            return [[...told, ...struck], [...struck, ...told.reverse()]].map((every) =>
              [...board(tellings(every))].map(([key, standing]) =>
                [...JSON.parse(key), standing.values, standing.over]));
          });
        }""",
        CASES,
    )
    assert found == [[case["board"], case["board"]] for case in CASES]


def test_the_log_of_the_phone_says_what_was_rolled_and_taken_elsewhere(
    context: BrowserContext, table: Served
) -> None:
    roll = {"purpose": "light tanks", "number": 2, "dice": "1d12", "faces": [7], "total": 7}
    subject = ["to repair", "No 1 Company / 1 Platoon"]
    said = {
        "light tanks: rolled 18": {"rolled": {"purpose": "light tanks", "total": 18}},
        "2 x light tanks: rolled 7": {"rolled": roll},
        "allowance: rolled 6, 2, 26 in all": {
            "rolled": {"purpose": "allowance", "faces": [6, 2], "total": 26}
        },
        "guns: 1 taken": {"asked": {"entry": "guns", "number": 2, "allowed": 1, "taken": 1}},
        "guns: none taken": {"asked": {"entry": "guns", "number": 2, "allowed": 0}},
        "guns: 3 taken": {"asked": {"entry": "guns", "number": 3, "taken": 3}},
        "2 x guns: to be asked for": {"asked": {"entry": "guns", "number": 2}},
        "guns: the machine is bound": {"committed": {"purpose": "guns"}},
        "the opponent’s word: heron": {"spoken": {"word": "heron"}},
        "the machine’s secret told": {"revealed": {"secret": "00"}},
        "No 1 Company, 1 Platoon to repair: base bent": {
            "told": {"subject": subject, "value": "base bent"}
        },
        "No 1 Company, 1 Platoon needs no repair": {"told": {"subject": subject, "value": ""}},
    }
    page = context.new_page()
    page.goto(f"{table.url}/static/icon.svg")
    found = page.evaluate(
        """async (every) => {
          const {wordsOf} = await import("/static/table/tapping.js");
          return every.map((played) => wordsOf({says: {kind: "played", played}}));
        }""",
        list(said.values()),
    )
    assert found == list(said)


def test_the_script_calls_the_stands_of_supporting_troops_as_the_computer_does(
    context: BrowserContext, table: Served
) -> None:
    plan = (
        Purchase(entry="medium mortars", number=2),
        Purchase(entry="anti-tank guns", number=1),
        Purchase(entry="medium mortars", number=2),
    )
    asked = [
        {"kind": "played", "played": {"asked": {"entry": each.entry, "taken": each.number}}}
        for each in plan
    ]
    page = context.new_page()
    page.goto(f"{table.url}/static/icon.svg")
    found = page.evaluate(
        """async ([force, asked]) => {
          const {gameState, takenCompany} = await import("/static/table/tally.js");
          const state = gameState(asked.map((says, at) => ({id: String(at), says})));
          return takenCompany(force, state).flatMap(({units}) =>
            units.flatMap(({stands}) => stands.map(({name}) => name)));
        }""",
        [table_force(table.folder, today=TODAY).force, asked],
    )
    brought = brought_stands(plan, entries=forces_marenz().supporting_troops)
    assert sorted(found) == sorted(each.name for each in brought)


def test_with_no_signal_it_opens_takes_taps_and_brings_them_home_once(
    context: BrowserContext, table: Served
) -> None:
    phone = Phone(context, table)
    phone.open()
    game = phone.begin()
    phone.away()
    phone.reopen()
    first, second = phone.blocks()[:2]
    phone.toggle(first)
    phone.toggle(second)
    phone.undo()
    expect(phone.block(second)).to_have_attribute("aria-pressed", "false")
    expect(phone.page.locator("#kept")).to_contain_text("3 entries kept here")
    phone.home()
    every = written(table, game)
    told = [each for each in every if each.played and isinstance(each.played.event, Told)]
    assert [each.played and each.played.counter for each in told] == [2, 3]
    (strike,) = [each for each in every if each.kind is EntryKind.STRUCK_OUT]
    assert (strike.struck_out, strike.note) == (told[1].id, "tapped by mistake")
    phone.page.locator("[data-key='view log']").click()
    expect(phone.page.locator("s")).to_have_count(1)
    phone.note("they looked alike")
    phone.page.get_by_role("button", name="The game is over").click()
    expect(phone.page.get_by_text("This game is over.")).to_be_visible()
    phone.undo()
    expect(phone.page.get_by_role("button", name="The game is over")).to_be_visible()
    phone.home()
    *_, note, end, _ = map(_event, written(table, game))
    assert (note, end) == (Noted(text="they looked alike"), Ended())
    (record,) = [each for each in game_records(written(table, game), force="") if each.id == game]
    assert record.ended is None


def test_two_phones_that_disagree_are_shown_side_by_side(browser: Browser, table: Served) -> None:
    """Mistake 83."""
    with browser.new_context() as one, browser.new_context() as other:
        mine, his = Phone(one, table), Phone(other, table)
        mine.open()
        game = mine.begin()
        mine.missions(3)
        mine.home()
        his.open()
        his.choose(game)
        his.home()
        mine.away()
        his.away()
        mine.fire(2)
        his.fire(1)
        mine.home()
        his.home()
        slip = his.page.locator(".dispute")
        expect(slip).to_contain_text("Missions used")
        expect(slip).to_contain_text("your phone says 1")
        expect(slip).to_contain_text("says 2")
        expect(slip).to_contain_text("Which is right?")
        slip.get_by_role("button", name="2", exact=True).click()
        expect(slip).to_have_count(0)
        his.home()
        mine.home()
        expect(mine.page.locator(".dispute")).to_have_count(0)
    every = written(table, game)
    (record,) = game_records(every, force=every[0].force)
    (standing,) = (
        each for subject, each in record.board.items() if subject.aspect == "missions used"
    )
    assert standing.values == ("2",)


def test_no_acknowledged_tap_is_lost_or_doubled_when_the_tab_is_killed_at_random(
    context: BrowserContext, table: Served
) -> None:
    phone = Phone(context, table)
    phone.open()
    game = phone.begin()
    chance = random.Random(83)  # noqa: S311 - the same game each time
    acknowledged = phone.scripted(chance, kills=KILLS)
    phone.home()
    told = [
        (entry.played.event.subject.name, entry.played.event.value)
        for entry in sorted(
            written(table, game), key=lambda each: each.played.counter if each.played else 0
        )
        if entry.played and isinstance(entry.played.event, Told)
    ]
    assert any(not each.is_acknowledged for each in acknowledged)
    assert fits(acknowledged, told), (acknowledged, told)


def test_a_clock_that_is_wrong_changes_nothing_and_is_told(browser: Browser, table: Served) -> None:
    with browser.new_context() as context:
        context.add_init_script(
            "{const real=Date;Date=class extends real{constructor(...a){"
            "super(...(a.length?a:[real.now()-7200000]))}};}"
        )
        phone = Phone(context, table)
        phone.open()
        game = phone.begin()
        phone.toggle(phone.blocks()[0])
        phone.home()
        expect(phone.page.locator(".notes")).to_contain_text("120 minutes behind")
        assert len(written(table, game)) == 2


def test_what_is_broken_is_told_with_its_stand_and_taken_back_by_another_tap(
    context: BrowserContext, table: Served
) -> None:
    phone = Phone(context, table)
    phone.open()
    phone.begin()
    unit = "No 1 Company / 1 Platoon"
    stand = phone.page.locator(f"[data-key='to repair {unit} / 1 Section']")
    phone.page.locator(f"[data-key='head {unit}']").click()
    phone.page.locator(f"[data-key='broken {unit}']").fill("bayonet snapped")
    stand.click()
    expect(stand).to_have_text("1 Section: bayonet snapped")
    expect(phone.page.locator(f"[data-key='broken {unit}']")).to_have_value("")
    stand.click()
    expect(stand).to_have_text("1 Section")
    stand.click()
    expect(stand).to_have_text("1 Section: broken")


def test_two_letters_or_the_tapped_mark_say_who_it_is(
    context: BrowserContext, table: Served
) -> None:
    phone = Phone(context, table)
    phone.open()
    phone.begin()
    phone.away()
    page = phone.page
    page.locator("[data-key='view who']").click()
    page.get_by_role("button", name="mid yellow").click()
    page.get_by_role("button", name="3 bars").click()
    expect(page.locator(".who b")).to_have_text(["No 2 Company", "3 Platoon"])
    page.get_by_role("button", name="mid yellow").click()
    page.get_by_role("button", name="3 bars").click()
    for typed in ("23", "y3"):
        page.get_by_role("searchbox").fill(typed)
        expect(page.locator(".who b")).to_have_text(["No 2 Company", "3 Platoon"])


def test_everything_to_touch_is_large_and_nothing_scrolls_sideways(
    context: BrowserContext, table: Served
) -> None:
    phone = Phone(context, table)
    phone.open()
    phone.begin()
    for view in ("board", "fire", "who", "log"):
        phone.page.locator(f"[data-key='view {view}']").click()
        if view == "board":
            phone.page.locator(".head").nth(1).click()
        small = phone.page.evaluate(
            "[...document.querySelectorAll('button,input')].map((e) => e.getBoundingClientRect())"
            ".filter((r) => r.width < 44 || r.height < 44).length"
        )
        wide = phone.page.evaluate("document.documentElement.scrollWidth")
        assert (small, wide <= 320) == (0, True), view
        for scheme in SCHEMES:
            phone.page.emulate_media(color_scheme=scheme)
            assert shut_out(phone.page) == [], (view, scheme)
