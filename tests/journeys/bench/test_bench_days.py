"""On which day each batch is done."""

import datetime
from collections.abc import Sequence
from pathlib import Path

import pytest

import paradestate.journeys.bench.forecast as dating
from paradestate.chance.forecast.drawn_finish import Lottery
from paradestate.chance.forecast.forecast import forecast
from paradestate.core.choice import Choice
from paradestate.core.work.forecast_value import Ahead, Forecast, Goal
from paradestate.core.work.habit import Habit
from paradestate.journeys.bench.bench import order_of_work
from tests.journeys.conftest import written

TODAY = datetime.date(2026, 3, 5)
FILES = """\
format: 1
title: Test
figures: {rifleman: {}}
stands:
  command: {base: none, figures: {rifleman: 1}}
  marker: {base: none, figures: {rifleman: 2}}
formations: {top: {parts: {command: 2, marker: 30}}}
raise: {formation: top}
bench: {stages: [raw, painted], minutes per stand: {command: 0, marker: 30}, week: 4 h}
"""


def days_of(place: Path, files: str) -> dict[int, datetime.date]:
    found = order_of_work(written(place / "test", files), today=TODAY, choice=Choice()).order
    assert found is not None
    return dict(found.days)


def test_a_batch_with_work_has_its_day_and_one_without_none(tmp_path: Path) -> None:
    """Fifteen hours are nearly four weeks of four hours."""
    days = days_of(tmp_path, FILES)
    assert list(days) == [2]
    assert TODAY + datetime.timedelta(days=20) < days[2] < TODAY + datetime.timedelta(days=35)


def test_where_nothing_is_known_of_weeks_there_are_no_days(tmp_path: Path) -> None:
    assert days_of(tmp_path, FILES.replace(", week: 4 h", "")) == {}


def test_milestones_and_batches_are_told_from_the_same_weeks_drawn_once(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    asked: list[tuple[str, ...]] = []

    def noted(goals: Sequence[Goal], *, habit: Habit, ahead: Ahead, lottery: Lottery) -> Forecast:
        asked.append(tuple(goal.name for goal in goals))
        return forecast(goals, habit=habit, ahead=ahead, lottery=lottery)

    monkeypatch.setattr(dating, "forecast", noted)
    days_of(tmp_path, FILES)
    assert asked == [("1", "2", "smallest legal force", "whole top")]
