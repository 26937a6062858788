"""How many minutes figures take, from a stage on."""

from fractions import Fraction

from paradestate.core.bench import Bench
from paradestate.core.work.rates import Rates
from tests.core.advice.test_bench_work import BENCH, FIGURES, RATES, STAGES, pattern


def test_minutes_are_those_of_the_kind_before_the_sort() -> None:
    section = pattern()
    assert RATES.left(section, "rifleman", stage="in packet") == 12
    assert RATES.left(section, "rifleman", stage="primed") == 10
    assert RATES.left(section, "rifleman", stage="painted") == 0
    assert RATES.left(section, "officer", stage="in packet") == 20


def test_minutes_of_a_stand_are_split_like_those_of_its_figures() -> None:
    """Four riflemen: 8 minutes of priming, 40 of painting, so that 50 of 60 are for painting."""
    battery = pattern("battery", rifleman=4)
    assert RATES.left(battery, "rifleman", stage="in packet") == 15
    assert RATES.left(battery, "rifleman", stage="primed") == Fraction(50, 4)


def test_without_minutes_of_figures_they_are_split_in_equal_parts() -> None:
    truck = pattern("truck", gun=1)
    assert [RATES.left(truck, "gun", stage=stage) for stage in STAGES] == [9, Fraction(9, 2), 0]


def test_kinds_without_minutes_are_named() -> None:
    assert RATES.unknown(pattern(gun=1, rifleman=1)) == ("gun",)
    assert RATES.unknown(pattern("truck", gun=1)) == ()
    assert RATES.by_stage("mule") is None


def test_what_is_left_is_said_stage_by_stage() -> None:
    assert RATES.left_by_stage(pattern(), "rifleman", stage="in packet") == {
        "primed": 2,
        "painted": 10,
    }
    battery = pattern("battery", rifleman=4)
    assert RATES.left_by_stage(battery, "rifleman", stage="primed") == {"painted": Fraction(25, 2)}


def test_minutes_to_reach_the_first_stage_split_nothing() -> None:
    """Everything is in its packet from the beginning."""
    minutes = {"foot": {"in packet": Fraction(9), "primed": Fraction(1), "painted": Fraction(3)}}
    whole = {"battery": Fraction(8)}
    early = Rates(
        bench=Bench(stages=STAGES, minutes=minutes, minutes_per_stand=whole), figures=FIGURES
    )
    battery = pattern("battery", rifleman=1)
    assert early.left_by_stage(battery, "rifleman", stage="in packet") == {
        "primed": 2,
        "painted": 6,
    }


def test_where_the_first_stage_is_the_last_nothing_is_left() -> None:
    """Nothing to divide the minutes of a stand by."""
    only = Rates(
        bench=Bench(stages=("painted",), minutes_per_stand={"truck": Fraction(9)}), figures=FIGURES
    )
    assert only.left(pattern("truck", gun=1), "gun", stage="painted") == 0
    assert BENCH.stages == STAGES
