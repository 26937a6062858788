"""Cost against what is left over."""

import pytest

from paradestate.core.money import Currency
from paradestate.sheet.cost_steps import PHONE, WIDE, CostStep, cost_steps
from paradestate.sheet.svg import Drawing
from tests.sheet.reading import root_of, texts_of

GBP, YEN = Currency("GBP"), Currency("JPY")
STEPS = (
    CostStep(letter="A", total=4850, left_over=15, chosen=True),
    CostStep(letter="B", total=5000, left_over=5),
    CostStep(letter="C", total=5150, left_over=3),
)


def drawn(*steps: CostStep, width: int = WIDE, currency: Currency = GBP) -> Drawing:
    made = cost_steps(steps, currency=currency, width=width)
    assert made is not None
    return made


@pytest.mark.parametrize("width", [WIDE, PHONE])
def test_the_steps_of_the_example_are_lettered_and_the_chosen_one_is_filled(width: int) -> None:
    made = drawn(*STEPS, width=width)
    assert [text for text in texts_of(made) if text in "ABC"] == ["A", "B", "C"]
    filled = [each for each in root_of(made).iter("circle") if each.get("fill") == "var(--pencil)"]
    assert len(filled) == 1


def test_the_sentence_tells_every_step() -> None:
    assert drawn(*STEPS).words == (
        "Cost against figures left over: A costs £48.50 and leaves 15 over, B costs £50.00 and "
        "leaves 5 over and C costs £51.50 and leaves 3 over; A is chosen."
    )


def test_more_cost_is_further_to_the_right_and_less_left_over_further_down() -> None:
    made = [
        (float(each.get("cx", "")), float(each.get("cy", "")))
        for each in root_of(drawn(*STEPS)).iter("circle")
    ]
    a, b, c = sorted(made)
    assert a[0] < b[0] < c[0]
    # From 15 to 5 left over is five times as far as from 5 to 3.
    assert (b[1] - a[1]) == pytest.approx(5 * (c[1] - b[1]), abs=0.1)
    assert c[1] > b[1]


def test_a_single_step_without_anything_left_over_is_drawn() -> None:
    made = drawn(CostStep(letter="A", total=0, left_over=0, chosen=True), currency=YEN)
    assert "A" in texts_of(made)


def test_of_a_hundred_steps_letters_never_lie_on_each_other() -> None:
    many = [
        CostStep(letter=f"S{each}", total=20000 + each, left_over=100 - each, chosen=each == 7)
        for each in range(100)
    ]
    made = drawn(*many, width=PHONE)
    letters = [text for text in texts_of(made) if text.startswith("S")]
    assert "S7" in letters
    assert len(letters) < 30
    assert made.words.startswith("Cost against figures left over: of 100 orders S0 costs")


def test_other_orders_are_rings_without_letters() -> None:
    other = CostStep(letter="", total=5210, left_over=13)
    made = cost_steps(STEPS, currency=GBP, others=(other,))
    assert made is not None
    assert len(list(root_of(made).iter("circle"))) == 4


def test_without_a_step_there_is_no_drawing() -> None:
    assert cost_steps((), currency=GBP) is None
