"""Who is attached to whom, in words."""

from fractions import Fraction

import pytest

from paradestate.core.sentence.attachment import (
    attached_sentences,
    barrier_words,
    move_words,
    shortage_sentence,
    worth_text,
)
from paradestate.core.support.attachment import INDEPENDENT, Attaching, Barrier, Move
from paradestate.core.support.host_shortage import Shortage
from tests.attachings import hosts, rule, sections


def test_worths_are_decimals_where_they_can_be() -> None:
    assert [worth_text(each) for each in (Fraction(13), Fraction(5, 2), Fraction(-1, 3))] == [
        "13",
        "2.5",
        "-1/3",
    ]


def test_hosts_with_those_under_command() -> None:
    question = Attaching(sections=sections("gun", 3, of=rule(2)), hosts=hosts(2))
    attached = {"gun 1": "p2", "gun 2": "p2", "gun 3": INDEPENDENT}
    assert list(attached_sentences(question, attached)) == [
        "p2: gun 1 and gun 2 under command.",
        "Independent: gun 3.",
    ]
    assert len(list(attached_sentences(question, dict.fromkeys(attached, "p1")))) == 1


@pytest.mark.parametrize(
    ("sections_", "places", "sentence"),
    [
        (4, 3, "Four sections share three places; at least one has no host."),
        (3, 1, "Three sections share one place; at least two have no host."),
        (1, 0, "One section has no places; at least one has no host."),
    ],
)
def test_why_there_is_no_attachment(sections_: int, places: int, sentence: str) -> None:
    """The first (worked by hand)."""
    shortage = Shortage(to="platoon", entries=("gun",), sections=sections_, places=places)
    assert shortage_sentence(shortage) == sentence


@pytest.mark.parametrize(
    ("barrier", "words"),
    [
        (Barrier(rule="must-attach", section="gun 1", host=INDEPENDENT), "gun 1 must be attached"),
        (
            Barrier(rule="host-full", section="gun 1", host="p1", with_=("gun 2",), most=1),
            "p1 has room for 1 section, and gun 2 is there",
        ),
        (
            Barrier(rule="host-full", section="gun 1", host="p1", with_=("a", "b"), most=2),
            "p1 has room for 2 sections, and a and b are there",
        ),
        (
            Barrier(rule="two-alike", section="gun 1", host="p1", with_=("gun 2",)),
            "gun 2 is there, and no two alike may be",
        ),
        (
            Barrier(rule="no-host-of-its-kind", section="gun 1", host="c1"),
            "gun 1 can't be attached to c1",
        ),
    ],
)
def test_what_forbids_a_place(barrier: Barrier, words: str) -> None:
    assert barrier_words(barrier) == words
    move = Move(section=barrier.section, host=barrier.host, gain=Fraction(1), barrier=barrier)
    assert move_words(move) == words


@pytest.mark.parametrize(
    ("gain", "words"),
    [
        (Fraction(0), "worth as much"),
        (Fraction(3, 2), "worth 1.5 more"),
        (Fraction(-2), "worth 2 less"),
    ],
)
def test_what_a_move_brings(gain: Fraction, words: str) -> None:
    assert move_words(Move(section="gun", host="p1", gain=gain)) == words
