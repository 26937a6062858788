"""What brings a batch on by one stage."""

from collections.abc import Sequence

from paradestate.core.work.batch_step import BatchStep, batch_steps
from paradestate.core.work.order_of_work import ladder
from tests.core.work.works import MINUTES, sound_load

STOCK = "stock: {rifleman: {raw: 9, primed: 4}, officer: {raw: 1}}\n"


def steps_of(*texts: str, pattern: str, without: Sequence[str] = ()) -> tuple[BatchStep, ...]:
    """The steps of the first batch of a pattern; all stands but `without` are raised."""
    load = sound_load(MINUTES, *texts)
    rung = next(each for each in ladder(load).rungs if each.pattern == pattern)
    raised = load.works.keys() - set(without)
    return batch_steps(rung, stages=load.bench.stages, raised=raised)


def test_nothing_owned_is_nothing_to_bring_on() -> None:
    assert steps_of(pattern="section") == ()


def test_stands_at_one_stage_take_one_step_and_the_least_advanced_come_first() -> None:
    """Thirteen riflemen: one on the command, four primed and eight raw on the first sections."""
    first, *_ = steps_of(STOCK, pattern="section")
    assert (first.from_stage, first.to_stage, first.pattern) == ("raw", "primed", "section")
    assert first.is_whole
    assert first.number == len(first.parts)
    assert first.figures(1) == {"rifleman": 4}
    assert first.stands(1) == (first.parts[0].stand,)


def test_a_stand_with_only_some_of_its_figures_moves_without_its_name() -> None:
    stock = "stock: {rifleman: {raw: 7}}\n"
    steps = steps_of(stock, pattern="section")
    assert [(step.from_stage, step.is_whole, step.number) for step in steps] == [
        ("raw", True, 1),
        ("raw", False, 1),
    ]
    part = steps[1]
    assert part.stands(1) == ()
    assert sum(part.figures(1).values()) < 4


def test_a_stand_that_is_not_raised_moves_without_its_name() -> None:
    stock = "stock: {rifleman: {raw: 40}}\n"
    load = sound_load(MINUTES, stock)
    names = [name for name in load.works if name.endswith("Section")]
    (step,) = steps_of(stock, pattern="section", without=names)
    assert not step.is_whole
    assert step.figures(step.number) == {"rifleman": 4 * step.number}
