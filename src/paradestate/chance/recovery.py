"""Exact chances of how many of the stands that are out of action come back.

Rolls are independent, so the ways multiply; with one roll for each stand it is a binomial
distribution. Sample space: all rolls that are still to be made.
"""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import prod

from paradestate.chance.dice import dice_chances, sums
from paradestate.core.campaign.casualty import RollGroup
from paradestate.core.campaign.next_strength import PatternStrength
from paradestate.core.campaign.recovery import Recovery
from paradestate.core.support.chances import Chances, chances


@dataclass(frozen=True, slots=True, kw_only=True)
class RecoveryOdds:
    """How likely those who are out come back, before their dice are rolled."""

    of_each: Mapping[str, Fraction]
    """Pattern to the chance that one of it comes back."""
    back: Chances
    """How many come back in all."""
    none_needed: Fraction
    """The chance that the next game lacks nobody, though no replacement is sent up."""
    pool_enough: Fraction
    """The chance that the replacements that are left make good all that it lacks."""


def recovery_odds(
    groups: Sequence[RollGroup],
    strengths: Iterable[PatternStrength],
    *,
    recovery: Mapping[str, Recovery],
) -> RecoveryOdds:
    """The odds of the rolls that are still to be made; each pattern of them has its roll."""
    by_pattern = {
        pattern: recovered(
            [len(each.stands) for each in groups if each.pattern == pattern], by=recovery[pattern]
        )
        for pattern in dict.fromkeys(each.pattern for each in groups)
    }
    known = list(strengths)
    nobody = chances({0: 1})
    return RecoveryOdds(
        of_each={pattern: chance_of_return(recovery[pattern]) for pattern in by_pattern},
        back=_summed(by_pattern.values()),
        none_needed=prod(
            (by_pattern.get(each.pattern, nobody).at_least(each.must_recover) for each in known),
            start=Fraction(1),
        ),
        pool_enough=prod(
            (
                by_pattern.get(each.pattern, nobody).at_least(each.must_recover - each.pool)
                for each in known
            ),
            start=Fraction(1),
        ),
    )


def chance_of_return(by: Recovery) -> Fraction:
    """The chance that one roll brings its stands back."""
    ways, of = _ways(by)
    return Fraction(ways, of)


def recovered(sizes: Iterable[int], *, by: Recovery) -> Chances:
    """How many stands come back where each roll decides about so many of them."""
    back, of = _ways(by)
    return _summed(chances({size: back, 0: of - back}) for size in sizes)


def _ways(by: Recovery) -> tuple[int, int]:
    totals = dice_chances(by.roll)
    return sum(ways for total, ways in totals.counts.items() if by.on.holds(total)), totals.ways


def _summed(parts: Iterable[Chances]) -> Chances:
    """The chances of the sum of independent numbers."""
    whole = {0: 1}
    for part in parts:
        whole = sums(whole, part.counts)
    return chances(whole)
