"""The ladder: rungs by hours, thick ones where a force can be played, words that fit."""

import itertools
from fractions import Fraction

import pytest

from paradestate.core.sentence.wording import hours_words
from paradestate.core.work.ladder import Ladder
from paradestate.core.work.order_of_work import ladder
from paradestate.sheet.svg import Drawing
from paradestate.sheet.work_ladder import (
    LINE,
    MOST_RUNGS,
    PHONE,
    RAIL,
    THICK,
    WIDE,
    Side,
    Step,
    ladder_steps,
    work_ladder,
)
from tests.core.work.works import MINUTES, sound_load
from tests.sheet.reading import root_of, texts_of

SIDE = Side(title="week", marks={1: "1", 2: "3"}, foot="today")


def step(number: int, minutes: int, *reaches: str, lacking: str = "") -> Step:
    return Step(
        title=f"{number}. 2 rifle sections",
        where="2 in No 1 Company",
        lacking=lacking,
        minutes=Fraction(minutes),
        ends=Fraction(60 * number),
        reaches=reaches,
        last=number,
    )


def drawn(*steps: Step, width: int = WIDE, side: Side = SIDE) -> Drawing:
    made = work_ladder(steps, side=side, width=width)
    assert made is not None
    return made


def rungs_of(made: Drawing) -> list[tuple[float, float]]:
    """Height and breadth of line of each rung, from below."""
    lines = [each for each in root_of(made).iter("path") if "H" in each.get("d", "")]
    found = [
        (float(each.get("d", "").split()[1].split("H")[0]), float(each.get("stroke-width", "")))
        for each in lines
    ]
    return sorted(found, reverse=True)


def of_force() -> Ladder:
    return ladder(sound_load(MINUTES))


def test_a_step_is_as_tall_as_its_hours_and_a_force_has_a_thick_rung() -> None:
    made = drawn(step(1, 60), step(2, 600, "small force"), step(3, 300, "whole"))
    foot, first, second, third = rungs_of(made)
    assert (foot[0] - first[0]) < (second[0] - third[0]) < (first[0] - second[0])
    assert (first[0] - second[0]) / (second[0] - third[0]) == pytest.approx(2, rel=0.01)
    assert [each[1] for each in (first, second, third)] == [2.4, THICK, THICK]
    said = texts_of(made)
    assert {"Small force", "Whole", "1. 2 rifle sections", "2 in No 1 Company"} <= set(said)
    assert {"1 h", "2 h", "3 h", "now", "today", "week", "hours", "3"} <= set(said)
    assert made.words == (
        "Work ladder of 3 rungs up to 3 h of work: small force after 2 h; whole after 3 h."
    )


def test_steps_without_minutes_still_have_room_for_their_words() -> None:
    made = drawn(step(1, 0), step(2, 0, "now"), step(3, 0))
    heights = [at for at, _ in rungs_of(made)]
    assert all(low - high >= 2 * LINE for low, high in itertools.pairwise(heights))
    assert drawn(step(1, 5)).words.endswith("nothing is reached.")


def test_what_is_lacking_stands_beside_the_title_or_on_a_line_of_its_own() -> None:
    lacking = step(1, 60, lacking="lacks 36 figures")
    for width in (WIDE, PHONE):
        (text,) = [
            each
            for each in root_of(drawn(lacking, width=width)).iter("text")
            if each.text == "lacks 36 figures"
        ]
        assert (text.get("text-anchor") == "end") is (width == WIDE)
        assert text.get("class") == "red"


def test_words_are_cut_before_the_rail_and_milestones_go_over_several_lines() -> None:
    long = step(1, 60, "the force for the club night in the hall", "the force for the open day")
    said = texts_of(drawn(long, width=PHONE, side=Side(title="", marks={1: "x" * 40}, foot="")))
    assert sum("force" in each for each in said) == 2
    assert any(each.endswith("…") for each in said)
    assert max(len(each) for each in said) < PHONE - 2 * RAIL[PHONE]


def test_the_steps_of_a_ladder_say_stands_places_and_what_is_lacking() -> None:
    found = of_force()
    steps = ladder_steps(found)
    assert [each.last for each in steps] == [rung.number for rung in found.rungs]
    assert steps[-1].ends == found.minutes
    assert sum(each.minutes for each in steps) == found.minutes
    assert steps[0].title.startswith("1. ")
    assert steps[0].lacking.startswith("lacks ")
    assert " / " not in "".join(each.where for each in steps)
    assert hours_words(found.minutes) in drawn(*steps).words


def test_of_a_long_ladder_batches_without_a_milestone_are_joined() -> None:
    """Twenty-six kinds: the last rungs are one step, and the milestone has its own."""
    names = [f"gun {letter}" for letter in "abcdefghijklmnopqrstuvwxyz"]
    kinds = "".join(
        f"  {name}: {{base: none, figures: {{rifleman: {at + 1}}}}}\n"
        for at, name in enumerate(names)
    )
    parts = ", ".join(f"{name}: 1" for name in names)
    load = sound_load(
        MINUTES,
        organisation=f"figures: {{rifleman: {{}}}}\nstands:\n{kinds}formations: "
        f"{{top: {{parts: {{{parts}}}}}}}\n",
    )
    found = ladder(load)
    steps = ladder_steps(found)
    assert len(found.rungs) == 26
    assert len(steps) == MOST_RUNGS
    assert (steps[-1].title, steps[-1].where) == ("Batches 24 to 26", "3 stands")
    assert steps[-1].reaches
    assert sum(each.minutes for each in steps) == found.minutes


def test_without_a_step_there_is_no_ladder() -> None:
    assert work_ladder((), side=SIDE) is None
