"""Whether there is enough for all games at every moment."""

from dataclasses import replace
from itertools import product

from hypothesis import given, settings
from hypothesis import strategies as st

from paradestate.core.club.enough import (
    BackInTime,
    Loan,
    Move,
    Sharing,
    Stock,
    changed,
    remedies,
    spells,
)
from paradestate.core.figure import FigureKind, Match, StandIn
from tests.core.club.bookings import (
    BOX_NINE,
    BOX_THREE,
    HILL,
    RIVER,
    TRUCK,
    booking,
    club,
    hours,
    lent,
)

TWELVE = Stock(sound={TRUCK: 12}, in_repair={TRUCK: 2})
LORRIES = Stock(
    sound={TRUCK: 12, "lorry": 3, "carrier": 5},
    figures={
        "lorry": FigureKind(name="lorry", may_stand_for={TRUCK: Match.POOR}),
        "carrier": FigureKind(name="carrier", may_stand_for={TRUCK: Match.GOOD}),
    },
)


def test_two_games_of_eight_out_of_twelve_sound_are_four_short() -> None:
    """Design 3.23: 14 trucks, 2 in repair, two games of 8 at once: 16 > 12, 4 short."""
    (spell,) = spells(club(RIVER, HILL), TWELVE)
    assert (spell.booked, spell.sound, spell.short) == ({TRUCK: 16}, {TRUCK: 12}, {TRUCK: 4})
    assert (spell.hours, spell.games) == (hours(20, 22), ("river", "hill"))


def test_moving_one_game_to_start_after_the_other_makes_both_possible() -> None:
    """Design 3.23."""
    both = club(RIVER, HILL, boxes=(BOX_NINE, replace(BOX_NINE, name="box 3", holds={"x": 9})))
    (spell,) = spells(both, TWELVE)
    assert remedies(both, TWELVE, spell=spell) == (
        Move(booking="river", hours=hours(18, 20)),
        Move(booking="river", hours=hours(22, 24)),
        Move(booking="hill", hours=hours(18, 20)),
        Move(booking="hill", hours=hours(22, 24)),
        Loan(booking="river", box=BOX_NINE),
    )
    for remedy in remedies(both, TWELVE, spell=spell):
        assert not any(each.short for each in spells(changed(both, remedy), TWELVE))


def test_a_box_too_small_and_a_move_past_the_day_are_no_remedies() -> None:
    long = [replace(each, hours=hours(8, 22)) for each in (RIVER, HILL)]
    both = club(*long, boxes=(replace(BOX_NINE, holds={TRUCK: 3}),))
    (spell,) = spells(both, TWELVE)
    assert remedies(both, TWELVE, spell=spell) == ()


def test_what_is_short_on_another_day_hinders_no_remedy() -> None:
    other = [
        replace(
            each, name=f"later {each.name}", hours=hours(20, 22, on=each.hours.on.replace(day=9))
        )
        for each in (RIVER, HILL)
    ]
    both = club(RIVER, HILL, *other)
    first, second = spells(both, TWELVE)
    assert len(remedies(both, TWELVE, spell=first)) == 4
    assert len(remedies(both, TWELVE, spell=second)) == 4


def test_a_borrowed_box_counts_once_while_its_game_is_played() -> None:
    river = replace(RIVER, borrows=("box 9",), hours=hours(20, 23))
    hill = replace(HILL, borrows=("box 9",), hours=hours(20, 22))
    found = spells(club(river, hill, boxes=(BOX_NINE,)), TWELVE)
    assert [each.sound[TRUCK] for each in found] == [18, 18]
    assert [each.booked[TRUCK] for each in found] == [16, 8]


def test_stand_ins_are_the_fewest_and_the_best() -> None:
    (spell,) = spells(club(RIVER, replace(HILL, needs={TRUCK: 10})), LORRIES)
    assert spell.short == {}
    assert set(spell.stand_ins) == {
        StandIn(kind="carrier", stands_for=TRUCK, number=5),
        StandIn(kind="lorry", stands_for=TRUCK, number=1),
    }


def test_a_stand_in_that_is_itself_booked_serves_once() -> None:
    hill = replace(HILL, needs={TRUCK: 8, "carrier": 4})
    (spell,) = spells(club(RIVER, hill), LORRIES)
    assert sum(spell.short.values()) == 0
    (tight,) = spells(club(RIVER, replace(hill, needs={TRUCK: 8, "carrier": 5})), LORRIES)
    assert sum(tight.short.values()) == 1


def test_every_moment_agrees_with_adding_up_minute_by_minute() -> None:
    """Stacked bars against a line, without stand-ins."""
    for first, second in product(range(18, 22), repeat=2):
        river = booking("river", hours(first, first + 2), needs={TRUCK: 8})
        hill = booking("hill", hours(second, second + 3), needs={TRUCK: 7})
        found = spells(club(river, hill), TWELVE)
        for minute in range(18 * 60, 25 * 60, 30):
            both = [e for e in (river, hill) if e.hours.start <= minute < e.hours.end]
            line = sum(each.needs[TRUCK] for each in both)
            here = [e for e in found if e.hours.start <= minute < e.hours.end]
            assert [each.booked[TRUCK] for each in here] == ([line] if both else [])
            assert all(each.short.get(TRUCK, 0) == max(0, line - 12) for each in here)


def test_days_are_apart_and_hours_without_a_game_are_no_spell() -> None:
    late = replace(HILL, hours=hours(20, 22, on=HILL.hours.on.replace(day=10)))
    early = booking("morning", hours(9, 11), needs={})
    found = spells(club(late, RIVER, early), TWELVE)
    assert [each.games for each in found] == [("morning",), ("river",), ("hill",)]
    assert not any(each.short for each in found)


def test_a_kind_of_which_there_is_none_is_short_whole() -> None:
    (spell,) = spells(club(booking("zoo", hours(20, 22), needs={"gun": 2})), TWELVE)
    assert (spell.sound, spell.short) == ({"gun": 0}, {"gun": 2})


def test_a_box_of_ours_that_goes_out_whole_keeps_what_its_game_does_not_need() -> None:
    """Design 3.23, trap: a box lent whole though half is needed."""
    river = replace(RIVER, needs={TRUCK: 3}, borrows=("box 3",))
    both = club(river, HILL, boxes=(BOX_THREE,))
    (spell,) = spells(both, TWELVE)
    assert (spell.booked, spell.sound, spell.short) == ({TRUCK: 11}, {TRUCK: 12}, {TRUCK: 2})
    assert spell.kept == {"box 3": {TRUCK: 3}}
    found = remedies(both, TWELVE, spell=spell)
    assert found[-1] == Sharing(box=BOX_THREE)
    (after,) = spells(changed(both, found[-1]), TWELVE)
    assert (after.short, after.kept) == ({}, {})


def test_two_games_with_one_box_share_it_and_keep_the_rest() -> None:
    river = replace(RIVER, needs={TRUCK: 2}, borrows=("box 3",))
    hill = replace(HILL, needs={TRUCK: 3}, borrows=("box 3",))
    wood = booking("wood", hours(20, 22), needs={TRUCK: 6})
    (spell,) = spells(club(river, hill, wood, boxes=(BOX_THREE,)), TWELVE)
    assert (spell.short, spell.kept) == ({}, {"box 3": {TRUCK: 1}})
    (tight,) = spells(
        club(river, hill, replace(wood, needs={TRUCK: 7}), boxes=(BOX_THREE,)), TWELVE
    )
    assert tight.short == {TRUCK: 1}


def test_a_box_that_is_needed_whole_keeps_nothing() -> None:
    river = replace(RIVER, borrows=("box 3",))
    (spell,) = spells(club(river, boxes=(BOX_THREE,)), TWELVE)
    assert (spell.short, spell.kept) == ({}, {})


def test_a_box_of_ours_that_is_out_takes_what_it_holds_with_it_until_it_is_back() -> None:
    both = club(RIVER, boxes=(BOX_THREE, BOX_NINE), loans=(lent("box 3"),))
    (spell,) = spells(both, TWELVE)
    assert (spell.sound, spell.short, spell.away) == ({TRUCK: 6}, {TRUCK: 2}, ("box 3",))
    found = remedies(both, TWELVE, spell=spell)
    assert found == (BackInTime(lent=lent("box 3")), Loan(booking="river", box=BOX_NINE))
    for remedy in found:
        (after,) = spells(changed(both, remedy), TWELVE)
        assert after.short == {}
    (before,) = spells(replace(both, loans={"box 3": lent("box 3", until=2)}), TWELVE)
    assert (before.short, before.away) == ({}, ())


def test_a_box_out_with_those_who_play_serves_their_game_alone() -> None:
    river = replace(RIVER, borrows=("box 3",), whom="treasurer")
    made = club(river, replace(HILL, needs={TRUCK: 4}), boxes=(BOX_THREE,), loans=(lent("box 3"),))
    (spell,) = spells(made, TWELVE)
    assert (spell.short, spell.away) == ({}, ("box 3",))


def test_a_box_of_others_that_is_out_can_not_be_borrowed() -> None:
    river = replace(RIVER, needs={TRUCK: 14}, borrows=("box 9",))
    made = club(river, boxes=(BOX_NINE,), loans=(lent("box 9"),))
    (spell,) = spells(made, TWELVE)
    assert spell.short == {TRUCK: 2}
    assert remedies(made, TWELVE, spell=spell) == (BackInTime(lent=lent("box 9")),)


def test_a_box_is_as_full_as_what_is_sound() -> None:
    river = replace(RIVER, borrows=("box 3",))
    two_boxes = (BOX_THREE, replace(BOX_THREE, name="box 4"))
    hill = replace(HILL, borrows=("box 4",), needs={TRUCK: 2})
    (spell,) = spells(club(river, hill, boxes=two_boxes), Stock(sound={TRUCK: 8}))
    assert (spell.sound, spell.short) == ({TRUCK: 8}, {TRUCK: 2})


STARTS = st.integers(min_value=36, max_value=42)
"""Half hours."""


@settings(max_examples=40)
@given(
    games=st.lists(
        st.tuples(STARTS, st.integers(1, 6), st.integers(0, 7), st.booleans()),
        min_size=1,
        max_size=4,
    )
)
def test_every_moment_of_every_overlap_agrees_with_an_enumeration(
    games: list[tuple[int, int, int, bool]],
) -> None:
    """Minute by minute: those without the box have what is left beside it, the others both."""
    half = 30
    booked = [
        booking(
            f"game {number}",
            replace(hours(0, 1), start=start * half, end=(start + long) * half),
            needs={TRUCK: need},
            borrows=("box 3",) if has else (),
        )
        for number, (start, long, need, has) in enumerate(games)
    ]
    found = spells(club(*booked, boxes=(BOX_THREE,)), TWELVE)
    for minute in range(35 * half, 49 * half, half):
        now = [each for each in booked if each.hours.start <= minute < each.hours.end]
        here = [each for each in found if each.hours.start <= minute < each.hours.end]
        assert [each.games for each in here] == ([tuple(e.name for e in now)] if now else [])
        with_box = sum(each.needs[TRUCK] for each in now if each.borrows)
        others = sum(each.needs[TRUCK] for each in now if not each.borrows)
        is_out = any(each.borrows for each in now)
        lacking = max(with_box + others - 12, others - (6 if is_out else 12), 0)
        assert all(each.short.get(TRUCK, 0) == lacking for each in here)
        kept = max(0, 6 - with_box) if is_out else 0
        assert all(each.kept.get("box 3", {}).get(TRUCK, 0) == kept for each in here)


def test_a_box_of_ours_that_nobody_borrows_is_no_way_out() -> None:
    both = club(RIVER, HILL, boxes=(BOX_THREE,))
    (spell,) = spells(both, TWELVE)
    assert all(isinstance(each, Move) for each in remedies(both, TWELVE, spell=spell))
