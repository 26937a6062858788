"""How long a count takes again after a change, in process.

Conditions: the example, read already; one process; every round another number of companies.
"""

from itertools import cycle

from pytest_benchmark.fixture import BenchmarkFixture

from paradestate.core.choice import Choice, chosen
from paradestate.core.establishment import establishment
from paradestate.core.strength import strength
from tests.forces import marenz


def bench_summing_again_after_a_change(benchmark: BenchmarkFixture) -> None:
    """Establishment and strength with one company more or fewer."""
    force, companies = marenz(), cycle((2, 3, 4))

    def summed() -> int:
        changed, findings = chosen(force, Choice(numbers={"company": next(companies)}))
        made, more = establishment(changed)
        assert made is not None
        assert (findings, more) == ((), ())
        return sum(strength(changed, made).deficiency.values())

    assert benchmark(summed) > 0
