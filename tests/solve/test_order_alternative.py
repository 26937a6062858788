"""Steps of cost against left over, and the next best orders."""

from dataclasses import replace
from fractions import Fraction
from itertools import islice
from typing import Any

import pytest
from hypothesis import given, settings

from paradestate.core.certainty import Within
from paradestate.core.order import Order, OrderProblem, in_order_of_choice, order_problems, priced
from paradestate.core.order_outcome import OrderAnswer
from paradestate.solve import order_alternative
from paradestate.solve.clock import clock
from paradestate.solve.error import TooGreatError
from paradestate.solve.order import cheapest_order
from paradestate.solve.order_alternative import next_best_after, steps_from, with_alternatives
from tests.orders import marenz_problem, pack, problem, source
from tests.solve.drawn import problems
from tests.solve.enumeration import every_order, steps, unpadded


def best_of(asked: OrderProblem) -> OrderAnswer:
    outcome = cheapest_order(asked)
    assert isinstance(outcome, OrderAnswer)
    return outcome


def pairs(orders: tuple[Order, ...]) -> list[tuple[int, int]]:
    return [(order.total, order.number_left_over) for order in orders]


def test_the_example_has_exactly_three_steps() -> None:
    asked = marenz_problem()
    answer = with_alternatives(asked, best_of(asked))
    assert pairs(answer.steps) == [(4850, 15), (5000, 5), (5150, 3)]
    assert answer.all_steps
    assert answer.steps[0] == answer.order
    assert [order_problems(asked, order) for order in answer.steps] == [(), (), ()]


def test_the_second_step_of_the_example_is_norths_slip_carriage_free() -> None:
    asked = marenz_problem()
    _, second, third = with_alternatives(asked, best_of(asked)).steps
    (receipt,) = second.receipts
    assert [(line.pack, line.number) for line in receipt.lines] == [
        ("N1", 1),
        ("N2", 2),
        ("N3", 2),
    ]
    assert (receipt.source, receipt.carriage, receipt.total) == ("North", 0, 5000)
    assert third.packs == {
        ("North", "N1"): 1,
        ("North", "N2"): 2,
        ("North", "N3"): 1,
        ("South", "S2"): 1,
    }


def test_the_next_best_of_the_example_are_50_00_51_50_and_52_10() -> None:
    asked = marenz_problem()
    answer = with_alternatives(asked, best_of(asked))
    assert [order.total for order in answer.next_best] == [5000, 5150, 5210]
    assert answer.all_next_best


def test_as_many_next_best_are_given_as_are_asked_for() -> None:
    asked = marenz_problem()
    answer = with_alternatives(asked, best_of(asked), next_best=1)
    assert ([order.total for order in answer.next_best], answer.all_next_best) == ([5000], True)
    answer = with_alternatives(asked, best_of(asked), next_best=0)
    assert (answer.next_best, answer.all_next_best) == ((), True)


def test_where_nothing_is_wanted_there_is_nothing_to_choose() -> None:
    asked = marenz_problem(want={})
    answer = with_alternatives(asked, best_of(asked))
    assert answer.steps == (answer.order,)
    assert (answer.next_best, answer.all_steps, answer.all_next_best) == ((), True, True)


def test_an_order_that_is_not_proved_has_no_next() -> None:
    asked = marenz_problem()
    answer = replace(best_of(asked), certainty=Within(bound=4000))
    assert with_alternatives(asked, answer) == answer


def test_time_that_runs_out_leaves_them_out_and_says_so() -> None:
    asked = marenz_problem()
    answer = with_alternatives(asked, best_of(asked), seconds=0)
    assert (pairs(answer.steps), answer.all_steps) == ([(4850, 15)], False)
    assert (answer.next_best, answer.all_next_best) == ((), False)


def test_numbers_too_great_for_the_alternatives_leave_the_order_as_it_is(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    asked = marenz_problem()
    answer = best_of(asked)

    def refuse(_problem: OrderProblem) -> None:
        raise TooGreatError

    monkeypatch.setattr(order_alternative, "OrderProgram", refuse)
    assert with_alternatives(asked, answer) == answer


def test_orders_that_only_add_packs_to_a_better_one_are_not_next() -> None:
    """Four fillers would bring 25.00 to 40.00, free of carriage, and are still no use."""
    asked = problem(
        source("North", pack("A", 2000, a=4), pack("B", 500, b=1), carriage={0: 500, 4000: 0}),
        source("South", pack("C", 3000, a=4)),
        a=4,
    )
    answer = with_alternatives(asked, best_of(asked))
    assert answer.order.packs == {("North", "A"): 1}
    assert [order.packs for order in answer.next_best] == [{("South", "C"): 1}]
    assert answer.all_next_best


@pytest.mark.parametrize("demand", [{"carriage": {0: 50, 101: 0}}, {"least_order": 101}])
def test_a_pack_that_lifts_goods_over_a_step_is_no_padding(
    demand: dict[str, Any],
) -> None:
    asked = problem(
        source("North", pack("A", 100, a=1), pack("B", 1, b=1), **demand),
        source("South", pack("C", 100, a=1)),
        a=1,
    )
    answer = with_alternatives(asked, best_of(asked))
    assert [order.packs for order in (answer.order, *answer.next_best)][:2] == [
        {("South", "C"): 1},
        {("North", "A"): 1, ("North", "B"): 1},
    ]


def test_fewer_of_a_cheap_multibuy_are_an_order_of_their_own() -> None:
    asked = problem(source("North", pack("A", 70, multibuy={2: 40}, a=1)), a=1)
    answer = with_alternatives(asked, best_of(asked))
    assert pairs((answer.order, *answer.next_best)) == [(40, 1), (70, 0)]


def test_of_orders_alike_but_for_their_packs_the_one_with_fewest_comes_first() -> None:
    alike = problem(
        source("North", pack("A", 100, a=1), pack("B", 200, a=2)),
        source("South", pack("A", 100, a=1)),
        a=2,
    )
    for packs in ({("South", "A"): 2}, {("North", "A"): 1, ("South", "A"): 1}):
        found = replace(best_of(alike), order=priced(alike, packs))
        answer = with_alternatives(alike, found)
        assert answer.order.packs == {("North", "B"): 1}
        assert answer.steps == (answer.order,)
        assert [order.packs for order in answer.next_best] == [
            {("North", "A"): 1, ("South", "A"): 1},
            {("North", "A"): 2},
            {("South", "A"): 2},
        ]


def test_a_step_of_the_same_total_takes_the_place_of_the_one_before() -> None:
    asked = problem(source("North", pack("A", 100, a=9), pack("B", 100, a=5)), a=5)
    wasteful = priced(asked, {("North", "A"): 1})
    found, whole = steps_from(asked, wasteful, until=clock(9))
    assert (pairs(found), whole) == ([(100, 0)], True)


def test_a_price_list_that_a_presolved_program_lost_still_has_its_next_best() -> None:
    """Found by lot: with presolve on, HiGHS 1.16 says that no other order exists."""
    asked = problem(
        source(
            "North",
            pack("N1", 3, multibuy={4: 12, 2: 8}, signaller=4, rifleman=2),
            pack("N2", 3, multibuy={2: 10}, signaller=1, officer=3),
            carriage={22: 6, 9: 3, 1: 5},
            discount={24: Fraction(1, 8), 11: Fraction(1, 20)},
            least_order=15,
        ),
        source(
            "South",
            pack("S1", 4, multibuy={3: 10}, officer=3),
            pack("S2", 3, multibuy={2: 5}, most=1, signaller=1),
            carriage={4: 3, 9: 6, 12: 4},
            least_order=6,
        ),
        officer=5,
        rifleman=5,
        signaller=5,
    )
    answer = with_alternatives(asked, best_of(asked))
    assert pairs(answer.next_best) == [(27, 17), (28, 19), (28, 21)]
    agrees_with_the_list(asked)


def agrees_with_the_list(asked: OrderProblem) -> None:
    outcome = cheapest_order(asked)
    if not isinstance(outcome, OrderAnswer):
        return
    listed = every_order(asked)
    found, whole = steps_from(asked, outcome.order, until=clock(60))
    assert (pairs(found), whole) == (steps(listed), True)
    others, whole = next_best_after(asked, outcome.order, number=3, until=clock(60))
    best = in_order_of_choice(outcome.order)
    ranks = [in_order_of_choice(order) for order in others]
    after = (order.rank for order in unpadded(listed) if order.rank != best)
    expected = list(islice(after, max(3, len(ranks))))
    if outcome.order.packs:
        assert whole
        assert sorted(ranks)[:3] == expected[:3]
        assert [rank[:3] for rank in ranks] == [rank[:3] for rank in expected[: len(ranks)]]


@pytest.mark.slow
@settings(max_examples=40)
@given(problems())
def test_steps_and_next_best_are_those_of_a_list_of_all_orders(asked: OrderProblem) -> None:
    agrees_with_the_list(asked)
