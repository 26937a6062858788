"""How sure an answer is."""

from fractions import Fraction

import pytest

from paradestate.core.certainty import (
    Certainty,
    Exact,
    NotComputed,
    Sampled,
    Within,
    certainty_word,
)


@pytest.mark.parametrize(
    ("certainty", "word"),
    [
        (Exact(), "exact"),
        (Within(bound=4790), "within"),
        (Sampled(draws=1000, seed=1, plus_or_minus=Fraction(1, 100)), "sampled"),
        (NotComputed(reason="too large"), "not computed"),
    ],
)
def test_each_has_its_word(certainty: Certainty, word: str) -> None:
    assert certainty_word(certainty) == word
