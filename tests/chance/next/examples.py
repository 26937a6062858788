"""The example of section 3.13 of the computations, and drawn games with stocks for them."""

from dataclasses import replace
from fractions import Fraction

from hypothesis import strategies

from paradestate.chance.dice import allowance_chances
from paradestate.chance.force.allowed import Lot
from paradestate.chance.force.fielding import Depot, depot
from paradestate.chance.next.expectation import Expectation
from paradestate.chance.next.game_worth import GameWorth, Play, game_worth
from paradestate.core.advice.basket import Basket
from paradestate.core.force import Force
from paradestate.core.support.chances import Chances, chances
from paradestate.core.support.entry import Entry
from paradestate.core.support.terms import Terms, terms_of
from tests.forces import force_from
from tests.support_terms import small_terms
from tests.supported_forces import fielded_entries, made_of, stocked_forces

LOT = Lot(draws=400, seed=1)
ALL = Lot(draws=1, seed=1)

OSK = """\
figures: {machine gun: {}, field gun: {sort: gun}, tank: {sort: vehicle}, officer: {}}
stands:
  machine-gun team: {base: none, figures: {machine gun: 1}}
  field gun: {base: none, figures: {field gun: 1}}
  tank: {base: none, figures: {tank: 1}}
  staff: {base: none, figures: {officer: 1}}
formations: {top: {parts: {staff: 1}}}
stock: {machine gun: {painted: 2}, officer: {painted: 1}}
games: {evening: {allowance: 2 + 1d3 x 2, posture: attack}}
supporting troops:
  machine guns: {cost: 2, each: {machine-gun team: 1}, limit: {most: 4}}
  guns: {cost: 4, each: {field gun: 1}, limit: {most: 4}}
  tanks:
    cost: 6
    each: {tank: 1}
    limit: {most: 4}
    availability: {roll: 1d2, allows: {1: 0, 2: all}}
    when refused: points kept
worths:
  machine guns: {1: 3, 2: 6, 3: 9, 4: 12}
  guns: {1: 7, 2: 14, 3: 21, 4: 28}
  tanks: {1: 10, 2: 20}
"""


def osk() -> Force:
    """Two machine guns; guns and tanks may be bought."""
    return force_from(OSK)


def osk_terms(force: Force | None = None) -> Terms:
    """The terms of its evening."""
    force = force or osk()
    terms, _ = terms_of(force, made_of(force), game="evening", grades={})
    assert terms is not None
    return terms


def owned(force: Force) -> Depot:
    """All that a force owns."""
    return depot(force, made_of(force), finished=False)


def play_of(
    terms: Terms,
    force: Force,
    *,
    most: Depot,
    entries: dict[str, Entry] | None = None,
    points: Chances | None = None,
    asked: str = "guns tanks",
) -> Play:
    """One game, which is all that is played."""
    return Play(
        terms=terms,
        entries=entries or {name: force.supporting_troops[name] for name in terms.offers},
        points=points or allowance_chances(terms.game.allowance).moved(-terms.taken_off),
        share=Fraction(1),
        most=most,
        asked=frozenset(asked.split()),
    )


def worth_of(play: Play, *, lot: Lot = LOT) -> GameWorth:
    """Worths in a game, which must not be refused."""
    found = game_worth(play, lot=lot)
    assert isinstance(found, GameWorth)
    return found


def osk_bought(basket: Basket) -> tuple[Depot]:
    """What is there with so many guns and tanks."""
    guns, tanks = basket
    return (owned(osk()).with_figures({"field gun": guns, "tank": tanks}),)


def osk_worth(*, lot: Lot = LOT) -> GameWorth:
    """Worths of the example with up to three guns and tanks."""
    return worth_of(play_of(osk_terms(), osk(), most=osk_bought((3, 3))[0]), lot=lot)


def osk_expectation(*, lot: Lot = LOT) -> Expectation:
    """Its expected worths."""
    return Expectation([osk_worth(lot=lot)])


POINTS = chances({0: 1, 3: 2, 5: 1})


@strategies.composite
def drawn_plays(draw: strategies.DrawFn) -> tuple[Terms, Force, dict[str, Entry]]:
    """A game of at most two entries, each bought at most twice, with a force and what they want."""
    terms = draw(small_terms(most_entries=2))
    offers = {
        name: replace(offer, most=2 if offer.most is None else offer.most)
        for name, offer in terms.offers.items()
    }
    terms = replace(terms, offers=offers)
    exchanges = draw(strategies.booleans())
    force = draw(stocked_forces(exchanges=exchanges))
    return terms, force, draw(fielded_entries(terms, exchanges=exchanges))
