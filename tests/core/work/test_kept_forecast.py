"""How often the four-in-five date was met."""

import datetime
from fractions import Fraction

from paradestate.core.work.kept_forecast import Calibration, KeptForecast, KeptOn, calibration


def march(day: int) -> datetime.date:
    return datetime.date(2026, 3, day)


def kept(day: int, *, minutes: int = 60, by: int | None = None, milestone: str = "all") -> KeptOn:
    return KeptOn(
        day=march(day),
        forecasts=(
            KeptForecast(
                milestone=milestone,
                minutes=Fraction(minutes),
                four_in_five=None if by is None else march(by),
            ),
        ),
    )


DONE = kept(12, minutes=0)


def test_a_date_is_met_where_the_milestone_was_finished_by_then() -> None:
    said = (kept(1, by=11), kept(2, by=12), kept(3, by=13), DONE)
    assert calibration(said, today=march(20)) == Calibration(
        met=2, missed=1, early=0, to_come=0, milestones=1
    )
    assert calibration(said, today=march(20)).judged == 3


def test_a_date_is_judged_only_when_it_is_past() -> None:
    said = (kept(1, by=12), kept(2, by=20), DONE, kept(13, by=20, milestone="more"))
    assert calibration(said, today=march(12)) == Calibration(
        met=0, missed=0, early=2, to_come=1, milestones=0
    )
    assert calibration(said, today=march(21)) == Calibration(
        met=2, missed=1, early=0, to_come=0, milestones=2
    )


def test_work_that_goes_on_after_the_date_is_a_miss_and_what_was_done_before_is_none() -> None:
    assert calibration((DONE, kept(13, by=14)), today=march(15)).missed == 1


def test_of_several_on_one_day_the_first_counts_and_without_a_date_none() -> None:
    said = (kept(2, by=4), kept(2, by=30), kept(1), DONE)
    assert calibration(said, today=march(5)) == Calibration(
        met=0, missed=1, early=0, to_come=0, milestones=1
    )
