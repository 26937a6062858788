"""The sentences that head the page of purchases."""

from paradestate.core.certainty import Exact, Within
from paradestate.core.gap import Gap
from paradestate.core.order import Order, priced
from paradestate.core.order_outcome import OrderAnswer
from paradestate.web.purchase.lead import (
    lacking_words,
    proof_words,
    state_words,
    sureness_word,
    time_words,
)
from paradestate.web.search import State
from tests.orders import GBP, marenz_problem


def cheapest() -> Order:
    return priced(marenz_problem(), {("South", "S1"): 3, ("South", "S3"): 1})


def state(best: int | None = None, bound: int | None = None, *, stopping: bool = False) -> State:
    currency = None if best is None and bound is None else GBP
    return State(
        best=best, bound=bound, currency=currency, seconds=3.9, ended=False, stopping=stopping
    )


def test_of_many_kinds_only_the_number_is_said() -> None:
    gaps = [Gap(kind=f"kind {each}", want=each, have=1) for each in range(1, 9)]
    assert lacking_words(gaps[:3]) == "1 kind 2 and 2 kind 3s"
    assert lacking_words(gaps) == "28 figures of 7 kinds"


def test_a_proof_is_only_claimed_where_there_is_one() -> None:
    exact = OrderAnswer(order=cheapest(), certainty=Exact())
    within = OrderAnswer(order=cheapest(), certainty=Within(bound=4600))
    nothing = OrderAnswer(order=cheapest(), certainty=Within(bound=0))
    assert proof_words(exact, currency=GBP) == (
        "The cheapest order costs £48.50. No order below £48.50 would do; proven."
    )
    assert proof_words(within, currency=GBP) == (
        "The best found costs £48.50, at most £2.50 above the least possible; "
        "that it is the least isn't proved."
    )
    assert proof_words(nothing, currency=GBP) == (
        "The best found costs £48.50; nothing is proved of what the least is."
    )
    words = [sureness_word(each, currency=GBP) for each in (exact, within, nothing)]
    assert words == ["exact", "within £2.50", "not proved"]


def test_the_least_left_over_may_be_unproved() -> None:
    answer = OrderAnswer(order=cheapest(), certainty=Exact(), least_left_over=3)
    assert proof_words(answer, currency=GBP) == (
        "No order that leaves at most 15 over costs less than £48.50; proven. "
        "An order that leaves only 3 over may exist."
    )


def test_how_far_a_search_has_come_is_said_as_it_is() -> None:
    assert state_words(state()) == "Nothing was found yet."
    assert state_words(state(5000)) == "Best so far £50.00."
    assert state_words(state(None, 4500)) == "Nothing was found yet, nothing below £45.00."
    assert state_words(state(5000, 4500)) == "Best so far £50.00, nothing below £45.00."
    assert state_words(state(4850, 4850)) == "No order is below £48.50; proven."


def test_the_time_says_what_is_still_being_done() -> None:
    assert time_words(state(5000), limit=60) == "3 seconds of at most 60."
    assert "other orders beside it" in time_words(state(4850, 4850), limit=60)
    assert time_words(state(5000, stopping=True), limit=60) == "It stops with the best so far."
