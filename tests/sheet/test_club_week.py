"""A week of a club as rows, days and bars."""

import datetime
from dataclasses import replace

import pytest

from paradestate.core.club.booking import Booking
from paradestate.core.club.enough import Stock, spells
from paradestate.core.club.week import Week, week_of
from paradestate.core.figure import FigureKind, Match
from paradestate.sheet.club_bar import Lanes, bar_of, note_of
from paradestate.sheet.club_week import PAPER, WIDE, club_days, club_week
from paradestate.sheet.svg import Drawing
from tests.core.club.bookings import (
    BOX_NINE,
    HILL,
    RIVER,
    TRUCK,
    booking,
    club,
    hours,
    needs_of,
)
from tests.core.club.test_week import MONDAY
from tests.sheet.reading import root_of, texts_of, texts_on_others, texts_outside

SUNDAY = datetime.date(2026, 12, 6)
LATE = booking("the breakout at the long bridge of the north", hours(22, 23), needs={TRUCK: 1})
SHOW = booking("show", hours(12, 18, on=SUNDAY), needs={TRUCK: 14}, borrows=("box 9",))
CART = FigureKind(name="cart", may_stand_for={TRUCK: Match.GOOD})
EARLY = booking("x", hours(0, 24, on=MONDAY), needs={"gun carriage of the horse artillery": 1})


def week(*bookings: Booking) -> Week:
    stock = Stock(sound={TRUCK: 12, "cart": 1}, figures={"cart": CART})
    planned = club(*bookings, boxes=(BOX_NINE,))
    return week_of(planned, spells(planned, stock), first=MONDAY, needs=needs_of(planned))


FULL = week(RIVER, HILL, LATE, SHOW, EARLY)


def drawn(made: Week, *, width: int = WIDE) -> Drawing:
    drawing = club_week(made, width=width)
    assert drawing is not None
    return drawing


def hatched(drawing: Drawing) -> list[tuple[float, float]]:
    """From where to where the bars are hatched."""
    bars = [each for each in root_of(drawing).iter("rect") if each.get("fill") == "url(#tx-lack)"]
    assert all(each.get("stroke") == "var(--red)" for each in bars)
    return [
        (float(each.get("x", "")), float(each.get("x", "")) + float(each.get("width", "")))
        for each in bars
    ]


def test_story_27_two_bars_are_hatched_for_as_long_as_they_are_short() -> None:
    drawing = drawn(week(RIVER, HILL, LATE))
    said = texts_of(drawing)
    assert {"river 8", "hill 8", "3 short", "1 cart stands in", "12 sound", "Truck"} <= set(said)
    assert {"Thursday 3 December", "20:00", "23:00", "Mon", "30"} <= set(said)
    one, other = hatched(drawing)
    assert one == other
    bars = [each for each in root_of(drawing).iter("rect") if each.get("fill") == "var(--sheet)"]
    assert float(bars[0].get("width", "")) == pytest.approx(one[1] - one[0])


def test_only_the_hours_in_which_it_is_short_are_hatched() -> None:
    longer = replace(RIVER, hours=hours(18, 22))
    bars = hatched(drawn(week(longer, HILL)))
    assert len(bars) == 2
    assert bars[0] == bars[1]


def test_where_there_is_enough_nothing_is_hatched() -> None:
    assert hatched(drawn(week(RIVER))) == []
    assert club_week(week()) is None
    assert club_days(week()) == ()


@pytest.mark.parametrize("drawing", [drawn(FULL), drawn(FULL, width=PAPER), *club_days(FULL)])
def test_no_words_run_out_or_lie_on_others(drawing: Drawing) -> None:
    assert texts_outside(drawing) == []
    assert texts_on_others(drawing) == []


def test_each_booked_day_has_a_drawing_of_its_own_for_a_phone() -> None:
    days = club_days(FULL)
    assert len(days) == 3
    assert days[0].words.startswith("Monday 30 November 2026: X, 00:00-24:00: 1 gun carriage")
    assert "Box 9" in texts_of(days[2])
    assert "box, lent whole" in texts_of(days[2])
    assert "show" in texts_of(days[2])


def test_it_is_read_out_whole() -> None:
    assert drawn(week(RIVER, HILL)).words == (
        "Thursday 3 December 2026: River, 20:00-22:00: 8 trucks. Hill, 20:00-22:00: 8 trucks. "
        "Truck: 16 booked, 12 sound, 1 cart stands in, 3 short, 20:00-22:00."
    )


def test_what_is_sound_may_change_over_the_week() -> None:
    assert "12 to 18 sound" in texts_of(drawn(FULL))


def test_a_week_of_seven_days_of_games_is_as_wide_as_one() -> None:
    each_day = [
        booking(
            f"g{day}", hours(18, 23, on=MONDAY + datetime.timedelta(days=day)), needs={TRUCK: 9}
        )
        for day in range(7)
    ]
    drawing = drawn(week(*each_day))
    assert texts_outside(drawing) == []
    assert {"Mon 30", "Sunday 6 December", "Sun 6"} & set(texts_of(drawing))
    assert root_of(drawing).get("viewBox", "").split(" ")[2] == str(WIDE)


ROOM = (0.0, 200.0)


def test_words_stand_in_their_bar_else_beside_it_where_they_have_room() -> None:
    assert bar_of("game", span=(0, 100), room=ROOM).text_at == 6
    assert bar_of("long game", span=(20, 40), room=ROOM).text_at == 46
    left = bar_of("long game", span=(170, 190), room=ROOM)
    assert left.taken[0] < left.text_at < 100
    assert left.taken[1] == 190


@pytest.mark.parametrize("span", [(20, 180), (0, 20), (180, 200)])
def test_words_too_long_for_any_place_are_cut_where_most_room_is(span: tuple[int, int]) -> None:
    made = bar_of("a name that is far too long for any room", span=span, room=ROOM)
    assert made.text.endswith("…")
    assert 0 <= made.text_at <= 200


def test_a_bar_that_begins_as_another_ends_is_in_its_lane() -> None:
    lanes = Lanes()
    for span in ((0, 100), (100, 200), (50, 150)):
        lanes = lanes.with_bar(bar_of("x", span=span, room=ROOM))
    assert [lane for _, lane in lanes.bars] == [0, 0, 1]
    assert (lanes.of_bars, lanes.of_notes) == (2, 0)
    for start in (0, 10, 190):
        lanes = lanes.with_note(note_of("4 short", start=start, room=ROOM, is_short=True))
    assert [lane for _, lane in lanes.notes] == [0, 1, 0]
