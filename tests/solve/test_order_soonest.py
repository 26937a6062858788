"""The order that is there soonest."""

from dataclasses import replace

from paradestate.core.order_outcome import NobodySells, NotFound, OrderAnswer, Why
from paradestate.solve.order_soonest import soonest_order
from tests.orders import pack, problem, source

QUICK = replace(pack("A", 300, a=1), lead_days=3)
SLOW = replace(pack("B", 100, a=1, b=1), lead_days=14)
UNKNOWN = pack("C", 50, a=1, b=1, c=1)
NORTH = source("North", QUICK, UNKNOWN, SLOW)


def packs_for(**want: int) -> list[str]:
    asked, outcome = soonest_order(problem(NORTH, **want))
    assert isinstance(outcome, OrderAnswer)
    assert set(outcome.order.packs) <= {name for name, _ in asked.packs()}
    return [pack for _, pack in outcome.order.packs]


def test_a_dearer_pack_is_bought_where_it_is_there_sooner() -> None:
    assert packs_for(a=1) == ["A"]
    assert packs_for(a=1, b=1) == ["B"]


def test_packs_whose_lead_time_nobody_knows_come_last() -> None:
    assert packs_for(a=1, b=1, c=1) == ["C"]


def test_what_nobody_sells_and_time_that_is_up_are_said() -> None:
    assert soonest_order(problem(NORTH, d=1))[1] == NobodySells(kinds=("d",))
    assert soonest_order(problem(NORTH, a=1), seconds=0)[1] == NotFound(why=Why.OUT_OF_TIME)
