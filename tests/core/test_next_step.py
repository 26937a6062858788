"""What brings a stand on."""

from paradestate.core.establishment import establishment
from paradestate.core.next_step import NextStep, next_step
from paradestate.core.strength import strength
from tests.forces import force_from

STAGES = ("in packet", "assembled", "undercoated", "painted", "based")
FORCE = """
figures: {rifleman: {}, officer: {may stand for: {rifleman: good}}}
stands: {command: {base: none, figures: {officer: 1, rifleman: 2}}}
formations: {top: {parts: {command: 1}}}
"""


def step_with(stock: str) -> NextStep | None:
    force = force_from(FORCE, f"stock: {stock}")
    made, _ = establishment(force)
    assert made is not None
    (state,) = strength(force, made).stands
    return next_step(state, stages=STAGES)


def test_a_stand_whose_figures_are_all_at_one_stage_moves_as_one_piece() -> None:
    assert step_with("{officer: {painted: 1}, rifleman: {painted: 2}}") == NextStep(
        from_stage="painted",
        to_stage="based",
        figures={"officer": 1, "rifleman": 2},
        is_whole=True,
    )


def test_of_a_mixed_stand_the_least_advanced_figures_move() -> None:
    step = step_with("{officer: {painted: 1}, rifleman: {assembled: 1, painted: 1}}")
    assert step == NextStep(
        from_stage="assembled", to_stage="undercoated", figures={"rifleman": 1}, is_whole=False
    )


def test_figures_that_stand_in_move_as_what_they_are() -> None:
    step = step_with("{officer: {painted: 3}}")
    assert step is not None
    assert (step.figures, step.is_whole) == ({"officer": 3}, False)


def test_a_stand_that_lacks_something_can_be_brought_on_in_part() -> None:
    step = step_with("{officer: {in packet: 1}}")
    assert step is not None
    assert (step.figures, step.to_stage, step.is_whole) == ({"officer": 1}, "assembled", False)


def test_a_finished_stand_and_an_empty_one_have_no_next_step() -> None:
    assert step_with("{officer: {based: 1}, rifleman: {based: 2}}") is None
    assert step_with("{}") is None
