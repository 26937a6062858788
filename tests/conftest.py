"""What holds for every test: no unasked log lines, the same drawn cases, and what is measured."""

import importlib
import logging
import pkgutil
from collections.abc import Generator, Iterator
from contextlib import contextmanager
from pathlib import Path

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

TESTS = Path(__file__).parent
EXACT = ("core", "text", "chance")
"""The packages in which a test must have taken every branch."""
MEASURED = (*EXACT, "authority", "mistakes")
"""Folders of tests that show it. The others go through the same lines by way of a page or a
command, and so run without the tracer of coverage, which takes half as long again."""

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
    """Have files with long tests come first: at the end no process waits for one of another.

    The last of them by name, those of the page, before the others: two processes that share the
    tests of a file each prepare what the whole file stands on, and theirs takes longest.
    """
    paths = {item.path for item in items if any(map(item.get_closest_marker, LONG))}
    long = {path: place for place, path in enumerate(sorted(paths, reverse=True))}
    items.sort(key=lambda item: long.get(item.path, len(long)))


def pytest_addoption(parser: pytest.Parser) -> None:
    """`make coverage` asks for it."""
    parser.addoption(
        "--measure-everything",
        action="store_true",
        help="let the tracer of coverage see every test that isn't marked unmeasured",
    )


@pytest.hookimpl(wrapper=True)
def pytest_collection() -> Generator[None, object, object]:
    """Have the tests found without the tracer, once it has seen what they import."""
    if Coverage.current() is not None:
        for name in EXACT:
            _import_all(f"paradestate.{name}")
    with _not_measured():
        return (yield)


def _import_all(name: str) -> None:
    package = importlib.import_module(name)
    for module in pkgutil.walk_packages(package.__path__, prefix=f"{name}."):
        importlib.import_module(module.name)


@pytest.hookimpl(wrapper=True)
def pytest_runtest_protocol(item: pytest.Item) -> Generator[None, object, object]:
    """Run a test outside the measured folders without the tracer, and what it asks for too."""
    if _is_measured(item):
        return (yield)
    with _not_measured():
        return (yield)


@pytest.hookimpl(wrapper=True)
def pytest_runtest_call(item: pytest.Item) -> Generator[None]:
    """Run a long test, and drawn cases, without the tracer, wherever they stand.

    So what only drawn cases go through counts as untested: it wants a plain example.
    """
    if not _is_measured(item) or not any(map(item.get_closest_marker, UNMEASURED)):
        return (yield)
    with _not_measured():
        return (yield)


def _is_measured(item: pytest.Item) -> bool:
    if item.config.getoption("--measure-everything"):
        return True
    return item.path.relative_to(TESTS).parts[0] in MEASURED


@contextmanager
def _not_measured() -> Iterator[None]:
    """A block without the tracer; so are the programs that are started in it."""
    measuring = Coverage.current()
    if measuring is None:
        yield
        return
    with pytest.MonkeyPatch.context() as patch:
        patch.delenv("COVERAGE_PROCESS_CONFIG", raising=False)
        measuring.stop()
        try:
            yield
        finally:
            measuring.start()


@pytest.fixture(scope="session")
def cluster() -> Iterator[str]:
    """The address of a server of this process alone."""
    with running_cluster() as url:
        yield url
