"""Games for the tests of fall-backs, and shorthand to solve them."""

from dataclasses import replace
from fractions import Fraction

from paradestate.chance.fallback.backward import Values, values_of
from paradestate.chance.fallback.completion import Completions, completions_of
from paradestate.chance.fallback.decision import Decider
from paradestate.chance.fallback.exploring import explored
from paradestate.chance.fallback.opinion import as_said
from paradestate.chance.fallback.play import Play
from paradestate.chance.fallback.prospect import Held, Prospect, prospect_of
from paradestate.chance.fallback.rules import Rules, rules_of
from paradestate.core.support.entry import Availability, Band
from paradestate.core.support.offer import Offer
from paradestate.core.support.terms import Terms
from tests.chance.plans import rolled, terms_with
from tests.support_terms import dice

HALF = rolled(4)
"""All of it on 4 or more of one die."""


def worth(**numbers: int | Fraction) -> dict[str, dict[int, Fraction]]:
    """Worths by number, whatever the choice: `worth(n1=4, n2=8)`."""
    return {"": {int(name[1:]): Fraction(value) for name, value in numbers.items()}}


TANK = Offer(name="tank", cost={1: 6}, availability=HALF, worths=worth(n1=10))
GUN = Offer(name="gun", cost={1: 4}, worths=worth(n1=5))
MACHINE_GUN = Offer(name="machine gun", cost={1: 2}, worths=worth(n1=3))
TANK_GAME = terms_with(TANK, GUN, MACHINE_GUN)
"""Example A of the computations: refused points are kept."""
LOSING_GAME = terms_with(replace(TANK, loses_points=True), GUN, MACHINE_GUN)
"""Example B: they are lost."""


def guns_and_horse(*, loses_points: bool = False) -> Terms:
    """Two that share a roll: 1 refuses both, 2 allows one gun, 3 both guns, 4 the horse too."""
    guns = Availability(
        roll=dice(1, sides=4),
        allows=(
            Band(least=1, most=1, allows=0),
            Band(least=2, most=2, allows=1),
            Band(least=3, most=None, allows=None),
        ),
        shared_roll="convoy",
    )
    horse = Availability(
        roll=dice(1, sides=4),
        allows=(Band(least=1, most=3, allows=0), Band(least=4, most=None, allows=None)),
        shared_roll="convoy",
    )
    return terms_with(
        Offer(
            name="guns",
            cost={1: 2, 2: 4},
            availability=guns,
            worths=worth(n1=3, n2=5),
            loses_points=loses_points,
        ),
        Offer(name="horse", cost={1: 3}, availability=horse, worths=worth(n1=6)),
        MACHINE_GUN,
    )


def prospect(terms: Terms, *, points: int, held: Held = Held()) -> Prospect:  # noqa: B008 - frozen
    """What matters of the terms."""
    return prospect_of(terms, points=points, shared=points, held=held)


def solved(
    terms: Terms,
    *,
    points: int,
    held: Held = Held(),  # noqa: B008 - frozen
) -> tuple[Play, Completions, Values]:
    """The play with the values of all its standings."""
    rules: Rules = rules_of(prospect(terms, points=points, held=held))
    play = explored(rules)
    assert play is not None
    completions = completions_of(rules)
    offers = rules.prospect.offers.values()
    return play, completions, values_of(play, completions, opinions=[as_said(offers)])


def value(terms: Terms, *, points: int) -> Fraction:
    """The mean worth by the best play."""
    play, completions, values = solved(terms, points=points)
    unit = as_said(completions.rules.prospect.offers.values()).unit
    left = points - play.rules.prospect.held.paid
    return Fraction(values.of(0, points=left), values.scales[0] * unit)


def decider(terms: Terms, *, points: int) -> Decider:
    """What reads decisions."""
    _, completions, values = solved(terms, points=points)
    return Decider(values=values, completions=completions)
