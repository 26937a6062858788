"""A writer that is killed: every acknowledged entry is there, and at most one more."""

import pytest

from paradestate.store.address import Address
from tests.store.killing import killed_and_looked_after

RUNS = 30
"""On each database; `make bench` does a thousand."""


@pytest.mark.slow
def test_a_writer_killed_at_any_moment_loses_nothing_that_was_acknowledged(
    address: Address,
) -> None:
    assert killed_and_looked_after(address, runs=RUNS, seed=1943) >= RUNS
