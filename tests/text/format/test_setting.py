"""The sections about the work and the table."""

import pytest

from paradestate.core.force import Marks
from tests.text.format.reading import codes, force


def test_marks_and_the_values_of_their_colours() -> None:
    made = force("marks: {top: {colours: [blue]}, colours: {blue: 1f4e9e}}")
    assert made.marks == Marks(by_formation={"top": ("blue",)}, colours={"blue": "1F4E9E"})
    assert force("marks: {top: {colours: [blue]}}").marks.colours == {}
    barred = force("marks: {top: {colours: [blue], rear bar: yes}}").marks
    assert barred == Marks(by_formation={"top": ("blue",)}, rear_bars=frozenset({"top"}))


@pytest.mark.parametrize(
    ("marks", "expected"),
    [
        ("[top]", ["wrong-shape"]),
        ("{tpo: {colours: [blue]}}", ["unknown-name"]),
        ("{top: [blue]}", ["wrong-shape"]),
        ("{colours: {blue: navy}}", ["not-a-colour"]),
        ("{colours: {blue: navy}, top: {colours: [blue]}}", ["not-a-colour"]),
    ],
)
def test_odd_marks(marks: str, expected: list[str]) -> None:
    assert codes(f"marks: {marks}") == expected


def test_stages_are_the_owners() -> None:
    bench = force(
        "bench: {stages: [raw, done], dry: {raw: 2 h}, minutes: {foot: {done: 15}}}"
    ).bench
    assert bench.stages == ("raw", "done")


@pytest.mark.parametrize(
    ("stages", "expected"),
    [("[]", ["empty-value"]), ("[raw, raw]", ["name-twice"]), ("raw", ["wrong-shape"])],
)
def test_odd_stages(stages: str, expected: list[str]) -> None:
    assert codes(f"bench: {{stages: {stages}}}") == expected


@pytest.mark.parametrize(
    ("bench", "expected"),
    [
        ("week: 0 h", ["not-above-nought"]),
        ("week: 1 min", []),
        ("week: 168 h", []),
        ("week: 168.01 h", ["week-too-long"]),
        ("week: 10081 min", ["week-too-long"]),
        ("week: -4 h", ["not-a-duration"]),
        ("minutes: {foot: {assembled: -1}}", ["below-nought"]),
        ("minutes: {foot: {assembled: 0}}", []),
        ("minutes: {foot: {assembled: 3 min}}", ["not-a-number"]),
    ],
)
def test_no_work_takes_less_than_none_and_no_week_has_more_than_its_hours(
    bench: str, expected: list[str]
) -> None:
    assert codes(f"bench: {{{bench}}}") == expected


def test_private_is_yes_or_no() -> None:
    assert force("private: yes").private
    assert not force("private: no").private
    assert codes("private: perhaps") == ["not-yes-or-no"]
