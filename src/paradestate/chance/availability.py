"""The rolls of a plan: which purchases each of them decides, and what it allows of them."""

from collections.abc import Hashable, Mapping, Sequence
from dataclasses import dataclass

from paradestate.chance.dice import dice_chances
from paradestate.core.game import Purchase
from paradestate.core.support.chances import Chances, chances
from paradestate.core.support.entry import Availability
from paradestate.core.support.offer import Offer


@dataclass(frozen=True, slots=True, kw_only=True)
class PlanRoll:
    """One roll, and what it allows of the purchases that it decides."""

    places: tuple[int, ...]
    """Places of those purchases in the plan."""
    allowed: Mapping[tuple[int, ...], int]
    """How many are allowed of each, never more than asked, to ways."""
    ways: int
    """All ways of the roll."""

    def chances_of(self, place: int) -> Chances:
        """How many are allowed of one purchase."""
        at = self.places.index(place)
        counts: dict[int, int] = {}
        for numbers, ways in self.allowed.items():
            counts[numbers[at]] = counts.get(numbers[at], 0) + ways
        return chances(counts)


def roll_key(availability: Availability, *, own: Hashable) -> Hashable:
    """Equal for what one roll decides; `own` tells apart what has a roll of its own.

    Entries that share a roll have one between them; where they don't agree what is rolled, one for
    each sort of roll.
    """
    shared = availability.shared_roll
    return (shared, availability.roll) if shared else ("", own)


def plan_rolls(offers: Mapping[str, Offer], plan: Sequence[Purchase]) -> tuple[PlanRoll, ...]:
    """All rolls of the plan, in the order in which they first decide something.

    Each purchase has a roll of its own unless its entry shares one.
    """
    together: dict[Hashable, list[tuple[int, Availability]]] = {}
    for place, purchase in enumerate(plan):
        availability = offers[purchase.entry].availability
        if availability is not None:
            key = roll_key(availability, own=place)
            together.setdefault(key, []).append((place, availability))
    return tuple(_plan_roll(plan, each) for each in together.values())


def _plan_roll(plan: Sequence[Purchase], together: list[tuple[int, Availability]]) -> PlanRoll:
    totals = dice_chances(together[0][1].roll)
    decided = [(availability, plan[place].number) for place, availability in together]
    allowed: dict[tuple[int, ...], int] = {}
    for total, ways in totals.counts.items():
        numbers = tuple(availability.allowed(total, asked=asked) for availability, asked in decided)
        allowed[numbers] = allowed.get(numbers, 0) + ways
    places = tuple(place for place, _ in together)
    return PlanRoll(places=places, allowed=allowed, ways=totals.ways)
