"""Which work waits for what is on order."""

import datetime
from dataclasses import replace
from fractions import Fraction

from paradestate.core.on_order import OnOrder
from paradestate.core.work.order_of_work import ladder
from paradestate.core.work.to_come import (
    goals_of,
    orders_of,
    parcel_names,
    parcels_of,
    there_on,
    waiting_of,
)
from tests.core.work.works import MINUTES, sound_load

TODAY = datetime.date(2026, 3, 5)
SOON, LATE = datetime.date(2026, 3, 20), datetime.date(2026, 4, 10)
NO_MINUTES = "bench: {stages: [raw, painted], minutes: {foot: {painted: 0}}}\n"
STOCK = "stock: {officer: {raw: 4}, rifleman: {raw: 11}}\n"
"""Of the smallest force all is here but two sections; of the third company nothing."""


def order(number: int, source: str = "North", **figures: int) -> OnOrder:
    return OnOrder(entry=f"{number}", source=source, day=TODAY, expected=SOON, figures=figures)


NORTH = order(1, rifleman=6)
SOUTH = replace(order(2, "South", rifleman=4), expected=LATE)


def test_what_is_expected_soonest_goes_to_the_stands_that_are_served_first() -> None:
    load = sound_load(MINUTES, STOCK, on_order=(SOUTH, NORTH))
    waits = {name: work.to_come for name, work in load.works.items() if work.to_come}
    assert [[(each.source, dict(each.figures)) for each in work] for work in waits.values()] == [
        [("North", {"rifleman": 4})],
        [("North", {"rifleman": 2}), ("South", {"rifleman": 2})],
        [("South", {"rifleman": 1})],
        [("South", {"rifleman": 1})],
    ]
    first, *_, last = (load.works[name] for name in waits)
    assert first.waiting == {"1": 4 * 5}
    assert not first.unordered
    assert last.waiting == {"2": 5}
    assert last.unordered == {"rifleman": 3}
    assert last.lacking == {"rifleman": 4}


def test_bought_figures_stand_in_for_nothing() -> None:
    load = sound_load(MINUTES, on_order=(order(1, sergeant=9),))
    assert not any(work.to_come for work in load.works.values())


def test_the_day_on_which_all_figures_of_some_stands_are_there() -> None:
    works = sound_load(MINUTES, STOCK, on_order=(NORTH, SOUTH)).works
    waits = [work for work in works.values() if work.to_come]
    assert there_on(works[name] for name in ("Command",)) == datetime.date.min
    assert there_on(waits[:1]) == SOON
    assert there_on(waits[:2]) == LATE
    assert there_on(waits) == datetime.date.max
    unsaid = sound_load(MINUTES, STOCK, on_order=(replace(NORTH, expected=None),)).works
    assert there_on(work for work in unsaid.values() if work.to_come) == datetime.date.max


def test_orders_of_many_stands_add_up() -> None:
    works = sound_load(MINUTES, STOCK, on_order=(SOUTH, NORTH)).works
    assert orders_of(works.values()) == (NORTH, SOUTH)


def test_only_a_day_that_is_not_past_is_waited_for() -> None:
    late = replace(NORTH, expected=TODAY - datetime.timedelta(days=1))
    unsaid = replace(SOUTH, expected=None)
    (parcel,) = parcels_of((late, order(3), unsaid), today=SOON)
    assert parcel.arrivals == {SOON: 1}
    assert parcels_of((), today=TODAY) == ()


def test_parcels_are_told_apart_by_as_little_as_needs_be() -> None:
    assert list(parcel_names((NORTH, SOUTH)).values()) == ["North", "South"]
    other = replace(order(3), day=TODAY + datetime.timedelta(days=1))
    assert list(parcel_names((NORTH, other)).values()) == [
        "North, ordered on 5 March 2026",
        "North, ordered on 6 March 2026",
    ]
    assert list(parcel_names((NORTH, order(4))).values()) == [
        "North, ordered on 5 March 2026 (1)",
        "North, ordered on 5 March 2026 (4)",
    ]


def test_a_milestone_waits_for_the_parcels_of_its_stands() -> None:
    made = ladder(sound_load(MINUTES, STOCK, on_order=(NORTH, SOUTH)))
    parcels = parcels_of((NORTH, SOUTH), today=TODAY)
    smallest, whole = goals_of(made, parcels, orders=(NORTH, SOUTH))
    assert smallest.waiting == {"North": 6 * 5, "South": 2 * 5}
    assert whole.waiting == {"North": 6 * 5, "South": 4 * 5}
    assert smallest.minutes == 3 * 10 + 4 * 20
    assert whole.minutes == 4 * 10 + 6 * 20
    alone = goals_of(made, parcels[:1], orders=(NORTH, SOUTH))
    assert [goal.waiting for goal in alone] == [{"North": 30}, {"North": 30}]


def test_a_batch_of_which_nothing_is_here_is_set_up_with_the_first_parcel() -> None:
    none = "stock stands: {command: {painted: 4}}\n"
    orders = (order(1, rifleman=20), replace(order(2, "South", rifleman=4), expected=LATE))
    made = ladder(sound_load(f"{MINUTES}  set up: 30 min\n", none, on_order=orders))
    first, last = made.rungs
    parcels = parcels_of(orders, today=TODAY)
    assert waiting_of((first,), parcels, orders=orders) == {"North": first.minutes + 30}
    assert waiting_of((first, last), parcels, orders=orders) == {
        "North": Fraction(20 * 5 + 2 * 30),
        "South": Fraction(4 * 5),
    }


def test_what_takes_no_minutes_waits_for_its_parcels_alone() -> None:
    orders = (order(1, rifleman=99), replace(order(2, "South", officer=99), expected=LATE))
    made = ladder(sound_load(NO_MINUTES, on_order=orders))
    parcels = parcels_of(orders, today=TODAY)
    smallest, whole = goals_of(made, parcels, orders=orders)
    assert not smallest.waiting
    assert smallest.parcels == {"North", "South"}
    assert not smallest.is_reached
    assert not smallest.is_undated
    assert (smallest.unfinished, whole.unfinished) == (7, 10)
    (half, _) = goals_of(made, parcels[:1], orders=orders)
    assert half.parcels == {"North"}
    assert half.is_undated


def test_what_nobody_ordered_has_no_day_and_what_is_here_needs_none() -> None:
    lacking, _ = goals_of(ladder(sound_load(NO_MINUTES)), (), orders=())
    assert lacking.is_undated
    here, _ = goals_of(
        ladder(sound_load(NO_MINUTES, "stock: {officer: {raw: 9}, rifleman: {raw: 99}}\n")),
        (),
        orders=(),
    )
    assert (here.is_undated, here.is_reached, here.parcels) == (False, False, frozenset())
