"""An order priced and checked by plain code."""

from dataclasses import replace
from fractions import Fraction

import pytest

from paradestate.core.cover import Substitutes
from paradestate.core.figure import Match, StandIn
from paradestate.core.order import (
    Order,
    in_order_of_choice,
    is_padded,
    netted,
    order_problems,
    priced,
    shortcomings,
)
from tests.orders import marenz_problem, pack, problem, source

PROBLEM = marenz_problem()
BEST = {("South", "S1"): 3, ("South", "S3"): 1}
THREE_STEPS = [
    ({("South", "S3"): 1, ("South", "S1"): 3}, 4850, 15),
    ({("North", "N1"): 1, ("North", "N2"): 2, ("North", "N3"): 2}, 5000, 5),
    (
        {("North", "N1"): 1, ("North", "N2"): 2, ("North", "N3"): 1, ("South", "S2"): 1},
        5150,
        3,
    ),
]


@pytest.mark.parametrize(("packs", "total", "left_over"), THREE_STEPS)
def test_the_orders_of_the_example_cost_and_leave_over_what_they_should(
    packs: dict[tuple[str, str], int], total: int, left_over: int
) -> None:
    assert shortcomings(PROBLEM, packs) == ()
    order = priced(PROBLEM, packs)
    assert (order.total, order.number_left_over) == (total, left_over)
    assert order_problems(PROBLEM, order) == ()


def test_an_order_says_what_is_in_it() -> None:
    order = priced(PROBLEM, BEST)
    assert order.held == {"rifleman": 60, "mortar crew": 12, "officer": 6}
    assert order.left_over == {"rifleman": 10, "mortar crew": 3, "officer": 2}
    assert (order.number_bought, order.number_of_packs) == (78, 4)
    assert [(line.source, line.pack, line.cost) for line in order.lines] == [
        ("South", "S1", 4200),
        ("South", "S3", 800),
    ]


def test_two_parcels_pay_carriage_twice() -> None:
    order = priced(PROBLEM, THREE_STEPS[2][0])
    assert [(each.source, each.goods, each.carriage) for each in order.receipts] == [
        ("North", 4300, 0),
        ("South", 500, 350),
    ]


def test_kinds_that_nobody_wants_are_left_over_too() -> None:
    order = priced(PROBLEM, {("North", "N4"): 1})
    assert order.left_over == {"signaller": 4}


def test_packs_bought_nought_times_are_left_out() -> None:
    assert priced(PROBLEM, {**BEST, ("North", "N1"): 0}) == priced(PROBLEM, BEST)


def test_nothing_wanted_and_nothing_bought_is_an_order() -> None:
    nothing = replace(PROBLEM, want={})
    assert shortcomings(nothing, {}) == ()
    assert priced(nothing, {}).total == 0


SMALL = problem(
    source("North", pack("A", 300, most=2, rifleman=5), least_order=500),
    source("South", pack("B", 100, officer=1)),
    rifleman=10,
    officer=1,
)
GOOD = {("North", "A"): 2, ("South", "B"): 1}


@pytest.mark.parametrize(
    ("packs", "said"),
    [
        (GOOD, ()),
        ({**GOOD, ("North", "A"): 3}, ("3 of North A, of which 2 can be had",)),
        ({("North", "A"): 2}, ("0 officer of 1 wanted",)),
        (
            {**GOOD, ("North", "A"): 1},
            ("5 rifleman of 10 wanted", "North sends nothing below £5.00"),
        ),
        ({**GOOD, ("North", "B"): 1}, ("no source sells North B",)),
        ({**GOOD, ("East", "A"): 1}, ("no source sells East A",)),
        ({**GOOD, ("North", "A"): -2}, ("-2 of North A",)),
    ],
)
def test_each_shortcoming_is_named(
    packs: dict[tuple[str, str], int], said: tuple[str, ...]
) -> None:
    assert shortcomings(SMALL, packs) == said


def tampered() -> list[tuple[str, Order]]:
    order = priced(PROBLEM, BEST)
    (receipt,) = order.receipts
    line, *others = receipt.lines
    lines = (replace(line, cost=line.cost - 1), *others)
    return [
        ("receipts", replace(order, receipts=(replace(receipt, goods=4999),))),
        ("receipts", replace(order, receipts=(replace(receipt, discount=501),))),
        ("receipts", replace(order, receipts=(replace(receipt, discount_rate=Fraction(1, 5)),))),
        ("receipts", replace(order, receipts=(replace(receipt, carriage=0),))),
        ("receipts", replace(order, receipts=(replace(receipt, exchanged=4849),))),
        ("receipts", replace(order, receipts=(replace(receipt, lines=lines),))),
        ("receipts", replace(order, receipts=())),
        ("figures bought", replace(order, held={**order.held, "rifleman": 61})),
        ("left over", replace(order, left_over={})),
        ("packs", replace(order, packs={**BEST, ("North", "N1"): 0})),
    ]


@pytest.mark.parametrize(("what", "order"), tampered())
def test_an_order_that_says_something_wrong_of_itself_is_found_out(what: str, order: Order) -> None:
    (said,) = order_problems(PROBLEM, order)
    assert said.startswith(f"{what}: ")


def test_an_order_that_is_not_enough_is_found_out_whatever_it_says() -> None:
    order = replace(priced(PROBLEM, BEST), packs={("South", "S1"): 3})
    assert order_problems(PROBLEM, order) == ("48 rifleman of 50 wanted",)


def test_orders_come_by_total_left_over_number_of_packs_and_names() -> None:
    two_sources = problem(
        source("North", pack("A", 100, a=2), pack("B", 200, a=4)),
        source("South", pack("A", 100, a=2), pack("C", 200, a=3), pack("D", 300, a=3)),
        a=3,
    )
    baskets: list[dict[tuple[str, str], int]] = [
        {("South", "C"): 1},
        {("North", "B"): 1},
        {("North", "A"): 1, ("South", "A"): 1},
        {("North", "A"): 2},
        {("South", "D"): 1},
    ]
    orders = [priced(two_sources, basket) for basket in baskets]
    last_first = orders[::-1]
    assert sorted(last_first, key=in_order_of_choice) == orders


def test_an_order_that_adds_packs_to_a_better_one_is_padded() -> None:
    best = priced(PROBLEM, BEST)
    assert is_padded(priced(PROBLEM, {**BEST, ("South", "S2"): 1}), better=best)
    assert is_padded(priced(PROBLEM, {("South", "S1"): 5, ("South", "S3"): 1}), better=best)
    assert not is_padded(priced(PROBLEM, {("South", "S1"): 5, ("South", "S2"): 3}), better=best)


def test_more_parcels_than_may_come_are_said() -> None:
    one = replace(PROBLEM, most_parcels=1)
    assert shortcomings(one, THREE_STEPS[2][0]) == ("2 parcels where 1 may come",)
    assert shortcomings(one, BEST) == ()


def test_figures_owned_serve_before_any_is_bought() -> None:
    asked = replace(PROBLEM, owned={"rifleman": 2, "officer": 9})
    assert asked.number_lacking == 48 + 9
    order = priced(asked, BEST)
    assert order.left_over == {"rifleman": 12, "mortar crew": 3, "officer": 6}
    assert netted(asked).want == {"rifleman": 48, "mortar crew": 9}
    assert netted(asked).owned == {}


def test_figures_that_may_stand_in_are_not_taken_off_the_want() -> None:
    officers = Substitutes(may_stand_for={"officer": {"rifleman": Match.GOOD}})
    asked = replace(PROBLEM, owned={"mortar crew": 9, "officer": 5}, substitutes=officers)
    assert netted(asked).want == {"rifleman": 50, "officer": 4}
    assert netted(asked).owned == {"officer": 5}
    assert asked.uses_of("officer") == 4
    for nobody_wanted in ({"mortar crew": 9}, {"mortar crew": 9, "officer": 4}):
        assert netted(replace(asked, want=nobody_wanted, owned={})).want == nobody_wanted
    bought_too = replace(officers, bought_too=True)
    assert replace(asked, substitutes=bought_too).uses_of("officer") == 54


@pytest.mark.parametrize(
    ("bought_too", "places"),
    [(False, [("rifleman", 2)]), (True, [("rifleman", 50)])],
)
def test_a_kind_stands_in_for_no_more_than_there_is_of_it_or_is_wanted(
    *, bought_too: bool, places: list[tuple[str, int]]
) -> None:
    """Of officers two are owned; nobody wants a drummer, and an officer stands for himself."""
    may = {"officer": dict.fromkeys(("rifleman", "drummer", "officer"), Match.POOR)}
    substitutes = Substitutes(may_stand_for=may, bought_too=bought_too)
    asked = replace(PROBLEM, owned={"officer": 2}, substitutes=substitutes)
    assert list(asked.places_of("officer")) == places


def test_a_stand_in_that_is_not_so_is_found_out() -> None:
    order = replace(priced(PROBLEM, BEST), stand_ins=(StandIn(kind="a", stands_for="b", number=1),))
    (wrong,) = order_problems(PROBLEM, order)
    assert wrong.startswith("stand-ins: ")
