"""What is booked hour by hour against what is sound."""

from dataclasses import replace

import pytest

from paradestate.core.club.booking import Booking
from paradestate.core.club.enough import Stock, spells
from paradestate.core.club.week import week_of
from paradestate.core.figure import FigureKind, Match
from paradestate.sheet.booked_hours import booked_hours
from paradestate.sheet.svg import Drawing
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
from tests.sheet.reading import root_of, texts_of, texts_on_others, texts_outside

CART = FigureKind(name="cart", may_stand_for={TRUCK: Match.GOOD})


def drawn(*bookings: Booking, trucks: int = 12, carts: int = 0) -> Drawing:
    stock = Stock(sound={TRUCK: trucks, "cart": carts}, figures={"cart": CART})
    planned = club(*bookings, boxes=(BOX_NINE,))
    row, *_ = week_of(planned, spells(planned, stock), first=MONDAY, needs=needs_of(planned)).rows
    return booked_hours(row, DAY)


def rects(drawing: Drawing, fill: str) -> list[dict[str, float]]:
    return [
        {name: float(each.get(name, "")) for name in ("x", "y", "width", "height")}
        for each in root_of(drawing).iter("rect")
        if each.get("fill") == fill
    ]


def test_story_27_four_of_sixteen_lie_over_the_line() -> None:
    drawing = drawn(RIVER, HILL)
    games = rects(drawing, "var(--sheet)")
    (short,) = rects(drawing, "url(#tx-lack)")
    assert short["height"] / sum(each["height"] for each in games) == pytest.approx(
        4 / 16, abs=0.01
    )
    assert short["y"] == min(each["y"] for each in games)
    assert {"river 8", "hill 8", "4 short", "12 sound", "20:00", "22:00"} == set(texts_of(drawing))
    assert drawing.words == (
        "Thursday 3 December 2026: Truck: 16 booked, 12 sound, 4 short, 20:00-22:00."
    )


def test_stand_ins_lie_between_the_line_and_what_is_short() -> None:
    drawing = drawn(RIVER, HILL, carts=3)
    (short,) = rects(drawing, "url(#tx-lack)")
    (instead,) = rects(drawing, "none")
    assert instead["height"] / short["height"] == pytest.approx(3, abs=0.05)
    assert instead["y"] == pytest.approx(short["y"] + short["height"], abs=0.02)
    assert "3 carts stand in" in texts_of(drawing)


def test_a_game_that_goes_on_in_its_place_is_one_block() -> None:
    longer = replace(RIVER, hours=hours(18, 22))
    assert len(rects(drawn(longer, HILL), "var(--sheet)")) == 2
    after = replace(HILL, hours=hours(22, 24))
    assert len(rects(drawn(longer, after), "var(--sheet)")) == 2


def test_what_another_game_leaves_falls_to_the_ground() -> None:
    blocks = rects(drawn(replace(RIVER, hours=hours(18, 21)), HILL), "var(--sheet)")
    assert len(blocks) == 3
    assert blocks[1]["y"] < blocks[2]["y"]


def test_the_line_steps_where_a_box_comes() -> None:
    with_box = replace(HILL, hours=hours(21, 23), borrows=("box 9",))
    drawing = drawn(RIVER, with_box)
    assert "18 sound" in texts_of(drawing)
    (line,) = [each for each in root_of(drawing).iter("path") if each.get("stroke-width") == "4"]
    assert line.get("d", "").count("V") == 2


@pytest.mark.parametrize("carts", [0, 3])
def test_no_words_run_out_or_lie_on_others(carts: int) -> None:
    small = booking("a very small game with a very long name", hours(20, 21), needs={TRUCK: 1})
    long = booking("another with a very long name indeed", hours(20, 21), needs={TRUCK: 9})
    drawing = drawn(RIVER, HILL, small, long, carts=carts)
    assert texts_outside(drawing) == []
    assert texts_on_others(drawing) == []
    assert not any("very small" in text for text in texts_of(drawing))
