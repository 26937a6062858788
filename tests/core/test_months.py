"""Orders spread over months, against every sequence there is."""

from collections.abc import Sequence
from dataclasses import replace
from itertools import permutations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from paradestate.core.months import (
    MOST_ORDERS,
    Late,
    Month,
    PlannedOrder,
    Spread,
    bought_in,
    burden,
    least_a_month,
    least_carried,
    month_paid,
    overspent,
    spread,
)

MAIN = PlannedOrder(name="main", cost=4850, due=1)
LORRIES = PlannedOrder(name="lorries", cost=2400)
SCENERY = PlannedOrder(name="scenery", cost=1800)
THREE = (MAIN, LORRIES, SCENERY)


def test_the_main_order_is_saved_for_and_the_others_follow() -> None:
    """By hand: 60.00 - 48.50 = 11.50; 41.50 - 24.00 = 17.50; 47.50 - 18.00 = 29.50."""
    assert spread(THREE, a_month=3000) == Spread(
        months=(
            Month(month=1, spent=0, orders=(), balance=3000),
            Month(month=2, spent=4850, orders=("main",), balance=1150),
            Month(month=3, spent=2400, orders=("lorries",), balance=1750),
            Month(month=4, spent=1800, orders=("scenery",), balance=2950),
        ),
        late=(Late(name="main", due=1, month=2),),
    )


def test_the_lorries_first_would_make_the_main_order_wait_a_month_longer() -> None:
    assert bought_in((LORRIES, MAIN), a_month=3000) == (1, 3)
    assert bought_in(THREE, a_month=3000) == (2, 3, 4)


def test_a_plan_is_judged_by_months_late_and_then_by_months_waited_for() -> None:
    assert burden(THREE, (2, 3, 4)) == (1, 9)
    assert burden((LORRIES, replace(MAIN, weight=2)), (1, 3)) == (4, 7)
    assert spread(THREE, a_month=3000).total == 4850 + 2400 + 1800


def test_where_nothing_is_due_the_cheap_come_first() -> None:
    plan = spread([replace(order, due=None) for order in THREE], a_month=3000)
    assert [month.orders for month in plan.months] == [("lorries",), ("scenery",), (), ("main",)]


def test_what_is_waited_for_by_many_comes_first() -> None:
    plan = spread([LORRIES, replace(MAIN, due=None, weight=100)], a_month=3000)
    assert [month.orders for month in plan.months] == [(), ("main",), ("lorries",)]


def test_of_plans_that_are_alike_the_sequence_given_is_kept() -> None:
    twins = [PlannedOrder(name=name, cost=3000) for name in "ba"]
    assert [month.orders for month in spread(twins, a_month=3000).months] == [("b",), ("a",)]


def test_what_is_carried_is_spent_in_the_first_month() -> None:
    plan = spread([LORRIES, SCENERY], a_month=0, carried=4200)
    assert plan.months == (Month(month=1, spent=4200, orders=("lorries", "scenery"), balance=0),)


def test_no_order_takes_no_month() -> None:
    assert spread([], a_month=0) == Spread(months=(), late=())
    assert least_a_month([LORRIES]) == least_carried([LORRIES], a_month=0) == 0


@pytest.mark.parametrize(
    ("spent", "month"), [(0, 1), (1000, 1), (4000, 1), (4001, 2), (7000, 2), (7001, 3)]
)
def test_an_order_is_paid_in_the_month_that_just_covers_it(spent: int, month: int) -> None:
    assert month_paid(spent, a_month=3000, carried=1000) == month


def test_what_is_never_covered_is_refused() -> None:
    with pytest.raises(ValueError, match="never cover 1001"):
        month_paid(1001, a_month=0, carried=1000)


def test_more_orders_than_can_be_weighed_are_refused() -> None:
    orders = [PlannedOrder(name=str(number), cost=1) for number in range(MOST_ORDERS + 1)]
    assert len(spread(orders[1:], a_month=1).months) == MOST_ORDERS
    with pytest.raises(ValueError, match="15 orders"):
        spread(orders, a_month=1)


def test_at_other_costs_some_months_are_overspent() -> None:
    plan = spread(THREE, a_month=3000)
    dearer = {"main": 6001, "lorries": 2999, "scenery": 3001}
    assert overspent(plan, dearer, a_month=3000) == ((2, 1), (4, 1))
    assert overspent(plan, dearer, a_month=3000, carried=1) == ()


def test_the_least_that_has_the_main_order_in_time() -> None:
    assert least_a_month(THREE) == 4850
    assert least_a_month(THREE, carried=1000) == 3850
    assert least_carried(THREE, a_month=3000) == 1850


ORDERS = st.lists(
    st.builds(
        PlannedOrder,
        name=st.just(""),
        cost=st.integers(0, 40),
        weight=st.integers(0, 4),
        due=st.none() | st.integers(-2, 6),
    ),
    max_size=6,
).map(lambda drawn: tuple(replace(order, name=str(number)) for number, order in enumerate(drawn)))
A_MONTH = st.integers(1, 30)
CARRIED = st.integers(0, 40)


def bought(plan: Spread) -> dict[str, int]:
    return {name: month.month for month in plan.months for name in month.orders}


def burden_of(plan: Spread, orders: Sequence[PlannedOrder]) -> tuple[int, int]:
    months = bought(plan)
    return burden(orders, [months[order.name] for order in orders])


@given(orders=ORDERS, a_month=A_MONTH, carried=CARRIED)
def test_no_sequence_of_all_there_are_is_better_or_as_good_and_before_it(
    orders: tuple[PlannedOrder, ...], a_month: int, carried: int
) -> None:
    ranked = min(
        (
            burden(sequence, bought_in(sequence, a_month=a_month, carried=carried)),
            [orders.index(order) for order in sequence],
        )
        for sequence in permutations(orders)
    )
    least, numbers = ranked
    plan = spread(orders, a_month=a_month, carried=carried)
    best = [orders[number] for number in numbers]
    months = bought_in(best, a_month=a_month, carried=carried)
    assert burden_of(plan, orders) == least
    assert bought(plan) == dict(zip([order.name for order in best], months, strict=True))


@given(orders=ORDERS, a_month=A_MONTH, carried=CARRIED)
def test_a_plan_spends_what_the_orders_cost_and_never_more_than_was_put_aside(
    orders: tuple[PlannedOrder, ...], a_month: int, carried: int
) -> None:
    plan = spread(orders, a_month=a_month, carried=carried)
    costs = {order.name: order.cost for order in orders}
    spent = 0
    for number, month in enumerate(plan.months, 1):
        spent += sum(costs[name] for name in month.orders)
        assert month.month == number
        assert month.balance == carried + number * a_month - spent >= 0
    assert plan.total == spent == sum(costs.values())
    assert sorted(bought(plan)) == sorted(costs)
    assert overspent(plan, costs, a_month=a_month, carried=carried) == ()
    assert not plan.months or plan.months[-1].orders


@given(orders=ORDERS, a_month=A_MONTH, carried=CARRIED)
def test_more_money_never_makes_a_plan_worse(
    orders: tuple[PlannedOrder, ...], a_month: int, carried: int
) -> None:
    least = burden_of(spread(orders, a_month=a_month, carried=carried), orders)
    assert burden_of(spread(orders, a_month=a_month + 1, carried=carried), orders) <= least
    assert burden_of(spread(orders, a_month=a_month, carried=carried + 1), orders) <= least


@given(orders=ORDERS, a_month=A_MONTH, carried=CARRIED)
def test_what_is_late_is_what_is_bought_after_it_is_due(
    orders: tuple[PlannedOrder, ...], a_month: int, carried: int
) -> None:
    plan = spread(orders, a_month=a_month, carried=carried)
    months = bought(plan)
    expected = {
        order.name: (order.due, months[order.name])
        for order in orders
        if order.due is not None and months[order.name] > order.due
    }
    assert {late.name: (late.due, late.month) for late in plan.late} == expected


def unmended(orders: Sequence[PlannedOrder], *, a_month: int, carried: int) -> bool:
    """Whether an order with a weight is later than it has to be."""
    plan = spread(orders, a_month=a_month, carried=carried)
    return any(late.month > max(1, late.due) for late in plan.late)


@given(orders=ORDERS, a_month=A_MONTH, carried=CARRIED)
def test_the_least_money_that_has_all_in_time_does_and_a_penny_less_does_not(
    orders: tuple[PlannedOrder, ...], a_month: int, carried: int
) -> None:
    weighed = [replace(order, weight=order.weight + 1) for order in orders]
    enough = least_a_month(weighed, carried=carried)
    if enough > 0:
        assert not unmended(weighed, a_month=enough, carried=carried)
    if enough > 1:
        assert unmended(weighed, a_month=enough - 1, carried=carried)
    there = least_carried(weighed, a_month=a_month)
    if there > 0:
        assert not unmended(weighed, a_month=a_month, carried=there)
        assert unmended(weighed, a_month=a_month, carried=there - 1)
