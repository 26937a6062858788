"""Symbols of units."""

from xml.etree import ElementTree as ET

import pytest

from paradestate.core.formation import Arm, Echelon
from paradestate.core.mark.code import Mark, Sign
from paradestate.sheet.symbol import (
    HEIGHT,
    WIDTH,
    Symbol,
    dots_of,
    mark_drawing,
    size_mark,
    symbol,
    symbol_drawing,
)


def drawn(shown: Symbol) -> str:
    return ET.tostring(symbol(shown, left=10, top=20), encoding="unicode")


def test_the_frame_is_three_by_two() -> None:
    assert WIDTH * 2 == HEIGHT * 3
    frame = symbol(Symbol(), left=10, top=20)
    assert frame.get("transform") == "translate(10 20)"
    assert [(each.tag, each.get("width"), each.get("height")) for each in frame] == [
        ("rect", "54", "36")
    ]


def test_every_arm_has_a_sign_of_its_own() -> None:
    signs = {drawn(Symbol(arm=arm)) for arm in Arm}
    assert len(signs) == len(Arm)
    assert drawn(Symbol()) not in signs


def test_infantry_is_crossed_from_corner_to_corner() -> None:
    assert 'd="M0 0L54 36M0 36L54 0"' in drawn(Symbol(arm=Arm.INFANTRY))


def test_a_headquarters_has_a_staff_below_its_lower_left_corner() -> None:
    assert 'd="M0 36V48"' in drawn(Symbol(arm=Arm.HEADQUARTERS))
    assert 'd="M0 36V48"' not in drawn(Symbol(arm=Arm.SIGNAL))


def test_every_size_has_a_mark_of_its_own_but_section_and_squad() -> None:
    marks = {echelon: mark_drawing(echelon).svg.split(">", 1)[1] for echelon in Echelon}
    assert marks[Echelon.SECTION] == marks[Echelon.SQUAD]
    assert len(set(marks.values())) == len(Echelon) - 1


@pytest.mark.parametrize(
    ("echelon", "number"),
    [(Echelon.SQUAD, 1), (Echelon.SECTION, 1), (Echelon.PLATOON, 3)],
)
def test_small_sizes_have_dots(echelon: Echelon, number: int) -> None:
    mark = size_mark(echelon, middle=0, foot=0)
    assert [each.tag for each in mark] == ["circle"] * number
    assert sum(float(each.get("cx", "")) for each in mark) == 0


@pytest.mark.parametrize(
    ("echelon", "number"),
    [(Echelon.COMPANY, 1), (Echelon.BATTALION, 2), (Echelon.REGIMENT, 3)],
)
def test_larger_sizes_have_bars(echelon: Echelon, number: int) -> None:
    (mark,) = size_mark(echelon, middle=0, foot=0)
    assert (mark.get("d") or "").count("V") == number


def test_a_section_has_two_dots_where_there_are_squads() -> None:
    both = {Echelon.SECTION, Echelon.SQUAD}
    assert dots_of(Echelon.SECTION, beside=both) == 2
    assert dots_of(Echelon.SQUAD, beside=both) is None
    assert dots_of(Echelon.SECTION, beside={Echelon.SECTION, None}) is None
    assert len(size_mark(Echelon.SECTION, dots=2, middle=0, foot=0)) == 2


def test_no_size_has_no_mark() -> None:
    assert size_mark(None, middle=0, foot=0) == ()


def test_what_is_missing_has_a_broken_frame() -> None:
    assert "stroke-dasharray" in drawn(Symbol(is_missing=True))
    assert "stroke-dasharray" not in drawn(Symbol())


def test_the_plate_stands_right_of_the_frame_with_an_edge_of_ink() -> None:
    mark = Mark(colour="royal blue", value="1F4E9E", bars=2, sign=Sign.RING)
    plate = symbol(Symbol(mark=mark), left=0, top=0)[1]
    assert plate[0].get("fill") == "#1F4E9E"
    assert plate[0].get("stroke") == "var(--ink)"
    assert f"translate({WIDTH + 5} " in plate.get("transform", "")


def test_a_symbol_alone_says_what_it_shows() -> None:
    shown = Symbol(arm=Arm.ANTI_TANK, echelon=Echelon.PLATOON)
    assert symbol_drawing(shown).words == "anti-tank platoon"
    assert symbol_drawing(Symbol()).words == "unit"
    assert symbol_drawing(shown, words="3 Platoon").words == "3 Platoon"
    assert "style" not in symbol_drawing(shown).svg
