"""The fan: what is done, how much will be, milestones as levels, game nights as flags."""

import datetime
from collections.abc import Mapping, Sequence
from fractions import Fraction

import pytest

from paradestate.core.work.forecast_value import FAN, FanWeek
from paradestate.sheet.finish_fan import (
    HIGH,
    LEFT,
    PHONE,
    RIGHT,
    WIDE,
    Course,
    Level,
    fan_key,
    finish_fan,
)
from paradestate.sheet.svg import Drawing
from tests.sheet.reading import root_of, texts_of

BEGINS = datetime.date(2026, 3, 6)
LEVELS = (
    Level(name="small force", minutes=Fraction(600)),
    Level(name="whole", minutes=Fraction(1200)),
)


def day(text: str) -> datetime.date:
    return datetime.date.fromisoformat(text)


def fan(weeks: int = 8, *, most: int = 1200) -> tuple[FanWeek, ...]:
    """Each week brings from one to five quarters of 200 minutes."""
    return tuple(
        FanWeek(
            week=week,
            at_least={
                chance: Fraction(min(most, 50 * week * at))
                for at, chance in enumerate(FAN, start=1)
            },
        )
        for week in range(weeks + 1)
    )


def drawn(
    done: Mapping[str, int],
    *,
    nights: Sequence[str] = (),
    levels: Sequence[Level] = LEVELS,
    width: int = WIDE,
) -> Drawing:
    course = Course(
        done={day(each): minutes for each, minutes in done.items()},
        begins=BEGINS,
        fan=fan(),
        levels=levels,
        nights=tuple(map(day, nights)),
    )
    made = finish_fan(course, width=width)
    assert made is not None
    return made


def paths(made: Drawing, **look: str) -> list[str]:
    """The paths of some look."""
    return [
        each.get("d", "")
        for each in root_of(made).iter("path")
        if all(each.get(name.replace("_", "-")) == value for name, value in look.items())
    ]


@pytest.mark.parametrize("width", [WIDE, PHONE])
def test_the_fan_goes_on_where_the_work_logged_ends(width: int) -> None:
    made = drawn({"2026-02-01": 120, "2026-03-05": 60}, width=width)
    (done,) = paths(made, stroke="var(--pencil)")
    (half,) = paths(made, stroke="var(--ink)", fill="none", stroke_width="3")
    assert done.startswith(f"M{LEFT}.00 ")
    ends = f"{done.rpartition('H')[2]} {done.rpartition('V')[2].partition('H')[0]}"
    assert half.startswith(f"M{ends}L")
    across = [float(point.split()[0]) for point in half[1:].split("L")]
    assert across[-1] == pytest.approx(width - RIGHT)
    assert across == sorted(across)
    assert made.words == (
        "3 h of work logged, and how much more will be done in 8 weeks from 6 March 2026: "
        "small force at 10 h from now; whole at 20 h from now."
    )


def test_milestones_are_levels_above_what_is_done_and_close_ones_share_a_name() -> None:
    said = texts_of(drawn({"2026-03-05": 600}))
    assert {"Small force, 10 h from now", "Whole, 20 h from now"} <= set(said)
    close = (*LEVELS, Level(name="nearly whole", minutes=Fraction(1190)))
    said = texts_of(drawn({}, levels=close))
    assert "Nearly whole, 19 h 50 min from now" in said
    assert "Whole, 20 h from now" not in said


def test_game_nights_within_the_picture_are_flags() -> None:
    made = drawn({}, nights=("2026-03-05", "2026-03-20", "2026-04-03", "2027-01-01"))
    assert len(paths(made, stroke_dasharray="2 4")) == 2


def test_months_are_named_and_a_new_year_by_its_number() -> None:
    said = texts_of(drawn({"2025-11-20": 30}))
    assert {"Dec", "2026", "Feb", "Mar", "Apr"} <= set(said)
    assert [each for each in said if each.endswith(" h")] == [
        "0 h",
        "5 h",
        "10 h",
        "15 h",
        "20 h",
        "25 h",
    ]


def test_work_of_long_ago_is_where_the_line_begins() -> None:
    made = drawn({"2020-01-01": 600, "2026-03-01": 60})
    (done,) = paths(made, stroke="var(--pencil)")
    first = float(done.split()[1].split("H")[0])
    assert first < HIGH - 60


def test_without_weeks_to_come_there_is_no_fan() -> None:
    nothing = Course(done={}, begins=BEGINS, fan=(), levels=(), nights=())
    assert finish_fan(nothing) is None


def test_a_fan_of_a_few_days_and_no_level_is_still_drawn() -> None:
    course = Course(done={}, begins=BEGINS, fan=fan(0), levels=(), nights=())
    made = finish_fan(course)
    assert made is not None
    assert "Mar" in texts_of(made)


def test_the_key_says_every_look() -> None:
    assert [words for _, words in fan_key()] == [
        "logged",
        "half chance",
        "from one in five down to four in five",
        "from one in twenty down to nineteen in twenty",
        "game night",
    ]
