"""What is written down of a game, in words."""

import datetime
from dataclasses import replace

import pytest

from paradestate.core.play.event import (
    Asked,
    Committed,
    Ended,
    Event,
    Noted,
    Opened,
    Revealed,
    Rolled,
    Spoken,
    Subject,
    Told,
)
from paradestate.core.play.fairness import fairness
from paradestate.core.play.game_record import Line
from paradestate.core.sentence.play import (
    binding_words,
    clock_words,
    event_words,
    game_words,
    note_words,
    season_words,
    shown_words,
    who_words,
)
from tests.core.play.test_game_record import STEPS, binding
from tests.entries import WRITTEN

REVEALED = Revealed(commitment="a", secret="abcdef0123")  # noqa: S106 - it is told to everybody


@pytest.mark.parametrize(
    ("event", "words"),
    [
        (Opened(game="attack"), "attack opened"),
        (Opened(game="attack", opponent="Ommerath"), "attack opened against Ommerath"),
        (
            Rolled(purpose="allowance", dice="18 + 2d6", faces=(6, 2), total=26),
            "rolled 6 and 2 for allowance (18 + 2d6), 26 in all",
        ),
        (
            Rolled(purpose="tanks", dice="3", faces=(), total=3, commitment="a"),
            "rolled by the machine for tanks (3), 3 in all",
        ),
        (
            Rolled(purpose="tanks", dice="1d12", faces=(3,), total=3, number=2),
            "rolled 3 for 2 x tanks (1d12), 3 in all",
        ),
        (
            Committed(digest="0123456789ab", purpose="tanks", dice="1d12"),
            "bound to a secret for tanks (1d12), with the digest 01234567",
        ),
        (Spoken(commitment="a", word="heron"), "heard the opponent's word 'heron'"),
        (REVEALED, "told the secret abcdef01"),
        (
            Asked(entry="tanks", number=2, allowed=1, taken=1),
            "asked for 2 x tanks, 1 allowed, 1 taken",
        ),
        (
            Asked(entry="pioneers", number=1, choice="flame", taken=1),
            "asked for 1 x pioneers (flame), 1 taken",
        ),
        (
            Told(subject=Subject("out", "1 Section"), value="yes", turn=3),
            "out, 1 Section: yes, turn 3",
        ),
        (Told(subject=Subject("out", "1 Section"), value=""), "out, 1 Section: as at the start"),
        (Told(subject=Subject("turn", ""), value="3"), "turn: 3"),
        (Ended(outcome="held\n\x1b[2J"), "ended: held / \ufffd[2J"),
        (Ended(), "ended"),
        (Ended(outcome="held the bridge"), "ended: held the bridge"),
        (
            Ended(outcome="a draw", held={"bridge": "Marenz", "hill": "nobody"}, time="22:15"),
            "ended at 22:15: a draw; Marenz held bridge and nobody held hill",
        ),
        (Noted(text="the road was too wide"), "noted: the road was too wide"),
        (Noted(text="chipped", about="1 Section"), "noted of 1 Section: chipped"),
    ],
)
def test_each_event_is_said_in_words(event: Event, words: str) -> None:
    assert event_words(event) == words


def test_a_note_names_what_it_concerns() -> None:
    assert note_words(Noted(text="chipped", about="1 Section")) == "1 Section: chipped"
    assert note_words(Noted(text="the road was too wide")) == "the road was too wide"


def test_what_a_roll_showed_is_said_once() -> None:
    allowance = Rolled(purpose="allowance", dice="18 + 2d6", faces=(6, 2), total=26)
    assert shown_words(allowance) == "6 and 2, 26 in all"
    assert shown_words(replace(allowance, faces=())) == "26"
    assert shown_words(Rolled(purpose="tanks", dice="1d12", faces=(3,), total=3)) == "3"


def test_a_machine_roll_says_how_far_it_has_come() -> None:
    found = [binding_words(binding(*STEPS[:number])) for number in range(1, 5)]
    assert found == [
        "bound; it waits for the opponent's word",
        "bound, the word is said, and nothing is rolled",
        "rolled; the secret isn't told yet",
        "rolled, and the secret is told",
    ]
    done = binding(*STEPS)
    assert binding_words(done, wrong=()) == "rolled, and the secret is told; it agrees"
    wrong = ("one", "other")
    assert binding_words(done, wrong=wrong) == "rolled, and the secret is told: one and other"


def test_a_time_is_said_of_any_clock() -> None:
    east = datetime.timezone(datetime.timedelta(hours=9))
    at = datetime.datetime(2026, 11, 27, 19, 42, tzinfo=datetime.UTC)
    assert clock_words(at, zone=east) == "04:42"
    assert clock_words(at, zone=east, is_dated=True) == "2026-11-28 04:42"
    last = datetime.datetime.max.replace(tzinfo=datetime.UTC)
    assert clock_words(last, zone=east) == "23:59 UTC"


def test_a_game_is_named_with_its_opponent() -> None:
    assert game_words(Opened(game="attack")) == "attack"
    assert game_words(Opened(game="attack", opponent="Ommerath")) == "attack against Ommerath"


@pytest.mark.parametrize(
    ("event", "words"),
    [
        (Rolled(purpose="tanks", dice="1d12", faces=(3,), total=3), ""),
        (Rolled(purpose="tanks", dice="1d12", faces=(3,), total=3, roller="Anna"), "Anna"),
        (
            Rolled(
                purpose="tanks", dice="1d12", faces=(3,), total=3, roller="Anna", witness="Bert"
            ),
            "Anna, seen by Bert",
        ),
        (Spoken(commitment="a", word="heron"), "opponent"),
        (Ended(), "a phone"),
    ],
)
def test_it_is_said_who_rolled_saw_or_told_a_line(event: Event, words: str) -> None:
    assert (
        who_words(Line(id="a", on=WRITTEN.date(), written=WRITTEN, event=event, device="a phone"))
        == words
    )


def test_a_season_of_dice_is_remarkable_only_where_fair_ones_are_seldom_so_uneven() -> None:
    """Chi-square of 20 and 10 is 10/3, its chance 0.0679; of 90 and 10 it is 64."""
    assert season_words(2, fairness((20, 10))) == (
        "Dice of 2 this season, 30 rolls: 20 and 10 times. Chi-square 3.33 on 1 degrees; "
        "fair dice are as uneven in 7 in 100 seasons: unremarkable."
    )
    assert "in less than 1 in 100 seasons: remarkable." in season_words(2, fairness((90, 10)))
