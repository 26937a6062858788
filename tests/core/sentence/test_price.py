"""Prices of supporting troops in words."""

import pytest

from paradestate.core.sentence.price import choice_words, more_price_clauses, prices_words
from paradestate.core.support.entry import Entry


@pytest.mark.parametrize(
    ("cost", "words"),
    [
        ({1: 3, 2: 5, 3: 7}, "one costs 3 points, two 5, three 7"),
        ({2: 5, 4: 9}, "two cost 5 points, four 9"),
        ({12: 1}, "12 cost 1 point"),
        ({4: 40, 5: 50, 6: 60, 7: 70}, "4 to 7 cost 10 points each"),
        ({4: 40, 5: 50, 6: 60}, "four cost 40 points, five 50, six 60"),
        ({1: 1, 2: 2, 3: 3, 5: 5}, "one costs 1 point, two 2, three 3, five 5"),
        ({1: 1, 2: 2, 3: 3, 4: 5}, "one costs 1 point, two 2, three 3, four 5"),
        ({2: 3, 3: 4, 4: 6, 5: 7}, "two cost 3 points, three 4, four 6, five 7"),
    ],
)
def test_prices(cost: dict[int, int], words: str) -> None:
    assert prices_words(cost) == words


def test_prices_by_grade() -> None:
    by_grade = {"training": {"recruits": {1: 2}, "long-service": {1: 4, 2: 7}}}
    entry = Entry(name="guns", cost={1: 3}, cost_by_grade=by_grade)
    assert list(more_price_clauses(entry)) == [
        "where training is recruits, one costs 2 points",
        "where training is long-service, one costs 4 points, two 7",
    ]


@pytest.mark.parametrize(
    ("steps", "words"),
    [
        ((1,), "a second purchase and each later one cost 1 point more"),
        ((1, 2), "a second purchase costs 1 point more, a third and each later one 2 points more"),
        ((-1,), "a second purchase and each later one cost 1 point less"),
        (
            (0, -1, 3),
            (
                "a second purchase costs 0 points more, a third 1 point less, "
                "a fourth and each later one 3 points more"
            ),
        ),
    ],
)
def test_repeats(steps: tuple[int, ...], words: str) -> None:
    entry = Entry(name="guns", cost={1: 3}, repeats_cost_more=steps)
    assert list(more_price_clauses(entry)) == [words]


def test_a_long_row_of_repeats_goes_on_in_figures() -> None:
    (words,) = more_price_clauses(Entry(name="e", cost={1: 1}, repeats_cost_more=(1,) * 10))
    assert "a ninth 1 point more, number 10 1 point more, number 11 and each" in words


def test_choices_with_what_they_add() -> None:
    entry = Entry(
        name="pioneers", cost={1: 3}, choice=("flame", "smoke"), choice_costs={"flame": 1}
    )
    assert choice_words(entry) == "flame (1 point more each) or smoke"
