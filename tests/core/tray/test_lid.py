"""What the drawing of a tray shows: numbers that run on, places, marks."""

from paradestate.core.establishment import establishment
from paradestate.core.mark.code import Mark, Sign
from paradestate.core.mark.marking import marking
from paradestate.core.tray.lid import lids, marks_of
from paradestate.core.tray.plan import laid_out
from tests.forces import marenz
from tests.tray_things import alike, case

BLUE = Mark(colour="royal blue", value="1F4E9E", bars=2, sign=Sign.CROSS)


def test_numbers_run_on_from_row_to_row_and_tray_to_tray() -> None:
    plan = laid_out([case("1", inside=(84, 42)), case("2", inside=(84, 42))], alike(6, 40, 20))
    first, second = lids(plan.trays, marks={"s5": BLUE})
    assert [[each.number for each in row.stands] for row in first.rows] == [[1, 2], [3, 4]]
    assert [each.number for each in second.stands] == [5, 6]
    assert [each.mark for each in second.stands] == [None, BLUE]
    assert [first.width, first.depth, first.tray] == [84, 42, "1"]
    assert [[row.number, row.starts, row.ends, row.width] for row in first.rows] == [
        [1, 0, 20, 82],
        [2, 22, 42, 82],
    ]
    last = second.stands[-1]
    assert [last.across, last.deep, last.width, last.depth, last.is_round] == [42, 0, 40, 20, False]


def test_marks_are_those_on_the_rear_and_markers_do_not_tell() -> None:
    force = marenz()
    made, _ = establishment(force)
    assert made is not None
    marks = marks_of(marking(force, made))
    section = marks["No 2 Company / 3 Platoon / 1 Section"]
    assert section is not None
    assert [section.value, section.bars] == ["F2C230", 3]
    assert marks["No 1 Company / 1 Hidden-movement Marker"] is None
