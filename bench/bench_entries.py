"""How long the proof of a list takes, and a what-if, beside doing it entry by entry.

Conditions: in one process; every round begins with the terms of the game; lists of 40 entries
invented from a seed (see `force_lists`), all numbers of points from 0 to 60. Beside the proof
stands a count of a list without each entry in turn, which is the plain way to the same shares.
"""

from dataclasses import replace

import pytest
from pytest_benchmark.fixture import BenchmarkFixture

from bench.force_lists import force_list
from paradestate.chance.force.diagram import Diagram, diagram
from paradestate.chance.force.legal_count import legal_forces
from paradestate.chance.proof.entry_count import levels_without
from paradestate.chance.proof.game_proof import game_proof
from paradestate.chance.proof.what_if import list_forces, what_if
from paradestate.core.support.amendment import (
    Amendment,
    LimitAmendment,
    PriceAmendment,
    WorthAmendment,
)
from paradestate.core.support.comparison import ListComparison, ListForces
from paradestate.core.support.entry import Entry
from paradestate.core.support.proof import GameProof
from paradestate.core.support.terms import Terms
from tests.support_terms import attack

SEEDS = (1, 2, 3)
ENTRIES, POINTS = 40, 60
LEVELS = range(POINTS + 1)
FEW = (40, 50, 60)
"""Points left in the comparisons."""


def drawn(terms: Terms) -> Diagram:
    """The diagram, which must not be refused."""
    found = diagram(terms, greatest=POINTS)
    assert isinstance(found, Diagram)
    return found


@pytest.mark.parametrize("seed", SEEDS)
def bench_the_proof_of_a_list(benchmark: BenchmarkFixture, seed: int) -> None:
    """Shares, best forces with and without each entry, unspent points, dominance, prices."""
    terms = force_list(ENTRIES, seed=seed)
    entries = {name: Entry(name=name, cost=offer.cost) for name, offer in terms.offers.items()}

    def proof() -> GameProof:
        found = game_proof(terms, entries, points=LEVELS, allowance=None)
        assert isinstance(found, GameProof)
        return found

    assert len(benchmark(proof).entries) == ENTRIES


@pytest.mark.parametrize("seed", SEEDS)
def bench_shares_of_all_entries(benchmark: BenchmarkFixture, seed: int) -> None:
    """How many forces don't hold each entry, at all points."""
    terms = force_list(ENTRIES, seed=seed)
    assert len(benchmark(lambda: levels_without(drawn(terms), points=LEVELS))) == ENTRIES


@pytest.mark.parametrize("seed", SEEDS)
def bench_shares_entry_by_entry(benchmark: BenchmarkFixture, seed: int) -> None:
    """The same by a diagram for each entry in which none of it may be had."""
    terms = force_list(ENTRIES, seed=seed)

    def plainly() -> dict[str, int]:
        found = {}
        for name, offer in terms.offers.items():
            without = replace(terms, offers={**terms.offers, name: replace(offer, most=0)})
            found[name] = legal_forces(drawn(without), points=LEVELS)[-1].legal
        return found

    fast = levels_without(drawn(terms), points=LEVELS)
    assert benchmark(plainly) == {name: levels[-1].legal for name, levels in fast.items()}


@pytest.mark.parametrize("seed", SEEDS)
@pytest.mark.parametrize("what", ["price", "limit", "worth"])
def bench_a_what_if(benchmark: BenchmarkFixture, what: str, seed: int) -> None:
    """The list as it is was worked out before; one change, forces lost and gained, the best."""
    terms = force_list(ENTRIES, seed=seed)
    old = list_forces(terms, points=FEW, at=FEW[0])
    assert isinstance(old, ListForces)
    first = next(iter(terms.offers.values()))
    amendments: dict[str, Amendment] = {
        "price": PriceAmendment(entry=first.name, points=first.cost[1] + 1),
        "limit": LimitAmendment(entry=first.name, most=(first.most or 0) + 1),
        "worth": WorthAmendment(entry=first.name, worth=first.worth({"": 1}) + 1),
    }
    amendment = amendments[what]
    assert isinstance(benchmark(lambda: what_if(old, [amendment])), ListComparison)


def bench_a_what_if_of_the_example(benchmark: BenchmarkFixture) -> None:
    """A price of the example in an attack, at all points that the dice may leave."""
    old = list_forces(attack(), points=range(13, 24), at=18)
    assert isinstance(old, ListForces)
    amendment = PriceAmendment(entry="anti-tank guns", points=5)
    assert isinstance(benchmark(lambda: what_if(old, [amendment])), ListComparison)
