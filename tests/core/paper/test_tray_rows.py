"""In which tray and row stands lie."""

from paradestate.core.paper.tray_rows import TrayRow, tray_rows, where_words
from tests.core.paper.trays import battalion_lids


def test_every_stand_of_the_trays_has_its_row() -> None:
    rows = tray_rows(battalion_lids())
    assert len(rows) == 45
    assert rows["No 2 Company / 1 Platoon / 1 Section"].tray == "case 1"
    (lid,) = battalion_lids()
    for row in lid.rows:
        assert {rows[stand.name].row for stand in row.stands} == {row.number}


def test_rows_are_said_tray_by_tray_with_what_has_no_place() -> None:
    laid = {
        "a": TrayRow(tray="case 1", row=4),
        "b": TrayRow(tray="case 1", row=2),
        "c": TrayRow(tray="case 1", row=3),
        "d": TrayRow(tray="case 2", row=1),
    }
    assert where_words(laid, ["a"]) == "Case 1, row 4"
    assert where_words(laid, ["a", "b", "c"]) == "Case 1, rows 2 to 4"
    assert where_words(laid, ["a", "b"]) == "Case 1, rows 2 and 4"
    assert where_words(laid, ["d", "a", "x"]) == "Case 2, row 1; Case 1, row 4; 1 without a place"
    assert where_words(laid, []) == ""


def test_where_nobody_has_laid_the_trays_nothing_is_said() -> None:
    assert where_words({}, ["a"]) == ""
