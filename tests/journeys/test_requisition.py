"""What the work of a folder uses up, and its cards."""

import datetime
from pathlib import Path

from paradestate.core.choice import Choice
from paradestate.core.outline import outline_text
from paradestate.core.work.requisition import Requisition
from paradestate.journeys.memory import Memory
from paradestate.journeys.requisition import Cards, work_cards, work_requisition
from tests.cli.calling import call
from tests.forces import EXAMPLES
from tests.journeys.conftest import FERRY_GUARD, written

ON = datetime.date(2026, 3, 5)
MARENZ = EXAMPLES / "marenz"
NO_NUMBERS = FERRY_GUARD + "bench: {minutes: {foot: {painted: 15}, vehicle: {painted: 40}}}\n"


def made(folder: Path, up_to: str = "") -> Requisition:
    answer = work_requisition(folder, today=ON, choice=Choice(), up_to=up_to)
    assert answer.made is not None
    return answer.made


def cards(folder: Path, up_to: str = "") -> Cards:
    answer = work_cards(folder, today=ON, choice=Choice(), up_to=up_to)
    assert answer.cards is not None
    return answer.cards


def test_the_bases_of_the_example_are_those_of_the_design() -> None:
    """Computations 3.17: 28 rectangles, 6 discs of 30 mm and one of 40 mm."""
    found = made(MARENZ)
    numbers = {outline_text(base.outline): base.number for base in found.basing.bases}
    assert numbers == {"40 mm disc": 1, "30 mm disc": 6, "40 x 20 mm": 28}
    assert round(found.basing.with_spare / 100) == 307


def test_it_goes_as_far_as_a_milestone() -> None:
    smallest = made(MARENZ, "smallest legal force")
    assert (smallest.batches, smallest.stands) == (6, 21)
    assert len(cards(MARENZ, "smallest legal force").jobs) == 6
    whole = cards(MARENZ)
    assert len(whole.jobs) == 9
    assert whole.milestones == ("smallest legal force", "whole battalion")
    assert cards(MARENZ, "smallest legal force").milestones == whole.milestones


def test_a_milestone_that_is_none_is_a_stop_with_the_nearest() -> None:
    answer = work_cards(MARENZ, today=ON, choice=Choice(), up_to="whole batalion")
    assert answer.cards is None
    (stop,) = (each for each in answer.checked.findings if each.level == "stop")
    assert (stop.code, stop.hint) == ("milestone-unknown", "Did you mean 'whole battalion'?")
    again = work_requisition(MARENZ, today=ON, choice=Choice(), up_to="whole batalion")
    assert again.made is None


def test_a_folder_of_which_nothing_is_known_has_its_stop(tmp_path: Path) -> None:
    folder = written(tmp_path / "ferry", FERRY_GUARD)
    assert work_cards(folder, today=ON, choice=Choice()).cards is None
    answer = work_requisition(folder, today=ON, choice=Choice())
    assert answer.made is None
    assert "bench-minutes-missing" in {each.code for each in answer.checked.findings}


def test_what_was_painted_in_an_evening_takes_no_more_paint(tmp_path: Path) -> None:
    folder = written(tmp_path / "ferry", NO_NUMBERS)
    assert made(folder).paint.unknown == {"rifleman": 6, "boat": 1}
    logged = call("log", folder, "moved", "rifleman=4", "--from", "in packet", "--to", "painted")
    assert logged.status == 0, logged.err
    assert made(folder).paint.unknown == {"rifleman": 2, "boat": 1}


def test_the_order_of_work_is_kept_in_mind_and_made_anew_when_a_file_changes(
    tmp_path: Path,
) -> None:
    folder, memory = written(tmp_path / "ferry", NO_NUMBERS), Memory()

    def batches() -> Cards:
        answer = work_cards(folder, today=ON, choice=Choice(), memory=memory)
        assert answer.cards is not None
        return answer.cards

    first, again = batches(), batches()
    assert all(one.rung is two.rung for one, two in zip(first.jobs, again.jobs, strict=True))
    longer = NO_NUMBERS.replace("painted: 40", "painted: 50")
    (folder / "force.yaml").write_text(longer, encoding="utf-8")
    assert sum(card.rung.minutes for card in batches().jobs) == 10 + sum(
        card.rung.minutes for card in first.jobs
    )
