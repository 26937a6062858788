"""What it would cost to buy again what each box holds."""

import shutil
from pathlib import Path

import pytest

from paradestate.core.certainty import Exact
from paradestate.journeys.club.box_values import BoxValues, box_values
from paradestate.journeys.order import Search
from tests.forces import EXAMPLES
from tests.journeys.clubs import TODAY, with_club

BOXES = """\
club:
  boxes:
    box 3: {counted: yes, keeper: secretary, holds: {rifleman: 12, lorry: 1}, insured for: 11.49}
    box 4: {counted: yes, holds: {lorry: 1}, insured for: 5}
    box 9: {keeper: steward, holds: {rifleman: 12}, insured for: 11.50}
"""


@pytest.fixture(scope="module")
def valued(tmp_path_factory: pytest.TempPathFactory) -> BoxValues:
    folder = tmp_path_factory.mktemp("boxes") / "marenz"
    shutil.copytree(EXAMPLES / "marenz", folder)
    return box_values(with_club(folder, BOXES), today=TODAY, search=Search(seconds=30))


def test_a_box_is_worth_the_cheapest_order_of_what_it_holds(valued: BoxValues) -> None:
    three, four, nine = valued.boxes
    assert three.answer is not None
    # 12 riflemen from South for 8.00 and 3.50 carriage; two of N2 would be 16.00 and 5.00.
    assert (three.answer.order.total, three.answer.certainty) == (1150, Exact())
    assert (three.unsold, three.keeper) == ({"lorry": 1}, "secretary")
    assert (four.answer, four.unsold) == (None, {"lorry": 1})
    assert nine.answer is not None
    assert valued.total == 1150  # of our own alone


def test_what_is_insured_for_less_is_said_at_its_place(valued: BoxValues) -> None:
    (low,) = [each for each in valued.checked.findings if each.code == "insured-too-low"]
    assert low.message == (
        "box 3 is insured for 11.49; what it holds would cost £11.50 to buy again."
    )
    assert low.place.path == ("club", "boxes", "box 3", "insured for")


def test_a_folder_with_a_stop_has_no_values(guard: Path) -> None:
    with_club(guard, "club: []\n")
    assert box_values(guard, today=TODAY, search=Search(seconds=1)).is_stopped
