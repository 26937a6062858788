"""Losses as bands."""

import re

import pytest

from paradestate.core.campaign.loss_flow import LossFlow
from paradestate.sheet.losses_flow import (
    MOST_ROWS,
    PHONE,
    THINNEST,
    WIDE,
    losses_flow,
    losses_flow_words,
)
from paradestate.sheet.svg import Drawing
from tests.sheet.reading import root_of, texts_of, texts_on_others, texts_outside

EVERY = LossFlow(
    name="rifle section",
    before=24,
    open=1,
    recovered=3,
    lost=2,
    replaced=1,
    promoted_back=1,
    promoted_in_action=1,
    rested=2,
    joined=1,
    away_lost=1,
    away_open=1,
    must_have=30,
)
ALL_OUT = LossFlow(name="light machine-gun team of the second line", before=6, open=6, must_have=6)
GONE = LossFlow(name="truck", before=2, lost=2, must_have=3)
AWAY = LossFlow(name="gun", before=0, away_lost=2)
HUGE = LossFlow(name="horse", before=4000, lost=1, must_have=4000)


def thick(made: Drawing) -> list[float]:
    """How thick each band is where it begins, in the order in which they are drawn."""
    paths = [each.get("d", "") for each in root_of(made).findall("path")]
    ends = [
        (re.match(r"M\S+ ([\d.]+)H", each), re.search(r" ([\d.]+)H\S+Z$", each)) for each in paths
    ]
    return [float(end[1]) - float(start[1]) for start, end in ends if start and end]


def test_bands_are_as_thick_as_they_have_stands() -> None:
    made = thick(losses_flow([LossFlow(name="x", before=12, recovered=2, lost=1)]))
    assert made == pytest.approx([81, 27, 81, 18, 9, 81, 18, 9], abs=0.2)


def test_one_stand_of_thousands_is_still_seen() -> None:
    assert min(thick(losses_flow([HUGE]))) == pytest.approx(THINNEST, abs=0.2)


def test_numbers_stand_at_their_bands_and_what_is_short_at_the_end() -> None:
    texts = texts_of(losses_flow([EVERY]))
    assert texts == [
        *("before", "in it", "after it", "next game", "rifle section"),
        *("24", "17 in action", "7 out"),
        *("16 in action", "2 promoted", "2 recovered", "1 sent up", "1 back since", "2 not in it"),
        *("1 to roll", "2 lost"),
        *("24 there", "up to 26", "30 needed", "short 4-6"),
    ]
    assert texts_of(losses_flow([GONE]))[-3:] == ["0 there", "3 needed", "short 3"]


def test_after_an_earlier_game_nothing_is_needed() -> None:
    texts = texts_of(losses_flow([AWAY]))
    assert texts == ["before", "in it", "after it", "then", "gun", "0 there"]


def test_the_sentence_tells_the_first_of_many() -> None:
    assert losses_flow_words([GONE]) == (
        "Where the stands went. truck: 2 before, 2 out, 2 lost; 0 there afterwards, 3 needed."
    )
    assert losses_flow_words([GONE] * 8).endswith("; and 2 more.")
    assert texts_of(losses_flow([GONE] * 20)).count("truck") == MOST_ROWS


@pytest.mark.parametrize("width", [PHONE, WIDE])
@pytest.mark.parametrize("rows", [[EVERY, ALL_OUT, GONE], [AWAY], [HUGE, AWAY], [ALL_OUT] * 20])
def test_no_text_lies_on_another_or_runs_out(rows: list[LossFlow], width: int) -> None:
    made = losses_flow(rows, width=width)
    assert texts_outside(made) == []
    assert texts_on_others(made) == []
