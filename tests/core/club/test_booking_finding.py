"""What is doubtful of bookings, loans and boxes."""

from dataclasses import replace
from fractions import Fraction

from paradestate.core.club.booking_finding import (
    boxes_too_full,
    club_doubts,
    insured_too_low,
    name_of_several,
    not_counted,
)
from paradestate.core.finding import Level
from paradestate.core.money import Currency
from paradestate.core.place import KeyPath, Place, Places
from tests.core.club.bookings import (
    BOX_NINE,
    BOX_THREE,
    DAY,
    HILL,
    RIVER,
    TRUCK,
    club,
    hours,
    lent,
)

UNTIL: KeyPath = ("club", "loans", "box 3", "until")
PLACES: Places = {UNTIL: Place(file="club.yaml", line=7, column=12, path=UNTIL)}
TODAY = DAY.replace(day=5)


def test_a_name_of_several_is_asked_for_by_code() -> None:
    found = name_of_several(["borrower 22222", "borrower 33333"], effect="Nothing was written.")
    assert (found.level, found.code) == (Level.STOP, "name-of-several")
    assert found.message == (
        "2 people are called so on this machine: borrower 22222 and borrower 33333."
    )
    assert found.effect == "Nothing was written."


def test_a_late_box_is_named_with_its_days_and_its_place() -> None:
    made = club(boxes=(BOX_THREE,), loans=(lent("box 3", until=3),))
    (found,) = club_doubts(made, places=PLACES, today=TODAY)
    assert (found.code, found.place) == ("loan-late", PLACES[UNTIL])
    assert found.message == (
        "box 3 was to be back from treasurer by 3 December 2026: it is 2 days late."
    )
    assert not list(club_doubts(made, places=PLACES, today=DAY))


def test_a_loan_whose_last_day_is_before_its_first_is_named() -> None:
    made = club(boxes=(BOX_THREE,), loans=(lent("box 3", since=6, until=3),))
    (found,) = club_doubts(made, places=PLACES, today=TODAY)
    assert (found.code, found.place) == ("loan-backwards", PLACES[UNTIL])
    assert found.message == (
        "box 3 would be back from treasurer on 3 December 2026, before it goes out on "
        "6 December 2026."
    )


def test_a_booking_of_nothing_is_named() -> None:
    empty = replace(RIVER, needs={})
    (found,) = club_doubts(club(empty), places={}, today=TODAY)
    assert found.code == "booking-of-nothing"
    for full in (replace(empty, game="raid"), replace(empty, by_hand="dice")):
        assert not list(club_doubts(club(full), places={}, today=TODAY))


def test_a_telephone_number_in_the_files_is_named() -> None:
    kept = replace(BOX_NINE, keeper="Ann, 01632 960123", handed_over={DAY: "ann@club.example"})
    made = club(replace(RIVER, whom="borrower 7f3k2"), boxes=(kept,))
    said = list(club_doubts(made, places={}, today=TODAY))
    assert [each.code for each in said] == ["contact-in-files"] * 2
    assert "'ann@club.example' looks like" in said[1].message


def test_two_games_that_borrow_one_box_at_once_are_named() -> None:
    river = replace(RIVER, borrows=("box 9", "box 9", "box 3"))
    hill = replace(HILL, hours=hours(21, 23), borrows=("box 9",))
    planned = club(river, hill, boxes=(BOX_NINE, BOX_THREE))
    (found,) = club_doubts(planned, places={}, today=DAY)
    assert (found.code, found.message) == (
        "box-at-once",
        "box 9 is borrowed by river and hill at once, 21:00-22:00 on 3 December 2026.",
    )
    assert not list(club_doubts(planned, places={}, today=TODAY))
    later = replace(planned, bookings={"a": river, "b": replace(hill, hours=hours(22, 23))})
    assert not list(club_doubts(later, places={}, today=DAY))


def test_a_game_without_its_box_is_named() -> None:
    river = replace(RIVER, borrows=("box 3",))
    made = club(river, boxes=(BOX_THREE,), loans=(lent("box 3", until=9),))
    (found,) = club_doubts(made, places={}, today=TODAY)
    assert found.code == "box-away"
    assert found.message == (
        "river borrows box 3, which is out with treasurer until 9 December 2026."
    )
    (open_ended,) = club_doubts(replace(made, loans={"box 3": lent("box 3")}), places={}, today=DAY)
    assert open_ended.message == "river borrows box 3, which is out with treasurer."


def test_handing_over_what_is_out_is_named() -> None:
    handed = replace(BOX_THREE, handed_over={TODAY: "steward"})
    made = club(boxes=(handed,), loans=(lent("box 3", until=9),))
    (found,) = club_doubts(made, places={}, today=TODAY)
    assert (found.code, found.message) == (
        "handed-over-away",
        "box 3 is handed over to steward on 5 December 2026, and is out with treasurer then.",
    )


def test_boxes_of_ours_hold_no_more_than_is_owned() -> None:
    boxes = (BOX_THREE, replace(BOX_THREE, name="box 4"), BOX_NINE)
    (found,) = boxes_too_full(club(boxes=boxes), {TRUCK: 11}, places={})
    assert (found.code, found.message) == (
        "boxes-hold-more",
        "Truck: our boxes hold 12, and 11 are owned.",
    )
    assert not list(boxes_too_full(club(boxes=boxes), {TRUCK: 12}, places={}))
    assert len(list(boxes_too_full(club(boxes=boxes), {}, places={}))) == 1


def test_a_game_that_nobody_can_count_points_at_its_word() -> None:
    paths: list[KeyPath] = [("club", "bookings", "river", word) for word in ("force", "game")]
    places = {path: Place(file="f", line=n, column=1, path=path) for n, path in enumerate(paths, 1)}
    other = not_counted(replace(RIVER, force="old"), why="there is none.", places=places)
    assert (other.code, other.message, other.place.line) == (
        "booking-not-counted",
        "river: there is none.",
        1,
    )
    assert not_counted(replace(RIVER, game="x"), why="no.", places=places).place.line == 2


def test_a_box_insured_for_less_than_it_would_cost() -> None:
    box = replace(BOX_THREE, insured_for=Fraction(25, 2))
    found = insured_too_low(box, 1950, currency=Currency("GBP"), places={})
    assert found.message == (
        "box 3 is insured for 12.5; what it holds would cost £19.50 to buy again."
    )
    assert insured_too_low(BOX_THREE, 1, currency=Currency("GBP"), places={}).message.startswith(
        "box 3 is insured for 0;"
    )
