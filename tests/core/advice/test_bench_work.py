"""How many minutes of work finish so many stands."""

from fractions import Fraction

from paradestate.core.advice.bench_work import BenchWork, Pattern
from paradestate.core.bench import Bench
from paradestate.core.figure import FigureKind, Sort
from paradestate.core.work.rates import Rates

STAGES = ("in packet", "primed", "painted")
FIGURES = {
    "rifleman": FigureKind(name="rifleman"),
    "officer": FigureKind(name="officer"),
    "gun": FigureKind(name="gun", sort=Sort.GUN),
}
BENCH = Bench(
    stages=STAGES,
    minutes={
        "foot": {"in packet": Fraction(1), "primed": Fraction(2), "painted": Fraction(10)},
        "officer": {"painted": Fraction(20)},
    },
    minutes_per_stand={"battery": Fraction(60), "truck": Fraction(9)},
)
RATES = Rates(bench=BENCH, figures=FIGURES)


def pattern(name: str = "section", **figures: int) -> Pattern:
    return Pattern(name=name, figures=figures or {"rifleman": 2}, begun=())


def work(*patterns: Pattern, **free: dict[str, int]) -> BenchWork:
    return BenchWork(patterns, free=free, rates=RATES, most=[9] * len(patterns))


def test_the_most_advanced_figures_go_first_onto_all_stands_together() -> None:
    found = work(
        pattern(),
        pattern("patrol", rifleman=1),
        rifleman={"painted": 1, "primed": 2, "in packet": 9},
    )
    assert found.cost((1, 0)) == found.least((1, 0)) == 10
    assert found.cost((0, 2)) == 10
    assert found.cost((1, 2)) == 10 + 10 + 12
    assert found.work((1, 2)).finished == {"rifleman": 1}
    assert found.can_be_had((6, 0))
    assert not found.can_be_had((7, 0))
    assert found.work((7, 0)).lacking == {"rifleman": 2}
    assert found.most == (9, 9)


def test_what_the_must_layer_has_begun_comes_first_the_least_work_before_others() -> None:
    begun = ({"rifleman": {"in packet": 2}}, {"rifleman": {"painted": 1, "primed": 1}})
    section = Pattern(name="section", figures={"rifleman": 2}, begun=begun)
    found = work(section, rifleman={"primed": 2})
    assert [found.cost((number,)) for number in range(4)] == [0, 10, 34, 54]
    assert found.work((1,)).finished == {"rifleman": 1}


def test_what_is_ready_is_finished_with_the_first() -> None:
    section = Pattern(name="section", figures={"rifleman": 1}, begun=(), ready=2)
    found = work(section, rifleman={"painted": 2, "primed": 5})
    assert (found.stands((0,)), found.stands((1,))) == ({}, {"section": 3})
    assert found.cost((1,)) == 10
