"""What every sum over the forces of a game begins with: takings of its entries, and its ties."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from typing import NamedTuple, TypeAlias

from paradestate.chance.force.taking import Taking, Takings, takings_of
from paradestate.chance.force.tie import Tie, alone, ties_of
from paradestate.core.certainty import NotComputed
from paradestate.core.support.terms import Terms

MoreTies: TypeAlias = Callable[[Mapping[str, Sequence[Taking]]], Sequence[Tie]]
"""Rules beside those of a game, such as what is owned, for the takings of its entries."""


class Taken(NamedTuple):
    """What one entry may bring."""

    takings: Takings
    plain: tuple[Taking, ...]
    lowest: int
    """The fewest points that a taking costs, nought or below."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Groundwork:
    """The takings of all entries on offer, and the rules about several of them."""

    taken: Mapping[str, Taken]
    """In file order."""
    ties: tuple[Tie, ...]


def groundwork(
    terms: Terms, *, greatest: int, more: MoreTies | None = None
) -> Groundwork | NotComputed:
    """Takings and ties for all numbers of points up to the greatest.

    Refused where one entry alone has too many takings.
    """
    taken = _taken(terms, greatest=greatest, numbered=more is not None)
    if isinstance(taken, NotComputed):
        return taken
    plain = {name: each.plain for name, each in taken.items()}
    ties = (
        *ties_of(
            terms,
            lowest={name: min((t.points for t in each), default=0) for name, each in plain.items()},
            highest={
                name: max((t.points for t in each), default=0) for name, each in plain.items()
            },
            most={
                name: max((t.purchases for t in each), default=0) for name, each in plain.items()
            },
        ),
        *(more(plain) if more else ()),
    )
    return Groundwork(taken=taken, ties=ties)


def _taken(terms: Terms, *, greatest: int, numbered: bool) -> Mapping[str, Taken] | NotComputed:
    """The takings of all entries, as far as the points and all refunds pay for them."""
    refunds = 0
    found: dict[str, Taken] = {}
    for offer in sorted(terms.offers.values(), key=lambda offer: offer.cheapest > 0):
        taken = takings_of(
            offer,
            budget=greatest + refunds,
            possible=alone(terms, offer),
            numbered=numbered,
        )
        if isinstance(taken, NotComputed):
            return taken
        plain = taken.plain()
        lowest = min((0, *[each.points for each in plain]))
        found[offer.name] = Taken(taken, plain, lowest)
        refunds -= lowest
    return {name: found[name] for name in terms.offers}
