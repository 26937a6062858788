"""How long a command takes before it does anything.

Conditions: a fresh process each time, at least five rounds, files already in the disk cache.
"""

import subprocess
import sys

from pytest_benchmark.fixture import BenchmarkFixture


def start() -> None:
    """Run the shortest command there is."""
    subprocess.run([sys.executable, "-m", "paradestate", "--version"], check=True)


def bench_start(benchmark: BenchmarkFixture) -> None:
    """Wall time of ``paradestate --version``."""
    benchmark(start)
