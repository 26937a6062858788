"""Plans of trays at full size."""

from dataclasses import replace
from fractions import Fraction

from paradestate.core.imposition.layout import Layout
from paradestate.core.outline import millimetres
from paradestate.core.paper.paper import ImposedPage
from paradestate.core.paper.tray_plans import TrayPart, tray_plans
from paradestate.core.tray.lid import Lid
from tests.core.paper.trays import battalion_lids


def pages_of(*lids: Lid) -> tuple[ImposedPage[TrayPart], ...]:
    shown = tray_plans(lids, layout=Layout()).shown
    assert shown is not None
    return shown.pages


def test_a_tray_of_300_by_200_comes_in_two_halves_that_make_it_whole() -> None:
    pieces = [piece for page in pages_of(*battalion_lids()) for piece in page.pieces]
    assert [p.frame.width for p in pieces] == [millimetres(150)] * 2
    assert [p.frame.height for p in pieces] == [millimetres(200)] * 2
    assert [p.face.across for p in pieces] == [Fraction(0), Fraction(150)]
    assert [p.face.deep for p in pieces] == [Fraction(0)] * 2
    assert [p.face.part for p in pieces] == ["part 1 of 2", "part 2 of 2"]
    assert {p.face.width for p in pieces} == {millimetres(300)}
    assert {p.face.depth for p in pieces} == {millimetres(200)}


def test_every_stand_is_on_each_part_that_it_lies_on_and_on_one_at_least() -> None:
    (lid,) = battalion_lids()
    parts = [piece.face for page in pages_of(lid) for piece in page.pieces]
    names = {stand.number for part in parts for stand in part.stands}
    assert names == {stand.number for stand in lid.stands} == set(range(1, 46))
    for part in parts:
        for stand in part.stands:
            assert stand.across <= part.across + 150
            assert stand.across + stand.width >= part.across


def test_the_company_is_left_out_where_a_colour_tells_it() -> None:
    stands = {
        s.number: s
        for page in pages_of(*battalion_lids())
        for p in page.pieces
        for s in p.face.stands
    }
    assert stands[1].lines == ("1 Platoon", "1 Section")
    assert stands[1].mark is not None
    markers = [stand for stand in stands.values() if "Marker" in stand.lines[-1]]
    assert len(markers) == 8
    for marker in markers:  # nothing marks them
        assert marker.mark is None
        assert marker.lines[0].startswith("No ")


def test_a_tray_that_a_page_holds_is_one_piece() -> None:
    (lid,) = battalion_lids()
    small = replace(lid, width=Fraction(100), depth=Fraction(80), rows=lid.rows[:1])
    (page,) = pages_of(small, replace(small, tray="other"))
    assert [piece.face.part for piece in page.pieces] == ["", ""]
    first, second = (piece.frame for piece in page.pieces)
    assert second.top - first.bottom >= millimetres(8)  # for the words between


def test_where_nothing_is_packed_there_is_no_plan() -> None:
    assert tray_plans((), layout=Layout()).shown is None
