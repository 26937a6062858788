"""What is said about an order."""

from dataclasses import replace

import pytest

from paradestate.core.certainty import Exact, Within
from paradestate.core.finding import Finding, Level
from paradestate.core.order import Order, OrderProblem, priced
from paradestate.core.order_finding import doubts, nothing_found, refusal, unknown_arrival
from paradestate.core.order_outcome import (
    Barred,
    LeastOrder,
    MostOf,
    MostParcels,
    NobodySells,
    NotFound,
    OrderAnswer,
    Why,
)
from tests.forces import force_from, marenz
from tests.orders import marenz_problem

PROBLEM = marenz_problem()
BEST = priced(PROBLEM, {("South", "S1"): 3, ("South", "S3"): 1})
SECOND = priced(PROBLEM, {("North", "N1"): 1, ("North", "N2"): 2, ("North", "N3"): 2})
THIRD = priced(
    PROBLEM, {("North", "N1"): 1, ("North", "N2"): 2, ("North", "N3"): 1, ("South", "S2"): 1}
)

PROVED = Exact()

LIMITED = """\
sources:
  North:
    currency: GBP
    carriage: {0: 0}
    packs:
      N1: {price: 20.00, holds: {rifleman: 1}, most: 2}
  South:
    currency: GBP
    carriage: {0: 0}
    least order: 30.00
    packs:
      S1: {price: 14.00, holds: {rifleman: 1}, most: 1}
"""
FORCE = force_from(
    "figures: {rifleman: {}}",
    "stands: {rifle: {base: none, figures: {rifleman: 4}}}",
    "formations: {top: {parts: {rifle: 1}}}",
    LIMITED,
)
SHORT = OrderProblem(want={"rifleman": 9}, sources=FORCE.sources, currency=PROBLEM.currency)
MOST = MostOf(pack=("North", "N1"), most=2)
LEAST = LeastOrder(source="South", least=3000)


def doubts_of(
    *steps: Order,
    order: Order = BEST,
    certainty: Exact | Within = PROVED,
    out_of_time: bool = False,
) -> list[Finding]:
    answer = OrderAnswer(order=order, certainty=certainty, steps=steps, out_of_time=out_of_time)
    return list(doubts(marenz(), PROBLEM, answer=answer, seconds=60))


def test_a_kind_that_nobody_sells_stops_at_its_figure() -> None:
    problem = replace(PROBLEM, want={"officer": 4, "pioneer": 1})
    four, one = refusal(marenz(), problem, outcome=NobodySells(kinds=("officer", "pioneer")))
    assert (four.level, four.code) == (Level.STOP, "nobody-sells")
    assert four.message == "4 officers are wanted; no pack on the list contains officers."
    assert four.hint == "Add a source or a substitute."
    assert four.place.path == ("figures", "officer")
    assert one.message == "1 pioneer is wanted; no pack on the list contains pioneers."


def test_a_single_limit_that_bars_the_order_stops_at_the_limit() -> None:
    (few,) = refusal(FORCE, SHORT, outcome=Barred(limits=(MOST,)))
    assert few.code == "most-bars-the-order"
    assert few.message == "Only 2 of N1 can be had from North, which isn't enough."
    assert few.place.path == ("sources", "North", "packs", "N1", "most")
    (least,) = refusal(FORCE, SHORT, outcome=Barred(limits=(LEAST,)))
    assert least.code == "least-order-bars-the-order"
    assert least.message == (
        "South sends nothing below £30.00, and what can be had there doesn't come to that."
    )
    assert least.place.path == ("sources", "South", "least order")


def test_that_no_source_has_everything_stops_one_parcel() -> None:
    one = MostParcels(most=1)
    (found,) = refusal(FORCE, SHORT, outcome=Barred(limits=(one,)))
    assert found.code == "one-parcel-bars-the-order"
    assert found.place.path == ("sources",)
    (both,) = refusal(FORCE, SHORT, outcome=Barred(limits=(MOST, one)))
    assert both.message == (
        "No order meets the want while only 2 of North N1 can be had and all comes in one parcel."
    )


def test_an_unknown_lead_time_is_said_at_a_pack_of_the_order() -> None:
    found = unknown_arrival(marenz(), BEST)
    assert (found.level, found.code) == (Level.REMARK, "lead-time-unknown")
    assert found.place.path == ("sources", "South", "packs", "S1")


def test_limits_that_bar_the_order_together_are_named_together() -> None:
    (found,) = refusal(FORCE, SHORT, outcome=Barred(limits=(MOST, LEAST)))
    assert (found.level, found.code) == (Level.STOP, "no-order")
    assert found.message == (
        "No order meets the want while only 2 of North N1 can be had and "
        "South sends nothing below £30.00."
    )
    assert [place.path[-1] for place in (found.place, *found.related)] == ["most", "least order"]


@pytest.mark.parametrize(
    ("why", "message"),
    [
        (Why.OUT_OF_TIME, "Stopped at 2.5 s before any order was found."),
        (Why.INTERRUPTED, "Stopped by hand before any order was found."),
        (Why.TOO_GREAT, "The numbers wanted, the prices or the multi-buys are too great"),
    ],
)
def test_a_search_that_finds_nothing_says_why(why: Why, message: str) -> None:
    found = nothing_found(marenz(), NotFound(why=why), seconds=2.5)
    assert (found.level, found.code) == (Level.STOP, "not-computed")
    assert found.message.startswith(message)
    assert found.place.path == ("sources",)


def test_much_left_over_is_said_with_the_step_that_leaves_less() -> None:
    (found,) = doubts_of(BEST, SECOND, THIRD)
    assert (found.level, found.code) == (Level.WARN, "much-left-over")
    assert found.message == (
        "This order leaves 15 spare of 78 bought; the £50.00 order leaves 5 of 68."
    )
    assert found.place.path == ("sources",)


def test_where_every_step_leaves_much_the_thriftiest_is_named() -> None:
    problem = replace(PROBLEM, want={"rifleman": 10})
    wasteful, thrifty = (
        priced(problem, {("North", "N1"): 2}),
        priced(problem, {("North", "N1"): 1}),
    )
    answer = OrderAnswer(order=wasteful, certainty=Exact(), steps=(wasteful, thrifty))
    (found,) = doubts(marenz(), problem, answer=answer, seconds=60)
    assert found.message == (
        "This order leaves 62 spare of 72 bought; the £25.00 order leaves 26 of 36."
    )


def test_a_fifth_of_the_want_left_over_is_not_much() -> None:
    """10 of 50 are a fifth, 11 of 49 are more."""
    problem = replace(PROBLEM, want={"rifleman": 50})
    order = priced(problem, {("South", "S3"): 5})
    assert order.number_left_over == 10
    better = priced(problem, {("North", "N2"): 5})
    answer = OrderAnswer(order=order, certainty=Exact(), steps=(order, better))
    assert list(doubts(marenz(), problem, answer=answer, seconds=60)) == []
    fewer_wanted = replace(problem, want={"rifleman": 49})
    answer = replace(answer, order=priced(fewer_wanted, order.packs))
    (found,) = doubts(marenz(), fewer_wanted, answer=answer, seconds=60)
    assert found.message.startswith("This order leaves 11 spare of 60 bought")


def test_much_left_over_is_not_said_where_no_step_leaves_less() -> None:
    assert doubts_of(BEST) == []
    assert doubts_of() == []


def test_an_order_that_is_not_proved_says_what_is() -> None:
    by_hand = OrderAnswer(order=BEST, certainty=Within(bound=4790), interrupted=True)
    (stopped,) = doubts(marenz(), PROBLEM, answer=by_hand, seconds=60)
    assert stopped.message == "Stopped by hand: best found £48.50, nothing below £47.90 exists."
    (found,) = doubts_of(BEST, certainty=Within(bound=4790), out_of_time=True)
    assert (found.level, found.code) == (Level.REMARK, "not-proved")
    assert found.message == ("Stopped at 60 s: best found £48.50, nothing below £47.90 exists.")
    (found,) = doubts_of(BEST, certainty=Within(bound=4790))
    assert found.message == "Best found £48.50, nothing below £47.90 exists."
