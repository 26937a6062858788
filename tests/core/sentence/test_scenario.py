"""What a scenario rolls, in words."""

from fractions import Fraction

import pytest

from paradestate.core.dice import Dice, LookUp, Row, SignedTerm, Throw, Totals
from paradestate.core.scenario import Arrival
from paradestate.core.sentence.scenario import (
    arrival_sentence,
    stands_sentence,
    strength_sentence,
    turns_sentence,
)
from paradestate.core.support.chances import chances
from tests.core.sentence.saying import unsaid

D6 = Dice(terms=(SignedTerm(term=Throw(number=1, sides=6)),))
FULL = Arrival(
    roll=D6,
    on=Totals(least=4, most=None),
    from_turn=3,
    until_turn=6,
    edge="east",
    by_hand="in column",
)


def said(arrival: Arrival) -> str:
    return arrival_sentence("reserve company", arrival, game="quiet crossing")


def test_nothing_of_an_arrival_is_left_unsaid() -> None:
    assert unsaid(FULL, said) == []


@pytest.mark.parametrize(
    ("arrival", "sentence"),
    [
        (
            FULL,
            (
                "Quiet crossing: each reserve company comes on at the east edge from turn 3 to "
                "turn 6; each turn roll one 6-sided die: it is there on 4 or more. By hand, not "
                "checked by machine: in column."
            ),
        ),
        (
            Arrival(from_turn=2),
            "Quiet crossing: each reserve company comes on in turn 2.",
        ),
        (
            Arrival(roll=D6, on=Totals(least=6, most=6)),
            (
                "Quiet crossing: each reserve company comes on from turn 1; each turn roll one "
                "6-sided die: it is there on 6."
            ),
        ),
    ],
)
def test_arrivals_in_words(arrival: Arrival, sentence: str) -> None:
    assert said(arrival) == sentence


def test_strengths_in_words() -> None:
    rows = (
        Row(least=1, most=2, gives=Fraction(1, 2)),
        Row(least=3, most=None, gives=Fraction(1)),
    )
    assert strength_sentence("company", LookUp(roll=D6, gives=rows), game="raid") == (
        "Raid: each company rolls one 6-sided die for the share of its stands that takes the "
        "field: 50% on 1 to 2 and 100% on 3 or more."
    )


def test_the_chances_of_strengths_and_arrivals_in_words() -> None:
    assert stands_sentence(chances({3: 1, 6: 2}), stands=6) == (
        "Of its 6 stands take the field: 3 (1/3, 33 in 100), 6 (2/3, 67 in 100); 5 on average."
    )
    by_turn = ((3, Fraction(1, 2)), (4, Fraction(3, 4)), (5, Fraction(1)))
    assert turns_sentence(by_turn) == (
        "There by turn 3 (1/2, 50 in 100), by turn 4 (3/4, 75 in 100), by turn 5 (always)."
    )
