"""What goes out on an evening, signed for and counted back."""

import datetime
from collections.abc import Mapping
from dataclasses import replace

from paradestate.core.club.booking import Booking, Box, Club, Lent
from paradestate.core.club.week import week_of
from paradestate.core.paper.sign_out_sheet import SignOutEvening, sign_out_sheet
from tests.core.club.bookings import (
    BOX_NINE,
    DAY,
    HILL,
    RIVER,
    TRUCK,
    booking,
    club,
    hours,
    needs_of,
)
from tests.core.club.test_week import MONDAY

BORROWING = replace(RIVER, borrows=("box 9",))
CRATE = Box(name="crate", holds={TRUCK: 2, "gun": 1})


def evenings(
    planned: Club,
    *,
    needs: Mapping[str, Mapping[str, int]] | None = None,
    today: datetime.date = MONDAY,
) -> tuple[SignOutEvening, ...]:
    known = needs_of(planned) if needs is None else needs
    weeks = (week_of(planned, (), first=MONDAY, needs=known),)
    shown = sign_out_sheet(planned, weeks, needs=known, today=today).shown
    return () if shown is None else shown.evenings


def test_a_box_goes_out_with_its_keeper_and_the_game_takes_what_isnt_in_it() -> None:
    (evening,) = evenings(club(BORROWING, HILL, boxes=(BOX_NINE, CRATE)))
    assert evening.day == "Thursday 3 December 2026"
    assert evening.games == (
        "River, 20:00-22:00: 8 trucks, with box 9.",
        "Hill, 20:00-22:00: 8 trucks.",
    )
    box, river, hill = evening.cards
    assert (box.title, box.whose) == ("Box 9", "kept by Ann; for river, 20:00-22:00")
    assert [(each.number, each.what) for each in box.lines] == [(6, "trucks")]
    assert (river.title, river.whose) == ("For river", "20:00-22:00, beside box 9")
    assert [(each.number, each.what) for each in river.lines] == [(2, "trucks")]
    assert (hill.whose, hill.lines[0].number) == ("20:00-22:00", 8)


def test_other_boxes_stand_below_so_that_they_can_be_signed_for_too() -> None:
    (evening,) = evenings(club(RIVER, boxes=(BOX_NINE, CRATE)))
    assert [(each.name, each.keeper, each.holds) for each in evening.others] == [
        ("Box 9", "Ann", "6 trucks"),
        ("Crate", "", "2 trucks and 1 gun"),
    ]
    assert not any(each.is_away for each in evening.others)


def test_a_box_that_two_games_share_serves_the_first_of_them() -> None:
    shared = club(BORROWING, replace(HILL, borrows=("box 9",)), boxes=(BOX_NINE,))
    (evening,) = evenings(shared)
    assert evening.cards[0].whose == "kept by Ann; for river, 20:00-22:00 and hill, 20:00-22:00"
    assert [card.lines[0].number for card in evening.cards[1:]] == [2, 8]


def test_a_game_that_needs_no_more_than_its_box_has_no_card_of_its_own() -> None:
    small = booking("small", hours(20, 22), needs={TRUCK: 6}, borrows=("box 9",))
    (evening,) = evenings(club(small, boxes=(BOX_NINE,)))
    assert [card.title for card in evening.cards] == ["Box 9"]


def test_what_is_out_already_or_late_is_asked_for() -> None:
    late = Lent(box="box 9", to="borrower 7", since=MONDAY, until=DAY - datetime.timedelta(days=2))
    out = Lent(box="crate", to="borrower 8", since=MONDAY)
    planned = club(BORROWING, boxes=(replace(BOX_NINE, keeper=""), CRATE))
    planned = replace(planned, loans={"box 9": late, "crate": out})
    (evening,) = evenings(planned, today=DAY)
    assert evening.cards[0].whose == "for river, 20:00-22:00; out already: is it back?"
    assert evening.others[0].is_away
    assert "borrower" not in repr(evening)


def test_a_game_that_couldnt_be_counted_has_room_to_write() -> None:
    (evening,) = evenings(club(RIVER), needs={})
    (card,) = evening.cards
    assert card.whose == "20:00-22:00; what it needs isn't known: write it down"
    assert card.lines == ()


def test_for_whom_it_is_booked_isnt_printed() -> None:
    planned = club(replace(RIVER, whom="borrower 7"))
    assert "borrower" not in repr(evenings(planned))


def test_what_is_over_has_no_sheet_and_a_box_that_nobody_described_no_card() -> None:
    assert evenings(club(RIVER), today=DAY + datetime.timedelta(days=1)) == ()
    odd: Booking = replace(RIVER, borrows=("none such",))
    (evening,) = evenings(club(odd))
    assert [card.title for card in evening.cards] == ["For river"]
    assert evening.cards[0].lines[0].number == 8
