"""Charts of decisions in words."""

from fractions import Fraction

import pytest

from paradestate.core.game import Purchase
from paradestate.core.sentence.fork import (
    branch_words,
    points_words,
    step_words,
    taken_words,
    worth_words,
)
from paradestate.core.support.fork import Branch, End, Fork, Omitted
from paradestate.core.support.policy import Granted, Take

ONE_GUN, GUNS, THREE_GUNS = (Purchase(entry="guns", number=number) for number in (1, 2, 3))
NOTHING = Take(purchases=(), points=3, worth=Fraction(0))


def branch(*numbers: tuple[int, int], sure: bool = False) -> Branch:
    """A branch of outcomes: how many are allowed and how many of them are taken."""
    chance = Fraction(1, len(numbers)) if sure else Fraction(1, 10)
    outcomes = tuple(
        Granted(
            allowed=allowed,
            chance=chance,
            takes=Purchase(entry="guns", number=taken) if taken else None,
            then=NOTHING,
            worth=Fraction(4 * taken),
        )
        for allowed, taken in numbers
    )
    end = End(purchases=(), points=range(3, 4), worth=Fraction(0))
    return Branch(outcomes=outcomes, chance=chance * len(numbers), then=end)


@pytest.mark.parametrize(
    ("numbers", "words"),
    [
        (((2, 2),), "allowed: take all, worth 8"),
        (((2, 1),), "allowed: take only 1, worth 4"),
        (((2, 0),), "allowed: take none"),
        (((1, 1),), "1 allowed: take 1, worth 4"),
        (((0, 0),), "refused"),
        (((2, 1), (1, 1)), "2 or 1 allowed: take only 1, worth 4"),
        (((2, 2), (1, 1)), "2 or 1 allowed: take all that come, worth 6 on average"),
        (((2, 2), (0, 0)), "allowed or refused: take all, worth 8"),
        (((1, 0), (0, 0)), "1 allowed or refused: take none"),
        (((2, 2), (1, 0)), "2 or 1 allowed: of 2 take 2 and of 1 take 0"),
    ],
)
def test_a_branch_says_what_is_allowed_and_what_is_taken(
    numbers: tuple[tuple[int, int], ...], words: str
) -> None:
    assert branch_words(branch(*numbers), asked=GUNS) == words


def test_one_that_comes_is_it() -> None:
    assert branch_words(branch((1, 1)), asked=ONE_GUN) == "allowed: take it, worth 4"


def test_a_branch_of_every_outcome_says_so() -> None:
    ways = branch((2, 2), (1, 1), (0, 0), sure=True)
    assert (
        branch_words(ways, asked=GUNS)
        == "whatever is allowed: take all that come, worth 4 on average"
    )


def test_a_single_outcome_that_is_certain_is_told_as_it_is() -> None:
    assert branch_words(branch((1, 1), sure=True), asked=GUNS) == "1 allowed: take 1, worth 4"


def test_every_step_is_something_to_do() -> None:
    points = range(3, 4)
    worth = Fraction(1)
    end = End(purchases=(GUNS, ONE_GUN), points=points, worth=worth)
    fork = Fork(purchase=THREE_GUNS, points=points, worth=worth, branches=())
    assert step_words(fork) == "Ask for 3 x guns"
    assert step_words(end) == "Buy 2 x guns and 1 x guns"
    assert step_words(End(purchases=(), points=points, worth=worth)) == "Buy nothing more"
    assert step_words(Omitted(worth=worth)) == "More requests follow"


def test_every_worth_says_what_it_is() -> None:
    points = range(3, 4)
    end = End(purchases=(GUNS,), points=points, worth=Fraction(8))
    fork = Fork(purchase=GUNS, points=points, worth=Fraction(53, 6), branches=())
    assert worth_words(end) == "worth 8"
    assert worth_words(fork) == "8.83 to come"
    assert worth_words(Omitted(worth=Fraction(2))) == "2 to come"


def test_what_is_taken_is_told_with_its_worth() -> None:
    (one,) = branch((2, 1)).outcomes
    (none,) = branch((2, 0)).outcomes
    assert taken_words(one, number="1") == "take 1, worth 4"
    assert taken_words(none, number="none") == "take none"


def test_points_are_told_from_the_least_to_the_most() -> None:
    assert points_words(range(1, 2)) == "1 point left"
    assert points_words(range(11, 19)) == "11 to 18 points left"
