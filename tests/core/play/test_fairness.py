"""Whether a season's dice came evenly, beside a library of statistics."""

from fractions import Fraction

from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.stats import chi2, chisquare

from paradestate.core.play.fairness import ALARM, fairness, uneven_chance

SEASON = (8, 9, 11, 10, 9, 13)
NEAR = Fraction(1, 1_000_000)


def test_sixty_rolls_of_a_season_are_unremarkable() -> None:
    """Check value 3.21: 1.6 on 5 degrees, p = 0.90."""
    found = fairness(SEASON)
    assert (found.statistic, found.degrees, found.rolls) == (Fraction(8, 5), 5, 60)
    assert round(found.chance, 2) == Fraction(9, 10)
    assert found.is_enough
    assert not found.is_alarming


def test_the_alarm_is_at_11_07_on_five_degrees() -> None:
    assert uneven_chance(Fraction("11.07"), degrees=5) > ALARM
    assert uneven_chance(Fraction("11.08"), degrees=5) < ALARM
    assert fairness((20, 8, 8, 8, 8, 8)).is_alarming


def test_few_rolls_say_nothing() -> None:
    found = fairness((9, 0, 0, 0, 0, 0))
    assert found.chance < ALARM
    assert (found.is_enough, found.is_alarming) == (False, False)


def test_faces_that_are_all_alike_could_not_be_more_even() -> None:
    even = fairness((7, 7))
    assert even.statistic == 0
    assert even.chance == 1
    assert fairness((7, 7, 7)).chance == 1


def test_wildly_uneven_faces_have_no_chance() -> None:
    assert fairness((900, 0, 0, 0, 0, 0)).chance == 0
    assert fairness((900, 0, 0)).chance == 0


@settings(max_examples=60)
@given(came=st.lists(st.integers(0, 60), min_size=2, max_size=20).filter(any))
def test_scipy_finds_the_same_statistic_and_chance(came: list[int]) -> None:
    found, other = fairness(came), chisquare(came)
    assert abs(found.statistic - Fraction(float(other.statistic))) < NEAR
    assert abs(found.chance - Fraction(float(other.pvalue))) < NEAR


@settings(max_examples=60)
@given(statistic=st.fractions(0, 200, max_denominator=97), degrees=st.integers(1, 99))
def test_scipy_has_the_same_tail(statistic: Fraction, degrees: int) -> None:
    other = Fraction(float(chi2.sf(float(statistic), degrees)))
    assert abs(uneven_chance(statistic, degrees=degrees) - other) < NEAR
