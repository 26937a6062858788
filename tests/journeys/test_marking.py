"""The marks that every sheet draws."""

import datetime
from pathlib import Path

from paradestate.core.choice import Choice
from paradestate.journeys.count import count
from paradestate.journeys.marking import differences_among, marking_of
from paradestate.journeys.memory import Memory
from tests.forces import EXAMPLES

TODAY = datetime.date(2026, 3, 1)
MARENZ: Path = EXAMPLES / "marenz"


def test_the_marks_of_a_count_are_made_once() -> None:
    memory = Memory()
    counted = count(MARENZ, today=TODAY, choice=Choice(), memory=memory).count
    assert counted is not None
    made = marking_of(counted, memory=memory)
    assert len(made.by_mark) == 17
    assert marking_of(counted, memory=memory) is made


def test_colours_without_a_value_are_left_out() -> None:
    counted = count(MARENZ, today=TODAY, choice=Choice()).count
    assert counted is not None
    known = differences_among(counted.force, ["royal blue", "puce", "black"])
    assert list(known.pairs) == [frozenset({"royal blue", "black"})]
