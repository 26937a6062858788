"""Codecs of single values."""

import pytest

from paradestate.core.figure import Sort
from paradestate.text.format.value import YES_NO, amount, words_of


def test_yes_and_no_are_written_as_words() -> None:
    assert [YES_NO.write(answer) for answer in (True, False)] == ["yes", "no"]


def test_the_words_of_an_enumeration() -> None:
    assert words_of(Sort).schema() == {"enum": ["foot", "mounted", "gun", "vehicle", "scenery"]}


@pytest.mark.parametrize(("places", "text"), [(0, "350"), (2, "3.50"), (3, "0.350")])
def test_amounts_are_written_with_the_places_of_their_currency(places: int, text: str) -> None:
    codec = amount(places)
    assert codec.write(350) == text  # type: ignore[arg-type]  # any whole number will do here
