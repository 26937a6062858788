"""Batches that have their turn before their figures are there."""

import datetime
from dataclasses import replace
from fractions import Fraction

from paradestate.core.sentence.work import batch_details, certainty_words
from paradestate.core.work.held_up import days_of_arrival, with_held_up
from paradestate.core.work.order_of_work import ladder
from tests.core.work.test_to_come import LATE, NORTH, SOON, SOUTH, STOCK, TODAY
from tests.core.work.works import MINUTES, sound_load

DAY = datetime.timedelta(days=1)
MADE = ladder(sound_load(MINUTES, STOCK, on_order=(NORTH, SOUTH)))
"""Two orders, for which some of the sections wait."""
AWAITED = [rung for rung in MADE.rungs if any(work.to_come for work in rung.works)]


def test_only_days_that_are_not_past_are_waited_for() -> None:
    assert days_of_arrival(MADE, today=TODAY) == {SOON, LATE}
    assert days_of_arrival(MADE, today=SOON) == {SOON, LATE}
    assert days_of_arrival(MADE, today=SOON + DAY) == {LATE}
    undated = replace(NORTH, expected=None)
    assert not days_of_arrival(ladder(sound_load(MINUTES, on_order=(undated,))), today=TODAY)


def test_where_all_is_there_in_time_the_order_is_as_good_as_any() -> None:
    begun = min(rung.ends - rung.minutes - rung.set_up for rung in AWAITED)
    found = with_held_up(MADE, {SOON: begun, LATE: begun}, today=TODAY)
    assert found == MADE
    assert found.is_proved
    assert certainty_words(found).startswith("Exact: ")


def test_a_batch_whose_turn_comes_sooner_says_from_when_and_the_order_is_not_called_exact() -> None:
    never = Fraction(10**6)
    found = with_held_up(MADE, {SOON: Fraction(0), LATE: never}, today=TODAY)
    late = [
        rung.number
        for rung in AWAITED
        if any(SOUTH.source == order.source for work in rung.works for order in work.to_come)
    ]
    assert [rung.number for rung in found.held_up] == late
    assert {rung.held_until for rung in found.held_up} == {LATE + DAY}
    assert MADE.is_proved
    assert not found.is_proved
    first = found.held_up[0]
    part = "not all of it can begin before 11 April 2026, and its turn comes sooner"
    assert part in list(batch_details(first))
    waiting = [replace(work, waiting={"2": work.minutes}) for work in first.works if work.to_come]
    minutes = sum((work.minutes for work in waiting), Fraction(0))
    whole = replace(first, works=tuple(waiting), minutes=minutes)
    part = "none of it can begin before 11 April 2026, and its turn comes sooner"
    assert part in list(batch_details(whole))


def test_where_no_pace_is_known_what_is_to_come_counts_as_late() -> None:
    found = with_held_up(MADE, {SOON: None, LATE: None}, today=TODAY)
    assert [rung.number for rung in found.held_up] == [rung.number for rung in AWAITED]


def test_how_sure_the_order_is_says_what_it_does_not_mind() -> None:
    found = with_held_up(MADE, {SOON: None, LATE: None}, today=TODAY)
    one = replace(found, rungs=tuple(r for r in found.rungs if r not in found.held_up[1:]))
    number = found.held_up[0].number
    unminded = (
        f"This order doesn't mind when parcels come: at your usual pace batch {number} has its "
        "turn before all its figures are there, and another order may wait less."
    )
    assert certainty_words(one) == f"Exact if all were here. {unminded}"
    two = replace(found, rungs=(found.held_up[0], replace(found.held_up[0], number=9)))
    assert f"batches {number} and 9 have their turn before all their figures" in certainty_words(
        two
    )
    doubtful = replace(one, waiting=Fraction(1015), least=Fraction(1000))
    assert certainty_words(doubtful).endswith(f"more than the least there is. {unminded}")
    bare = certainty_words(replace(MADE, waiting=Fraction(1015), least=Fraction(1000)))
    assert bare.endswith("more than the least there is.")
