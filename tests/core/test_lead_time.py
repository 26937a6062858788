"""When an order can be there."""

from dataclasses import replace

from paradestate.core.lead_time import arrival, arriving_within, lead_times, parcel_arrival
from paradestate.core.order import priced
from tests.orders import pack, problem, source

QUICK = replace(pack("A", 300, a=1), lead_days=3)
SLOW = replace(pack("B", 100, a=1), lead_days=14)
UNKNOWN = pack("C", 50, a=1)
ASKED = problem(source("North", QUICK, UNKNOWN), source("South", SLOW, QUICK), a=1)


def test_lead_times_come_shortest_first_and_once() -> None:
    assert lead_times(ASKED) == (3, 14)


def test_only_packs_known_to_be_there_in_time_are_kept() -> None:
    assert [name for name, _ in arriving_within(ASKED, 3).packs()] == [
        ("North", "A"),
        ("South", "A"),
    ]
    assert [name for name, _ in arriving_within(ASKED, 14).packs()] == [
        ("North", "A"),
        ("South", "B"),
        ("South", "A"),
    ]


def test_an_order_is_there_with_its_last_pack_or_nobody_knows_when() -> None:
    assert arrival(ASKED, priced(ASKED, {("North", "A"): 1, ("South", "B"): 1})) == 14
    assert arrival(ASKED, priced(ASKED, {("North", "A"): 1, ("North", "C"): 1})) is None
    assert arrival(ASKED, priced(ASKED, {})) == 0


def test_the_parcel_of_one_source_has_its_own_lead_time() -> None:
    north = replace(pack("N1", 100, rifleman=1), lead_days=3)
    south = replace(pack("S1", 100, rifleman=1), lead_days=9)
    east = pack("E1", 100, rifleman=1)
    asked = problem(source("North", north), source("South", south), source("East", east))
    order = priced(asked, {("North", "N1"): 1, ("South", "S1"): 2, ("East", "E1"): 1})
    days = [parcel_arrival(asked, order, source=name) for name in ("North", "South", "East")]
    assert days == [3, 9, None]
