"""The look of each stage, told apart without colour."""

import re
from collections.abc import Sequence
from itertools import pairwise

import pytest

from paradestate.core.bench import USUAL_STAGES
from paradestate.sheet.texture import FINISHED, MISSING, patterns, texture_of


def covers(stages: Sequence[str]) -> list[float]:
    """About how much of a stand each stage but the last covers, from its pattern."""
    found = []
    for text in re.findall(r"<pattern id=\"tx-\d+\".*?</pattern>", patterns(stages).svg):
        step = float(re.search(r'width="([\d.]+)"', text)[1])  # type: ignore[index]  # is there
        dot = re.search(r' r="([\d.]+)"', text)
        if dot is not None:
            found.append(3.1416 * float(dot[1]) ** 2 / step**2)
            continue
        thick = float(re.search(r'stroke-width="([\d.]+)"', text)[1])  # type: ignore[index]  # so
        share = thick / step
        found.append(1 - (1 - share) ** 2 if "H" in text else share)
    return found


@pytest.mark.parametrize("number", [2, 3, 4, 5, 6, 9, 12])
def test_the_stages_rise_in_cover_and_stay_lighter_than_what_is_finished(number: int) -> None:
    rising = covers([f"stage {at}" for at in range(number)])
    assert len(rising) == number - 1
    assert all(one < other for one, other in pairwise(rising))
    assert rising[-1] < 0.55


def test_what_is_missing_is_dashed_and_what_is_finished_solid() -> None:
    assert texture_of(None, stages=USUAL_STAGES) == MISSING
    assert texture_of("unheard of", stages=USUAL_STAGES) == MISSING
    assert texture_of("based", stages=USUAL_STAGES) == FINISHED
    assert MISSING.dash is not None
    assert FINISHED.is_solid
    assert not texture_of("painted", stages=USUAL_STAGES).is_solid


def test_each_stage_between_has_a_pattern_that_is_there() -> None:
    made = patterns(USUAL_STAGES).svg
    for stage in USUAL_STAGES[:-1]:
        name = texture_of(stage, stages=USUAL_STAGES).fill[len("url(#") : -1]
        assert f'id="{name}"' in made


def test_the_patterns_are_not_read_out() -> None:
    assert 'aria-hidden="true"' in patterns(USUAL_STAGES).svg
