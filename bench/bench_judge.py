"""How long it takes to judge a plan, and to find the ways out of one that isn't legal.

Conditions: the example in an attack of 18 points; one process; the terms are made already. Beside
the judge stands the same rule book read out in the plainest words, which only says yes or no.
"""

import pytest
from pytest_benchmark.fixture import BenchmarkFixture

from paradestate.core.game import Purchase
from paradestate.core.support.breach import bill_of, breaches
from paradestate.core.support.judge import judged
from paradestate.core.support.terms import Terms
from tests.core.support.test_terms import terms
from tests.forces import marenz
from tests.support_terms import Plan, plainly_legal

LEGAL = (
    Purchase(entry="light tanks", number=2),
    Purchase(entry="tank squadron commander", number=1),
    Purchase(entry="machine-gun platoon", number=2),
)
OVER_BY_ONE = (*LEGAL, Purchase(entry="assault training for a platoon", number=1))
FAR_OVER = (
    *OVER_BY_ONE,
    *(Purchase(entry="lorries for a company", number=1) for _ in range(3)),
    Purchase(entry="armoured cars", number=2),
    Purchase(entry="bicycle troop", number=2),
)
"""No single change and no pair puts it right: everything is tried."""


def whole_day() -> Terms:
    return terms(marenz(), game="whole-day attack")


def bench_the_rules_in_the_plainest_words(benchmark: BenchmarkFixture) -> None:
    known = whole_day()
    assert benchmark(lambda: plainly_legal(known, LEGAL, points=18))


def bench_the_rules(benchmark: BenchmarkFixture) -> None:
    known = whole_day()
    assert benchmark(lambda: breaches(bill_of(known, LEGAL, points=18))) == ()


@pytest.mark.parametrize("plan", [LEGAL, OVER_BY_ONE, FAR_OVER], ids=["legal", "near", "far"])
def bench_judging_with_every_way_out(benchmark: BenchmarkFixture, plan: Plan) -> None:
    known = whole_day()
    made = benchmark(lambda: judged(known, plan, points=18))
    assert all(made.ways_out[breach] for breach in made.breaches)
