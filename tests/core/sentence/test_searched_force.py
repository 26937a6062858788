"""How sure the best force is that a search found, in words."""

from fractions import Fraction

import pytest

from paradestate.core.sentence.searched_force import FIELDABLE, searched_sentence
from paradestate.core.support.force_map import SearchedForce, ValuedForce

FORCE = ValuedForce(purchases=(), points=0, worth=Fraction(19, 2))


@pytest.mark.parametrize(
    ("force", "bound", "is_proved", "sentence"),
    [
        (None, None, True, "There is no legal force."),
        (
            FORCE,
            Fraction(19, 2),
            True,
            "Exact: no legal force is worth more, and none worth as much costs less.",
        ),
        (
            FORCE,
            Fraction(19, 2),
            False,
            (
                "Exact in worth: no legal force is worth more. "
                "The search was stopped: one worth as much may cost less."
            ),
        ),
        (
            FORCE,
            Fraction(31, 3),
            False,
            (
                "The search was stopped: a better one may exist; "
                "no legal force is worth more than 10.34."
            ),
        ),
        (
            None,
            Fraction(12),
            False,
            (
                "The search was stopped before a legal force was found; "
                "no legal force is worth more than 12."
            ),
        ),
    ],
)
def test_what_is_proved_and_what_is_not(
    force: ValuedForce | None, bound: Fraction | None, *, is_proved: bool, sentence: str
) -> None:
    found = SearchedForce(force=force, bound=bound, is_proved=is_proved)
    assert searched_sentence(found) == sentence


def test_of_which_forces_it_is_the_best() -> None:
    found = SearchedForce(force=None, bound=None, is_proved=True)
    assert searched_sentence(found, among=FIELDABLE) == (
        "There is no legal force that can be fielded."
    )
