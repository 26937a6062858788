"""Things and trays in millimetres and in whole units."""

from fractions import Fraction

from paradestate.core.tray.thing import LEAST_UNIT, piece_of, room_of, units_in
from tests.tray_things import case, lies, thing


def test_a_turned_thing_is_as_wide_as_it_was_deep() -> None:
    lying = lies(thing("a", 40, 20), across=0, deep=0, is_turned=True)
    assert [lying.width, lying.depth] == [20, 40]
    assert thing("d", 30).width == thing("d", 30).depth == 30


def test_every_length_is_whole_in_units() -> None:
    inch = thing("inch", "25.4", "0.3")
    third = thing("third", "1", "1")
    assert units_in([case()], [inch, third]) == LEAST_UNIT
    odd = lies(thing("odd", "1", "1"), across=0, deep=0).thing
    assert units_in([case()], [odd]) % LEAST_UNIT == 0


def test_a_piece_and_its_tray_are_larger_by_the_gap() -> None:
    piece = piece_of(thing("a", 40, 20), number=3, gap=Fraction(2), units=1)
    assert (piece.number, piece.width, piece.depth) == (3, 42, 22)
    assert (piece.turned.width, len(piece.ways)) == (22, 2)
    assert len(piece_of(thing("a", 30), number=0, gap=Fraction(2), units=1).ways) == 1
    room = room_of(case(), units=1)
    assert (room.width, room.depth) == (302, 202)


def test_a_tray_is_too_low_only_where_both_heights_are_known() -> None:
    standard = thing("standard", 30, height="44")
    assert case(height=38).is_too_low_for(standard)
    assert not case(height=44).is_too_low_for(standard)
    assert not case().is_too_low_for(standard)
    assert not case(height=38).is_too_low_for(thing("a", 30))
