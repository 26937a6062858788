"""Boxes, bookings and what is short, in words."""

from dataclasses import replace
from fractions import Fraction

from paradestate.core.club.booking import Box, Club
from paradestate.core.club.enough import BackInTime, Sharing, Stock, remedies, spells
from paradestate.core.sentence.club import (
    NO_REMEDY,
    booked_twice,
    booking_sentence,
    box_sentence,
    club_sentences,
    kept_words,
    lent_sentence,
    needs_words,
    remedy_words,
    where_words,
)
from tests.core.club.bookings import BOX_NINE, BOX_THREE, DAY, HILL, RIVER, TRUCK, club, lent

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


def test_a_box_of_ours_its_keepers_and_its_insurance_are_read_back() -> None:
    box = replace(BOX_THREE, handed_over={DAY: "steward"}, insured_for=Fraction(25, 2))
    assert box_sentence(box) == (
        "box 3, one of ours, is kept by secretary: 6 trucks. From 3 December 2026 on steward keeps "
        "it. Insured for 12.5."
    )
    assert box_sentence(replace(BOX_THREE, keeper="")) == "box 3, one of ours: 6 trucks."


def test_needs_by_stand_and_by_game_are_read_back() -> None:
    river = replace(RIVER, stands={"section": 3}, game="attack", force="old", whom="steward")
    assert booking_sentence(river) == (
        "river, 3 December 2026, 20:00-22:00, for steward: 8 trucks, 3 sections and all of attack "
        "of old."
    )
    assert needs_words(replace(RIVER, needs={}, force="old")) == "all of old"
    assert needs_words(replace(RIVER, needs={}, game="attack")) == "all of attack"


def test_loans_are_read_back() -> None:
    out = club(boxes=(BOX_THREE,), loans=(lent("box 3"),))
    assert dict(club_sentences(out))["loans", "box 3"] == (
        "box 3 is out with treasurer since 1 December 2026; nobody said until when."
    )
    assert lent_sentence(lent("box 3", until=4)) == (
        "box 3 is out with treasurer, 1 December 2026 to 4 December 2026."
    )


def test_what_a_box_keeps_is_told_where_it_is_short() -> None:
    river = replace(RIVER, needs={TRUCK: 3}, borrows=("box 3",))
    box = replace(BOX_THREE, holds={TRUCK: 6, "gun": 1})
    stock = Stock(sound={TRUCK: 12, "gun": 1})
    both = club(river, HILL, boxes=(box,))
    (spell,) = spells(both, stock)
    assert kept_words(spell) == "box 3 is out whole, and 3 trucks and 1 gun of it aren't needed"
    found = booked_twice(spell, remedies(both, stock, spell=spell))
    assert found.message.endswith(
        "on 3 December 2026. Box 3 is out whole, and 3 trucks and 1 gun of it aren't needed."
    )
    (lone,) = spells(club(replace(river, needs={TRUCK: 5, "gun": 1}), boxes=(box,)), stock)
    assert kept_words(lone) == "box 3 is out whole, and 1 truck of it isn't needed"


def test_the_ways_out_that_a_box_offers() -> None:
    assert remedy_words(Sharing(box=BOX_THREE)) == "taking out of box 3 only what is needed"
    assert remedy_words(BackInTime(lent=lent("box 3"))) == (
        "having box 3 back from treasurer by then"
    )


def test_where_a_box_is() -> None:
    third, sixth = DAY, DAY.replace(day=6)
    assert where_words(BOX_THREE, None, today=third) == "here"
    assert where_words(BOX_NINE, None, today=third) == "with its keeper"
    out = lent("box 3", until=5)
    since = "out with treasurer since 1 December 2026"
    assert where_words(BOX_THREE, out, today=third) == f"{since} until 5 December 2026"
    assert where_words(BOX_THREE, out, today=sixth) == f"{since} until 5 December 2026, late"
    assert where_words(BOX_THREE, lent("box 3"), today=third) == since
    backwards = lent("box 3", since=2, until=1)
    assert where_words(BOX_THREE, backwards, today=third) == (
        "out with treasurer since 2 December 2026"
    )
    ahead = where_words(BOX_THREE, lent("box 3", since=5), today=third)
    assert ahead == "here; goes out to treasurer on 5 December 2026"
