"""Colours: who needs them, and which are mixed once."""

from fractions import Fraction

import pytest

from paradestate.core.bench import Bench, Coat
from paradestate.core.figure import FigureKind, Sort
from paradestate.core.number import NONE
from paradestate.core.unfolding import Stand
from paradestate.core.work.coats import Mixed, colours_of, mixed, parts_of
from paradestate.core.work.stand_work import StandWork

FIGURES = {
    "rifleman": FigureKind(name="rifleman"),
    "officer": FigureKind(name="officer"),
    "truck": FigureKind(name="truck", sort=Sort.VEHICLE),
}
COLOURS = {
    "tunic": (Coat(colour="sand"), Coat(colour="blue")),
    "officer": (Coat(colour="red"),),
    "vehicle": (Coat(colour="olive"),),
    "gun section": (Coat(colour="grey"),),
    "rifle section": (Coat(colour="blue"),),
}
BENCH = Bench(colours=COLOURS)


def work(pattern: str, *stages: str, **figures: int) -> StandWork:
    stand = Stand(
        name=pattern,
        pattern=pattern,
        wishes=(),
        is_wanted=True,
        figures=figures,
        men=NONE,
        printed=False,
        company="",
        level=None,
        within=0,
    )
    return StandWork(
        stand=stand,
        is_finished=not stages,
        by_stage=dict.fromkeys(stages, Fraction(1)),
        lacking={},
    )


def colours(*works: StandWork, bench: Bench = BENCH) -> tuple[str, ...]:
    return colours_of(
        works, bench, figures=FIGURES, patterns=frozenset({"gun section", "rifle section"})
    )


def test_a_uniform_is_worn_by_men_and_what_bears_a_name_of_its_own_by_that_alone() -> None:
    assert colours(work("patrol", "painted", rifleman=2)) == ("sand", "blue")
    assert colours(work("patrol", "painted", rifleman=2, officer=1)) == ("sand", "blue", "red")
    assert colours(work("lorry", "painted", truck=1)) == ("olive",)
    assert colours(work("gun section", "painted", truck=1)) == ("olive", "grey")
    assert colours(work("rifle section", "painted", mule=1)) == ("blue",)
    assert colours(work("patrol", "painted", mule=1)) == ()


def test_what_is_painted_already_needs_no_colour() -> None:
    assert colours(work("patrol", "based", rifleman=2)) == ()
    own = Bench(colours=COLOURS, stages=("raw", "done"))
    assert colours(work("patrol", "done", rifleman=2), bench=own) == ("sand", "blue")
    assert colours(work("patrol", rifleman=2), bench=own) == ()


def test_a_colour_of_several_batches_is_mixed_once() -> None:
    assert mixed([("sand", "blue"), (), ("blue",)]) == (Mixed(colour="blue", batches=(1, 3)),)


@pytest.mark.parametrize(
    ("kind", "pattern", "parts"),
    [
        ("rifleman", "rifle section", ["tunic", "rifle section"]),
        ("officer", "command", ["tunic", "officer"]),
        ("truck", "gun section", ["vehicle", "gun section"]),
        ("truck", "truck", ["vehicle"]),
    ],
)
def test_a_figure_is_painted_by_its_kind_its_sort_and_its_stand(
    kind: str, pattern: str, parts: list[str]
) -> None:
    patterns = frozenset({"rifle section", "gun section"})
    found = parts_of(kind, BENCH, pattern=pattern, figures=FIGURES, patterns=patterns)
    assert [part.name for part in found] == parts
    assert found[0].coats == COLOURS[parts[0]]
