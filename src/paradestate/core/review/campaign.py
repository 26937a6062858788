"""Doubts about what is rolled after a game: totals that never come up, promotions of the lost."""

from collections.abc import Iterator

from paradestate.core.dice import Totals
from paradestate.core.finding import Finding, Level
from paradestate.core.force import Force
from paradestate.core.place import nearest_place
from paradestate.core.review.rule import Rule


def recoveries(force: Force) -> Iterator[Finding]:
    """Totals that the dice can't come to, and those on which a lost stand would be promoted."""
    for pattern, recovery in force.campaign.recovery.items():
        for word, on in (("on", recovery.on), ("promoted on", recovery.promoted_on)):
            if on is not None:
                yield from _impossible(force, pattern, word=word, on=on)
        yield from _promoted_and_lost(force, pattern)


def _impossible(force: Force, pattern: str, *, word: str, on: Totals) -> Iterator[Finding]:
    recovery = force.campaign.recovery[pattern]
    totals = recovery.roll.totals()
    outside = [end for end in (on.least, on.most) if end is not None and end not in totals]
    if outside:
        yield Finding(
            level=Level.STOP,
            code="roll-impossible",
            message=f"Recovery of {pattern}: {outside[-1]} on {recovery.roll}: "
            f"it gives {totals[0]} to {totals[-1]}.",
            effect="It can't be said how likely it comes back.",
            hint="Look at the dice and the totals again.",
            place=nearest_place(force.places, ("campaign", "recovery", pattern, word)),
        )


def _promoted_and_lost(force: Force, pattern: str) -> Iterator[Finding]:
    recovery = force.campaign.recovery[pattern]
    promoted = recovery.promoted_on
    if promoted is None:
        return
    both = [
        total
        for total in recovery.roll.totals()
        if promoted.holds(total) and not recovery.on.holds(total)
    ]
    if both:
        yield Finding(
            level=Level.WARN,
            code="promoted-when-lost",
            message=f"Recovery of {pattern}: on {both[0]} it is promoted, and lost.",
            effect="It counts as lost, and its experience with it.",
            hint="Look at 'on' and 'promoted on' again.",
            place=nearest_place(force.places, ("campaign", "recovery", pattern, "promoted on")),
        )


RULES: tuple[Rule, ...] = (recoveries,)
