"""A week of a club in words."""

from dataclasses import replace

from paradestate.core.club.booking import Box
from paradestate.core.club.enough import Loan, Move, Stock, spells
from paradestate.core.club.week import Week, week_of
from paradestate.core.figure import FigureKind, Match
from paradestate.core.sentence.club_week import (
    day_sentences,
    game_words,
    mend_words,
    short_words,
    stand_in_words,
)
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

CART = FigureKind(name="cart", may_stand_for={TRUCK: Match.GOOD})


def week(*, trucks: int = 12, carts: int = 0) -> Week:
    stock = Stock(sound={TRUCK: trucks, "cart": carts}, figures={"cart": CART})
    planned = club(RIVER, HILL)
    return week_of(planned, spells(planned, stock), first=MONDAY, needs=needs_of(planned))


def test_games_come_first_and_then_what_is_short() -> None:
    assert list(day_sentences(week(), DAY)) == [
        "River, 20:00-22:00: 8 trucks.",
        "Hill, 20:00-22:00: 8 trucks.",
        "Truck: 16 booked, 12 sound, 4 short, 20:00-22:00.",
    ]
    assert list(short_words(week(), DAY)) == ["4 trucks, 20:00-22:00"]


def test_who_stands_in_is_said_also_where_nothing_is_short() -> None:
    assert list(day_sentences(week(carts=1), DAY))[-1] == (
        "Truck: 16 booked, 12 sound, 1 cart stands in, 3 short, 20:00-22:00."
    )
    assert list(day_sentences(week(carts=4), DAY))[-1] == (
        "Truck: 16 booked, 12 sound, 4 carts stand in, 20:00-22:00."
    )
    assert list(short_words(week(carts=4), DAY)) == []
    assert stand_in_words(()) == ""


def test_where_there_is_enough_nothing_more_is_said() -> None:
    assert len(list(day_sentences(week(trucks=16), DAY))) == 2
    assert list(day_sentences(week(), MONDAY)) == []


def test_a_game_says_what_it_borrows_and_one_of_no_needs_that() -> None:
    borrowing = replace(RIVER, borrows=(BOX_NINE.name,))
    assert game_words(borrowing) == "river, 20:00-22:00: 8 trucks, with box 9"
    idle = booking("talk", hours(19, 20), needs={})
    assert game_words(idle) == "talk, 19:00-20:00: nothing of ours"


def test_what_boxes_keep_and_games_that_arent_counted_are_said() -> None:
    own = Box(name="box 3", holds={TRUCK: 10}, is_counted=True)
    planned = club(replace(RIVER, borrows=("box 3",)), HILL, boxes=(own,))
    made = week_of(
        planned, spells(planned, Stock(sound={TRUCK: 12})), first=MONDAY, needs=needs_of(planned)
    )
    assert list(day_sentences(made, DAY))[-1] == (
        "Truck: 16 booked, 12 sound, 2 kept in boxes, 6 short, 20:00-22:00."
    )
    unknown = week_of(planned, (), first=MONDAY, needs={})
    assert next(iter(day_sentences(unknown, DAY))) == (
        "River, 20:00-22:00: 8 trucks, with box 3, not counted."
    )


def test_what_mends_a_day_is_said_as_something_to_do() -> None:
    move = Move(booking="river", hours=hours(18, 20))
    assert mend_words(move) == "move river to 18:00-20:00"
    assert mend_words(Loan(booking="river", box=BOX_NINE)) == "borrow box 9 from Ann for river"
    nobodys = replace(BOX_NINE, keeper="")
    assert mend_words(Loan(booking="river", box=nobodys)) == "borrow box 9 for river"
