"""The owner's worths as whole numbers."""

from fractions import Fraction

from paradestate.chance.fallback.opinion import Change, as_said, changed
from paradestate.core.game import Purchase
from paradestate.core.support.offer import Offer
from tests.chance.fallback.fallbacks import worth

GUNS = Offer(name="guns", cost={1: 3, 2: 5}, worths=worth(n1=Fraction(3, 2), n2=Fraction(7, 3)))
ONE, TWO = (Purchase(entry="guns", number=number) for number in (1, 2))


def test_worths_are_whole_numbers_of_the_least_common_part() -> None:
    said = as_said([GUNS])
    assert said.unit == 6
    assert [said.worth_taken(GUNS, purchase) for purchase in (ONE, TWO)] == [9, 14]


def test_without_worths_the_unit_is_one() -> None:
    assert as_said([]).unit == 1


def test_a_changed_worth_counts_once_with_its_slope_where_it_is_the_one_that_counts() -> None:
    change = Change(entry="guns", choice="", number=2, worth=Fraction(4))
    said = changed([GUNS], change, slope=1, ways=10)
    assert said.unit == 6 * 21
    assert said.worth_taken(GUNS, ONE) == 9 * 21
    assert said.worth_taken(GUNS, TWO) == 4 * 6 * 21 + 1
    other = Offer(name="horse", cost={2: 1}, worths=worth(n2=1))
    assert said.worth_taken(other, Purchase(entry="horse", number=2)) == 6 * 21
