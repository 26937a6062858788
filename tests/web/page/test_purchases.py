"""The page of purchases, without JavaScript."""

import json
import re
import time
from html import unescape
from pathlib import Path
from shutil import copytree

import pytest

from bench.price_lists import dense
from paradestate.journeys.order import OrderJourney, Search
from paradestate.web.log_form import field
from tests.cli.calling import call
from tests.forces import EXAMPLES
from tests.web.purchasing import NOTHING_FOUND, Caller, Seen, folder_of

WANT = "rifleman=50, mortar crew=9, officer=4"
CHOSEN = re.compile(r'class="on"><span class="let">(\w+)<')


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    return copytree(EXAMPLES / "marenz", tmp_path / "marenz")


@pytest.fixture
def caller(folder: Path) -> Caller:
    return Caller(folder)


@pytest.fixture(scope="module")
def long_folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A force whose cheapest order takes half a minute to be proved."""
    folder = tmp_path_factory.mktemp("long") / "long"
    return folder_of(dense(12, packs=90, seed=1), folder)


def slips_on(seen: Seen) -> list[str]:
    """The purchase slips, each as one line of text."""
    pieces = seen.html.split('<section class="slip" aria-labelledby="slip-')[1:]
    bare = [re.sub(r"<[^>]+>", " ", piece.split("</section>")[0]) for piece in pieces]
    return [" ".join(piece.split()) for piece in bare]


def test_the_page_opens_with_what_is_lacking_and_the_proof(caller: Caller) -> None:
    seen = caller.settled(want=WANT)
    assert seen.status == 200
    assert "Wanted: 50 riflemen, 9 mortar crews and 4 officers." in seen.text
    assert "No order below £48.50 would do; proven." in seen.text
    assert "Wanted 63 figures Chosen £48.50 Sureness exact" in seen.text


def test_there_are_exactly_three_steps_to_choose_from(caller: Caller) -> None:
    seen = caller.settled(want=WANT)
    steps = re.findall(r"<b>(£[\d.]+)</b> (\d+) over", seen.html)
    assert steps == [("£48.50", "15"), ("£50.00", "5"), ("£51.50", "3")]
    assert CHOSEN.findall(seen.html) == ["A"]
    assert "One parcel; £1.50 more leaves 10 figures less over." in seen.text
    assert "The next best are £50.00, £51.50, £52.10." in seen.text


def test_choosing_the_second_step_prints_the_slip_of_north(caller: Caller) -> None:
    seen = caller.settled(want=WANT, chosen="B")
    assert CHOSEN.findall(seen.html) == ["B"]
    assert "Chosen £50.00" in seen.text
    (north,) = slips_on(seen)
    for line in (
        "N1 infantry box 32 riflemen and 4 officers 20.00 each 1 20.00 20.00",
        "N2 riflemen 10 riflemen 8.00 each 2 8.00 16.00",
        "N3 mortar crews 6 mortar crews 7.00 each 2 7.00 14.00",
        "Carriage, free 0.00",
        "To pay £50.00",
        "Goods £50.00, £10.00 above the line.",
        "At £39.99 of goods it would cost £44.99.",
    ):
        assert line in north


def test_the_parcel_of_a_slip_is_received_with_its_packs_filled_in(caller: Caller) -> None:
    seen = caller.settled(want=WANT, chosen="B")
    link = re.search(r'href="([^"]*holdings/receive[^"]*)"', seen.html)
    assert link is not None
    form = caller.get(unescape(link[1])).form("holdings/receive")
    filled = {name: value for name, value in form.items() if value.isdecimal()}
    assert filled == {
        field(word, pack): number
        for word in ("ordered", "came")
        for pack, number in (("N1", "1"), ("N2", "2"), ("N3", "2"))
    }


def test_the_slip_of_south_has_its_discount_and_what_a_penny_less_would_cost(
    caller: Caller,
) -> None:
    (south,) = slips_on(caller.settled(want=WANT))
    for line in (
        "Discount, 10% −5.00",
        "Carriage 3.50",
        "To pay £48.50",
        "At £49.99 of goods it would cost £53.49.",
    ):
        assert line in south


def test_an_order_of_two_parcels_has_two_slips(caller: Caller) -> None:
    seen = caller.settled(want=WANT, chosen="C")
    north, south = slips_on(seen)
    assert "To North" in north
    assert "To South" in south
    assert "Goods £38.00" not in north
    assert "Two parcels; £1.50 more leaves 2 figures less over." in seen.text


def test_a_step_that_is_none_is_said_to_be_none(caller: Caller) -> None:
    seen = caller.settled(want=WANT, chosen="Q")
    assert "No step is called “Q” any more, so A is shown." in seen.text
    assert CHOSEN.findall(seen.html) == ["A"]


@pytest.mark.parametrize(
    ("options", "said"),
    [
        ({"stand_ins": "yes"}, "Chosen £45.50"),
        ({"stand_ins": "yes"}, "2 officers stand in for riflemen."),
        ({"fewest_left_over": "yes"}, "No order leaves less over; proven."),
        ({"fewest_left_over": "yes"}, "Chosen £51.50"),
        ({"one_parcel": "yes"}, "Chosen £48.50"),
        ({"source:North": "yes"}, "Chosen £50.00"),
        ({"soonest": "yes"}, "nobody knows whether it is there soonest"),
        ({"seconds": "ten"}, "Chosen £48.50"),
    ],
)
def test_the_order_is_as_it_was_asked_for(
    caller: Caller, options: dict[str, str], said: str
) -> None:
    seen = caller.settled(want=WANT, **options)
    assert said in seen.text


def test_the_form_keeps_what_was_asked(caller: Caller) -> None:
    seen = caller.settled(want=WANT, within="2.50", stand_ins="yes", **{"source:South": "yes"})
    assert 'name="stand-ins" value="yes" checked' in seen.html
    assert 'name="source:South" value="yes" checked' in seen.html
    assert 'name="source:North" value="yes">' in seen.html
    assert 'value="2.50"' in seen.html
    assert "The usual order" in seen.text


def test_what_is_owned_counts(folder: Path, caller: Caller) -> None:
    """Of 6 officers 5 serve as such; the others stand in, and the bars say what is there."""
    stock = "stock: {officer: {painted: 9}, rifleman: {painted: 97}}\n"
    (folder / "stock.yaml").write_text(stock, encoding="utf-8")
    seen = caller.settled()
    assert "2 officers stand in for riflemen." in seen.text
    assert "want 101 · have 99 · lack 2" in seen.text
    assert "want 7 · have 7 · complete" in seen.text


def test_where_nothing_is_lacking_there_is_nothing_to_order(folder: Path, caller: Caller) -> None:
    stock = (
        "stock: {officer: {painted: 7}, rifleman: {painted: 101}, signaller: {painted: 3}, "
        "mortar crew: {painted: 12}, light truck: {painted: 2}}\n"
    )
    (folder / "stock.yaml").write_text(stock, encoding="utf-8")
    seen = caller.settled()
    assert "Nothing is lacking, so there is nothing to order." in seen.text
    assert "want 101 · have 101 · complete" in seen.text
    assert slips_on(seen) == []


@pytest.mark.parametrize(
    ("want", "status", "said"),
    [
        ("pioneer=8", 200, "no pack on the list contains pioneers"),
        ("pioner=8", 200, "Did you mean 'pioneer'?"),
        ("pioneer", 422, "isn't names and numbers"),
        ("rifleman=-1", 422, "-1"),
        ("<b>=1", 200, "No figure kind is called '<b>'."),
    ],
)
def test_a_want_that_cannot_be_met_or_read_has_its_reason(
    caller: Caller, want: str, status: int, said: str
) -> None:
    seen = caller.settled(want=want)
    assert seen.status == status
    assert said in seen.text
    assert slips_on(seen) == []


def test_what_nobody_sells_is_proved_to_be_unmet(caller: Caller) -> None:
    assert "Sureness none exists" in caller.settled(want="pioneer=8").text
    assert "Sureness not computed" in caller.settled(want="pioneer").text


def test_a_folder_with_a_stop_says_so(folder: Path, caller: Caller) -> None:
    (folder / "stock.yaml").write_text("stock: {rifelman: {painted: 9}}\n", encoding="utf-8")
    seen = caller.settled()
    assert "A stop prevents the answer." in seen.text
    assert "rifelman" in seen.text


def test_old_prices_are_said_to_be_old(folder: Path, caller: Caller) -> None:
    prices = folder / "prices.yaml"
    text = prices.read_text(encoding="utf-8")
    for source, noted in (("North", "2025-03"), ("South", "2026-10")):
        text = text.replace(f"  {source}:\n", f"  {source}:\n    noted: {noted}\n", 1)
    prices.write_text(text, encoding="utf-8")
    north, south = slips_on(caller.settled(want=WANT, chosen="C"))
    assert "Prices noted in March 2025. That is a year ago or more: look them up again." in north
    assert "Prices noted in October 2026." in south
    assert "a year ago" not in south


def test_another_currency_is_exchanged_once(folder: Path, caller: Caller) -> None:
    prices = folder / "prices.yaml"
    euros = "  South:\n    currency: EUR\n    rate: 0.86\n    rate date: 2026-11\n"
    text = prices.read_text(encoding="utf-8").replace("  South:\n    currency: GBP\n", euros)
    prices.write_text(text, encoding="utf-8")
    (south,) = slips_on(caller.settled(want=WANT))
    assert "To pay €48.50" in south
    assert "at the rate written in the files £41.71" in south


class TestMonths:
    def test_without_a_limit_there_is_no_plan(self, caller: Caller) -> None:
        seen = caller.settled(want=WANT)
        assert 'id="months"' not in seen.html
        assert "[limit-missing]" not in seen.text

    def test_with_thirty_a_month_it_is_bought_in_the_second(self, caller: Caller) -> None:
        """Checked by hand: 30 in November, 60 in December, less 48.50 leaves 11.50."""
        seen = caller.settled(want=WANT, limit="30")
        assert (
            "1 parcel for £48.50, with £30.00 a month: it is bought in December 2026." in seen.text
        )
        assert "December 2026 £60.00 South £11.50" in seen.text

    def test_what_is_there_already_counts(self, caller: Caller) -> None:
        seen = caller.settled(want=WANT, limit="30", carried="18.50")
        assert "and £18.50 there already: it is bought in November 2026." in seen.text

    def test_a_parcel_that_comes_too_late_says_by_how_much(
        self, folder: Path, caller: Caller
    ) -> None:
        aim = "aim: {deadline: 2026-11-30, a month: 10.00}\n"
        (folder / "aim.yaml").write_text(aim, encoding="utf-8")
        seen = caller.settled(want=WANT)
        assert "needed by 30 November 2026: late" in seen.text
        assert "1 parcel too late." in seen.text
        assert (
            "With £48.50 a month, or with £38.50 carried, it would be there in time." in seen.text
        )

    def test_a_limit_that_cannot_be_read_is_refused(self, caller: Caller) -> None:
        assert caller.settled(want=WANT, limit="much").status == 422

    def test_a_limit_that_never_pays_has_its_reason(self, caller: Caller) -> None:
        seen = caller.settled(want=WANT, limit="0")
        assert "can't be paid from £0.00 with nothing put aside a month" in seen.text
        assert (
            "Give money a month above nought, or carry £48.50 more as there already." in seen.text
        )


class TestAim:
    def test_it_is_written_and_can_be_undone(self, folder: Path, caller: Caller) -> None:
        before = (folder / "force.yaml").read_text(encoding="utf-8")
        sent = caller.sent(
            caller.settled(want=WANT), "purchases/aim", deadline="2027-04", a_month="30"
        )
        assert sent.status == 303
        seen = caller.settled(sent.address)
        assert "The aim is written into force.yaml. The version before is kept." in seen.text
        assert "1 parcel for £48.50, with £30.00 a month" in seen.text
        assert "a month: 30" in (folder / "force.yaml").read_text(encoding="utf-8")
        undone = caller.sent(seen, "purchases/aim-back")
        assert undone.status == 303
        assert "The aim is what it was before." in caller.settled(undone.address).text
        assert (folder / "force.yaml").read_text(encoding="utf-8") == before

    def test_an_undo_that_comes_twice_changes_nothing_more(
        self, folder: Path, caller: Caller
    ) -> None:
        sent = caller.sent(caller.settled(), "purchases/aim", a_month="30")
        seen = caller.settled(sent.address)
        assert caller.sent(seen, "purchases/aim-back").status == 303
        after = (folder / "force.yaml").read_text(encoding="utf-8")
        again = caller.sent(seen, "purchases/aim-back")
        assert again.status == 409
        assert "nothing was put back" in again.text
        assert (folder / "force.yaml").read_text(encoding="utf-8") == after

    @pytest.mark.parametrize(
        "fields", [{"a_month": "much"}, {"a_month": "0"}, {"deadline": "spring"}, {"a_month": "-3"}]
    )
    def test_what_cannot_be_read_is_refused(
        self, folder: Path, caller: Caller, fields: dict[str, str]
    ) -> None:
        before = (folder / "force.yaml").read_text(encoding="utf-8")
        sent = caller.sent(caller.settled(), "purchases/aim", **fields)
        assert sent.status == 422
        assert (folder / "force.yaml").read_text(encoding="utf-8") == before

    def test_a_note_inside_what_is_replaced_is_told(self, folder: Path, caller: Caller) -> None:
        (folder / "aim.yaml").write_text("aim:\n  a month: 30  # as agreed\n", encoding="utf-8")
        sent = caller.sent(caller.settled(), "purchases/aim", a_month="")
        assert "A note that stood inside what was replaced" in caller.settled(sent.address).text

    def test_sent_without_its_token_nothing_is_written(self, folder: Path, caller: Caller) -> None:
        before = (folder / "force.yaml").read_text(encoding="utf-8")
        assert caller.post("purchases/aim", {"a-month": "30"}).status == 403
        assert (folder / "force.yaml").read_text(encoding="utf-8") == before


class TestForPrograms:
    def test_the_document_is_that_of_the_command(self, folder: Path, caller: Caller) -> None:
        caller.settled(want=WANT)  # a busy machine has no order yet when it is asked at once
        seen = caller.get(f"purchases/order.json?want={WANT}")
        assert seen.status == 200
        assert seen.response.json() == call("order", folder, "--want", WANT, "--json").document

    def test_where_there_is_no_order_it_has_the_findings(self, caller: Caller) -> None:
        for want, code in (("pioneer=8", "nobody-sells"), ("pioneer", "not-names-and-numbers")):
            seen = caller.get(f"purchases/order.json?want={want}")
            assert seen.status == 422
            assert code in [found["code"] for found in seen.response.json()["findings"]]


@pytest.mark.slow
class TestLongSearch:
    def test_the_page_says_how_far_it_is_and_looks_again_by_itself(self, long_folder: Path) -> None:
        caller = Caller(long_folder)
        seen = caller.page()
        assert '<noscript><meta http-equiv="refresh" content="2"></noscript>' in seen.html
        assert "Looking for the cheapest order" in seen.text
        assert "Sureness looking" in seen.text
        assert "want 11 · have 0 · lack 11" in seen.text
        caller.site.searches.end()

    def test_stopped_half_way_the_best_is_kept_and_said_to_be_unproved(
        self, long_folder: Path
    ) -> None:
        caller = Caller(long_folder)
        seen = caller.page(limit="40")
        time.sleep(1.5)
        stopped = caller.sent(seen, "purchases/stop")
        assert (stopped.status, stopped.address.endswith("purchases?limit=40")) == (303, True)
        after = caller.settled(stopped.address)
        assert re.search(r"The best found costs £[\d.]+, (at most|nothing)", after.text)
        assert "Stopped by hand: best found" in after.text
        assert "Sureness within £" in after.text
        assert slips_on(after)
        anew = caller.sent(after, "purchases/again")
        assert "Looking for the cheapest order" in caller.get(anew.address).text
        caller.site.searches.end()

    def test_who_asks_the_same_meanwhile_joins_the_search(self, long_folder: Path) -> None:
        caller = Caller(long_folder)
        ids = {caller.page().form("purchases/stop")["search"] for _ in range(2)}
        assert len(ids) == 1
        caller.site.searches.end()

    def test_a_search_ends_at_its_limit_though_nobody_looks_on(self, long_folder: Path) -> None:
        caller = Caller(long_folder)
        id_ = caller.page(seconds="2").form("purchases/stop")["search"]
        search = caller.site.searches.found(id_)
        assert search is not None
        assert search.wait(8)
        seen = caller.page(seconds="2")
        assert "Stopped at 2 s: best found" in seen.text
        assert "Look anew" in seen.text

    def test_a_program_is_told_to_ask_again(self, long_folder: Path) -> None:
        caller = Caller(long_folder)
        seen = caller.get("purchases/order.json")
        assert (seen.status, seen.response.headers["retry-after"]) == (202, "2")
        assert seen.response.json()["certainty"] == "not computed"
        caller.site.searches.end()

    def test_its_advances_are_told_as_events_until_its_end(self, long_folder: Path) -> None:
        caller = Caller(long_folder)
        id_ = caller.page(seconds="4").form("purchases/stop")["search"]
        seen = caller.get(f"purchases/progress?search={id_}")
        assert seen.response.headers["content-type"].startswith("text/event-stream")
        events = [json.loads(line[6:]) for line in seen.html.splitlines() if line[:7] == "data: {"]
        bests = [float(event["best"][1:]) for event in events if event.get("best", "")[:1] == "£"]
        assert len(events) > 2
        assert bests
        assert bests == sorted(bests, reverse=True)
        assert seen.html.endswith("event: ended\ndata: {}\n\n")

    def test_a_file_that_is_changed_meanwhile_ends_the_search(self, tmp_path: Path) -> None:
        folder = folder_of(dense(12, packs=90, seed=1), tmp_path / "long")
        caller = Caller(folder)
        first = caller.page().form("purchases/stop")["search"]
        file = folder / "force.yaml"
        file.write_text(file.read_text(encoding="utf-8") + "# changed\n", encoding="utf-8")
        assert caller.page().form("purchases/stop")["search"] != first
        assert caller.site.searches.found(first) is None
        caller.site.searches.end()


@pytest.mark.slow
def test_when_the_site_ends_so_do_its_searches(long_folder: Path) -> None:
    with Caller(long_folder) as caller:
        search = caller.site.searches.found(caller.page().form("purchases/stop")["search"])
        assert search is not None
        assert not search.is_ended
    assert search.is_ended


def test_a_search_that_is_not_kept_any_more_is_nowhere(caller: Caller) -> None:
    assert caller.get("purchases/progress?search=none").status == 404


def test_where_too_many_searches_run_the_page_says_so_and_asks_again(caller: Caller) -> None:
    searches = caller.site.searches

    def waiting(search: Search) -> OrderJourney:
        while not search.stop():
            time.sleep(0.01)
        return NOTHING_FOUND

    for key in "abcd":
        searches.begun(key, waiting, seconds=60, rests_on=None)
    seen = caller.page(want=WANT)
    assert seen.status == 503
    assert "4 searches run already, and no more at once." in seen.text
    assert 'http-equiv="refresh"' in seen.html
    assert caller.get("purchases/order.json").status == 503
    searches.end()
    while caller.page(want=WANT).status == 503:
        time.sleep(0.01)
    assert "Chosen £48.50" in caller.settled(want=WANT).text


def test_where_no_pack_holds_what_is_lacking_one_can_be_written_down(caller: Caller) -> None:
    seen = caller.settled(want="pioneer=8")
    assert "files/entries?sort=packs" in seen.html
    assert "files/entries?sort=packs" not in caller.settled(want="rifleman=8").html
