"""The section loss limits."""

from fractions import Fraction

import pytest

from paradestate.core.formation import Echelon
from paradestate.core.play.loss_limit import LossLimit, Threshold
from paradestate.text.format.loss_limit import read_threshold
from paradestate.text.slip import Slip
from tests.text.format.reading import codes, force, messages, slips


def test_every_word_of_a_limit() -> None:
    made = force(
        "states: [held up]\n"
        "loss limits:\n"
        "  - {of: top, counts as: {gun: 2, rifle: 0}, at: {a third: shaken, 5: gone}, by hand: x}\n"
        "  - {echelon: company, count: figures, at: {more than half: falls back}}\n"
        "  - {count: leaders hit, among: top, at: {all: headless}}\n"
        "  - {count: held up, at: {45%: stalled}}\n"
        "  - {supporting troops: yes, at: {2/3: over}}\n"
    )
    assert made.loss_limits == (
        LossLimit(
            of="top",
            counts_as={"gun": 2, "rifle": 0},
            at={
                Threshold(amount=Fraction(1, 3), is_share=True): "shaken",
                Threshold(amount=Fraction(5)): "gone",
            },
            by_hand="x",
        ),
        LossLimit(
            echelon=Echelon.COMPANY,
            count="figures",
            at={Threshold(amount=Fraction(1, 2), is_share=True, is_more=True): "falls back"},
        ),
        LossLimit(
            count="leaders hit",
            among="top",
            at={Threshold(amount=Fraction(1), is_share=True): "headless"},
        ),
        LossLimit(
            count="held up", at={Threshold(amount=Fraction(9, 20), is_share=True): "stalled"}
        ),
        LossLimit(
            supporting_troops=True, at={Threshold(amount=Fraction(2, 3), is_share=True): "over"}
        ),
    )


@pytest.mark.parametrize(
    ("text", "threshold"),
    [
        ("5", Threshold(amount=Fraction(5))),
        ("5.0", Threshold(amount=Fraction(5))),
        ("more than  4", Threshold(amount=Fraction(4), is_more=True)),
        ("2/4", Threshold(amount=Fraction(1, 2), is_share=True)),
        ("33 1/3%", Threshold(amount=Fraction(1, 3), is_share=True)),
        ("three quarters", Threshold(amount=Fraction(3, 4), is_share=True)),
        ("1/1", Threshold(amount=Fraction(1), is_share=True)),
    ],
)
def test_numbers_and_shares(text: str, threshold: Threshold) -> None:
    assert read_threshold(text) == threshold
    assert read_threshold(str(threshold)) == threshold


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("few", "not-a-number"),
        ("0", "not-a-whole-number"),
        ("2.5", "not-a-whole-number"),
        ("0%", "no-loss-limit"),
        ("0/3", "no-loss-limit"),
        ("4/3", "no-loss-limit"),
        ("more than all", "no-loss-limit"),
        ("120%", "not-a-share"),
        ("1/0", "not-a-number"),
    ],
)
def test_what_is_no_number_of_losses(text: str, code: str) -> None:
    slip = read_threshold(text)
    assert isinstance(slip, Slip)
    assert slip.code == code


def test_a_share_that_is_written_in_two_ways_and_what_is_not_known() -> None:
    assert codes("loss limits: [{at: {half: a, 50%: b}}]") == ["key-twice"]
    assert slips("loss limits: [{count: tired, at: {1: a}}]") == [
        ("unknown-name", ("loss limits", "1", "count"))
    ]
    assert codes("loss limits: [{count: [held up], at: {1: a}}]") == ["wrong-shape"]
    assert codes("loss limits: [{of: top}]") == ["missing-word"]
    assert messages("states: [held up]\nloss limits: [{count: held, at: {1: a}}]", part="hint") == [
        "Did you mean 'held up'?"
    ]
