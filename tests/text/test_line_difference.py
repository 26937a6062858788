"""Two texts line by line."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from paradestate.text import line_difference
from paradestate.text.line_difference import LinePair, line_pairs, with_context

TEXTS = st.lists(st.sampled_from(["a", "b", "c"])).map("\n".join)


def shown(pairs: tuple[LinePair, ...]) -> list[tuple[int, int]]:
    return [(pair.number, pair.other_number) for pair in pairs]


def test_a_line_that_changed_stands_beside_the_new_one() -> None:
    pairs = line_pairs("a\nb\nc\nd\n", "a\nb\nx\nd\n")
    assert pairs[2] == LinePair(number=3, text="c", other_number=3, other_text="x")
    assert [pair.is_same for pair in pairs] == [True, True, False, True]
    assert shown(with_context(pairs)) == [(2, 2), (3, 3), (4, 4)]
    assert shown(with_context(pairs, lines=0)) == [(3, 3)]


def test_a_line_of_one_text_only_stands_beside_nothing() -> None:
    assert shown(line_pairs("a\nc", "a\nb\nc")) == [(1, 1), (0, 2), (2, 3)]
    assert shown(line_pairs("a\nb\nc", "a\nc")) == [(1, 1), (2, 0), (3, 2)]


def test_texts_that_are_the_same_have_no_difference() -> None:
    assert with_context(line_pairs("a\nb", "a\nb")) == ()
    assert line_pairs("", "") == ()


def test_too_many_lines_stand_beside_one_another_as_they_come(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setattr(line_difference, "MOST_COMPARED", 1)
    assert shown(line_pairs("a\nb\nc", "a\nd\nb\nz")) == [(1, 1), (2, 2), (3, 3), (0, 4)]


@pytest.mark.parametrize("most", [0, 100])
@given(before=TEXTS, after=TEXTS)
def test_every_line_of_both_is_there_once_and_in_order(most: int, before: str, after: str) -> None:
    usual = line_difference.MOST_COMPARED
    line_difference.MOST_COMPARED = most
    try:
        pairs = line_pairs(before, after)
    finally:
        line_difference.MOST_COMPARED = usual
    assert [pair.text for pair in pairs if pair.number] == before.splitlines()
    assert [pair.other_text for pair in pairs if pair.other_number] == after.splitlines()
    assert [pair.number for pair in pairs if pair.number] == [
        n + 1 for n in range(len(before.splitlines()))
    ]
