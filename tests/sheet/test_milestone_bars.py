"""Two bars for each milestone: as ordered, and kind by kind."""

from fractions import Fraction

import pytest

from paradestate.sheet.milestone_bars import LABEL, PHONE, WIDE, MilestoneBar, milestone_bars
from tests.sheet.reading import root_of, texts_of

SMALL = MilestoneBar(
    name="small force",
    here=Fraction(19 * 60),
    by_kind=Fraction(69 * 30),
    week="week 5",
    week_by_kind="week 9",
)
WHOLE = MilestoneBar(name="whole", here=Fraction(69 * 30), by_kind=Fraction(69 * 30))


@pytest.mark.parametrize("width", [WIDE, PHONE])
def test_bars_are_as_long_as_their_hours_and_say_them(width: int) -> None:
    made = milestone_bars((SMALL, WHOLE), width=width)
    assert made is not None
    here, by_kind, *_ = [float(each.get("width", "")) for each in root_of(made).iter("rect")]
    assert here / by_kind == pytest.approx(19 / 34.5, rel=0.01)
    assert by_kind + LABEL < width
    said = texts_of(made)
    assert {
        "Small force",
        "19 h, week 5",
        "34 h 30 min, week 9",
        "as ordered",
        "kind by kind",
    } <= set(said)
    assert "34 h 30 min" in said
    assert made.words == (
        "Work until each milestone: small force after 19 h as ordered, 34 h 30 min kind by kind; "
        "whole after 34 h 30 min as ordered, 34 h 30 min kind by kind."
    )


def test_what_takes_no_minutes_is_not_called_playable_now_and_nothing_left_has_no_bars() -> None:
    none = MilestoneBar(name="a", here=Fraction(30), by_kind=Fraction(0), week_by_kind="now")
    made = milestone_bars((none,))
    assert made is not None
    assert "0 min" in texts_of(made)
    assert milestone_bars(()) is None
    assert milestone_bars((MilestoneBar(name="a", here=Fraction(0), by_kind=Fraction(0)),)) is None
