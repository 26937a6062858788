"""Minutes of figures at each stage, by what is given and what was logged."""

import datetime
from fractions import Fraction

import numpy
import pytest
from scipy.optimize import nnls

from paradestate.core.bench import Bench
from paradestate.core.figure import FigureKind, Sort
from paradestate.core.work.bench_log import Stretch
from paradestate.core.work.learned_minutes import LearnedMinutes, LearnedRate, learned_minutes

ON = datetime.date(2026, 3, 5)
FIGURES = {
    "rifleman": FigureKind(name="rifleman"),
    "officer": FigureKind(name="officer"),
    "truck": FigureKind(name="truck", sort=Sort.VEHICLE),
}
STAGES = ("in packet", "painted", "based")
BENCH = Bench(
    stages=STAGES,
    minutes={
        "foot": {"painted": Fraction(15), "based": Fraction(5)},
        "officer": {"painted": Fraction(25)},
    },
    minutes_per_stand={"staff": Fraction(90)},
)


ON_STAND = {"staff": {"officer": 2}, "rifle section": {"rifleman": 4}}


def stretch(minutes: int, *, onto: str = "", **reached: int) -> Stretch:
    """`rifleman_painted=6`; `onto` is the pattern of the stands that all of them are on."""
    steps = {(name.split("_")[0], name.split("_")[1]): each for name, each in reached.items()}
    on_stands = {(onto, *step): number for step, number in steps.items()} if onto else {}
    return Stretch(last=ON, minutes=minutes, reached=steps, on_stands=on_stands)


def learned(*stretches: Stretch, prior_sessions: int = 3) -> LearnedMinutes:
    return learned_minutes(
        stretches,
        bench=BENCH,
        figures=FIGURES,
        on_stand=ON_STAND,
        prior_sessions=prior_sessions,
    )


def test_nothing_logged_teaches_nothing() -> None:
    assert learned() == LearnedMinutes()
    assert learned().applied(BENCH) == BENCH


def test_the_owners_minutes_count_as_three_sessions_of_the_usual_size() -> None:
    """One session of 8 at 25 minutes each beside three of 8 at 15: 17.5, a quarter logged."""
    assert learned(stretch(200, rifleman_painted=8)).rates == (
        LearnedRate(
            what="foot",
            stage="painted",
            minutes=Fraction(35, 2),
            given=Fraction(15),
            stretches=1,
            logged=Fraction(1, 4),
        ),
    )


def test_many_sessions_outweigh_what_was_given() -> None:
    (rate,) = learned(*[stretch(200, rifleman_painted=8)] * 97).rates
    assert rate.minutes == Fraction("24.70")
    assert rate.logged == Fraction(97, 100)


def test_kinds_with_minutes_of_their_own_are_told_apart_and_others_by_sort() -> None:
    taught = learned(
        stretch(120, rifleman_painted=8),
        stretch(25, officer_painted=1),
        stretch(40, officer_based=1),
    )
    assert [(rate.what, rate.stage, rate.given) for rate in taught.rates] == [
        ("foot", "painted", Fraction(15)),
        ("officer", "based", None),
        ("officer", "painted", Fraction(25)),
    ]
    assert taught.stretches == 3


def test_the_minutes_are_those_of_another_program() -> None:
    """Scipy's nnls (Lawson and Hanson, 1974), the owner's word as rows of the table."""
    table = [
        stretch(100, rifleman_painted=5, rifleman_based=3),
        stretch(70, rifleman_painted=2, officer_painted=1),
        stretch(10, rifleman_based=9),
        stretch(12, officer_painted=2, rifleman_based=1),
    ]
    steps = [("foot", "based"), ("foot", "painted"), ("officer", "painted")]
    rows = numpy.array([[3, 5, 0], [0, 2, 1], [9, 0, 0], [1, 0, 2]], dtype=float)
    sizes = numpy.array([13 / 3, 7 / 2, 3 / 2])
    given = numpy.array([5, 15, 25])
    prior = numpy.diag(sizes * numpy.sqrt(3))
    theirs, _ = nnls(
        numpy.vstack([rows, prior]), numpy.concatenate([[100, 70, 10, 12], prior @ given])
    )
    taught = learned(*table)
    assert [(rate.what, rate.stage) for rate in taught.rates] == steps
    assert [float(rate.minutes) for rate in taught.rates] == pytest.approx(list(theirs), abs=0.0051)


def test_figures_of_which_nothing_is_given_start_from_the_mean_of_all_work() -> None:
    (rate,) = learned(stretch(60, truck_painted=2)).rates
    assert (rate.what, rate.given, rate.minutes) == ("truck", None, Fraction(30))


def test_stands_with_minutes_of_their_own_are_learned_by_the_same_rule() -> None:
    """A session of one staff at 130 minutes beside three at 90 is 100, a quarter logged."""
    taught = learned(stretch(130, onto="staff", officer_painted=2, officer_based=2))
    assert taught == LearnedMinutes(
        stands=(
            LearnedRate(
                what="staff",
                stage="",
                minutes=Fraction(100),
                given=Fraction(90),
                stretches=1,
                logged=Fraction(1, 4),
            ),
        ),
        stretches=1,
    )
    assert taught.applied(BENCH).minutes_per_stand == {"staff": Fraction(100)}
    assert taught.applied(BENCH).minutes == BENCH.minutes


def test_a_figure_brought_to_a_stage_is_its_part_of_a_stand() -> None:
    """Of officers only paint is given, so paint is the whole of their staff, half of it for one."""
    (rate,) = learned(stretch(65, onto="staff", officer_painted=1)).stands
    assert rate.minutes == Fraction(100)
    assert learned(stretch(10, onto="staff", officer_based=1)) == LearnedMinutes()
    without = learned_minutes(
        [stretch(65, onto="staff", officer_painted=1)], bench=BENCH, figures=FIGURES, on_stand={}
    )
    assert [(each.what, each.minutes) for each in without.rates] == [("officer", Fraction(35))]


def test_stands_without_minutes_of_their_own_teach_what_their_figures_take() -> None:
    on, loose = (
        learned(stretch(200, onto=onto, rifleman_painted=8)) for onto in ("rifle section", "")
    )
    assert on == loose


def test_figures_and_stands_are_told_apart_in_one_stretch() -> None:
    both = Stretch(
        last=ON,
        minutes=90 + 60,
        reached={("officer", "painted"): 2, ("rifleman", "painted"): 4},
        on_stands={("staff", "officer", "painted"): 2},
    )
    taught = learned(both)
    assert [(rate.what, rate.minutes) for rate in taught.stands] == [("staff", Fraction(90))]
    assert [(rate.what, rate.minutes) for rate in taught.rates] == [("foot", Fraction(15))]


def test_a_stage_left_out_is_not_taken_for_given_as_nothing() -> None:
    """Paint explains 25 of 40 minutes; basing, of which nothing is said, the other 15."""
    taught = learned(stretch(40, officer_painted=1, officer_based=1))
    assert [(rate.stage, rate.given, rate.minutes) for rate in taught.rates] == [
        ("based", None, Fraction(15)),
        ("painted", Fraction(25), Fraction(25)),
    ]
    quick = learned(stretch(9, officer_painted=1, officer_based=1))
    assert all(rate.minutes >= 0 for rate in quick.rates)


def test_what_was_learned_takes_the_place_of_what_was_given() -> None:
    bench = learned(stretch(200, rifleman_painted=8)).applied(BENCH)
    assert bench.minutes == {
        "foot": {"painted": Fraction(35, 2), "based": Fraction(5)},
        "officer": {"painted": Fraction(25)},
    }


def test_a_kind_without_minutes_has_some_once_all_its_stages_are_known() -> None:
    half = learned(stretch(60, truck_painted=2)).applied(BENCH)
    assert "truck" not in half.minutes
    whole = learned(stretch(60, truck_painted=2), stretch(60, truck_based=2)).applied(BENCH)
    assert whole.minutes["truck"] == {"painted": Fraction(30), "based": Fraction(30)}
