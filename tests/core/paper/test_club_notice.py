"""The notice for the board."""

import datetime

from paradestate.core.journal import Promise
from paradestate.core.paper.club_notice import MOST_DAYS, ClubNotice, Played, club_notice
from paradestate.core.promise import Cupboard

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
