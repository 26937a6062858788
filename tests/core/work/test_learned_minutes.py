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


def stretch(minutes: int, *, onto: frozenset[str] = frozenset(), **reached: int) -> Stretch:
    """`rifleman_painted=6`."""
    steps = {(name.split("_")[0], name.split("_")[1]): each for name, each in reached.items()}
    return Stretch(last=ON, minutes=minutes, reached=steps, onto=onto)


def learned(*stretches: Stretch, prior_sessions: int = 3) -> LearnedMinutes:
    return learned_minutes(stretches, bench=BENCH, figures=FIGURES, prior_sessions=prior_sessions)


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
        ("officer", "based", Fraction(0)),
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


def test_stands_with_minutes_of_their_own_are_left_out() -> None:
    taught = learned(
        stretch(60, rifleman_painted=4), stretch(90, onto=frozenset({"staff"}), officer_based=1)
    )
    assert (taught.stretches, taught.left_out) == (1, 1)
    alone = learned(stretch(90, onto=frozenset({"staff"}), officer_based=1))
    assert alone == LearnedMinutes(left_out=1)


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
