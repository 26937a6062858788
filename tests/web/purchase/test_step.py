"""The orders worth choosing between."""

import pytest

from paradestate.core.certainty import Exact, Within
from paradestate.core.order import priced
from paradestate.core.order_outcome import OrderAnswer
from paradestate.web.purchase.step import drawn_others, letter_of, steps_of, steps_words
from tests.orders import marenz_problem

PROBLEM = marenz_problem()
CHEAPEST = priced(PROBLEM, {("South", "S1"): 3, ("South", "S3"): 1})
THRIFTY = priced(PROBLEM, {("North", "N1"): 1, ("North", "N2"): 2, ("North", "N3"): 2})


@pytest.mark.parametrize(
    ("number", "letter"), [(0, "A"), (25, "Z"), (26, "AA"), (51, "AZ"), (52, "BA"), (99, "CV")]
)
def test_letters_go_on_after_z(number: int, letter: str) -> None:
    assert letter_of(number) == letter


@pytest.mark.parametrize(("asked", "chosen"), [("", "A"), ("B", "B"), ("b", "A"), ("C", "A")])
def test_exactly_one_step_is_chosen(asked: str, chosen: str) -> None:
    answer = OrderAnswer(order=CHEAPEST, certainty=Exact(), steps=(CHEAPEST, THRIFTY))
    steps = steps_of(answer, PROBLEM, chosen=asked)
    assert [step.letter for step in steps if step.chosen] == [chosen]


def test_an_order_without_steps_is_the_only_one() -> None:
    answer = OrderAnswer(order=CHEAPEST, certainty=Within(bound=4000))
    (step,) = steps_of(answer, PROBLEM, chosen="")
    assert (step.letter, step.total, step.words) == ("A", "£48.50", "One parcel.")
    assert step.packs == ("South: 3 × platoon set, 1 × riflemen.",)


def test_rings_are_drawn_only_for_orders_that_are_no_step() -> None:
    answer = OrderAnswer(
        order=CHEAPEST, certainty=Exact(), steps=(CHEAPEST,), next_best=(CHEAPEST, THRIFTY)
    )
    assert [other.total for other in drawn_others(answer)] == [5000]


def test_what_the_steps_are_is_said_as_it_is() -> None:
    exact = OrderAnswer(order=CHEAPEST, certainty=Exact(), all_steps=True)
    some = OrderAnswer(order=CHEAPEST, certainty=Exact(), all_steps=False)
    within = OrderAnswer(order=CHEAPEST, certainty=Within(bound=1))
    assert steps_words(exact, number=1) == (
        "no order leaves less over, so there is nothing to choose"
    )
    assert steps_words(exact, number=3) == "three are worth choosing between"
    assert steps_words(some, number=1) == (
        "one is known; there may be more, the time for them was up"
    )
    assert steps_words(within, number=1) == "only of a proved order are others worked out"
