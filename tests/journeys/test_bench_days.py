"""On which day each batch is done."""

import datetime
from pathlib import Path

from paradestate.core.choice import Choice
from paradestate.journeys.bench import order_of_work
from paradestate.journeys.bench_days import days_of_batches
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
    numbers = [rung.number for rung in found.ladder.rungs]
    return dict(days_of_batches(found, numbers, today=TODAY))


def test_a_batch_with_work_has_its_day_and_one_without_none(tmp_path: Path) -> None:
    """Fifteen hours are nearly four weeks of four hours."""
    days = days_of(tmp_path, FILES)
    assert list(days) == [2]
    assert TODAY + datetime.timedelta(days=20) < days[2] < TODAY + datetime.timedelta(days=35)


def test_where_nothing_is_known_of_weeks_there_are_no_days(tmp_path: Path) -> None:
    assert days_of(tmp_path, FILES.replace(", week: 4 h", "")) == {}
