"""Limits to losses as sentences."""

from fractions import Fraction

import pytest

from paradestate.core.formation import Echelon
from paradestate.core.play.loss_limit import LossLimit, Threshold
from paradestate.core.sentence.loss_limit import (
    body_words,
    loss_limit_sentence,
    loss_limits_sentences,
    steps_words,
    unit_of_losses,
)
from tests.core.play.limited import limited

AT = {
    Threshold(amount=Fraction(1, 3), is_share=True): "shaken",
    Threshold(amount=Fraction(6)): "falls back",
}


@pytest.mark.parametrize(
    ("limit", "said"),
    [
        (LossLimit(at=AT), "the whole force, in stands that are out"),
        (LossLimit(at=AT, of="company"), "each company, in stands that are out"),
        (
            LossLimit(at=AT, echelon=Echelon.PLATOON, count="figures"),
            "each platoon, in figures of stands that are out",
        ),
        (
            LossLimit(at=AT, counts_as={"gun": 2, "truck": 0}),
            "the whole force, in stands that are out, gun as 2, truck as 0",
        ),
        (
            LossLimit(at=AT, count="figures", supporting_troops=True),
            "the whole force, in figures of stands that are out with supporting troops",
        ),
        (
            LossLimit(at=AT, count="leaders hit", among="company"),
            "the whole force, in companies whose leader is hit",
        ),
        (LossLimit(at=AT, count="held up"), "the whole force, in units held up"),
    ],
)
def test_whom_it_is_for_and_what_is_counted(limit: LossLimit, said: str) -> None:
    assert loss_limit_sentence(limit) == f"Losses of {said}: shaken at a third and falls back at 6."


def test_what_is_written_by_hand_is_said() -> None:
    (said,) = loss_limits_sentences((LossLimit(at=AT, by_hand="roll first"),))
    assert said[0] == ("1",)
    assert said[1].endswith("By hand, not checked by machine: roll first.")


@pytest.mark.parametrize(
    ("limit", "word"),
    [
        (LossLimit(at=AT), "out"),
        (LossLimit(at=AT, count="figures"), "figures out"),
        (LossLimit(at=AT, counts_as={"gun": 2}), "loss points"),
        (LossLimit(at=AT, count="leaders hit"), "leaders hit"),
        (LossLimit(at=AT, count="held up"), "held up"),
    ],
)
def test_what_the_number_is_followed_by(limit: LossLimit, word: str) -> None:
    assert unit_of_losses(limit) == word


def test_the_steps_and_the_body_in_words() -> None:
    body = limited(
        {
            "name": "No 2 Company / 1 Platoon",
            "word": "out",
            "aspect": "out",
            "members": [["a", 9]],
            "at": [
                [3, 1, False, False, "shaken"],
                [1, 3, True, False, "slow"],
                [5, 1, False, False, "gone"],
            ],
        }
    )
    assert steps_words(body) == "at 3 shaken and slow, at 5 gone"
    assert body_words(body) == "No 2 Company, 1 Platoon"
