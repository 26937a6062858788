"""What is still on order."""

import datetime

from hypothesis import given
from hypothesis import strategies as st

from paradestate.core.on_order import OnOrder, figures_on_order, less_received

ON = datetime.date(2026, 3, 5)


def order(number: int, source: str = "North", **figures: int) -> OnOrder:
    return OnOrder(entry=f"{number}", source=source, day=ON, expected=None, figures=figures)


def left(*orders: OnOrder, source: str = "North", **came: int) -> list[tuple[str, dict[str, int]]]:
    still = less_received(orders, source=source, came=came)
    return [(each.entry, dict(each.figures)) for each in still]


def test_what_comes_is_taken_off_the_oldest_order_of_its_source() -> None:
    orders = (order(1, rifleman=8, officer=1), order(2, "South", rifleman=8), order(3, rifleman=8))
    assert left(*orders, rifleman=10) == [
        ("1", {"officer": 1}),
        ("2", {"rifleman": 8}),
        ("3", {"rifleman": 6}),
    ]


def test_more_than_was_ordered_takes_nothing_else_off() -> None:
    assert left(order(1, rifleman=8), order(2, officer=2), rifleman=20) == [("2", {"officer": 2})]
    assert left(order(1, rifleman=8), source="South", rifleman=8) == [("1", {"rifleman": 8})]


def test_orders_add_up() -> None:
    orders = [order(1, rifleman=8, officer=1), order(2, "South", rifleman=2)]
    assert figures_on_order(orders) == {"rifleman": 10, "officer": 1}
    assert figures_on_order([]) == {}


@given(
    numbers=st.lists(st.integers(1, 9), max_size=4),
    came=st.lists(st.integers(0, 9), max_size=4),
)
def test_it_is_the_same_whether_figures_come_together_or_one_parcel_after_another(
    numbers: list[int], came: list[int]
) -> None:
    orders = [order(at, rifleman=number) for at, number in enumerate(numbers)]
    still = orders
    for number in came:
        still = [*less_received(still, source="North", came={"rifleman": number})]
    assert still == [*less_received(orders, source="North", came={"rifleman": sum(came)})]
    assert sum(each.figures["rifleman"] for each in still) == max(0, sum(numbers) - sum(came))
