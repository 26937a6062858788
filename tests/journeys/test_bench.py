"""The order of work for a folder: milestones, what was logged, and what stops it."""

import datetime
from pathlib import Path

import pytest

from paradestate.core.choice import Choice
from paradestate.journeys.bench import OrderOfWork, order_of_work
from tests.cli.calling import call
from tests.forces import EXAMPLES
from tests.journeys.conftest import FERRY_GUARD, written

ON = datetime.date(2026, 3, 5)
MINUTES = "bench: {minutes: {foot: {painted: 15}, vehicle: {painted: 40}}, week: 1 h}\n"


@pytest.fixture
def ferry(tmp_path: Path) -> Path:
    """Two sections of which two riflemen are painted, and a boat that nobody owns."""
    return written(tmp_path / "ferry", FERRY_GUARD + MINUTES)


def order(folder: Path, choice: Choice | None = None) -> OrderOfWork:
    answer = order_of_work(folder, today=ON, choice=choice or Choice())
    assert answer.order is not None
    return answer.order


def test_the_example_is_legal_in_week_five_and_kind_by_kind_in_week_nine() -> None:
    """Story 1: 19 hours against 34.5, at four hours a week."""
    found = order(EXAMPLES / "marenz")
    assert found.week == 4 * 60
    assert [each.ends for each in found.ladder.reached] == [19 * 60, 2070]
    assert [each.ends for each in found.by_kind.reached] == [2070, 2070]


def test_a_logged_session_shortens_the_ladder(ferry: Path) -> None:
    before = order(ferry).ladder.minutes
    assert before == 6 * 15 + 40
    logged = call(
        "log",
        ferry,
        "session",
        "rifleman=3",
        "--from",
        "in packet",
        "--to",
        "painted",
        "--minutes",
        45,
    )
    assert logged.status == 0
    assert order(ferry).ladder.minutes == before - 45


def test_what_is_lent_needs_no_work(ferry: Path) -> None:
    moved = ("moved", "rifleman=6", "--from", "in packet", "--to", "painted")
    assert call("log", ferry, *moved).status == 0
    assert call("log", ferry, "lent", "rifleman=4", "--from", "painted").status == 0
    assert order(ferry).ladder.minutes == 40


def test_a_choice_changes_what_is_raised() -> None:
    found = order(EXAMPLES / "marenz", Choice(numbers={"company": 3}))
    assert found.ladder.minutes == 2070 - (6 * 60 + 45 + 60)


def test_a_folder_that_cannot_be_counted_has_no_order_of_work(tmp_path: Path) -> None:
    broken = written(tmp_path / "broken", FERRY_GUARD.replace("guard}", "gaurd}"))
    answer = order_of_work(broken, today=ON, choice=Choice())
    assert answer.order is None
    assert answer.checked.is_stopped


def test_a_force_without_minutes_has_none_either(guard: Path) -> None:
    answer = order_of_work(guard, today=ON, choice=Choice())
    assert answer.order is None
    assert [found.code for found in answer.checked.findings] == ["bench-minutes-missing"]
