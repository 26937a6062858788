"""Exact chances of arrivals and strengths."""

from fractions import Fraction
from itertools import product

import pytest

from paradestate.chance.scenario import MOST_TURNS, arrived_by, stands_there, turns_of
from paradestate.core.dice import Dice, LookUp, Row, SignedTerm, Throw, Totals
from paradestate.core.scenario import Arrival

D6 = Dice(terms=(SignedTerm(term=Throw(number=1, sides=6)),))


def rolled(least: int, *, first: int = 1, last: int | None = None) -> Arrival:
    return Arrival(roll=D6, on=Totals(least=least, most=None), from_turn=first, until_turn=last)


def test_a_six_within_four_turns_is_the_wager_of_de_mere() -> None:
    """1 - (5/6)^4 = 671/1296, as Pascal wrote to Fermat on 29 July 1654."""
    assert arrived_by(rolled(6), turn=4) == Fraction(671, 1296)


@pytest.mark.parametrize(
    ("turn", "chance"), [(2, 0), (3, Fraction(1, 2)), (4, Fraction(3, 4)), (9, Fraction(3, 4))]
)
def test_it_is_rolled_for_from_the_first_turn_to_the_last(turn: int, chance: Fraction) -> None:
    assert arrived_by(rolled(4, first=3, last=4), turn=turn) == chance


def test_what_is_not_rolled_for_is_there_in_its_turn() -> None:
    assert [arrived_by(Arrival(from_turn=3), turn=turn) for turn in (2, 3, 4)] == [0, 1, 1]
    assert list(turns_of(Arrival(from_turn=3))) == [(3, Fraction(1))]
    assert list(turns_of(Arrival(from_turn=3, on=Totals(least=1, most=1)))) == [(3, Fraction(1))]


def test_arrivals_by_every_row_of_throws_counted() -> None:
    """The slow twin: all 6^3 rows of three turns, one by one."""
    for least, turns in product(range(1, 7), range(1, 4)):
        rows = list(product(range(1, 7), repeat=turns))
        there = sum(any(face >= least for face in row) for row in rows)
        assert arrived_by(rolled(least), turn=turns) == Fraction(there, len(rows))


def test_turns_are_listed_until_it_is_sure_enough_or_over() -> None:
    assert [turn for turn, _ in turns_of(rolled(4, first=2))] == [2, 3, 4, 5, 6]
    assert [turn for turn, _ in turns_of(rolled(4, first=2, last=3))] == [2, 3]
    assert len(list(turns_of(rolled(6)))) == MOST_TURNS


def test_how_many_stands_take_the_field() -> None:
    rows = (
        Row(least=1, most=2, gives=Fraction(1, 2)),
        Row(least=3, most=4, gives=Fraction(3, 4)),
        Row(least=5, most=6, gives=Fraction(1)),
    )
    there = stands_there(LookUp(roll=D6, gives=rows), stands=7)
    assert there.counts == {4: 1, 5: 1, 7: 1}  # 3.5 and 5.25, the half rounded up
    assert there.mean == Fraction(16, 3)
