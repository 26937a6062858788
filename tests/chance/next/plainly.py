"""What a stock is worth, outcome after outcome and force after force, beside the sums of `next`."""

from collections.abc import Iterator, Mapping, Sequence
from fractions import Fraction
from itertools import permutations, product

from paradestate.core.dice import Throw
from paradestate.core.force import Force
from paradestate.core.support.chances import Chances
from paradestate.core.support.entry import Entry
from paradestate.core.support.plan import plan_worth
from paradestate.core.support.terms import Terms
from tests.support_terms import Plan, every_legal_plan
from tests.supported_forces import plainly_fielded

Rolled = Mapping[str, Sequence[int]]
"""Entry to the totals that are rolled for its purchases."""


def plain_worth(
    terms: Terms,
    force: Force,
    *,
    entries: dict[str, Entry],
    points: Chances,
    rolls: Mapping[str, int],
) -> Fraction:
    """The mean of the greatest worths, each roll of all dice gone through by itself.

    Entries have so many rolls, those that share one the same total for all.
    """
    total, ways = Fraction(0), 0
    every = list(_every_roll(terms, rolls=rolls))
    for number, count in points.counts.items():
        forces = [
            (plan_worth(terms.offers, plan), plan)
            for plan in every_legal_plan(terms, points=number)
            if plainly_fielded(force, entries, plan=plan)
        ]
        forces.sort(key=lambda each: each[0], reverse=True)
        for rolled in every:
            there = (worth for worth, plan in forces if is_allowed(terms, plan, rolled=rolled))
            total += count * next(there, Fraction(0))
            ways += count
    return total / ways


def _every_roll(terms: Terms, *, rolls: Mapping[str, int]) -> Iterator[Rolled]:
    """All totals of all rolls; every die has one throw only, so all are equally likely."""
    dice: dict[tuple[str, int], range] = {}
    of: dict[str, list[tuple[str, int]]] = {}
    for name, offer in terms.offers.items():
        if offer.availability is not None:
            (_, signed) = offer.availability.roll.terms
            assert isinstance(signed.term, Throw)
            shared = offer.availability.shared_roll
            of[name] = [
                (shared, 0) if shared else (f"roll for {name}", n) for n in range(rolls[name])
            ]
            dice |= dict.fromkeys(of[name], range(1, signed.term.sides + 1))
    for totals in product(*dice.values()):
        at = dict(zip(dice, totals, strict=True))
        yield {name: [at[key] for key in keys] for name, keys in of.items()}


def is_allowed(terms: Terms, plan: Plan, *, rolled: Rolled) -> bool:
    """Whether the purchases of each entry can be matched with rolls that allow them."""
    for name, totals in rolled.items():
        availability = terms.offers[name].availability
        assert availability is not None
        numbers = [each.number for each in plan if each.entry == name]
        if not any(
            all(
                availability.allowed(total, asked=number) == number
                for number, total in zip(numbers, order, strict=False)
            )
            for order in permutations(totals)
        ):
            return False
    return True
