"""What the drawing of a tray shows: numbers that run on, places, marks."""

from paradestate.core.establishment import establishment
from paradestate.core.parade import ranks
from paradestate.core.strength import strength
from paradestate.core.tray.lid import UNMARKED, LidMark, lids, marks_of
from paradestate.core.tray.plan import laid_out
from tests.forces import marenz
from tests.tray_things import alike, case


def test_numbers_run_on_from_row_to_row_and_tray_to_tray() -> None:
    plan = laid_out([case("1", inside=(84, 42)), case("2", inside=(84, 42))], alike(6, 40, 20))
    first, second = lids(plan.trays, marks={"s5": LidMark(colour="1F4E9E", bars=2)})
    assert [[each.number for each in row.stands] for row in first.rows] == [[1, 2], [3, 4]]
    assert [each.number for each in second.stands] == [5, 6]
    assert [each.mark.bars for each in second.stands] == [0, 2]
    assert first.stands[0].mark == UNMARKED
    assert [first.width, first.depth, first.tray] == [84, 42, "1"]
    assert [[row.number, row.starts, row.ends, row.width] for row in first.rows] == [
        [1, 0, 20, 82],
        [2, 22, 42, 82],
    ]
    last = second.stands[-1]
    assert [last.across, last.deep, last.width, last.depth, last.is_round] == [42, 0, 40, 20, False]


def test_marks_are_those_of_the_parade() -> None:
    force = marenz()
    made, _ = establishment(force)
    assert made is not None
    marks = marks_of(ranks(force, made, strength=strength(force, made)))
    assert marks["No 2 Company / 3 Platoon / 1 Section"] == LidMark(colour="F2C230", bars=3)
    assert marks["Battalion Command"] == UNMARKED
