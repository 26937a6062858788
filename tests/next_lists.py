"""Lists of supporting troops with a stock and packs, invented from a seed, for `next`.

Entries are those of `bench.force_lists`, each with a stand of its own of one figure of its own;
nought to three figures of each are owned. Of the rolls a third refuses, a third allows one. Packs
hold one or two figures of one entry and cost 6 to 18; of each two can be had.
"""

import random
from collections.abc import Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from bench.force_lists import force_list
from paradestate.chance.dice import dice_chances
from paradestate.chance.force.allowed import Lot
from paradestate.chance.force.fielding import Depot
from paradestate.chance.next.expectation import Expectation
from paradestate.chance.next.game_worth import GameWorth, Play, game_worth
from paradestate.chance.next.search import Question, best_basket
from paradestate.core.advice.basket import Basket, Priced, one_more
from paradestate.core.figure import FigureKind
from paradestate.core.support.entry import Availability, Band, Entry
from tests.outcome_program import Purse
from tests.support_terms import dice

ROLL = Availability(
    roll=dice(1, sides=6),
    allows=(
        Band(least=1, most=2, allows=0),
        Band(least=3, most=4, allows=1),
        Band(least=5, most=6, allows=None),
    ),
)


@dataclass(frozen=True, slots=True, kw_only=True)
class NextList:
    """A game, what is owned, and what may be bought."""

    game: GameWorth
    expectation: Expectation
    depot: Depot
    purse: Purse

    @property
    def owned(self) -> dict[str, int]:
        """Entry to figures."""
        return dict(self.depot.loose)

    @property
    def most(self) -> Sequence[int]:
        """How many of each pack can be had."""
        return self.purse.most

    def cost(self, basket: Basket) -> Fraction:
        """Single prices, nothing else."""
        prices = zip(basket, self.purse.prices, strict=True)
        return Fraction(sum(number * price for number, price in prices))

    def least(self, basket: Basket) -> Fraction:
        """The same."""
        return self.cost(basket)

    def can_be_had(self, basket: Basket) -> bool:
        """Everything is sent."""
        return len(basket) == len(self.purse.prices)

    def values(self, baskets: Sequence[Basket]) -> list[Fraction]:
        """Expected worths."""
        found = self.expectation.values(
            [(stock(self.depot, each, purse=self.purse),) for each in baskets]
        )
        assert isinstance(found, list)
        return found

    def found(self) -> Priced:
        """The best basket, proved."""
        nothing = (0,) * len(self.purse.prices)
        alone = self.values([one_more(nothing, place) for place in range(len(nothing))])
        question = Question(
            means=self,
            limit=Fraction(self.purse.money),
            values=self.values,
            ceilings=self.values,
            order=sorted(range(len(nothing)), key=lambda place: -alone[place]),
        )
        made = best_basket(question, start=nothing, stop=lambda: False)
        assert made.best is not None
        assert made.bound is None
        return made.best


def stock(depot: Depot, basket: Basket, *, purse: Purse) -> Depot:
    """What is there with a basket."""
    bought: dict[str, int] = {}
    for number, (name, figures) in zip(basket, purse.brings, strict=True):
        bought[name] = bought.get(name, 0) + number * figures
    return depot.with_figures(bought)


def next_list(
    entries: int, *, seed: int, rolled: int, candidates: int, money: int, points: int = 18
) -> NextList:
    """So many entries of which some are rolled for, and so many packs."""
    draw = random.Random(f"next {entries} {seed}")  # noqa: S311 - the same list each time
    terms = force_list(entries, seed=seed, rolled=rolled)
    offers = {
        name: replace(offer, availability=ROLL if offer.availability else None)
        for name, offer in terms.offers.items()
    }
    names = list(offers)
    depot = Depot(
        figures={name: FigureKind(name=name) for name in names},
        loose={name: draw.choice((0, 0, 1, 2, 3)) for name in names},
        must={},
        must_lacks=0,
        spare=dict.fromkeys(names, 0),
        on_stand={name: {name: 1} for name in names},
    )
    chosen = sorted(draw.sample(names, candidates))
    purse = Purse(
        brings=[(name, draw.choice((1, 1, 2))) for name in chosen],
        prices=[draw.randint(6, 18) for _ in chosen],
        most=[2] * candidates,
        money=money,
    )
    play = Play(
        terms=replace(terms, offers=offers),
        entries={name: Entry(name=name, cost=offers[name].cost, each={name: 1}) for name in names},
        points=dice_chances(dice(2, sides=6, plus=points)),
        share=Fraction(1),
        most=stock(depot, (2,) * candidates, purse=purse),
        asked=frozenset(chosen),
    )
    game = game_worth(play, lot=Lot(draws=500, seed=1))
    assert isinstance(game, GameWorth)
    return NextList(game=game, expectation=Expectation([game]), depot=depot, purse=purse)
