"""How likely those who are out of action come back."""

from fractions import Fraction
from itertools import product

from paradestate.chance.recovery import chance_of_return, recovered, recovery_odds
from paradestate.core.campaign.casualty import RollGroup
from paradestate.core.campaign.next_strength import PatternStrength
from tests.core.campaign.campaigns import ON_THREE


def strength(*, wanted: int, still_open: int, pool: int = 0) -> PatternStrength:
    return PatternStrength(
        pattern="section", roster=6, wanted=wanted, lost=0, open=still_open, pool=pool
    )


def groups(*sizes: int) -> tuple[RollGroup, ...]:
    return tuple(
        RollGroup(name=str(place), pattern="section", stands=("x",) * size)
        for place, size in enumerate(sizes)
    )


def test_six_out_that_come_back_on_three_or_more() -> None:
    """Design 3.22: expected 4; 496/729 for at least 4; all 6: 8.8 %; at most 2: 10.0 %."""
    back = recovered([1] * 6, by=ON_THREE)
    assert back.mean == 4
    assert back.at_least(4) == Fraction(496, 729)
    assert round(float(back.of(6)), 3) == 0.088
    assert round(float(1 - back.at_least(3)), 3) == 0.1
    assert sum(back.of(number) for number in range(7)) == 1


def test_a_roll_for_a_platoon_brings_back_all_of_it_or_nobody() -> None:
    back = recovered([3, 3], by=ON_THREE)
    assert {number: back.of(number) for number in back.counts} == {
        0: Fraction(1, 9),
        3: Fraction(4, 9),
        6: Fraction(4, 9),
    }


def test_odds_agree_with_every_fall_of_the_dice() -> None:
    sizes = (1, 2, 3)
    known = strength(wanted=5, still_open=6, pool=2)
    odds = recovery_odds(groups(*sizes), [known], recovery={"section": ON_THREE})
    falls = list(product(range(1, 7), repeat=len(sizes)))
    came = [sum(size for size, face in zip(sizes, fall, strict=True) if face > 2) for fall in falls]
    assert odds.none_needed == Fraction(sum(each >= 5 for each in came), len(falls))
    assert odds.pool_enough == Fraction(sum(each >= 3 for each in came), len(falls))
    assert odds.back.mean == Fraction(sum(came), len(falls))
    assert odds.of_each == {"section": Fraction(2, 3)} == {"section": chance_of_return(ON_THREE)}


def test_who_is_lost_already_and_isnt_replaced_makes_it_impossible() -> None:
    short = PatternStrength(pattern="gun", roster=2, wanted=2, lost=1, open=0, pool=1)
    odds = recovery_odds((), [short], recovery={})
    assert odds.none_needed == 0
    assert odds.pool_enough == 1
    assert odds.back.mean == 0
