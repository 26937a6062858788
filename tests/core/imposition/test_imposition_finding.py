"""What is doubtful in how a sheet is laid out."""

from fractions import Fraction

from paradestate.core.finding import Finding, Level
from paradestate.core.imposition.imposition_finding import (
    loaded_findings,
    register_findings,
    rounded,
    scale_findings,
    type_findings,
)
from paradestate.core.imposition.layout import Layout
from paradestate.core.imposition.paper_size import A4, LETTER
from paradestate.core.imposition.print_scale import measured
from paradestate.core.imposition.type_size import USUAL_DISTANCE, length_of_points
from paradestate.core.outline import millimetres
from tests.core.imposition.boxes import frame


def only(findings: list[Finding]) -> Finding:
    (found,) = findings
    return found


def scaled(across: str, down: str) -> list[Finding]:
    return list(scale_findings(measured(Fraction(across), Fraction(down))))


def test_a_line_of_96_8_is_said_with_the_per_cent_to_print_at() -> None:
    found = only(scaled("96.8", "96.8"))
    assert (found.level, found.code) == (Level.WARN, "printed-size-wrong")
    assert found.message == "The 100 mm line measures 96.8."
    assert found.hint.startswith("Print at 103.3% or turn off fitting")
    assert found.effect == "What is laid out 40 mm wide comes out 1.3 mm wrong."


def test_half_a_per_cent_is_allowed() -> None:
    assert scaled("99.5", "100.5") == []
    assert scaled("99.4", "100")
    assert scaled("100", "100.6")


def test_different_errors_across_and_down_are_both_said() -> None:
    found = only(scaled("96.8", "101"))
    assert found.message == "The 100 mm line across measures 96.8, the one down 101."
    assert found.hint.startswith("Print at 103.3% across and 99% down")


def test_what_the_sheets_make_good_is_a_remark() -> None:
    scale = measured(Fraction("96.8"), Fraction("96.8"))
    found = only(list(scale_findings(scale, is_made_good=True)))
    assert found.level is Level.REMARK
    assert "print them as before" in found.effect
    assert found.hint == "Measure the lines on a page of these again."


def test_a_bleed_below_the_printers_shift_is_said_and_at_it_isnt() -> None:
    found = only(list(register_findings(Layout(bleed=millimetres("0.5")))))
    assert (found.level, found.code) == (Level.WARN, "bleed-too-small")
    assert found.message == "Bleed 0.5 mm, printer shift about 1 mm."
    assert found.effect == "The underside marks may show a white edge."
    assert list(register_findings(Layout())) == []


def test_another_paper_in_the_printer_is_said_where_it_cuts_something() -> None:
    room = Layout().room
    last = frame(left=8, top=str(room.bottom - 38), width=18, height=38)
    found = only(list(loaded_findings("Labels", [last], layout=Layout(), loaded=LETTER)))
    assert (found.level, found.code) == (Level.WARN, "other-paper")
    assert found.message == (
        "Labels: sheets are laid out for A4; the printer offers Letter: the last row would be cut."
    )
    assert found.effect.startswith("1 of them comes out incomplete")
    assert found.hint == "Lay them out for it: --paper letter."


def test_another_paper_that_cuts_nothing_isnt_said() -> None:
    first = frame(left=8, top=8, width=18, height=38)
    assert list(loaded_findings("Labels", [first], layout=Layout(), loaded=LETTER)) == []
    wide = frame(left=200, top=8, width="7.9", height=38)
    letter = Layout(size=LETTER)
    found = only(list(loaded_findings("Labels", [wide], layout=letter, loaded=A4)))
    assert "the right edge would be cut" in found.message
    assert found.hint == "Lay them out for it: --paper a4."


def test_type_that_cant_be_read_from_there_is_said_in_points() -> None:
    size = length_of_points(Fraction("4.1"))
    found = only(list(type_findings("platoon numbers", size, distance=millimetres(480))))
    assert (found.level, found.code) == (Level.WARN, "type-too-small")
    assert found.message == (
        "Platoon numbers would be 4.1 pt, some of them. Least readable at 48 cm is about 8 pt."
    )
    assert found.hint.endswith("--read-from '24 cm'.")


def test_type_is_compared_to_a_tenth_of_a_point() -> None:
    for number, said in (("10", False), ("9.9", True)):
        size = length_of_points(Fraction(number))
        assert bool(list(type_findings("names", size, distance=USUAL_DISTANCE))) is said


def test_numbers_are_rounded_to_a_tenth_halves_away_from_nought() -> None:
    assert [rounded(Fraction(each)) for each in ("1.25", "1.249", "3", "0.04")] == [
        "1.3",
        "1.2",
        "3",
        "0",
    ]
