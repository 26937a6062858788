"""Lists of supporting troops for the tests of all that counts, weighs and draws forces."""

from collections.abc import Sequence
from fractions import Fraction
from itertools import islice

from paradestate.chance.force.diagram import Diagram, diagram
from paradestate.chance.force.groundwork import MoreTies
from paradestate.core.game import Purchase
from paradestate.core.support.entry import GroupLimit
from paradestate.core.support.offer import NO_CHOICE, Offer
from paradestate.core.support.plan import plan_points, plan_worth
from paradestate.core.support.terms import Terms
from tests.support_terms import EVENING, Plan, every_legal_plan

A = Offer(name="A", cost={1: 2}, most=3, worths={NO_CHOICE: {1: Fraction(2), 2: Fraction(3)}})
B = Offer(name="B", cost={1: 3}, most=2, worths={NO_CHOICE: {1: Fraction(7, 2)}})
C = Offer(name="C", cost={1: 5}, needs={"B": 1}, worths={NO_CHOICE: {1: Fraction(6)}})
SMALL = (A, B, C)
"""The small example of section 3.12 of the computations, with worths of our own."""


def listed(*offers: Offer, groups: Sequence[GroupLimit] = ()) -> Terms:
    """A game in which these are on offer."""
    return Terms(
        game=EVENING,
        offers={offer.name: offer for offer in offers},
        absent={},
        groups=tuple(groups),
    )


def drawn(terms: Terms, *, greatest: int, more: MoreTies | None = None) -> Diagram:
    """The diagram, which must not be refused."""
    found = diagram(terms, greatest=greatest, more=more)
    assert isinstance(found, Diagram)
    return found


def names(plan: Plan) -> str:
    """A force in short: `A A B`."""
    return " ".join(each.entry for each in plan)


def in_order(plan: Plan) -> tuple[Purchase, ...]:
    """The same purchases however they were written down."""
    return tuple(sorted(plan, key=lambda each: (each.entry, each.number, each.choice)))


def ranked(terms: Terms, *, points: int, first: int = 20) -> list[tuple[Fraction, int]]:
    """Worth and points of the legal forces, by falling worth, then rising points."""
    every = (
        (plan_worth(terms.offers, plan), plan_points(terms.offers, plan))
        for plan in every_legal_plan(terms, points=points)
    )
    return list(islice(sorted(every, key=lambda pair: (-pair[0], pair[1])), first))
