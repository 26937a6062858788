"""Areas and volumes from text."""

from fractions import Fraction

import pytest

from paradestate.core.supplies import Millilitres, SquareMillimetres
from paradestate.text.volume import area_text, read_area, read_volume, volume_text
from tests.text.slips import code_of, value_of


@pytest.mark.parametrize(("text", "area"), [("3 cm2", 300), ("3cm2", 300), ("450.5 mm2", "450.5")])
def test_areas_have_a_unit(text: str, area: int | str) -> None:
    assert value_of(read_area(text)) == Fraction(area)


@pytest.mark.parametrize(("text", "volume"), [("17 ml", 17), ("0.5 l", 500), ("1/2 ml", "1/2")])
def test_volumes_have_a_unit(text: str, volume: int | str) -> None:
    assert value_of(read_volume(text)) == Fraction(volume)


@pytest.mark.parametrize("text", ["3", "3 cm", "cm2", "0 cm2", "-1 cm2", "100000000 cm2"])
def test_what_is_no_area(text: str) -> None:
    assert code_of(read_area(text)) == "not-an-area"


@pytest.mark.parametrize("text", ["17", "0 ml", "2000000 l", "17 cl", "many ml"])
def test_what_is_no_volume(text: str) -> None:
    assert code_of(read_volume(text)) == "not-a-volume"


def test_slips_in_the_number_are_said_of_the_number() -> None:
    assert code_of(read_area("3,5 cm2")) == "comma-decimal"
    assert code_of(read_volume("1/0 ml")) == "not-a-number"
    assert code_of(read_volume("3,5")) == "comma-decimal"


def test_they_are_written_as_they_are_read() -> None:
    area, volume = SquareMillimetres(Fraction(350)), Millilitres(Fraction(500))
    assert area_text(area) == "3.5 cm2"
    assert volume_text(volume) == "500 ml"
    assert value_of(read_area(area_text(area))) == area
    assert value_of(read_volume(volume_text(volume))) == volume
