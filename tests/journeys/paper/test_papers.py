"""The papers of the bench for a folder."""

import datetime
from pathlib import Path

from paradestate.core.choice import Choice
from paradestate.core.outline import outline_text
from paradestate.journeys.paper.papers import Papers, papers
from tests.cli.calling import call
from tests.forces import EXAMPLES
from tests.journeys.conftest import FERRY_GUARD, written

ON = datetime.date(2026, 3, 5)
MARENZ = EXAMPLES / "marenz"
NO_NUMBERS = FERRY_GUARD + "bench: {minutes: {foot: {painted: 15}, vehicle: {painted: 40}}}\n"


def made(folder: Path, up_to: str = "") -> Papers:
    answer = papers(folder, today=ON, choice=Choice(), up_to=up_to)
    assert answer.papers is not None
    return answer.papers


def test_the_bases_of_the_example_are_those_of_the_design() -> None:
    """Computations 3.17: 28 rectangles, 6 discs of 30 mm and one of 40 mm."""
    found = made(MARENZ).requisition
    numbers = {outline_text(base.outline): base.number for base in found.basing.bases}
    assert numbers == {"40 mm disc": 1, "30 mm disc": 6, "40 x 20 mm": 28}
    assert round(found.basing.with_spare / 100) == 307


def test_they_go_as_far_as_a_milestone() -> None:
    smallest = made(MARENZ, "smallest legal force")
    assert (smallest.requisition.batches, smallest.requisition.stands) == (6, 21)
    assert len(smallest.jobs) == 6
    whole = made(MARENZ)
    assert len(whole.jobs) == 9
    assert whole.milestones == ("smallest legal force", "whole battalion")
    assert smallest.milestones == whole.milestones


def test_a_milestone_that_is_none_is_a_stop_with_the_nearest() -> None:
    answer = papers(MARENZ, today=ON, choice=Choice(), up_to="whole batalion")
    assert answer.papers is None
    (stop,) = (each for each in answer.checked.findings if each.level == "stop")
    assert (stop.code, stop.hint) == ("milestone-unknown", "Did you mean 'whole battalion'?")


def test_a_folder_of_which_nothing_is_known_has_its_stop(tmp_path: Path) -> None:
    folder = written(tmp_path / "ferry", FERRY_GUARD)
    answer = papers(folder, today=ON, choice=Choice())
    assert answer.papers is None
    assert "bench-minutes-missing" in {each.code for each in answer.checked.findings}


def test_what_was_painted_in_an_evening_takes_no_more_paint(tmp_path: Path) -> None:
    folder = written(tmp_path / "ferry", NO_NUMBERS)
    assert made(folder).requisition.paint.unknown == {"rifleman": 6, "boat": 1}
    logged = call("log", folder, "moved", "rifleman=4", "--from", "in packet", "--to", "painted")
    assert logged.status == 0, logged.err
    assert made(folder).requisition.paint.unknown == {"rifleman": 2, "boat": 1}
