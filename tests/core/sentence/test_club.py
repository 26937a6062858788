"""Boxes, bookings and what is short, in words."""

from dataclasses import replace

from paradestate.core.club.booking import Box, Club
from paradestate.core.club.enough import Stock, remedies, spells
from paradestate.core.sentence.club import (
    NO_REMEDY,
    booked_twice,
    booking_sentence,
    box_sentence,
    club_sentences,
    remedy_words,
)
from tests.core.club.bookings import BOX_NINE, HILL, RIVER, TRUCK, club

TWELVE = Stock(sound={TRUCK: 12})


def test_boxes_and_bookings_are_read_back() -> None:
    river = replace(RIVER, borrows=("box 9",))
    said = dict(club_sentences(replace(club(river, boxes=(BOX_NINE,)), by_hand="on Thursdays")))
    assert said == {
        ("boxes", "box 9"): "box 9 may be borrowed from Ann: 6 trucks.",
        ("bookings", "river"): "river, 3 December 2026, 20:00-22:00: 8 trucks, with box 9.",
        (): "The club. By hand, not checked by machine: on Thursdays.",
    }
    assert not list(club_sentences(Club()))
    assert box_sentence(Box(name="9", holds={TRUCK: 1})) == "9 may be borrowed: 1 truck."
    assert booking_sentence(replace(RIVER, needs={})).endswith("20:00-22:00: nothing of ours.")


def test_story_27_says_what_is_short_when_and_the_ways_out() -> None:
    both = club(RIVER, HILL, boxes=(BOX_NINE,))
    (spell,) = spells(both, TWELVE)
    found = booked_twice(spell, remedies(both, TWELVE, spell=spell))
    assert found.message == ("Truck: 16 booked, 12 sound, 4 short, 20:00-22:00 on 3 December 2026.")
    assert found.effect == "Not all can be played as booked: river and hill."
    assert found.hint == (
        "Moving river to 18:00-20:00, moving river to 22:00-24:00, moving hill to 18:00-20:00, "
        "moving hill to 22:00-24:00 or borrowing box 9 from Ann would do it."
    )
    assert booked_twice(spell, ()).hint == NO_REMEDY


def test_a_box_without_a_keeper() -> None:
    both = club(RIVER, HILL, boxes=(replace(BOX_NINE, keeper=""),))
    (spell,) = spells(both, TWELVE)
    assert remedy_words(remedies(both, TWELVE, spell=spell)[-1]) == "borrowing box 9"
