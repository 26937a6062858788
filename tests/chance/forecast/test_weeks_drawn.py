"""Weeks to come, drawn from the log and from what is assumed."""

from fractions import Fraction

import numpy

from paradestate.chance.forecast.weeks_drawn import USUAL_WEIGHTS, WeeksDrawn, Weights, from_log
from paradestate.core.work.habit import Habit

DRAWS = 20_000
LOG = tuple(range(100, 900, 100))
WHOLE = [7] * 12


def drawn(habit: Habit, *, weights: Weights = USUAL_WEIGHTS, seed: int = 1) -> numpy.ndarray:
    return WeeksDrawn(habit, draws=DRAWS, seed=seed, weights=weights).more(WHOLE) // 7


def test_the_same_seed_gives_the_same_weeks() -> None:
    habit = Habit(weeks=LOG, usual=Fraction(240))
    assert (drawn(habit) == drawn(habit)).all()
    assert (drawn(habit) != drawn(habit, seed=2)).any()


def test_weeks_of_one_block_follow_each_other_as_in_the_log_and_its_end_joins_its_beginning() -> (
    None
):
    weeks = drawn(Habit(weeks=LOG))
    after = dict(zip(LOG, (*LOG[1:], LOG[0]), strict=True))
    for at in (0, 1, 4, 6, 10):
        for one in LOG:
            assert set(weeks[at + 1][weeks[at] == one]) == {after[one]}
    assert len(set(weeks[6][weeks[5] == LOG[0]])) > 1


def test_newer_weeks_are_drawn_more_often() -> None:
    """The newest counts 1, one that is a half-life older counts half."""
    weights = Weights(block=1, half_life=4)
    numbers = numpy.bincount(drawn(Habit(weeks=LOG), weights=weights)[0] // 100)[1:]
    counts = numpy.exp2(-numpy.arange(8, 0, -1) / 4)
    assert abs(numbers / DRAWS - counts / counts.sum()).max() < 0.015


def test_a_short_log_leaves_its_mean_uncertain() -> None:
    """Blackwell and MacQueen: two draws agree with the chance of a draw again, or by themselves."""
    habit = Habit(weeks=(0, 100))
    weights = Weights(block=1, half_life=10**9)
    weeks = drawn(habit, weights=weights)
    agree = float((weeks[0] == weeks[1]).mean())
    assert abs(agree - (1 / 3 + 2 / 3 * 1 / 2)) < 0.015
    means = weeks.mean(axis=0)
    assert means.std() > 1.5 * 50 / len(WHOLE) ** 0.5
    assert abs(means.mean() - 50) < 2


def test_what_is_assumed_has_its_share() -> None:
    habit = Habit(weeks=(7,) * 4, usual=Fraction(240))
    weights = Weights(prior_weeks=4, half_life=10**9)
    assert from_log(habit, weights) == Fraction(1, 2)
    weeks = drawn(habit, weights=weights)
    assert abs((weeks[0] == 7).mean() - 0.5) < 0.015
    assert from_log(Habit(weeks=(7,))) == 1
    assert from_log(Habit(usual=Fraction(240))) == 0


def test_weeks_that_are_like_those_before_them_tell_as_much_as_fewer() -> None:
    spells, turns = (300,) * 6 + (0,) * 6 + (300,) * 4, (300, 0, 150, 300, 0, 0, 300, 150) * 2
    shares = [from_log(Habit(weeks=weeks, usual=Fraction(240))) for weeks in (spells, turns)]
    assert shares[0] < shares[1] - Fraction(1, 10)


def test_the_level_of_weeks_that_differ_more_than_steady_ones_is_uncertain_for_all_of_a_draw() -> (
    None
):
    """Ten idle weeks of twelve: more than nought is one level, in every week of a draw."""
    weeks = drawn(Habit(weeks=(0, 0, 0, 0, 300, 0, 0, 0, 0, 300, 0, 0)))
    levels = weeks.max(axis=0)
    assert len(set(levels)) > 200
    assert ((weeks == 0) | (weeks == levels)).all()
    assert abs(weeks.mean() - 50) < 8


def test_the_level_of_steady_weeks_is_that_of_the_log() -> None:
    weeks = drawn(Habit(weeks=(200, 300, 240, 260, 220, 280)))
    assert set(numpy.unique(weeks)) == {200, 220, 240, 260, 280, 300}


def test_an_idle_log_stays_idle() -> None:
    assert not drawn(Habit(weeks=(0, 0, 0, 0))).any()


def test_a_level_that_is_assumed_holds_for_all_weeks_of_a_draw() -> None:
    weeks = drawn(Habit(usual=Fraction(240)))
    low = weeks[:, (weeks == 90).any(axis=0)]
    assert set(numpy.unique(low)) == {0, 90, 180, 270, 360}
    assert abs(weeks.mean() - 240) < 2


def test_a_week_with_days_away_is_its_share_in_sevenths() -> None:
    habit = Habit(weeks=(70,))
    weeks = WeeksDrawn(habit, draws=3, seed=1).more([7, 3, 0, 1])
    assert weeks.tolist() == [[490] * 3, [210] * 3, [0] * 3, [70] * 3]


def test_who_is_known_for_nothing_does_nothing() -> None:
    assert not drawn(Habit()).any()
