"""Searches that run while a page looks on."""

from collections.abc import Callable, Iterator
from pathlib import Path
from threading import Event
from uuid import uuid4

import pytest

from paradestate.core.journal_entry import EntryKind
from paradestate.core.log_request import LogRequest
from paradestate.core.money import Currency
from paradestate.journeys.log import log
from paradestate.journeys.order import OrderJourney, Search
from paradestate.solve.program import Advance
from paradestate.web.search import RunningSearch, Searches, TooManySearchesError
from tests.web.purchasing import NOTHING_FOUND, NOW, Caller
from tests.web.server import marenz

GBP = Currency("GBP")


class Hand:
    """A search that goes on until it is let go or told to stop, and counts how often it was run."""

    def __init__(self) -> None:
        self.let_go = Event()
        self.runs = 0

    def __call__(self, search: Search) -> OrderJourney:
        self.runs += 1
        assert search.progress is not None
        search.progress(Advance(best=5000, bound=4500, seconds=0.1), GBP)
        while not self.let_go.wait(0.005) and not search.stop():
            pass
        return NOTHING_FOUND


@pytest.fixture
def hand() -> Iterator[Hand]:
    made = Hand()
    yield made
    made.let_go.set()


def begun(
    searches: Searches, run: Callable[[Search], OrderJourney], *, key: str = "a", on: object = None
) -> RunningSearch[OrderJourney]:
    return searches.begun(key, run, seconds=60, rests_on=on)


def test_the_same_question_joins_the_search_that_runs_for_it(hand: Hand) -> None:
    searches = Searches()
    first, second = begun(searches, hand), begun(searches, hand)
    assert first is second
    assert not first.wait(0.05)
    hand.let_go.set()
    assert first.wait(5)
    assert begun(searches, hand) is first
    assert hand.runs == 1
    assert first.answer() is NOTHING_FOUND


def test_it_tells_how_far_it_is(hand: Hand) -> None:
    search = begun(Searches(), hand)
    while search.state.currency is None:
        search.wait(0.01)
    state = search.state
    assert (state.best, state.bound, state.currency) == (5000, 4500, GBP)
    assert not state.ended
    search.stop()
    assert search.wait(5)
    assert search.state.ended
    assert search.state.stopping
    assert search.state.seconds == search.state.seconds


def test_before_its_end_there_is_no_answer(hand: Hand) -> None:
    with pytest.raises(ValueError, match="hasn't ended"):
        begun(Searches(), hand).answer()


def test_what_rests_on_something_else_is_another_question(hand: Hand) -> None:
    """A folder that was changed ends the search for what it said before."""
    searches = Searches()
    before, after = object(), object()
    first = begun(searches, hand, on=before)
    second = begun(searches, hand, on=after)
    assert first is not second
    assert first.wait(5)
    assert searches.found(first.id) is None
    assert searches.found(second.id) is second


def test_no_more_run_at_once_than_may(hand: Hand) -> None:
    searches = Searches(most_running=2)
    first = begun(searches, hand, key="a")
    begun(searches, hand, key="b")
    with pytest.raises(TooManySearchesError, match="2"):
        begun(searches, hand, key="c")
    first.stop()
    assert begun(searches, hand, key="c").state.seconds >= 0


def test_searches_that_were_told_to_stop_are_bounded_too() -> None:
    """One that doesn't listen must not let ever more be begun."""
    let_go = Event()

    def deaf(_: Search) -> OrderJourney:
        let_go.wait(20)
        return NOTHING_FOUND

    searches = Searches(most_running=1)
    begun(searches, deaf, on=object())
    begun(searches, deaf, on=object())
    with pytest.raises(TooManySearchesError):
        begun(searches, deaf, on=object())
    let_go.set()


def test_a_question_that_is_forgotten_is_searched_anew(hand: Hand) -> None:
    searches = Searches()
    first = begun(searches, hand)
    searches.forget("no such search")
    searches.forget(first.id)
    assert first.wait(5)
    assert begun(searches, hand) is not first


def test_answers_are_kept_for_some_time_and_never_too_many(hand: Hand) -> None:
    hand.let_go.set()
    searches = Searches(most_kept=2)
    made = [begun(searches, hand, key=key) for key in "abc"]
    assert all(each.wait(5) for each in made)
    assert [searches.found(each.id) is each for each in made] == [False, True, True]
    short = Searches(kept_seconds=0)
    old = begun(short, hand)
    assert old.wait(5)
    Event().wait(0.01)
    assert short.found(old.id) is None


def test_what_a_search_raises_is_raised_where_its_answer_is_asked_for() -> None:
    def failing(_: Search) -> OrderJourney:
        raise OSError("the disk is gone")

    search = begun(Searches(), failing)
    assert search.wait(5)
    with pytest.raises(OSError, match="the disk is gone"):
        search.answer()


def test_all_can_be_told_to_stop(hand: Hand) -> None:
    searches = Searches()
    made = [begun(searches, hand, key=key) for key in "abc"]
    assert searches.end()
    assert all(each.is_ended for each in made)


def test_one_that_does_not_listen_is_not_waited_for_for_ever() -> None:
    let_go = Event()

    def deaf(_: Search) -> OrderJourney:
        let_go.wait(20)
        return NOTHING_FOUND

    searches = Searches()
    begun(searches, deaf)
    assert not searches.end(within=0.05)
    let_go.set()
    assert searches.end()


@pytest.mark.parametrize(
    "path",
    ["holdings/replacement", "holdings/receive?fill=cheapest", "/start/made?force=marenz"],
)
def test_a_page_that_waits_for_an_order_counts_among_the_searches(
    path: str, hand: Hand, tmp_path: Path
) -> None:
    """Else nothing would bound how many run at once, nor end them with the program."""
    folder = marenz(tmp_path)
    owned = LogRequest(
        id=str(uuid4()),
        kind=EntryKind.RECEIVED,
        written=NOW,
        on=NOW.date(),
        figures={"rifleman": 4},
    )
    log(folder, today=NOW.date(), request=owned)
    caller = Caller(folder)
    running = [begun(caller.site.searches, hand, key=key) for key in "abcd"]
    refused = caller.get(path)
    assert refused.status == 503
    assert "4 searches run already" in refused.text
    hand.let_go.set()
    assert all(search.wait(5) for search in running)
    assert caller.get(path).status == 200
