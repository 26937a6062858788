"""What goes into which tray."""

from paradestate.core.paper.packing_list import packing_list, packing_tick
from tests.core.paper.trays import battalion_lids


def test_every_stand_is_on_it_once_row_by_row_with_its_mark() -> None:
    draft = packing_list(
        battalion_lids(),
        sure=("Exact.",),
        left_out=(),
        to_pack=45,
    )
    assert draft.shown is not None
    (tray,) = draft.shown.trays
    assert (tray.name, tray.words) == ("Case 1", "45 stands in 6 rows")
    lines = [line for row in tray.rows for line in row.lines]
    assert [line.number for line in lines] == list(range(1, 46))
    first = tray.rows[0]
    assert (first.company, first.lines[0].name) == ("No 1 Company", "1 Platoon, 1 Section")
    assert first.lines[0].mark is not None
    shared = next(row for row in tray.rows if not row.company)
    assert "No 1 Company, Company Command" in [line.name for line in shared.lines]
    assert [tick.holds for tick in draft.ticks] == [True]


def test_trays_hold_just_what_is_to_be_packed_or_the_check_doesnt_hold() -> None:
    assert packing_tick(37, left_out=0, to_pack=37).holds
    assert packing_tick(36, left_out=1, to_pack=37).words == (
        "36 stands in trays and 1 without a place for 37 stands to pack"
    )
    assert not packing_tick(36, left_out=0, to_pack=37).holds


def test_what_has_no_place_is_said() -> None:
    draft = packing_list((), sure=(), left_out=("Staff / Standard",), to_pack=1)
    assert draft.shown is not None
    assert draft.shown.left_out == ("Staff, Standard",)


def test_where_nothing_is_packed_there_is_no_list() -> None:
    assert packing_list((), sure=(), left_out=(), to_pack=0).shown is None
