"""The plate of a mark: its shapes stay inside, and no two marks are drawn alike."""

from itertools import combinations
from xml.etree import ElementTree as ET

import pytest

from paradestate.core.mark.code import SIGNS, Mark, Sign
from paradestate.sheet.colour_box import colour_box
from paradestate.sheet.mark_plate import (
    HIGH,
    NARROW,
    WIDE,
    Numeral,
    Outline,
    Plate,
    Ring,
    plate_drawing,
    plate_elements,
    plate_of,
    signs_on_stand,
)


def mark(bars: int = 0, sign: Sign | None = Sign.CROSS, *, has_rear_bar: bool = False) -> Mark:
    return Mark(
        colour="royal blue", value="1F4E9E", bars=bars, sign=sign, has_rear_bar=has_rear_bar
    )


PLAIN = Mark(colour="", value="", bars=2, sign=None)


def corners(plate: Plate) -> list[tuple[float, float]]:
    found: list[tuple[float, float]] = []
    for shape in plate.shapes:
        match shape:
            case Outline(points=points):
                found += points
            case Ring(middle=(x, y), radius=radius, line=line):
                reach = radius + line / 2
                found += [(x - reach, y - reach), (x + reach, y + reach)]
            case Numeral(middle=(x, y), size=size):
                found += [(x - size / 2, y - size / 2), (x + size / 2, y + size / 2)]
    return found


@pytest.mark.parametrize("sign", SIGNS)
@pytest.mark.parametrize("bars", range(8))
@pytest.mark.parametrize("has_rear_bar", [False, True])
def test_sign_and_bars_stay_inside_the_plate(sign: Sign, bars: int, has_rear_bar: bool) -> None:  # noqa: FBT001
    plate = plate_of(mark(bars, sign, has_rear_bar=has_rear_bar))
    assert all(1 < x < plate.width - 1 and 1 < y < plate.height - 1 for x, y in corners(plate))


def test_sizes_are_those_of_the_design() -> None:
    assert (plate_of(mark()).width, plate_of(mark()).height) == (NARROW, HIGH) == (32, 26)
    assert [plate_of(mark(bars)).width for bars in (1, 3, 5, 6)] == [WIDE, WIDE, 56, WIDE]
    assert plate_of(mark(has_rear_bar=True)).height > HIGH


def test_no_two_marks_are_drawn_alike() -> None:
    marks = [mark(bars, sign) for bars in range(8) for sign in SIGNS]
    marks += [mark(1, Sign.CROSS, has_rear_bar=True), PLAIN]
    drawn = [plate_of(each) for each in marks]
    assert all(one != other for one, other in combinations(drawn, 2))


def test_there_is_a_bar_for_each_and_beyond_five_a_number() -> None:
    assert len(plate_of(mark(3)).shapes) == 4
    assert [shape.text for shape in plate_of(mark(6)).shapes if isinstance(shape, Numeral)] == ["6"]


def test_the_plain_plate_bears_its_number_in_place_of_a_sign() -> None:
    plate = plate_of(PLAIN)
    assert isinstance(plate.shapes[0], Numeral)
    assert plate.ground == ""
    assert plate_of(Mark(colour="", value="", bars=0, sign=None)).shapes == ()


def test_the_sign_is_in_the_ink_that_reads_better() -> None:
    assert plate_of(mark()).ink == "#fff"
    assert plate_of(Mark(colour="y", value="F2C230", bars=0, sign=Sign.RING)).ink == "#111"


def test_a_page_draws_the_same_shapes_in_the_colour_that_a_viewer_sees() -> None:
    plate = plate_of(mark(2, Sign.RING))
    edge, *shapes = plate_elements(plate, seen=lambda _: "FFFFFF")
    assert edge.get("fill") == "#FFFFFF"
    assert len(shapes) == len(plate.shapes)
    assert shapes[0].get("stroke") == "#111"
    plain, numeral, *_ = plate_elements(plate_of(PLAIN))
    assert (plain.get("fill"), numeral.get("fill")) == ("var(--sheet)", "var(--ink)")


def test_on_a_stand_there_are_sign_and_bars_alone_within_its_edge() -> None:
    made = signs_on_stand(mark(2, Sign.RING), size=(40, 20))
    assert "rect" not in [each.tag for each in made]
    assert len(made) == 3
    assert "scale(0.723)" in made.get("transform", "")
    plain = signs_on_stand(PLAIN, size=(40, 20))
    assert plain[0].get("fill") == "var(--sheet)"


def test_a_plate_alone_says_its_mark() -> None:
    made = plate_drawing(mark(1))
    assert made.words == "royal blue, one bar, cross"
    root = ET.fromstring(made.svg)  # noqa: S314 - our own
    assert root.get("class") == "plate wide"
    assert root.get("aria-label") == made.words
    assert ET.fromstring(plate_drawing(mark()).svg).get("class") == "plate"  # noqa: S314
    assert 'aria-hidden="true"' in plate_drawing(mark(), is_hidden=True).svg


def test_a_colour_beside_its_name_is_not_read_out() -> None:
    assert 'aria-hidden="true"' in colour_box("1F4E9E").svg
