"""How sure the best force is that a search found, in words."""

from fractions import Fraction
from math import ceil

from paradestate.core.sentence.chance import DECIMALS, near_text
from paradestate.core.support.force_map import SearchedForce

FIELDABLE = "legal force that can be fielded"
"""Of which forces the best in hand is the best."""


def searched_sentence(found: SearchedForce, *, among: str = "legal force") -> str:
    """What is proved of the best force; a bound is rounded up, so that it stays one.

    `among` says of which forces it is the best.
    """
    if found.bound is None:
        return f"There is no {among}."
    if found.is_proved:
        return f"Exact: no {among} is worth more, and none worth as much costs less."
    if found.force is None:
        text = f"The search was stopped before a {among} was found"
    elif found.force.worth == found.bound:
        return (
            f"Exact in worth: no {among} is worth more. The search was stopped: one worth as much "
            "may cost less."
        )
    else:
        text = "The search was stopped: a better one may exist"
    return f"{text}; no {among} is worth more than {_above(found.bound)}."


def _above(bound: Fraction) -> str:
    return near_text(Fraction(ceil(bound * 10**DECIMALS), 10**DECIMALS))
