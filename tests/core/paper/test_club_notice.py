"""The notice for the board."""

import datetime

from paradestate.core.club.booking import Booking, Hours
from paradestate.core.club.enough import Stock, spells
from paradestate.core.club.week import Week, week_of
from paradestate.core.journal import Promise
from paradestate.core.paper.club_notice import MOST_DAYS, ClubNotice, Played, club_notice
from paradestate.core.promise import Cupboard
from tests.core.club.bookings import club, needs_of

TODAY = datetime.date(2026, 3, 5)
THURSDAY = datetime.date(2026, 3, 12)
SIX_TRUCKS = Cupboard(held={"truck": 12})


def played(name: str, *nights: datetime.date) -> Played:
    return Played(name=name, title=name.capitalize(), nights=nights)


def promise(
    force: str, *, day: datetime.date = THURSDAY, note: str = "", **figures: int
) -> Promise:
    return Promise(day=day, force=force, figures=figures, note=note)


def notice(*promises: Promise, forces: tuple[Played, ...]) -> ClubNotice:
    shown = club_notice(forces, promises=promises, cupboard=SIX_TRUCKS, today=TODAY).shown
    assert shown is not None
    return shown


def test_story_27_two_games_with_eight_trucks_each_and_twelve_sound_are_four_short() -> None:
    shown = notice(
        promise("marenz", truck=8),
        promise("kelmar", truck=8, note="Anna brings them"),
        forces=(played("marenz", THURSDAY), played("kelmar")),
    )
    (table,) = shown.tables
    assert table.days == ("Thursday 12 March 2026",)
    assert table.short == ("4 trucks",)
    assert shown.short_days == 1
    marenz, kelmar = table.rows
    assert (marenz.force, marenz.bookings[0].is_game_night) == ("Marenz", True)
    assert table.booked == ()
    assert marenz.bookings[0].promised == ("8 trucks",)
    assert kelmar.bookings[0].promised == ("8 trucks", "Anna brings them")
    assert not kelmar.bookings[0].is_game_night


def test_what_is_there_is_short_of_nothing() -> None:
    shown = notice(promise("marenz", truck=12), forces=(played("marenz"),))
    assert shown.tables[0].short == ("",)
    assert shown.short_days == 0


def test_days_go_on_in_a_further_table() -> None:
    nights = tuple(TODAY + datetime.timedelta(weeks=week) for week in range(MOST_DAYS + 1))
    shown = notice(forces=(played("marenz", *nights),))
    assert [len(table.days) for table in shown.tables] == [MOST_DAYS, 1]


def test_what_is_over_or_far_off_isnt_on_it() -> None:
    past = promise("marenz", day=datetime.date(2026, 3, 4), truck=1)
    far = promise("marenz", day=datetime.date(2026, 9, 1), truck=1)
    draft = club_notice((played("marenz"),), promises=(past, far), cupboard=SIX_TRUCKS, today=TODAY)
    assert draft.shown is None


def game(name: str, times: tuple[int, int], *, on: datetime.date = THURSDAY) -> Booking:
    hours = Hours(on=on, start=times[0] * 60, end=times[1] * 60)
    return Booking(name=name, hours=hours, needs={"truck": 8}, whom="borrower 7")


def week(*bookings: Booking, counted: bool = True) -> Week:
    planned = club(*bookings)
    return week_of(
        planned,
        spells(planned, Stock(sound={"truck": 12})),
        first=datetime.date(2026, 3, 9),
        needs=needs_of(planned) if counted else {},
    )


def booked(*weeks: Week, promises: tuple[Promise, ...] = ()) -> ClubNotice:
    draft = club_notice((), promises=promises, cupboard=SIX_TRUCKS, today=TODAY, weeks=weeks)
    assert draft.shown is not None
    return draft.shown


def test_booked_games_stand_on_it_with_their_hours_and_what_is_short() -> None:
    shown = booked(week(game("river", (20, 22)), game("hill", (21, 23))))
    (table,) = shown.tables
    (day,) = table.booked
    assert [(each.name, each.times, each.needs) for each in day.games] == [
        ("river", "20:00-22:00", "8 trucks"),
        ("hill", "21:00-23:00", "8 trucks"),
    ]
    assert (day.first, day.last, day.short) == (1200, 1380, ((1260, 1320),))
    assert table.short == ("4 trucks, 21:00-22:00",)
    assert (shown.short_days, shown.apart) == (1, ())


def test_for_whom_a_game_is_booked_is_nowhere_on_it() -> None:
    assert "borrower" not in repr(booked(week(game("river", (20, 22)))))


def test_promises_and_bookings_of_one_day_are_told_to_be_counted_apart() -> None:
    both = booked(
        week(game("river", (20, 22))), promises=(promise("marenz", truck=16), promise("x", truck=1))
    )
    assert both.apart == ("Thursday 12 March 2026",)
    assert both.tables[0].short == ("5 trucks",)


def test_a_game_that_couldnt_be_counted_says_so_and_one_that_is_over_is_left_out() -> None:
    shown = booked(week(game("river", (20, 22)), counted=False))
    assert shown.tables[0].booked[0].games[0].needs == "8 trucks, not counted"
    past = week_of(
        club(game("past", (20, 22), on=datetime.date(2026, 3, 3))),
        (),
        first=datetime.date(2026, 3, 2),
        needs={},
    )
    draft = club_notice((), promises=(), cupboard=SIX_TRUCKS, today=TODAY, weeks=(past,))
    assert draft.shown is None


def test_a_day_without_a_game_is_empty_beside_one_that_has_some() -> None:
    night = datetime.date(2026, 3, 13)
    draft = club_notice(
        (played("marenz", night),),
        promises=(),
        cupboard=SIX_TRUCKS,
        today=TODAY,
        weeks=(week(game("river", (20, 22))),),
    )
    assert draft.shown is not None
    assert [len(day.games) for day in draft.shown.tables[0].booked] == [1, 0]
