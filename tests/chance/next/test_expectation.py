"""The expected worth of stocks over all games."""

from dataclasses import replace
from fractions import Fraction

import pytest

from paradestate.chance.force import allowed
from paradestate.chance.force.allowed import Lot
from paradestate.chance.next import expectation as module
from paradestate.chance.next.expectation import Expectation
from paradestate.core.certainty import Sampled
from paradestate.core.support.chances import chances
from tests.chance.next.examples import (
    osk,
    osk_bought,
    osk_expectation,
    osk_terms,
    play_of,
    worth_of,
)

BASKETS = [(0, 0), (1, 0), (2, 0), (0, 1), (1, 1)]
VALUES = [6, 10, Fraction(31, 3), Fraction(47, 6), 10]
"""Section 3.13 of the computations: 6.00, 10.00, 10.33, 7.83, 10.00."""


def test_the_check_values_of_the_example() -> None:
    assert osk_expectation().values([osk_bought(each) for each in BASKETS]) == VALUES


def test_sums_too_great_for_the_machine_are_made_all_the_same(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setattr(module, "GREATEST_SUM", 1)
    assert osk_expectation().values([osk_bought(each) for each in BASKETS]) == VALUES


def test_ways_too_great_for_the_machine_are_no_matter_where_nothing_is_worth_anything() -> None:
    play = play_of(osk_terms(), osk(), most=osk_bought((3, 3))[0])
    poor = replace(play, points=chances({0: 10**30, 1: 10**30}))
    assert Expectation([worth_of(poor)]).values([osk_bought((1, 0))]) == [Fraction(0)]


def test_foresight_is_the_mean_of_the_best_in_each_outcome() -> None:
    found = osk_expectation()
    stocks = [osk_bought(each) for each in BASKETS]
    found.values(stocks)
    assert found.foresight(stocks) == Fraction(31, 3)


def test_games_count_by_their_share() -> None:
    half = replace(play_of(osk_terms(), osk(), most=osk_bought((3, 3))[0]), share=Fraction(1, 4))
    found = Expectation([worth_of(half), None])
    assert found.values([(osk_bought((1, 0)) * 2)]) == [Fraction(10, 4)]


def test_what_is_exact_is_not_sampled() -> None:
    assert osk_expectation().sampled(osk_bought((1, 0))) is None


def test_the_interval_of_a_sample_holds_the_truth(monkeypatch: pytest.MonkeyPatch) -> None:
    """In at least 16 of 20 samples; 19 are to be expected."""
    monkeypatch.setattr(allowed, "MOST_OUTCOMES", 1)
    tank, nothing = osk_bought((0, 1)), osk_bought((0, 0))
    hits = 0
    for seed in range(20):
        found = osk_expectation(lot=Lot(draws=60, seed=seed))
        values = found.values([nothing, tank])
        assert isinstance(values, list)
        now, value = values
        sure, gain = found.sampled(tank), found.sampled(tank, instead_of=nothing)
        assert isinstance(sure, Sampled)
        assert sure == gain  # without the tank nothing varies
        assert (sure.draws, sure.seed) == (60, seed)
        hits += abs(value - Fraction(47, 6)) <= sure.plus_or_minus
        assert now == 6
    assert hits >= 16


def test_what_never_varies_is_right_to_nought(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(allowed, "MOST_OUTCOMES", 1)
    found = osk_expectation().sampled(osk_bought((0, 0)))
    assert isinstance(found, Sampled)
    assert found.plus_or_minus == 0
