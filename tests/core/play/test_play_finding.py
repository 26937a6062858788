"""What is said of a game: second rolls, late requests, rolls that don't agree."""

import datetime
from dataclasses import replace

from paradestate.core.finding import Finding, Level
from paradestate.core.play.account import account
from paradestate.core.play.event import Asked, Event, Opened, Rolled
from paradestate.core.play.game_record import bindings
from paradestate.core.play.play_finding import (
    above_allowed,
    bound_already,
    game_over,
    game_still_open,
    no_game,
    no_roll_for,
    not_a_time,
    not_of_this_game,
    not_rolled_yet,
    nothing_bound,
    number_unsaid,
    other_posture,
    other_word,
    reason_unsaid,
    record_findings,
    secret_differs,
    secret_missing,
    word_unfit,
)
from paradestate.core.support.entry import Asking
from paradestate.core.support.terms import Terms
from tests.core.play.test_account import ALLOWANCE, few, roll
from tests.core.play.test_game_record import BOUND, OPENED, record, written
from tests.support_terms import attack


def said(*events: Event, terms: Terms | None = None) -> list[Finding]:
    kept = record(*written(Opened(game="whole-day attack"), *events))
    made = account(kept, terms or attack())
    return list(record_findings(kept, made, wrong={}, zone=datetime.UTC))


def test_a_second_roll_for_the_same_thing_is_named_with_the_first() -> None:
    """Row 54 of the mistakes."""
    (found,) = said(ALLOWANCE, roll("light tanks", 2), roll("light tanks", 9))
    assert (found.level, found.code) == (Level.WARN, "rolled-twice")
    assert found.message == "Light tanks was rolled already (2, refused) at 19:42."
    assert found.effect == "The first roll counts; this one stays in the record."


def test_a_second_roll_for_the_allowance_is_named_too() -> None:
    (found,) = said(ALLOWANCE, ALLOWANCE)
    assert found.message == "Allowance was rolled already (6 and 2, 26 in all) at 19:42."


def test_a_roll_that_entries_share_is_named_by_either() -> None:
    (found,) = said(roll("lancers", 5, number=1), roll("hussars", 2, number=1), terms=few())
    assert found.message == "Hussars was rolled already (5) at 19:42."
    between = (roll("lancers", 5, number=1), roll("guns", 9), roll("hussars", 2, number=1))
    (found,) = said(*between, terms=few())
    assert found.message == "Hussars was rolled already (5) at 19:42."


def test_asking_after_seeing_is_named_where_all_is_declared_first() -> None:
    """Row 55 of the mistakes."""
    terms = replace(few(), asking=Asking.ALL_DECLARED_FIRST)
    named = Asked(entry="guns", number=2)
    assert said(named, roll("guns", 9), terms=terms) == []
    (found,) = said(named, roll("guns", 9), roll("lancers", 5, number=1), terms=terms)
    assert (found.level, found.code) == (Level.WARN, "asked-after-declaring")
    assert found.message == (
        "This file rolls after all is declared. Adding lancers now is outside the rule."
    )


def test_a_machine_roll_that_doesn_t_agree_is_named() -> None:
    kept = record(*written(OPENED))
    wrong = {"0123456789": ("the dice show 3, not 9",), "agrees": ()}
    (found,) = record_findings(kept, account(kept, attack()), wrong=wrong)
    assert found.code == "roll-differs"
    assert found.message == (
        "A roll of the machine (01234567) doesn't agree: the dice show 3, not 9."
    )


def test_a_roll_for_something_else_is_never_a_second_one() -> None:
    first = Rolled(purpose="first move", dice="1d6", faces=(4,), total=4)
    assert said(first, first) == []


def test_every_stop_says_what_would_put_it_right() -> None:
    (bound,) = bindings(record(*written(OPENED, BOUND)))
    every = (
        no_game(""),
        no_game("1f"),
        other_posture("defence", game="attack", posture="attack"),
        number_unsaid("guns", (1, 2)),
        no_roll_for("guns"),
        not_rolled_yet("guns"),
        above_allowed("guns", taken=2, allowed=1),
        word_unfit(""),
        other_word("heron"),
        nothing_bound("Bind it."),
        bound_already(bound),
        secret_missing(bound),
        secret_differs(bound),
        not_of_this_game("x"),
        reason_unsaid(),
        not_a_time("late"),
    )
    assert all(each.level is Level.STOP and each.hint and each.message for each in every)
    warned = game_still_open(record(*written(OPENED)))
    assert (warned.level, warned.message) == (
        Level.WARN,
        "Another game goes on: attack opened, 2026-11-27.",
    )


def test_a_game_that_is_over_can_be_noted_or_opened_again() -> None:
    found = game_over()
    assert (found.level, found.code) == (Level.STOP, "no-game")
    assert "strike its end out" in found.hint
