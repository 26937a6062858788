"""The race of the search here against the proof in another process."""

import multiprocessing
import os
import signal
from dataclasses import replace
from itertools import pairwise

import pytest
from hypothesis import given, settings

from bench.price_lists import catalogue, dense
from paradestate.core.certainty import Exact, Within
from paradestate.core.money import Minor
from paradestate.core.order import OrderProblem, netted, order_problems
from paradestate.core.order_outcome import Barred, MostParcels, OrderAnswer, unsold
from paradestate.solve.clock import clock
from paradestate.solve.order import cheapest_order
from paradestate.solve.order_program import OrderProgram
from paradestate.solve.order_race import LARGE, is_large, raced
from paradestate.solve.order_search import Found, search
from paradestate.solve.program import Advance, Ending
from tests.orders import marenz_problem, pack, problem, source
from tests.solve.drawn import problems_with_stand_ins

SLOW = dense(30, packs=300, seed=1)
"""Takes far longer to prove than any test waits."""


@settings(max_examples=12)
@given(problems_with_stand_ins())
def test_a_race_ends_as_the_proof_alone_does(asked: OrderProblem) -> None:
    asked = netted(asked)
    if unsold(asked) or not asked.number_lacking:
        return
    alone = search(OrderProgram(asked), until=clock(60))
    race = raced(asked, until=clock(60))
    if isinstance(alone, Ending):
        assert race is alone
    else:
        assert isinstance(race, Found)
        assert race.certainty == alone.certainty == Exact()
        assert race.order.total == alone.order.total
        assert race.order.number_left_over == alone.order.number_left_over
        assert order_problems(asked, race.order) == ()


@pytest.mark.parametrize("seed", [1, 2, 3])
def test_a_catalogue_costs_the_same_with_and_without_a_race(seed: int) -> None:
    asked = catalogue(20, seed=seed)
    assert is_large(asked)
    alone = search(OrderProgram(asked), until=clock(60))
    answer = cheapest_order(asked)
    assert isinstance(alone, Found)
    assert isinstance(answer, OrderAnswer)
    assert (answer.order.total, answer.certainty) == (alone.order.total, Exact())
    assert (answer.out_of_time, answer.interrupted) == (False, False)


def test_advances_begin_with_the_first_order_and_never_get_worse() -> None:
    told: list[Advance] = []
    found = raced(catalogue(20, seed=1), until=clock(60), progress=told.append)
    assert isinstance(found, Found)
    assert told[0].best is not None
    assert told[-1].best == told[-1].bound == found.order.total
    for before, after in pairwise(told):
        assert (after.best or 0) <= (before.best or 0)
        assert (after.bound or 0) >= (before.bound or 0)
        assert after.seconds >= before.seconds


def test_time_that_runs_out_leaves_the_best_and_its_bound() -> None:
    found = raced(SLOW, until=clock(2))
    assert isinstance(found, Found)
    assert found.out_of_time
    assert isinstance(found.certainty, Within)
    assert 0 < found.certainty.bound < found.order.total
    assert order_problems(SLOW, found.order) == ()


def test_who_stops_a_race_keeps_the_best() -> None:
    told: list[Advance] = []
    found = raced(SLOW, until=clock(60, stop=lambda: bool(told)), progress=told.append)
    assert isinstance(found, Found)
    assert (found.interrupted, found.out_of_time) == (True, False)
    assert order_problems(SLOW, found.order) == ()


def test_an_order_near_enough_ends_the_race() -> None:
    found = raced(SLOW, until=clock(60), within=100_000_000)
    assert isinstance(found, Found)
    assert (found.out_of_time, found.interrupted) == (False, False)


def test_a_process_that_dies_leaves_the_best_found_here() -> None:
    def killed(advance: Advance) -> None:
        if advance.bound is not None:
            for each in multiprocessing.active_children():
                each.kill()

    told: list[Advance] = []

    def heard(advance: Advance) -> None:
        told.append(advance)
        killed(advance)

    found = raced(SLOW, until=clock(4), progress=heard)
    assert isinstance(found, Found)
    assert found.out_of_time
    died = next(number for number, advance in enumerate(told) if advance.bound is not None)
    assert len({advance.best for advance in told[died:]}) > 1  # it was bettered even so
    assert order_problems(SLOW, found.order) == ()


@pytest.mark.skipif(not hasattr(signal, "SIGSTOP"), reason="only POSIX halts processes")
def test_a_process_that_no_longer_answers_is_ended() -> None:
    def halted(advance: Advance) -> None:
        if advance.bound is not None:
            for each in multiprocessing.active_children():
                os.kill(each.pid or 0, signal.SIGSTOP)

    found = raced(SLOW, until=clock(3), progress=halted)
    assert isinstance(found, Found)
    assert found.out_of_time
    assert multiprocessing.active_children() == []


def test_where_a_proof_cannot_be_tried_orders_are_bettered_and_nothing_is_proved() -> None:
    """Great prices that share no divisor are too much for the solver, not for the search."""
    cheap = catalogue(20, seed=1)
    dear = {
        name: replace(
            seller,
            packs={
                key: replace(each, price=Minor(each.price * 1_000_003 + number), multibuy={})
                for number, (key, each) in enumerate(seller.packs.items())
            },
        )
        for name, seller in cheap.sources.items()
    }
    asked = replace(cheap, sources=dear)
    found = raced(asked, until=clock(2))
    assert isinstance(found, Found)
    assert (found.certainty, found.out_of_time) == (Within(bound=0), True)
    assert order_problems(asked, found.order) == ()


def test_without_time_there_is_no_order() -> None:
    assert raced(SLOW, until=clock(0)) is Ending.STOPPED
    assert raced(SLOW, until=clock(9, stop=lambda: True)) is Ending.INTERRUPTED


def test_a_large_order_that_is_barred_says_by_what() -> None:
    rifles = [pack(f"R{number}", 100, rifleman=1) for number in range(LARGE)]
    officers = [pack(f"O{number}", 100, officer=1) for number in range(LARGE)]
    both = problem(source("North", *rifles), source("South", *officers), rifleman=1, officer=1)
    answer = cheapest_order(replace(both, most_parcels=1))
    assert answer == Barred(limits=(MostParcels(most=1),))


def test_what_is_large_is_told_by_the_number_of_packs() -> None:
    assert not is_large(marenz_problem())
    packs = [pack(f"P{number}", 100, rifleman=1) for number in range(LARGE)]
    assert is_large(problem(source("North", *packs), rifleman=1))
    assert not is_large(problem(source("North", *packs[1:]), rifleman=1))
