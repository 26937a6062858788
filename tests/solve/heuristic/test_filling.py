"""A gap in an order, filled at the least cost."""

from dataclasses import replace

import pytest

from paradestate.core.cover import Substitutes
from paradestate.core.figure import Match
from paradestate.core.order import OrderProblem
from paradestate.solve.heuristic.filling import Filling, filled, gap_of, with_filling
from paradestate.solve.heuristic.shelf import Packs, Steps, shelf_of
from paradestate.solve.program import Ending
from tests.orders import pack, problem, source

ASKED = problem(
    source(
        "North",
        pack("six", 700, rifleman=6),
        pack("four", 500, rifleman=4),
        carriage={0: 100, 2000: 0},
    ),
    rifleman=11,
)


def filling_of(
    asked: OrderProblem, *, kept: Packs, steps: Steps, whole: bool
) -> tuple[Filling | Ending, dict[int, int]]:
    shelf = shelf_of(asked)
    gap = gap_of(shelf, shelf.lots, kept=kept, steps=steps)
    filling = filled(gap, whole=whole)
    packs = {} if isinstance(filling, Ending) else with_filling(gap, filling, kept=kept)
    return filling, packs


def test_eleven_riflemen_are_two_sixes() -> None:
    filling, packs = filling_of(ASKED, kept={}, steps=(0,), whole=True)
    assert isinstance(filling, Filling)
    assert (round(filling.cost), packs, filling.proved) == (1400, {0: 2}, True)


def test_in_parts_eleven_riflemen_are_eleven_sixths_of_a_pack() -> None:
    filling, packs = filling_of(ASKED, kept={}, steps=(0,), whole=False)
    assert isinstance(filling, Filling)
    assert filling.number[0] == pytest.approx(11 / 6)
    assert filling.worth[0] == pytest.approx(700 / 6)
    assert packs == {0: 1}


def test_beside_a_pack_that_stays_only_what_lacks_is_bought() -> None:
    filling, packs = filling_of(ASKED, kept={1: 2}, steps=(0,), whole=True)
    assert isinstance(filling, Filling)
    assert (round(filling.cost), packs) == (500, {1: 3})


def test_a_step_asks_for_its_goods() -> None:
    filling, packs = filling_of(ASKED, kept={}, steps=(1,), whole=True)
    assert isinstance(filling, Filling)
    assert (round(filling.cost), packs) == (2000, {1: 4})


def test_nothing_is_bought_from_a_closed_source() -> None:
    assert filling_of(ASKED, kept={}, steps=(-1,), whole=True) == (Ending.INFEASIBLE, {})


def test_only_what_is_cheap_enough_is_looked_for() -> None:
    shelf = shelf_of(ASKED)
    gap = gap_of(shelf, shelf.lots, kept={}, steps=(0,))
    assert filled(gap, whole=True, below=1000.0) is Ending.INFEASIBLE


def test_bought_figures_stand_in_once() -> None:
    both = problem(
        source("North", pack("S", 100, signaller=2), pack("R", 900, rifleman=1)),
        rifleman=1,
        signaller=1,
    )
    stand_ins = Substitutes(may_stand_for={"signaller": {"rifleman": Match.GOOD}}, bought_too=True)
    asked = replace(both, substitutes=stand_ins)
    assert filling_of(asked, kept={}, steps=(0,), whole=True)[1] == {0: 1}
    more = replace(asked, want={"rifleman": 2, "signaller": 1})
    assert filling_of(more, kept={}, steps=(0,), whole=True)[1] == {0: 2}
