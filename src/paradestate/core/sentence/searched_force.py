"""How sure the best force is that a search found, in words."""

from fractions import Fraction
from math import ceil

from paradestate.core.sentence.chance import DECIMALS, near_text
from paradestate.core.support.force_map import SearchedForce


def searched_sentence(found: SearchedForce) -> str:
    """What is proved of the best force; a bound is rounded up, so that it stays one."""
    if found.bound is None:
        return "No force is legal."
    if found.is_proved:
        return "Exact: no legal force is worth more, and none worth as much costs less."
    if found.force is None:
        text = "The search was stopped before a legal force was found"
    elif found.force.worth == found.bound:
        return (
            "Exact in worth: no legal force is worth more. The search was stopped: one worth as "
            "much may cost less."
        )
    else:
        text = "The search was stopped: a better one may exist"
    return f"{text}; no legal force is worth more than {_above(found.bound)}."


def _above(bound: Fraction) -> str:
    return near_text(Fraction(ceil(bound * 10**DECIMALS), 10**DECIMALS))
