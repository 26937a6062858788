"""Who serves whom, against the handbook case and full enumeration."""

from collections.abc import Iterator, Mapping
from itertools import product

from hypothesis import given
from hypothesis import strategies as st

from paradestate.core.allotment import MATCH_COST, AllotmentProblem, allotted
from paradestate.core.figure import FigureKind, Match
from paradestate.core.formation import Need

STAGES = ("in packet", "assembled", "painted")
KINDS = ("a", "b", "c")


def kind(name: str, **stands_for: Match) -> FigureKind:
    return FigureKind(name=name, may_stand_for=stands_for)


def test_sergeants_stand_in_where_they_are_needed_most() -> None:
    problem = AllotmentProblem(
        want={(Need.MUST, "rifleman"): 24, (Need.MUST, "crew"): 6, (Need.MUST, "officer"): 5},
        held={
            "rifleman": {"painted": 10, "assembled": 6},
            "other rifleman": {"painted": 5},
            "crew": {"painted": 4},
            "officer": {"painted": 2},
            "sergeant": {"painted": 4},
        },
        figures={
            "other rifleman": kind("other rifleman", rifleman=Match.GOOD),
            "sergeant": kind("sergeant", officer=Match.GOOD, rifleman=Match.GOOD),
        },
        stages=STAGES,
    )
    served = {(s.kind, s.stage, s.stands_for): s.number for s in allotted(problem)}
    assert served == {
        ("rifleman", "painted", "rifleman"): 10,
        ("rifleman", "assembled", "rifleman"): 6,
        ("other rifleman", "painted", "rifleman"): 5,
        ("crew", "painted", "crew"): 4,
        ("officer", "painted", "officer"): 2,
        ("sergeant", "painted", "officer"): 3,
        ("sergeant", "painted", "rifleman"): 1,
    }


@st.composite
def problems(draw: st.DrawFn) -> AllotmentProblem:
    few = st.integers(0, 2)
    return AllotmentProblem(
        want={(layer, name): draw(few) for layer in Need for name in KINDS[:2]},
        held={name: {stage: draw(st.integers(0, 1)) for stage in STAGES[1:]} for name in KINDS},
        figures={
            name: kind(
                name,
                **draw(st.dictionaries(st.sampled_from(KINDS), st.sampled_from(Match), max_size=2)),
            )
            for name in KINDS[:2]
        },
        stages=STAGES,
    )


def every_way(problem: AllotmentProblem) -> Iterator[list[tuple[str, str, Need, str]]]:
    figures = [
        (name, stage)
        for name, stages in problem.held.items()
        for stage, number in stages.items()
        for _ in range(number)
    ]
    wants = [
        [None]
        + [
            key
            for key, number in problem.want.items()
            if number and problem.match_cost(name, stands_for=key[1]) is not None
        ]
        for name, _ in figures
    ]
    for chosen in product(*wants):
        taken = [key for key in chosen if key is not None]
        if all(taken.count(key) <= problem.want[key] for key in set(taken)):
            yield [
                (*figure, *key)
                for figure, key in zip(figures, chosen, strict=True)
                if key is not None
            ]


def rank(problem: AllotmentProblem, way: list[tuple[str, str, Need, str]]) -> tuple[int, ...]:
    def lacking(layers: tuple[Need, ...], names: tuple[str, ...]) -> int:
        number = sum(problem.want[layer, name] for layer in layers for name in names)
        return number - sum(each[2] in layers and each[3] in names for each in way)

    sizes: Mapping[str, int] = {
        name: sum(problem.want[layer, name] for layer in Need) for name in KINDS[:2]
    }
    both = (Need.MUST, Need.WISHED)
    grade = sum(problem.match_cost(each[0], stands_for=each[3]) or 0 for each in way)
    return (
        lacking((Need.MUST,), KINDS[:2]),
        lacking((Need.WISHED,), KINDS[:2]),
        grade,
        *(lacking(both, (name,)) for name in sorted(sizes, key=lambda n: (sizes[n], n))),
        sum(each[1] != STAGES[-1] for each in way),
    )


@given(problems())
def test_no_other_way_is_better(problem: AllotmentProblem) -> None:
    way = [
        (s.kind, s.stage, s.layer, s.stands_for) for s in allotted(problem) for _ in range(s.number)
    ]
    assert len(way) == sum(s.number for s in allotted(problem))
    assert rank(problem, way) == min(rank(problem, other) for other in every_way(problem))


def test_poor_counts_more_than_good() -> None:
    assert MATCH_COST[Match.GOOD] < MATCH_COST[Match.POOR]
