"""The packs of one sort in a program: every number has one cost, that of the till."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from paradestate.core.receipt import cost_of
from paradestate.core.source import Pack
from paradestate.solve.error import TooGreatError
from paradestate.solve.pack_program import PackTerms, add_pack, repeats_from, values_for
from paradestate.solve.program import Ending, Program, Solution
from tests.orders import pack


def solved(offered: Pack, *, number: int, most: int, sign: int) -> tuple[PackTerms, Solution]:
    """The least (or with -1 the greatest) cost at which so many packs are bought."""
    program = Program()
    terms = add_pack(program, offered, most=most)
    program.row(terms.number, least=number, most=number)
    program.minimise({variable: sign * price for variable, price in terms.goods.items()})
    return terms, program.solved(seconds=9)


def cost(terms: PackTerms, solution: Solution) -> int:
    return sum(price * solution.values[variable] for variable, price in terms.goods.items())


@st.composite
def offers(draw: st.DrawFn) -> Pack:
    sizes = draw(st.lists(st.integers(1, 6), max_size=3, unique=True))
    lots = {size: draw(st.integers(0, size * 10)) for size in sizes}
    return pack("A", draw(st.integers(0, 10)), multibuy=lots, rifleman=1)


@settings(max_examples=60)
@given(offers(), st.integers(0, 30), st.sampled_from([1, -1]))
def test_a_number_costs_what_the_till_says_however_the_solver_would_like_it(
    offered: Pack, number: int, sign: int
) -> None:
    assert cost(*solved(offered, number=number, most=30, sign=sign)) == cost_of(
        offered, number=number
    )


@settings(max_examples=60)
@given(offers(), st.integers(0, 30), st.integers(0, 30))
def test_a_number_has_values_that_buy_it_and_cost_what_the_till_says(
    offered: Pack, number: int, most: int
) -> None:
    program = Program()
    terms = add_pack(program, offered, most=most)
    values = values_for(terms, number)
    if number > most:
        assert values == {}
        return
    program.minimise(dict.fromkeys(values, 1))
    for variable, value in values.items():
        program.row({variable: 1}, least=value, most=value)
    solution = program.solved(seconds=9)
    assert solution.ending is Ending.OPTIMAL
    assert cost(terms, solution) == cost_of(offered, number=number)
    assert sum(values[each] * size for each, size in terms.number.items()) == number


@pytest.mark.parametrize("multibuy", [{}, {3: 50}, {3: 50, 4: 60}])
def test_no_more_are_bought_than_the_most(multibuy: dict[int, int]) -> None:
    offered = pack("A", 20, multibuy=multibuy, rifleman=1)
    for most in range(8):
        for number, ending in ((most, Ending.OPTIMAL), (most + 1, Ending.INFEASIBLE)):
            _, solution = solved(offered, number=number, most=most, sign=1)
            assert solution.ending is ending


def test_multibuys_repeat_from_the_number_at_which_the_best_lot_is_always_taken() -> None:
    assert repeats_from(pack("A", 20, rifleman=1)) == 0
    assert repeats_from(pack("A", 20, multibuy={3: 50}, rifleman=1)) == 0
    offered = pack("A", 20, multibuy={3: 48, 5: 75}, rifleman=1)
    start = repeats_from(offered)
    costs = [cost_of(offered, number=number) for number in range(60)]
    assert all(costs[number + 5] == costs[number] + 75 for number in range(start, 55))
    assert start == 0 or costs[start + 4] != costs[start - 1] + 75


def test_multibuys_too_great_to_be_listed_are_refused() -> None:
    with pytest.raises(TooGreatError, match="multi-buys of A"):
        repeats_from(pack("A", 9, multibuy={9: 80, 999: 8000}, rifleman=1))
