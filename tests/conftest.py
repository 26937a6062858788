"""What holds for every test: no unasked log lines, and the same drawn cases on every run."""

import logging
from collections.abc import Generator, Iterator

import pytest
from coverage import Coverage
from hypothesis import HealthCheck, settings

from tests.store.cluster import running_cluster

# The machine that tests may be slow, and a test must not fail for that; the cases drawn are the
# same on every run, so that a failure is there again for the next person.
settings.register_profile(
    "paradestate",
    deadline=None,
    derandomize=True,
    print_blob=True,
    suppress_health_check=[HealthCheck.too_slow],
)
settings.load_profile("paradestate")

LONG = ("unmeasured", "slow")
UNMEASURED = ("unmeasured", "hypothesis")
"""Marks of tests; the second is Hypothesis's own, on every test of drawn cases."""


@pytest.fixture(autouse=True)
def no_unexpected_log_lines(caplog: pytest.LogCaptureFixture) -> Iterator[None]:
    """Fail a test that leaves a warning in the log, unless it says ``caplog.clear()``."""
    yield
    lines = caplog.get_records("call")
    assert [line.getMessage() for line in lines if line.levelno >= logging.WARNING] == []


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """Have files with long tests come first: at the end no process waits for one of another."""
    long = {item.path for item in items if any(map(item.get_closest_marker, LONG))}
    items.sort(key=lambda item: item.path not in long)


@pytest.hookimpl(wrapper=True)
def pytest_runtest_call(item: pytest.Item) -> Generator[None]:
    """Run a long test, and drawn cases, without the tracer of coverage, which doubles their time.

    So what only drawn cases go through counts as untested: it wants a plain example.
    """
    measuring = Coverage.current()
    if measuring is None or not any(map(item.get_closest_marker, UNMEASURED)):
        return (yield)
    with pytest.MonkeyPatch.context() as patch:
        patch.delenv("COVERAGE_PROCESS_CONFIG", raising=False)  # for the programs it starts
        measuring.stop()
        try:
            return (yield)
        finally:
            measuring.start()


@pytest.fixture(scope="session")
def cluster() -> Iterator[str]:
    """The address of a server of this process alone."""
    with running_cluster() as url:
        yield url
