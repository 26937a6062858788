"""What to get next, as a browser without JavaScript sees it."""

import re
import time
from html import unescape
from pathlib import Path
from typing import Any

import pytest

from paradestate.chance.force import allowed, diagram
from paradestate.journeys.next import NextAnswer, what_next
from paradestate.journeys.order import OrderJourney, Search
from paradestate.web.page import next as page
from tests.chance.next.examples import OSK
from tests.cli.test_next import QUAY
from tests.forces import HEAD
from tests.web.purchasing import NOTHING_FOUND, Caller, Seen

FILES = {"force": HEAD, "points": OSK, "prices": QUAY}


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """The example of section 3.13 of the computations, with what can be bought."""
    made = tmp_path / "osk"
    made.mkdir()
    for name, text in FILES.items():
        (made / f"{name}.yaml").write_text(text, encoding="utf-8")
    return made


@pytest.fixture
def caller(folder: Path) -> Caller:
    return Caller(folder)


def changed(folder: Path, file: str, *, old: str, new: str) -> None:
    path = folder / f"{file}.yaml"
    text = path.read_text(encoding="utf-8")
    assert old in text
    path.write_text(text.replace(old, new, 1), encoding="utf-8")


def link(seen: Seen, words: str) -> str:
    """The address of the first link with these words, without its mark."""
    for address, inner in re.findall(
        r'<a [^>]*?href="([^"]*)"[^>]*>(.*?)</a>', seen.html, re.DOTALL
    ):
        if " ".join(re.sub(r"<[^>]+>", "", inner).split()).startswith(words):
            return unescape(address).partition("#")[0]
    raise AssertionError(words)


def test_it_opens_with_the_sentence_that_justifies_the_purchase(caller: Caller) -> None:
    """Check values 3.13: the first gun adds 4 for £8, the second 0.33; foresight brings no more."""
    seen = caller.settled("next", money="20")
    assert seen.status == 200
    for said in (
        "One Quay/gun adds 4 for £8.00; a second Quay/gun adds 0.33 for £8.00 more.",
        "Best for £20.00: 2 x Quay/gun for £16.00, 10.33 then.",
        "To spend £20.00 Now 6 Then 10.33 Sureness exact",
        "Evening: the best force that you can field is worth 6 to you now, on average.",
        "Who knew all dice beforehand would come to 10.33, no more.",
        "Exact: nothing else that can be had for this comes to more, by your own worths.",
        "Quay/mule (3 officers) adds nothing, neither by itself nor in the best that holds one.",
    ):
        assert said in seen.text


def test_the_bars_stand_beside_a_table_of_the_same(caller: Caller) -> None:
    seen = caller.settled("next", money="20")
    assert 'aria-label="What each adds: 1 x Quay/gun adds 4 for £8.00; 1 x Quay/tank' in seen.html
    assert "Quay/gun 1 field gun £8.00 4 10 0" in seen.text
    assert "Quay/tank 1 tank £12.00 1.83 7.83 0.33" in seen.text


def test_what_the_dice_may_bring_is_told_with_both_forces(caller: Caller) -> None:
    """Check values 3.13: the table of outcomes, three numbers of points by two of the roll."""
    seen = caller.settled("next", money="20")
    assert "4 points left 33 in 100 6: twice 1 x machine guns 7: 1 x guns" in seen.text
    assert "8 points left 33 in 100 6: twice 1 x machine guns 14: twice 1 x guns" in seen.text


def test_a_wish_is_one_touch_away_and_has_its_price(caller: Caller) -> None:
    seen = caller.settled("next", money="20")
    wished = caller.settled(link(seen, "have one of Quay/tank"))
    assert (
        "The best with what is wished for is 1 x Quay/gun and 1 x Quay/tank at 10: "
        "the price of the fun is 0.33." in wished.text
    )
    back = caller.settled(link(wished, "leave out Quay/tank"))
    assert "Had anyway the price of the fun" not in back.text
    assert link(wished, "Wish for nothing") == "/forces/osk/next?money=20"


def test_a_wish_that_cannot_be_had_is_said_to_be_so(caller: Caller) -> None:
    seen = caller.settled("next", money="8", wish="Quay/tank=1")
    assert "Nothing with 1 x Quay/tank was found that can be had for £8.00." in seen.text
    assert "Left out, it is dearer than the money: Quay/tank." in seen.text


def test_its_figures_can_be_ordered_in_the_cheapest_way(caller: Caller) -> None:
    seen = caller.settled("next", money="20")
    address = link(seen, "The cheapest order of these figures")
    assert address == "/forces/osk/purchases?want=field+gun%3D2"
    assert "Wanted: 2 field guns." in caller.settled(address).text
    assert link(seen, "cheapest order of what Quay/tank") == "/forces/osk/purchases?want=tank%3D1"


def test_hours_at_the_bench_say_what_to_finish(folder: Path, caller: Caller) -> None:
    changed(folder, "points", old="{painted: 2}", new="{painted: 2, in packet: 2}")
    seen = caller.settled("next", spend="hours", hours="1")
    assert "One machine-gun team adds 2 for 30 min" in seen.text
    assert "What to finish" in seen.text
    assert "cheapest order" not in seen.text
    nothing = caller.settled("next", spend="hours", hours="0.1")
    assert "There is nothing that could." in nothing.text
    assert "Left out, it takes longer than the hours: machine-gun team." in nothing.text


def test_the_share_of_forces_is_another_aim(caller: Caller) -> None:
    seen = caller.settled("next", money="8", aim="share")
    assert "to the share of legal forces that can be fielded, on average" in seen.text
    assert "What the dice may bring" not in seen.text


def test_nothing_is_looked_for_before_it_is_said_what_there_is_to_spend(caller: Caller) -> None:
    seen = caller.get("next")
    assert (seen.status, "data-progress" in seen.html) == (200, False)
    assert "Say what there is to spend: money on packs, or hours at the bench." in seen.text


def test_the_money_of_a_month_is_the_usual_money(folder: Path, caller: Caller) -> None:
    changed(folder, "prices", old="bench:", new="aim: {a month: 20}\nbench:")
    seen = caller.settled("next")
    assert "Best for £20.00: 2 x Quay/gun" in seen.text
    assert 'placeholder="20"' in seen.html


@pytest.mark.parametrize(
    ("fields", "said"),
    [
        ({"money": "much"}, "'much' isn't an amount of money."),
        ({"money": "8", "wish": "Quay/ship=1"}, "Quay/ship"),
        ({"money": "8", "wish": "Quay/gun=101"}, "Wish for at most 100 of one thing."),
        ({"money": "8", "game": "siege"}, "siege"),
    ],
)
def test_what_was_filled_in_wrongly_is_said(
    caller: Caller, fields: dict[str, str], said: str
) -> None:
    seen = caller.settled("next", **fields)
    assert seen.status == 422
    assert said in seen.text


def test_without_sources_it_says_what_to_add(folder: Path, caller: Caller) -> None:
    (folder / "prices.yaml").unlink()
    seen = caller.settled("next", money="8")
    assert "No source sells a pack." in seen.text
    assert "Add 'sources' with packs and their prices." in seen.text


def test_a_force_without_games_or_supporting_troops_has_nothing_to_say(
    folder: Path, caller: Caller
) -> None:
    changed(folder, "points", old="games:", new="states: [fresh]\n#")
    assert "plays no game yet" in caller.get("next").text
    text = OSK.partition("supporting troops:")[0]
    (folder / "points.yaml").write_text(text, encoding="utf-8")
    assert "no supporting troops yet" in caller.get("next").text


def test_a_folder_with_a_stop_says_so(folder: Path, caller: Caller) -> None:
    (folder / "odd.yaml").write_text("stock: {mule: {painted: 9}}\n", encoding="utf-8")
    seen = caller.settled("next", money="8")
    assert "A stop prevents the answer." in seen.text


def test_what_is_too_large_is_not_computed(caller: Caller, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(diagram, "MOST_POINTS", 7)
    assert "Not computed: there are more than 7 points." in caller.settled("next", money="8").text


def test_drawn_outcomes_have_an_interval(caller: Caller, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(allowed, "MOST_OUTCOMES", 1)
    seen = caller.settled("next", money="20")
    assert "Sureness sampled" in seen.text
    assert "right to that, 19 in 20" in seen.text
    assert "too many outcomes to tell apart" in seen.text


class TestWhileItIsLookedFor:
    """What is shown meanwhile; the search waits for somebody to stop it."""

    @pytest.fixture(autouse=True)
    def _waiting(self, monkeypatch: pytest.MonkeyPatch) -> None:
        def waiting(folder: Path, **asked: Any) -> NextAnswer:  # noqa: ANN401 - handed on
            while not asked["stop"]():
                time.sleep(0.005)
            return what_next(folder, **asked)

        monkeypatch.setattr(page, "what_next", waiting)

    def test_it_says_how_long_and_keeps_the_best_when_it_is_stopped(self, caller: Caller) -> None:
        seen = caller.get("next?money=20")
        assert "0 seconds; the search may take 20 seconds." in seen.text
        stopped = caller.post("next/stop", seen.form("next/stop"))
        assert (stopped.status, stopped.address) == (303, "/forces/osk/next?money=20")
        after = caller.settled(stopped.address)
        assert "The search was ended before everything was proved." in after.text
        assert "Sureness not proved" in after.text
        assert "nothing better exists, but the same may be had for less" in after.text
        anew = caller.post("next/again", after.form("next/again"))
        assert "Looking for what adds most" in caller.get(anew.address).text
        caller.site.searches.end()

    def test_who_asks_the_same_joins_it_and_a_file_that_changes_ends_it(
        self, folder: Path, caller: Caller
    ) -> None:
        first, second = (caller.get("next?money=20").form("next/stop")["search"] for _ in range(2))
        assert first == second
        changed(folder, "prices", old="price: 8", new="price: 9")
        assert caller.get("next?money=20").form("next/stop")["search"] != first
        caller.site.searches.end()

    def test_its_time_is_told_as_events_until_its_end(self, caller: Caller) -> None:
        seen = caller.get("next?money=20")
        id_ = seen.form("next/stop")["search"]
        search = caller.site.searches.found(id_)
        assert search is not None
        search.stop()
        assert search.wait(30)
        told = caller.get(f"next/progress?search={id_}")
        assert told.response.headers["content-type"].startswith("text/event-stream")
        assert "event: ended" in told.html


def test_a_search_that_is_not_kept_any_more_is_nowhere(caller: Caller) -> None:
    caller.get("next")
    assert caller.get("next/progress?search=none").status == 404


def test_where_too_many_searches_run_the_page_says_so(caller: Caller) -> None:
    def waiting(search: Search) -> OrderJourney:
        while not search.stop():
            time.sleep(0.005)
        return NOTHING_FOUND

    for key in "abcd":
        caller.site.searches.begun(key, waiting, seconds=60, rests_on=None)
    seen = caller.get("next?money=20")
    assert seen.status == 503
    assert "4 searches run already, and no more at once." in seen.text
    caller.site.searches.end()
