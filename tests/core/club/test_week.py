"""A week of a club by rows."""

import datetime
from dataclasses import replace

from paradestate.core.club.booking import Box, Club
from paradestate.core.club.enough import Stock, spells
from paradestate.core.club.week import Use, Week, monday_of, week_of, weeks_later
from paradestate.core.figure import FigureKind, Match, StandIn
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

MONDAY = datetime.date(2026, 11, 30)
STOCK = Stock(sound={TRUCK: 12})


def week(planned: Club, *, stock: Stock = STOCK, first: datetime.date = MONDAY) -> Week:
    return week_of(planned, spells(planned, stock), first=first, needs=needs_of(planned))


def test_story_27_is_one_row_with_two_games_and_four_short() -> None:
    (row,) = week(club(RIVER, HILL)).rows
    assert row.name == TRUCK
    assert not row.is_box
    assert row.uses == (
        Use(game="river", hours=hours(20, 22), number=8),
        Use(game="hill", hours=hours(20, 22), number=8),
    )
    (spell,) = row.spells
    assert (spell.booked, spell.sound, spell.short, spell.stand_ins) == (16, 12, 4, ())


def test_the_games_of_a_day_are_those_of_no_other() -> None:
    later = replace(HILL, hours=hours(18, 20, on=MONDAY + datetime.timedelta(days=4)))
    made = week(club(RIVER, later))
    assert [[each.name for each in made.games(day)] for day in made.booked] == [["river"], ["hill"]]
    assert made.games(MONDAY) == ()


def test_a_box_that_is_borrowed_is_a_row_under_the_kinds() -> None:
    made = week(club(replace(RIVER, borrows=("box 9",)), HILL, boxes=(BOX_NINE,)))
    trucks, box = made.rows
    assert (trucks.name, trucks.spells[0].sound, trucks.spells[0].short) == (TRUCK, 18, 0)
    assert (box.name, box.is_box) == ("box 9", True)
    assert box.uses == (Use(game="river", hours=hours(20, 22)),)


def test_who_stands_in_is_said_of_the_kind_that_lacks() -> None:
    cart = FigureKind(name="cart", may_stand_for={TRUCK: Match.GOOD})
    stock = Stock(sound={TRUCK: 12, "cart": 3}, figures={"cart": cart})
    other = booking("market", hours(20, 22), needs={"cart": 1})
    trucks, carts = week(club(RIVER, HILL, other), stock=stock).rows
    assert trucks.spells[0].stand_ins == (StandIn(kind="cart", stands_for=TRUCK, number=2),)
    assert (trucks.spells[0].short, carts.spells[0].stand_ins) == (2, ())


def test_another_week_isnt_shown_and_days_are_in_the_order_of_time() -> None:
    sunday = hours(10, 12, on=datetime.date(2026, 12, 6))
    after = hours(10, 12, on=datetime.date(2026, 12, 7))
    made = week(
        club(
            booking("last", sunday, needs={TRUCK: 1}),
            RIVER,
            booking("over", after, needs={"gun": 1}),
        )
    )
    assert [each.name for each in made.bookings] == ["river", "last"]
    assert made.booked == (DAY, sunday.on)
    assert made.days[0] == MONDAY
    assert made.days[-1] == sunday.on
    (row,) = made.rows
    assert [each.game for each in row.on(DAY).uses] == ["river"]
    assert [each.sound for each in row.on(sunday.on).spells] == [12]


def test_only_games_that_overlap_have_something_in_these_hours() -> None:
    late = booking("late", hours(22, 23), needs={TRUCK: 1})
    (row,) = week(club(RIVER, late)).rows
    assert [each.game for each in row.in_hours(hours(21, 22))] == ["river"]


def test_a_week_begins_on_its_monday() -> None:
    assert monday_of(DAY) == MONDAY
    assert monday_of(MONDAY) == MONDAY
    assert monday_of(datetime.date.min) == datetime.date.min


def test_the_calendar_has_two_ends() -> None:
    assert weeks_later(MONDAY, 1) == datetime.date(2026, 12, 7)
    assert weeks_later(MONDAY, -1) == datetime.date(2026, 11, 23)
    assert weeks_later(datetime.date.min, -1) is None
    last = monday_of(datetime.date.max)
    assert weeks_later(last, 1) is None
    assert Week(first=last).days[-1] == datetime.date.max


def test_a_game_that_nobody_could_count_has_no_row_and_is_named() -> None:
    planned = club(RIVER, HILL)
    made = week_of(planned, (), first=MONDAY, needs={"river": {TRUCK: 8}})
    assert made.uncounted == ("hill",)
    assert [each.game for each in made.rows[0].uses] == ["river"]
    assert [each.name for each in made.bookings] == ["river", "hill"]


def test_what_a_box_keeps_from_others_isnt_given_out() -> None:
    own = Box(name="box 3", holds={TRUCK: 10}, is_counted=True)
    planned = club(replace(RIVER, borrows=("box 3",)), HILL, boxes=(own,))
    (spell,) = week(planned).rows[0].spells
    assert (spell.sound, spell.kept, spell.to_give_out, spell.short) == (12, 2, 10, 6)
