"""Prices of supporting troops: by number taken, and by grade."""

import pytest

from tests.text.format.reading import codes, force, messages

GRADES = "grades: {training: {usual: fair, points: {fair: 0, recruits: -3}}}\n"


def entry(cost: str) -> str:
    return f"supporting troops: {{e: {{cost: {cost}}}}}"


def test_prices_by_number_or_for_one() -> None:
    made = force("supporting troops: {e: {cost: 4}, f: {cost: {2: 5, 4: 9}}}")
    assert made.supporting_troops["e"].cost == {1: 4}
    assert made.supporting_troops["f"].cost == {2: 5, 4: 9}


@pytest.mark.parametrize(
    ("short", "table"),
    [
        ("{each: 10, numbers: 4-6}", {4: 40, 5: 50, 6: 60}),
        ("{each: 10, numbers: 4}", {4: 40}),
        ("{each: -2, numbers: 1-2}", {1: -2, 2: -4}),
        ("{each: 5000000, numbers: 200}", {200: 1_000_000_000}),
    ],
)
def test_one_price_for_each_of_several_numbers(short: str, table: object) -> None:
    assert force(entry(short)).supporting_troops["e"].cost == table


@pytest.mark.parametrize(
    ("cost", "expected"),
    [
        ("x", ["not-a-number"]),
        ("{}", ["empty-value"]),
        ("{0: 1}", ["not-a-whole-number"]),
        ("[3]", ["wrong-shape"]),
        ("{each: 10}", ["missing-word"]),
        ("{numbers: 4-12}", ["missing-word"]),
        ("{each: x, numbers: 12-4}", ["not-a-number", "range-backwards"]),
        ("{each: 10, numbers: 1-201}", ["too-large"]),
        ("{each: 5000001, numbers: 200}", ["number-too-great"]),
        ("{each: 10, numbers: 4-12, 3: 5}", ["unknown-word"]),
    ],
)
def test_odd_prices(cost: str, expected: list[str]) -> None:
    assert codes(entry(cost)) == expected


def test_numbers_without_end_are_named_with_what_is_read() -> None:
    assert messages(entry("{each: 1, numbers: 1-1000}")) == [
        "e, cost, numbers: 1-1000 are 1,000 numbers, more than 200."
    ]


def by_grade(prices: str) -> str:
    return f"{GRADES}supporting troops: {{e: {{cost: 4, cost by grade: {prices}}}}}"


def test_prices_by_grade() -> None:
    made = force(by_grade("{training: {recruits: {each: 2, numbers: 1-2}}}"))
    assert made.supporting_troops["e"].cost_by_grade == {"training": {"recruits": {1: 2, 2: 4}}}


@pytest.mark.parametrize(
    ("prices", "expected"),
    [
        ("3", ["e, cost by grade: scales with grades belongs here, not a single value."]),
        ("{trainng: {fair: 1}}", ["e, cost by grade: 'trainng' isn't defined under grades."]),
        (
            "{training: {recriuts: 1}}",
            ["e, cost by grade, training: 'recriuts' isn't a grade of training."],
        ),
        (
            "{training: 3}",
            ["e, cost by grade, training: a mapping belongs here, not a single value."],
        ),
    ],
)
def test_odd_prices_by_grade(prices: str, expected: list[str]) -> None:
    assert messages(by_grade(prices)) == expected


def test_the_nearest_grade_is_offered() -> None:
    (hint,) = messages(by_grade("{training: {recriuts: 1}}"), part="hint")
    assert hint == "Did you mean 'recruits'?"
