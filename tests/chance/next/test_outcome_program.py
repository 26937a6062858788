"""The best basket is that of one whole-number program over all outcomes."""

import pytest

from tests.chance.next.examples import osk_worth
from tests.chance.next.test_advise import choosing, found
from tests.next_lists import next_list
from tests.outcome_program import Purse, answered


def test_the_example_as_one_program() -> None:
    """Section 3.13 of the computations."""
    purse = Purse(brings=[("guns", 1), ("tanks", 1)], prices=[8, 12], most=[3, 3], money=20)
    answer = answered(osk_worth(), owned={"machine guns": 2}, purse=purse, seconds=20)
    assert (answer.is_proved, answer.basket) == (True, (2, 0))
    assert answer.value == pytest.approx(31 / 3)
    assert found(choosing(20)).best.basket == answer.basket


@pytest.mark.parametrize("seed", [1, 2])
def test_invented_lists_as_one_program(seed: int) -> None:
    drawn = next_list(6, seed=seed, rolled=1, candidates=4, money=20)
    answer = answered(drawn.game, owned=drawn.owned, purse=drawn.purse, seconds=30)
    best = drawn.found()
    assert answer.is_proved
    assert answer.value == pytest.approx(float(best.value))
    (value,) = drawn.values([answer.basket])
    assert value == best.value
